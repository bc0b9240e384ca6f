package chillwright.paper;

import chillwright.core.forecast.Forecast;
import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.keeping.RoomLife;
import chillwright.core.log.Category;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.DayCounting;
import chillwright.core.rules.DayCounting.Days;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Verdict;
import chillwright.paper.Label.Extra;
import chillwright.paper.LabelText.Inside;
import chillwright.print.Language;
import chillwright.print.Times;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What stands on the label of a lot. A chilled lot has a day after which it is discarded; a frozen
 * one has none, only a day of quality and the days it will have once it thaws, so nothing on its
 * label reads like a last day. What must not be used says that before anything else.
 */
public final class LabelMaker {
  private final Words words;
  private final ZoneId zone;
  private final Instant now;
  private final Scale scale;

  /** What was found of a lot that has entries. */
  public record Judged(
      Timeline timeline, RuleSet rules, List<Finding> findings, List<Forecast> forecasts) {
    public Judged {
      findings = List.copyOf(findings);
      forecasts = List.copyOf(forecasts);
    }
  }

  /**
   * @param now the moment of printing
   * @param scale in which temperatures are told
   */
  public LabelMaker(Words words, ZoneId zone, Instant now, Scale scale) {
    this.words = words;
    this.zone = zone;
    this.now = now;
    this.scale = scale;
  }

  /**
   * The label of a lot.
   *
   * @param judged empty for a lot without entries
   * @param address of the lot's page, as a phone reaches it
   * @param inside what of the lot is in the container that bears it
   */
  public Label of(
      LotState lot, Optional<Judged> judged, String address, LabelText text, Inside inside) {
    List<String> governs =
        judged
            .flatMap(
                found ->
                    lot.standing().map(standing -> governs(lot, standing, found, text, inside)))
            .orElse(List.of(words.say("label.nothing-logged")));
    List<String> facts = new ArrayList<>();
    facts.add(words.say("label.lot", lot.lot()));
    judged.ifPresent(found -> facts.addAll(dates(lot, found, inside)));
    judged.flatMap(found -> posted(lot, found, text, inside)).ifPresent(facts::add);
    inside.net().map(LabelMaker::oneLine).ifPresent(facts::add);
    return new Label(
        lot.food(),
        inside.leaves() ? "" : address,
        governs,
        allergens(text),
        facts,
        extras(lot, judged, text, inside),
        text.statement().map(LabelMaker::oneLine).orElse(""),
        new Label.Terms(
            inside.leaves() ? "" : words.say("label.notes"),
            words.say("label.boxes", lot.lot()),
            words.say("label.what.name"),
            words.say("label.what.code"),
            words.say("label.what.legible")));
  }

  private List<Extra> extras(LotState lot, Optional<Judged> judged, LabelText text, Inside inside) {
    List<Extra> extras = new ArrayList<>();
    judged
        .filter(found -> !inside.leaves() && mayBeUsed(lot, found))
        .flatMap(found -> cooling().forecast(found))
        .map(line -> extra("label.what.forecast", line))
        .ifPresent(extras::add);
    text.kitchen().map(name -> extra("label.what.kitchen", oneLine(name))).ifPresent(extras::add);
    portions(lot, inside).map(line -> extra("label.what.portions", line)).ifPresent(extras::add);
    judged
        .flatMap(found -> reheat(lot, found))
        .map(line -> extra("label.what.reheat", line))
        .ifPresent(extras::add);
    if (!text.ingredients().isEmpty()) {
      String all = String.join(", ", text.ingredients());
      extras.add(extra("label.what.ingredients", words.say("label.ingredients", all)));
    }
    judged.ifPresent(found -> extras.addAll(handling(lot, found, text.handling())));
    if (!inside.leaves()) {
      extras.addAll(whereabouts(lot, text.handling()));
    }
    return extras;
  }

  private Extra extra(String name, String text) {
    return new Extra(words.say(name), text);
  }

  /** Never those of the whole lot where it fills more than one container. */
  private Optional<String> portions(LotState lot, Inside inside) {
    OptionalInt left = lot.portions().left();
    if (inside.portions().isPresent()) {
      return Optional.of(words.say("label.portions-inside", inside.portions().getAsInt()));
    }
    return inside.isWhole() && left.isPresent()
        ? Optional.of(words.say("label.portions", left.getAsInt()))
        : Optional.empty();
  }

  /**
   * What is not known stands first. A label that said nothing of allergens would read like food
   * without any, where somebody may only have forgotten to tick one.
   */
  private String allergens(LabelText text) {
    if (text.gap().isEmpty() && text.allergens().isEmpty()) {
      return words.say("label.allergens-none");
    }
    String contains =
        text.allergens().isEmpty()
            ? ""
            : words.say("label.contains", String.join(", ", text.allergens()));
    return Stream.of(text.gap(), contains)
        .filter(line -> !line.isEmpty())
        .collect(Collectors.joining(" "));
  }

  private List<String> governs(
      LotState lot, Standing standing, Judged judged, LabelText text, Inside inside) {
    if (!lot.isOnHand()) {
      boolean isDiscarded = standing.phase() == Phase.DISCARDED;
      return List.of(words.say(isDiscarded ? "label.was-discarded" : "label.was-served"));
    }
    Category category = judged.timeline().food().category();
    Optional<String> over = over(standing.keeping(), category);
    if (over.isPresent()) {
      return List.of(over.get());
    }
    Optional<String> owed = owed(judged);
    if (owed.isPresent()) {
      // A date beside it would be read as leave to use the food until then.
      return List.of(owed.get());
    }
    Optional<String> unfit = unfit(judged);
    if (unfit.isPresent()) {
      return List.of(unfit.get());
    }
    List<String> lines = new ArrayList<>(cooling().limits(judged));
    lines.addAll(keeps(standing, judged, room(text), inside));
    return lines.isEmpty() ? List.of(words.say(noDate(standing))) : lines;
  }

  private List<String> keeps(
      Standing standing, Judged judged, KeepingLines.Room room, Inside inside) {
    if (RoomLife.over(judged.timeline(), room.days()).isPresent()) {
      return keeping(inside).over(standing.keeping(), judged);
    }
    if (standing.phase() != Phase.FROZEN) {
      return keeping(inside).chilled(standing.keeping(), judged, room);
    }
    boolean isByRoom = isByRoom(judged, room.days());
    if (isByRoom && RoomLife.begins(judged.timeline()).isPresent()) {
      // Found soft in its freezer: what that adds has ended.
      return keeping(inside).chilled(standing.keeping().outOfFreezer(), judged, room);
    }
    return inside.leaves()
        ? keeping(inside).leavesFrozen(standing.keeping(), judged, room, inside.posted())
        : keeping(inside).frozen(standing.keeping(), judged, room);
  }

  private static boolean isByRoom(Judged judged, OptionalInt days) {
    return !judged.timeline().food().category().tcs() && days.isPresent();
  }

  private static String noDate(Standing standing) {
    Keeping keeping = standing.keeping();
    boolean hasLeftFreezer = !keeping.equals(keeping.outOfFreezer());
    return hasLeftFreezer ? "label.no-date-outside" : "label.no-date";
  }

  private KeepingLines.Room room(LabelText text) {
    String by =
        text.kitchen()
            .map(name -> words.say("label.figure-of", oneLine(name)))
            .orElseGet(() -> words.say("label.figure-of-kitchen"));
    return new KeepingLines.Room(text.handling().roomDays(), by);
  }

  /** That it must be discarded because a day or a time has passed; empty where none has. */
  private Optional<String> over(Keeping keeping, Category category) {
    if (keeping.lastDayMissed().isPresent()) {
      return keeping.lastDayMissed().map(day -> words.say("label.discard-missed", day(day)));
    }
    if (keeping.discardAt().filter(now::isAfter).isPresent()) {
      return keeping.discardAt().map(at -> words.say("label.discard-time", time(at)));
    }
    return KeepingLines.lastDay(keeping)
        .filter(day -> !category.daysAreQuality())
        .filter(day -> LocalDate.ofInstant(now, zone).isAfter(day))
        .map(day -> words.say("label.discard-passed", day(day)));
  }

  /** A limit was missed, or is not shown, and nobody wrote down what was done about it. */
  private Optional<String> owed(Judged judged) {
    Optional<Finding> owed = Acts.owed(judged.timeline(), judged.findings(), now);
    return owed.map(
        finding -> {
          List<Rule.Action> offered = finding.offered(now);
          boolean isLost =
              finding.at(now) == Verdict.OUT
                  && offered.size() == 1
                  && offered.get(0).says().startsWith("discard");
          if (isLost) {
            return words.say("label.discard-limit");
          }
          String first =
              offered.stream()
                  .findFirst()
                  .map(act -> language().saidByRules(act.says()))
                  .orElse("");
          return first.isEmpty()
              ? words.say("label.hold")
              : words.say("label.hold") + " " + words.say("label.strictest", first);
        });
  }

  /** A limit was missed, or is not shown, and only words were written down about it. */
  private Optional<String> unfit(Judged judged) {
    return judged.findings().stream()
        .filter(one -> Acts.isUnfit(one, judged.timeline(), judged.rules(), now))
        .map(one -> one.at(now))
        .min(Comparator.naturalOrder())
        .map(worst -> words.say(worst == Verdict.OUT ? "label.missed" : "label.not-shown"));
  }

  private CoolingLines cooling() {
    return new CoolingLines(words, times(), now, scale);
  }

  private Language language() {
    return Language.ofTag(words.locale().toLanguageTag()).orElse(Language.ENGLISH);
  }

  /** By the day that its reader has it from. */
  private KeepingLines keeping(Inside inside) {
    LocalDate today = LocalDate.ofInstant(now, zone);
    return new KeepingLines(words, times(), inside.posted().orElse(today));
  }

  private static Optional<Days> days(Judged judged) {
    return DayCounting.any(judged.timeline(), judged.rules());
  }

  /** When it was posted, or room to write that where its days count from then. */
  private Optional<String> posted(LotState lot, Judged judged, LabelText text, Inside inside) {
    boolean counts = isFrozen(lot) && isByRoom(judged, text.handling().roomDays());
    return inside
        .posted()
        .map(this::day)
        .or(() -> Optional.of(KeepingLines.BLANK).filter(blank -> inside.leaves() && counts))
        .map(when -> words.say("label.posted", when));
  }

  private static boolean isFrozen(LotState lot) {
    return lot.standing().filter(standing -> standing.phase() == Phase.FROZEN).isPresent();
  }

  /** When it was made, frozen and thawed; when we froze it is no matter of a buyer's. */
  private List<String> dates(LotState lot, Judged judged, Inside inside) {
    List<String> dates = new ArrayList<>();
    Timeline timeline = judged.timeline();
    LogEntry first = days(judged).map(Days::dayOneRow).orElse(timeline.entries().get(0));
    dates.add(dated(begun(first.word()), first, timeline));
    timeline.entries().stream()
        .filter(entry -> !inside.leaves() && entry.word() == Word.FROZEN)
        .findFirst()
        .ifPresent(entry -> dates.add(dated("label.frozen", entry, timeline)));
    timeline.entries().stream()
        .filter(entry -> !isFrozen(lot) && entry.word() == Word.THAWING)
        .reduce((before, last) -> last)
        .ifPresent(entry -> dates.add(dated("label.thawed", entry, timeline)));
    return dates;
  }

  private static String begun(Word word) {
    return switch (word) {
      case COOKED, PREPARED -> "label.made";
      case OPENED -> "label.opened";
      case RECEIVED -> "label.received";
      default -> "label.first-row";
    };
  }

  private String dated(String key, LogEntry entry, Timeline timeline) {
    return words.say(key, day(timeline.day(entry.happenedAt())));
  }

  /** A label has no room for lines of their own. */
  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ");
  }

  /** How to make it ready, unless it must not be used. */
  private List<Extra> handling(LotState lot, Judged judged, LabelText.Handling said) {
    List<Extra> lines = new ArrayList<>();
    if (mayBeUsed(lot, judged)) {
      said.reheating()
          .map(how -> extra("label.what.reheating", oneLine(how)))
          .ifPresent(lines::add);
      said.thawing()
          .filter(how -> isFrozen(lot))
          .map(how -> extra("label.what.thawing", words.say("label.thawing", oneLine(how))))
          .ifPresent(lines::add);
    }
    return lines;
  }

  /** Where it stands, or else where such food usually goes, and what it is in. */
  private List<Extra> whereabouts(LotState lot, LabelText.Handling said) {
    List<Extra> lines = new ArrayList<>();
    lot.standing()
        .flatMap(Standing::place)
        .map(place -> words.say("label.place", place))
        .or(() -> said.place().map(place -> words.say("label.usual-place", place)))
        .filter(line -> lot.isOnHand())
        .map(line -> extra("label.what.place", line))
        .ifPresent(lines::add);
    said.container()
        .map(in -> extra("label.what.container", words.say("label.container", in)))
        .ifPresent(lines::add);
    return lines;
  }

  private boolean mayBeUsed(LotState lot, Judged judged) {
    Category category = judged.timeline().food().category();
    return lot.isOnHand()
        && owed(judged).isEmpty()
        && unfit(judged).isEmpty()
        && lot.standing().flatMap(s -> over(s.keeping(), category)).isEmpty();
  }

  /** Only of cooked TCS food that may be used, and only with a figure that the rule set prints. */
  private Optional<String> reheat(LotState lot, Judged judged) {
    boolean wasCooked =
        mayBeUsed(lot, judged)
            && judged.timeline().food().category().tcs()
            && judged.timeline().entries().stream().anyMatch(entry -> entry.word() == Word.COOKED);
    return judged
        .rules()
        .rule(Occasion.REHEATING)
        .filter(rule -> wasCooked && rule.shape() instanceof Reach)
        .map(rule -> words.say("label.reheat", ((Reach) rule.shape()).to().text(scale)));
  }

  private String day(LocalDate day) {
    return times().day(day);
  }

  private String time(Instant moment) {
    return times().moment(moment);
  }

  /** With the year: a label may stay in a freezer for more than one. */
  private Times times() {
    return Times.kept(zone, Language.ofTag(words.locale().getLanguage()).orElse(Language.ENGLISH));
  }
}
