package chillwright.print;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
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
 */
public record KeepText(Category category, Keeping keeping, ZoneId zone, Instant now) {

  /** A line about one date. */
  private record Line(Governs which, String text, boolean isPast) {}

  /** The whole answer, with the arithmetic, the figures' source and who decides. */
  public String answer(RuleSet rules, String defers) {
    List<String> lines = new ArrayList<>();
    lines.add(category.title() + " (" + category.key() + ")");
    lines.addAll(marked());
    if (category.freezes() == Category.Freezes.NO) {
      lines.add("  Does not freeze well; no freezer date is given.");
    } else if (category.freezes() == Category.Freezes.POORLY) {
      lines.add("  Freezes poorly: expect it to separate, crumble or go soft.");
    }
    refreezing(rules).ifPresent(advice -> lines.add("  " + advice));
    keeping.because().forEach(reason -> lines.add("    " + reason));
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
    refreezing(rules).ifPresent(says::add);
    return says;
  }

  /** The same without what a rule set says of freezing again. */
  public List<String> says() {
    return lines().stream().map(Line::text).toList();
  }

  /** The same without the dates of quality. */
  public List<String> saysOfSafety() {
    return lines().stream().filter(line -> !line.which().isQuality()).map(Line::text).toList();
  }

  private Optional<String> refreezing(RuleSet rules) {
    boolean wasFrozen = keeping.bestQualityBy().isPresent() || keeping.qualityLimit().isPresent();
    boolean isOver = lines().stream().anyMatch(line -> line.isPast() && !line.which().isQuality());
    return wasFrozen && !isOver ? Refreezing.advice(rules) : Optional.empty();
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
    List<Line> lines = new ArrayList<>();
    if (keeping.lastDayMissed().isPresent()) {
      String day = keeping.lastDayMissed().get().toString();
      String text = "Its last day, " + day + ", had passed before it was frozen: discard";
      return List.of(new Line(Governs.LAST_DAY_MISSED, text, true));
    }
    keeping.discardAt().ifPresent(at -> lines.add(discardAt(at)));
    keeping
        .dateMarkLastDay()
        .ifPresent(
            day ->
                lines.add(
                    lastDay(Governs.DATE_MARK_LAST_DAY, "Use or discard by the end of ", day)));
    keeping
        .chilledLastDay()
        .ifPresent(
            day ->
                lines.add(
                    lastDay(
                        Governs.CHILLED_LAST_DAY, "In the refrigerator until the end of ", day)));
    keeping
        .bestQualityBy()
        .ifPresent(
            day -> lines.add(quality(Governs.BEST_QUALITY_BY, "best quality by " + day, day)));
    keeping
        .qualityLimit()
        .ifPresent(
            day ->
                lines.add(
                    quality(
                        Governs.QUALITY_LIMIT,
                        "quality fades after " + day + "; that is no safety limit",
                        day)));
    keeping
        .daysLeftWhenThawed()
        .ifPresent(days -> lines.add(new Line(Governs.DAYS_LEFT_WHEN_THAWED, thawed(days), false)));
    return lines;
  }

  private Line discardAt(Instant at) {
    String time = Figures.time(at, zone, Instant.EPOCH);
    return now.isAfter(at)
        ? new Line(Governs.DISCARD_AT, "Its time was up at " + time + ": discard", true)
        : new Line(Governs.DISCARD_AT, "Serve or discard by " + time, false);
  }

  private Line lastDay(Governs which, String until, LocalDate day) {
    if (!isPast(day)) {
      return new Line(which, until + day, false);
    }
    return new Line(
        which,
        category.daysAreQuality()
            ? "In the refrigerator: past " + day + ": quality only, not safety"
            : "Its last day passed on " + day + ": discard",
        true);
  }

  private Line quality(Governs which, String text, LocalDate day) {
    return isPast(day)
        ? new Line(
            which,
            "Frozen: past its "
                + (which == Governs.BEST_QUALITY_BY ? "best" : "quality limit")
                + " on "
                + day
                + ": quality only, not safety while it stayed frozen",
            true)
        : new Line(which, "Frozen: " + text, false);
  }

  private boolean isPast(LocalDate day) {
    return LocalDate.ofInstant(now, zone).isAfter(day);
  }

  private static String thawed(int days) {
    return days == 0
        ? "Once thawed: no days left, use at once"
        : "Once thawed: use within "
            + days
            + (days == 1 ? " day" : " days")
            + ", the thawing day included";
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
