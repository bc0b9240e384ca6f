package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.Shape.DayCount;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * The day count of a lot: local calendar days from the day it was made (or a bought pack opened),
 * stopped while it is frozen and never begun again. Food made of other lots keeps the fewest days
 * left among them.
 */
public final class DayCounting {
  /**
   * What the count stands at after the last entry.
   *
   * @param dayOneRow the row whose local day begins the count
   * @param allowed days in all, already shortened by sources and by a maker's date
   * @param used days used up to the last freezing
   * @param since the day of that freezing, or of the thawing (or making) that began this stretch
   * @param lastDay last day of this stretch, or the one that was missed; while frozen with days
   *     left it means nothing
   * @param missed the last day that had passed before the food was frozen: no thawing gives it
   *     another
   */
  public record Days(
      LogEntry dayOneRow,
      LocalDate dayOne,
      boolean firstDayCounts,
      int allowed,
      int used,
      boolean isFrozen,
      boolean wasThawed,
      LocalDate since,
      LocalDate lastDay,
      Optional<LocalDate> missed,
      Optional<LogEntry> lateFreezing,
      List<SourceDays> sources,
      Optional<LocalDate> makersDate) {
    /** Days left: to use while it is not frozen, or once thawed. Never negative. */
    public int left() {
      return Math.max(0, allowed - used);
    }

    /** Whether the row that begins the count tells when the food was made or its pack opened. */
    public boolean isDayOneShown() {
      return MAKING.contains(dayOneRow.word());
    }
  }

  /** What a source brought along: its last day had it been used (and thawed) on that day. */
  public record SourceDays(LotId lot, LocalDate lastDay) {}

  private static final Set<Word> MAKING = EnumSet.of(Word.COOKED, Word.PREPARED, Word.OPENED);

  /** More days than any kitchen counts. */
  private static final int NO_DAYS_OF_ITS_OWN = 36_500;

  private final DayCount count;
  private final RuleSet.Settings settings;

  private LocalDate since;
  private LocalDate lastCounted;
  private int used;
  private int allowed;
  private boolean isFrozen;
  private boolean wasThawed;
  private Optional<LocalDate> missed = Optional.empty();
  private Optional<LogEntry> lateFreezing = Optional.empty();

  private DayCounting(DayCount count, RuleSet.Settings settings) {
    this.count = count;
    this.settings = settings;
  }

  /** The count of a lot under a set's day-count rule; empty where none bears on it. */
  public static Optional<Days> of(Timeline timeline, RuleSet rules) {
    return timeline.food().category().isDateMarked() ? any(timeline, rules) : Optional.empty();
  }

  /** The same for food that no date mark judges, whose days tell its quality only. */
  public static Optional<Days> any(Timeline timeline, RuleSet rules) {
    Optional<Rule> rule = rules.rule(Occasion.DATE_MARK);
    if (rule.isEmpty()) {
      return Optional.empty();
    }
    DayCount count = (DayCount) rule.get().shape();
    OptionalInt days =
        count.days().isPresent() ? count.days() : timeline.food().category().fridge().max();
    Optional<LogEntry> dayOne = dayOneRow(timeline);
    if (days.isEmpty() || dayOne.isEmpty()) {
      return Optional.empty();
    }
    DayCounting counting = new DayCounting(count, rules.settings());
    return Optional.of(counting.count(timeline, rules, dayOne.get(), days.getAsInt()));
  }

  /** Day 1 is the first making or opening; a bought pack has none until it is opened. */
  private static Optional<LogEntry> dayOneRow(Timeline timeline) {
    List<LogEntry> entries = timeline.entries();
    Optional<LogEntry> made =
        entries.stream().filter(entry -> MAKING.contains(entry.word())).findFirst();
    boolean isBought = entries.stream().anyMatch(entry -> entry.word() == Word.RECEIVED);
    return made.isPresent() || isBought ? made : Optional.of(entries.get(0));
  }

  private Days count(Timeline timeline, RuleSet rules, LogEntry first, int days) {
    LocalDate dayOne = timeline.day(first.happenedAt());
    Optional<LocalDate> makers =
        timeline.entries().stream()
            .filter(row -> row.word() == Word.OPENED || row.word() == Word.RECEIVED)
            .filter(row -> first.word() == Word.OPENED)
            .flatMap(row -> row.details().until().stream())
            .map(mark -> mark.day(timeline.zone()))
            .min(Comparator.naturalOrder());
    List<SourceDays> sources = sourceDays(timeline, rules, dayOne);
    since = dayOne;
    allowed = days;
    lastCounted = count.firstDayCounts() ? dayOne.minusDays(1) : dayOne;
    makers.ifPresent(this::noLaterThan);
    sources.forEach(source -> noLaterThan(source.lastDay()));
    for (LogEntry entry : frozenAndThawed(timeline, first)) {
      step(timeline.day(entry.happenedAt()), dayOne, entry);
    }
    return new Days(
        first,
        dayOne,
        count.firstDayCounts(),
        allowed,
        used,
        isFrozen,
        wasThawed,
        since,
        missed.orElseGet(this::lastDay),
        missed,
        lateFreezing,
        sources,
        makers);
  }

  private void noLaterThan(LocalDate last) {
    int upTo = (int) ChronoUnit.DAYS.between(firstNew(), last) + 1;
    allowed = Math.min(allowed, upTo);
  }

  private static List<SourceDays> sourceDays(Timeline timeline, RuleSet rules, LocalDate usedOn) {
    List<SourceDays> found = new ArrayList<>();
    for (Timeline source : timeline.sources()) {
      DayCounting.of(source, rules)
          .map(days -> new SourceDays(source.lot(), lastDayIfUsed(days, rules, usedOn)))
          .or(() -> throughUndated(source, rules, usedOn))
          .ifPresent(found::add);
    }
    return found;
  }

  /** Food without days of its own hands on the fewest days left among what it was made of. */
  private static Optional<SourceDays> throughUndated(
      Timeline source, RuleSet rules, LocalDate usedOn) {
    Optional<Rule> rule = rules.rule(Occasion.DATE_MARK).filter(r -> !source.sources().isEmpty());
    if (rule.isEmpty()) {
      return Optional.empty();
    }
    LogEntry first = dayOneRow(source).orElse(source.entries().get(0));
    Days days =
        new DayCounting((DayCount) rule.get().shape(), rules.settings())
            .count(source, rules, first, NO_DAYS_OF_ITS_OWN);
    return days.sources().stream()
        .min(Comparator.comparing(SourceDays::lastDay))
        .map(least -> new SourceDays(least.lot(), lastDayIfUsed(days, rules, usedOn)));
  }

  /** A frozen source thaws on the day it is used. */
  private static LocalDate lastDayIfUsed(Days days, RuleSet rules, LocalDate usedOn) {
    if (!days.isFrozen() || days.missed().isPresent()) {
      return days.lastDay();
    }
    LocalDate thawed = usedOn.isBefore(days.since()) ? days.since() : usedOn;
    boolean dayCounts =
        rules.settings().thawingDayCounts()
            && !(rules.settings().freezingDayCounts() && thawed.equals(days.since()));
    return days.left() == 0 ? thawed : thawed.plusDays(dayCounts ? days.left() - 1 : days.left());
  }

  /** Whether the food is frozen after its last entry, as far as the record shows. */
  public static boolean isFrozen(Timeline timeline) {
    return frozenAndThawed(timeline, timeline.entries().get(0)).size() % 2 == 1;
  }

  /** The rows at which the food came to be frozen or was first shown to thaw, in turn. */
  private static List<LogEntry> frozenAndThawed(Timeline timeline, LogEntry first) {
    List<LogEntry> turns = new ArrayList<>();
    boolean isFrozen = false;
    boolean isProven = false;
    LocalDate came = LocalDate.MAX;
    Optional<Phase> phase = Optional.empty();
    for (LogEntry entry : timeline.entries()) {
      Optional<Phase> next = entry.word().phase();
      boolean opens =
          next.isPresent() && next.get() != Phase.SERVED && next.get() != Phase.DISCARDED;
      phase = opens ? next : phase;
      boolean inFreezer = phase.filter(Phase.FROZEN::equals).isPresent();
      isProven = inFreezer && (isProven || FrozenJudge.provesFrozen(entry));
      boolean freezes =
          inFreezer && (entry.word() == Word.FROZEN || FrozenJudge.provesFrozen(entry));
      boolean isLaterDay = isFrozen && timeline.day(entry.happenedAt()).isAfter(came);
      boolean thaws = !inFreezer || ((isProven || isLaterDay) && FrozenJudge.provesThawed(entry));
      if (entry.happenedAt().isBefore(first.happenedAt())) {
        continue;
      }
      if ((!isFrozen && freezes && !thaws) || (isFrozen && thaws)) {
        isFrozen = !isFrozen;
        came = timeline.day(entry.happenedAt());
        turns.add(entry);
      }
    }
    return turns;
  }

  private void step(LocalDate day, LocalDate dayOne, LogEntry entry) {
    if (isFrozen) {
      isFrozen = false;
      wasThawed = true;
      since = day;
      return;
    }
    LocalDate last = lastDay();
    if (day.isAfter(last) && missed.isEmpty()) {
      missed = Optional.of(last);
      lateFreezing = Optional.of(entry);
    }
    boolean dayCounts =
        settings.freezingDayCounts() || (day.equals(dayOne) && count.firstDayCounts());
    LocalDate lastUsed = dayCounts ? day : day.minusDays(1);
    LocalDate from = firstNew();
    if (!lastUsed.isBefore(from)) {
      used += (int) ChronoUnit.DAYS.between(from, lastUsed) + 1;
      lastCounted = lastUsed;
    }
    isFrozen = true;
    since = day;
  }

  /** The first day of this stretch that counts as a further used day. */
  private LocalDate firstNew() {
    LocalDate start = !wasThawed || settings.thawingDayCounts() ? since : since.plusDays(1);
    return start.isAfter(lastCounted) ? start : lastCounted.plusDays(1);
  }

  /** Last day of the current stretch; with no days left, the day of thawing itself. */
  private LocalDate lastDay() {
    int left = allowed - used;
    return wasThawed && left <= 0 ? since : firstNew().plusDays(left - 1L);
  }
}
