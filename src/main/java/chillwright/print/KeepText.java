package chillwright.print;

import chillwright.core.keeping.AgeAsked;
import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The answer to "how long does it keep?" in words. Safety days and quality dates never mix, and
 * what has passed is said to have passed.
 *
 * @param zone the kitchen's zone
 * @param now the moment the dates are read
 * @param scale whose figure comes first
 * @param age what is known of its age
 * @param thawed the day it thawed, where it is asked about by dates
 */
public record KeepText(
    Category category,
    Keeping keeping,
    ZoneId zone,
    Instant now,
    Language language,
    Scale scale,
    AgeAsked age,
    Optional<LocalDate> thawed) {

  /** Of food whose age is on record. */
  public KeepText(Category category, Keeping keeping, ZoneId zone, Instant now, Language language) {
    this(
        category, keeping, zone, now, language, Scale.FAHRENHEIT, AgeAsked.KNOWN, Optional.empty());
  }

  /** In English. */
  public KeepText(Category category, Keeping keeping, ZoneId zone, Instant now) {
    this(category, keeping, zone, now, Language.ENGLISH);
  }

  /** In English, of food that is asked about by dates alone. */
  public KeepText(
      Category category,
      Keeping keeping,
      ZoneId zone,
      Instant now,
      AgeAsked age,
      Optional<LocalDate> thawed) {
    this(category, keeping, zone, now, Language.ENGLISH, Scale.FAHRENHEIT, age, thawed);
  }

  /** A line about one date. */
  private record Line(Governs which, String text, boolean isPast) {}

  /** The whole answer, with the arithmetic, the figures' source and who decides; in English. */
  public String answer(RuleSet rules, String defers) {
    List<String> lines = new ArrayList<>();
    lines.add(category.title() + " (" + category.key() + ")");
    lines.addAll(marked());
    ofAge().ifPresent(says -> lines.add("    " + says));
    ofThawing().ifPresent(says -> lines.add("    " + says));
    if (category.freezes() == Category.Freezes.NO) {
      lines.add("  " + language.say("keep.freezes-not"));
    } else if (category.freezes() == Category.Freezes.POORLY) {
      lines.add("  Freezes poorly: expect it to separate, crumble or go soft.");
    }
    refreezing(rules).ifPresent(advice -> lines.add("  " + advice));
    onCounter(rules).ifPresent(says -> lines.add("  " + says));
    keeping.because().forEach(reason -> lines.add("    " + times().retold(reason)));
    category.note().ifPresent(note -> lines.add("  Note: " + note));
    if (keeping.bestQualityBy().isEmpty() && keeping.qualityLimit().isEmpty()) {
      lines.addAll(ifFrozen());
      lines.add("    figures: " + category.source());
    }
    lines.add("Judged by " + rules.id() + ", version " + rules.version() + ". " + defers.strip());
    return String.join(System.lineSeparator(), lines);
  }

  /** What it says of the dates, a sentence each, without the arithmetic. */
  public List<String> says(RuleSet rules) {
    List<String> says = new ArrayList<>(says());
    ofAge().ifPresent(says::add);
    ofThawing().ifPresent(says::add);
    onCounter(rules).ifPresent(says::add);
    refreezing(rules).ifPresent(says::add);
    freezesNot().ifPresent(says::add);
    return says;
  }

  /** Of food that spoils in the freezer, why no date is told of it there. */
  private Optional<String> freezesNot() {
    return category.freezes() == Category.Freezes.NO && !isOver()
        ? Optional.of(language.say("keep.freezes-not"))
        : Optional.empty();
  }

  /** Of food that needs no cold and is not in the freezer: no day bounds it, only its quality. */
  private Optional<String> onCounter(RuleSet rules) {
    boolean standsThere = !wasFrozen() || thawed.isPresent();
    boolean isPlain = !category.tcs() && category.readyToEat();
    return rules
        .rule(Occasion.NO_TEMPERATURE_LIMIT)
        .filter(rule -> standsThere && isPlain)
        .map(rule -> language.say("keep.counter", rule.citation().text().strip()));
  }

  /** What freezing would do for food that is not frozen, nor past its last day. */
  public Optional<String> whatIfFrozen() {
    String months = range(category.freezer());
    if (months.equals("-") || wasFrozen() || isOver()) {
      return Optional.empty();
    }
    String key = months.equals("1") ? "keep.if-frozen.one" : "keep.if-frozen";
    String says = language.say(key, months, Limit.of(-18, 0).both(scale));
    return Optional.of(
        category.freezes() == Category.Freezes.POORLY
            ? says + " " + language.say("keep.freezes-poorly")
            : says);
  }

  /** The same without what a rule set says of freezing again. */
  public List<String> says() {
    return lines().stream().map(Line::text).toList();
  }

  /** The same without the dates of quality. */
  public List<String> saysOfSafety() {
    return lines().stream().filter(line -> !line.which().isQuality()).map(Line::text).toList();
  }

  private Optional<String> ofAge() {
    return switch (age) {
      case KNOWN -> Optional.empty();
      case FROM_THAWING -> Optional.of(language.say("keep.from-thawing"));
      case MISSING -> Optional.of(language.say("keep.age-missing"));
    };
  }

  /** Of a large piece: the day it is taken out is not the day it has thawed. */
  private Optional<String> ofThawing() {
    boolean wasFrozen = thawed.isPresent() || keeping.bestQualityBy().isPresent();
    return wasFrozen && category.thawsForDays()
        ? Optional.of(language.say("keep.thaws-for-days"))
        : Optional.empty();
  }

  private Optional<String> refreezing(RuleSet rules) {
    return wasFrozen() && !isOver()
        ? Refreezing.advice(rules, category, language, scale)
        : Optional.empty();
  }

  private boolean wasFrozen() {
    return keeping.bestQualityBy().isPresent() || keeping.qualityLimit().isPresent();
  }

  private boolean isOver() {
    return lines().stream().anyMatch(line -> line.isPast() && !line.which().isQuality());
  }

  private Times times() {
    return Times.at(now, zone, language);
  }

  /** What freezing would do for food that is not frozen. */
  private List<String> ifFrozen() {
    String months = range(category.freezer());
    return months.equals("-")
        ? List.of()
        : List.of(
            "    If frozen and kept at 0 °F or below: best quality for "
                + months
                + (months.equals("1") ? " month" : " months")
                + " (quality, not safety)");
  }

  /** The dates of a lot, the governing one marked. */
  List<String> marked() {
    List<Line> lines = lines();
    if (lines.isEmpty()) {
      return List.of("  No date applies.");
    }
    Optional<Governs> governing = governing(lines);
    return lines.stream().map(line -> marked(line, governing)).toList();
  }

  private String marked(Line line, Optional<Governs> governing) {
    if (governing.filter(line.which()::equals).isEmpty()) {
      return "    " + line.text();
    }
    return "  > " + line.text() + (line.isPast() ? "" : "  (this governs now)");
  }

  /** A quality date that has passed leaves the word to the next one. */
  private Optional<Governs> governing(List<Line> lines) {
    Optional<Governs> governs = keeping.governs();
    boolean isQuality = governs.filter(Governs::isQuality).isPresent();
    return isQuality
        ? lines.stream()
            .filter(line -> !line.isPast())
            .map(Line::which)
            .findFirst()
            .or(() -> governs)
        : governs;
  }

  private List<Line> lines() {
    if (keeping.lastDayMissed().isPresent()) {
      String missed = language.say("keep.missed", times().day(keeping.lastDayMissed().get()));
      return List.of(new Line(Governs.LAST_DAY_MISSED, missed, true));
    }
    List<Line> lines = new ArrayList<>();
    keeping.discardAt().map(this::discardAt).ifPresent(lines::add);
    lastDay(Governs.DATE_MARK_LAST_DAY, "keep.date-mark", keeping.dateMarkLastDay(), lines);
    String chilled = category.daysAreQuality() ? "keep.chilled.best" : "keep.chilled";
    lastDay(Governs.CHILLED_LAST_DAY, chilled, keeping.chilledLastDay(), lines);
    quality(Governs.BEST_QUALITY_BY, "keep.best", keeping.bestQualityBy(), lines);
    if (!keeping.qualityLimit().equals(keeping.bestQualityBy())) {
      quality(Governs.QUALITY_LIMIT, "keep.fades", keeping.qualityLimit(), lines);
    }
    keeping
        .daysLeftWhenThawed()
        .ifPresent(days -> lines.add(new Line(Governs.DAYS_LEFT_WHEN_THAWED, thawed(days), false)));
    return lines;
  }

  private Line discardAt(Instant at) {
    boolean isOver = now.isAfter(at);
    String time = times().said(at);
    String says = language.say(isOver ? "keep.time.over" : "keep.time", time);
    return new Line(Governs.DISCARD_AT, says, isOver);
  }

  private void lastDay(Governs which, String key, Optional<LocalDate> last, List<Line> lines) {
    String over = category.daysAreQuality() ? "keep.day.stale" : over();
    last.filter(day -> !isTimeUpBy(day))
        .map(day -> line(which, key, over, day))
        .ifPresent(lines::add);
  }

  /** "Discard" holds of a large piece only if it had thawed by the day that was given. */
  private String over() {
    return thawed.isPresent() && category.thawsForDays() ? "keep.day.over.thawed" : "keep.day.over";
  }

  /** A later day beside the hour at which food must go would read like leave to keep it. */
  private boolean isTimeUpBy(LocalDate day) {
    return keeping
        .discardAt()
        .filter(at -> !LocalDate.ofInstant(at, zone).isAfter(day))
        .isPresent();
  }

  private void quality(Governs which, String key, Optional<LocalDate> last, List<Line> lines) {
    last.map(day -> line(which, key, key + ".over", day)).ifPresent(lines::add);
  }

  private Line line(Governs which, String key, String over, LocalDate day) {
    boolean isPast = LocalDate.ofInstant(now, zone).isAfter(day);
    String thawedOn = thawed.map(times()::day).orElse("");
    return new Line(which, language.say(isPast ? over : key, times().day(day), thawedOn), isPast);
  }

  private String thawed(int days) {
    String best = category.daysAreQuality() ? ".best" : "";
    return switch (days) {
      case 0 -> language.say("keep.thawed.none");
      case 1 -> language.say("keep.thawed.one" + best);
      default -> language.say("keep.thawed" + best, days);
    };
  }

  /** The categories, a line each. */
  public static String categories(KeepingList list) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format("%-34s %-12s %-14s %s", "category", "fridge days", "freezer months", "food"));
    for (Category category : list.categories()) {
      lines.add(
          String.format(
              "%-34s %-12s %-14s %s",
              category.key(),
              range(category.fridge()),
              range(category.freezer()),
              category.title()));
    }
    lines.add(
        "Fridge days are a home chart's; a food business counts its own date mark (7 days in the"
            + " Food Code).");
    return String.join(System.lineSeparator(), lines);
  }

  private static String range(Category.Range range) {
    OptionalInt min = range.min();
    OptionalInt max = range.max();
    if (max.isEmpty()) {
      return "-";
    }
    boolean isOne = min.isEmpty() || min.getAsInt() == max.getAsInt();
    return isOne ? String.valueOf(max.getAsInt()) : min.getAsInt() + "-" + max.getAsInt();
  }
}
