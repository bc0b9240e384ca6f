package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.service.LotView;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What of an entry can hardly be, such as a figure in the wrong scale or with a digit missing:
 * common practice, no source, and never more than a question.
 *
 * @param view the lot as it stands before the entry
 * @param readings of the food so far, in order of time
 */
record Doubts(LotView view, List<LogEntry> readings, Desk desk, Visitor visitor) {
  /** A reading so far from the one before, so soon after it, is asked about. */
  private static final double FAR_CELSIUS = 22;

  private static final Duration SOON = Duration.ofMinutes(30);

  /** From warm to cold within so long is asked about where nobody looked between. */
  private static final double WARM_CELSIUS = 21;

  private static final double COLD_CELSIUS = 5;
  private static final Duration LONG = Duration.ofHours(6);

  /** Food gets no warmer by so much that nobody heats. */
  private static final double RISE_CELSIUS = 10;

  /** Food is hot from here on: FDA Food Code 2022 3-501.16(A)(1). */
  private static final double HOT_CELSIUS = 57;

  /** No stove or oven heats food by so much in a minute: 60 °F. */
  private static final double HEATS_CELSIUS_A_MINUTE = 33.4;

  /** Hotter than food with water in it gets, salt and sugar counted. */
  private static final double HOTTEST_CELSIUS = 121;

  /** Food that reads colder is frozen: what it is made of freezes a little below 0 °C. */
  private static final double FROZEN_CELSIUS = -3;

  private static final Set<Phase> MAY_BE_FROZEN =
      EnumSet.of(Phase.RECEIVED, Phase.FROZEN, Phase.THAWING, Phase.REHEATING);
  private static final Set<Phase> COOLS = EnumSet.of(Phase.COOKED, Phase.COOLING, Phase.CHILLED);

  /** An entry of these words says itself that the food was heated. */
  private static final Set<Word> HEATS = EnumSet.of(Word.COOKED, Word.REHEATING);

  private static final Set<Phase> COLD =
      EnumSet.of(Phase.PREPARED, Phase.OPENED, Phase.CHILLED, Phase.FROZEN, Phase.THAWING);

  /** The questions, at most one of each kind; empty where nothing is odd. */
  List<Question> of(Row row) {
    Optional<Temperature> read = row.details().temperature();
    return Stream.of(
            read.flatMap(given -> figure(given, row)),
            read.flatMap(given -> warmAlready(given, row)),
            CookedDoubt.of(row, view.state().category(), desk, visitor),
            new PlaceDoubt(view.state(), desk, visitor).of(row),
            before(row.when()))
        .flatMap(Optional::stream)
        .toList();
  }

  /** What of the figure can hardly be. */
  private Optional<Question> figure(Temperature given, Row row) {
    return Optional.of(given)
        .filter(read -> !isHeated(read, row) && !isBetween(read, row))
        .flatMap(read -> inOtherScale(read, row))
        .or(() -> tooHot(given, visitor))
        .or(() -> FrozenDoubt.of(row, view, visitor))
        .or(() -> heatedUnlogged(given, row))
        .or(() -> heatedTooFast(given, row))
        .or(() -> FastDoubt.of(given, row, view, desk, visitor))
        .or(() -> farApart(given, row))
        .or(() -> tooCold(given, row));
  }

  /** What the food was when it was read: what is caught up late is of an earlier phase. */
  private boolean isIn(Set<Phase> phases, Row row) {
    return view.judged()
        .flatMap(
            judged ->
                judged.timeline().entries().stream()
                    .filter(entry -> !entry.happenedAt().isAfter(row.when()))
                    .flatMap(entry -> entry.word().phase().stream())
                    .reduce((earlier, later) -> later))
        .or(() -> view.state().standing().map(LotState.Standing::phase))
        .filter(phases::contains)
        .isPresent();
  }

  /** The reading before an entry, in the order of time and not of writing. */
  private Optional<LogEntry> before(Row row) {
    return readings.stream()
        .filter(read -> !read.happenedAt().isAfter(row.when()))
        .reduce((earlier, later) -> later);
  }

  /** Whether a figure that is entered late lies between its neighbours. */
  private boolean isBetween(Temperature given, Row row) {
    Optional<Temperature> later =
        readings.stream()
            .filter(read -> read.happenedAt().isAfter(row.when()))
            .findFirst()
            .flatMap(LogEntry::temperature);
    return before(row)
        .flatMap(LogEntry::temperature)
        .flatMap(first -> later.map(last -> isBetween(given, first, last)))
        .orElse(false);
  }

  private static boolean isBetween(Temperature given, Temperature one, Temperature other) {
    return one.isWarmerThan(other)
        ? !given.isWarmerThan(one) && !other.isWarmerThan(given)
        : !given.isWarmerThan(other) && !one.isWarmerThan(given);
  }

  /** Whether food got warmer while it was reheated or cooked: that is what heating does. */
  private boolean isHeated(Temperature given, Row row) {
    boolean isOnHeat = row.word() == Word.COOKED || isIn(EnumSet.of(Phase.REHEATING), row);
    return isOnHeat
        && before(row).flatMap(LogEntry::temperature).filter(given::isWarmerThan).isPresent();
  }

  /** A figure that would follow the one before it if it was of the other scale. */
  private Optional<Question> inOtherScale(Temperature given, Row row) {
    return before(row)
        .filter(
            last ->
                isOfOtherScale(
                    given,
                    last.temperature().orElseThrow().celsiusDegrees(),
                    Duration.between(last.happenedAt(), row.when())))
        .map(
            last -> {
              Scale other = given.scale() == Scale.CELSIUS ? Scale.FAHRENHEIT : Scale.CELSIUS;
              String meant = given.text().replace(given.scale().sign(), other.sign());
              String before = last.temperature().orElseThrow().text();
              String says = visitor.say("entry.doubt.scale", given.text(), before, meant);
              return Question.of("scale", given.text() + ":" + last.happenedAt(), says);
            });
  }

  /** Food that cools reads hot again, and nobody logged that it was reheated. */
  private Optional<Question> heatedUnlogged(Temperature given, Row row) {
    boolean isRead = !HEATS.contains(row.word()) && isIn(COOLS, row);
    return before(row)
        .filter(last -> isRead && !isBetween(given, row) && isHotAgain(given, last))
        .map(last -> after("heated", "entry.doubt.heated", given, last));
  }

  /** Food gets hot faster than anything but a microwave heats it. */
  private Optional<Question> heatedTooFast(Temperature given, Row row) {
    return before(row)
        .filter(last -> isHeated(given, row) && !isInMicrowave(row))
        .filter(last -> isTooFast(given, last, row))
        .map(last -> after("heats", "entry.doubt.heats", given, last));
  }

  private static boolean isTooFast(Temperature given, LogEntry last, Row row) {
    double rise = given.celsiusDegrees() - last.temperature().orElseThrow().celsiusDegrees();
    double minutes = Duration.between(last.happenedAt(), row.when()).toSeconds() / 60.0;
    return rise > HEATS_CELSIUS_A_MINUTE * Math.max(1, minutes);
  }

  private boolean isInMicrowave(Row row) {
    boolean isSo = row.details().how().filter(How.MICROWAVE::equals).isPresent();
    return isSo
        || view.entries().stream()
            .filter(entry -> entry.word() == Word.REHEATING)
            .filter(entry -> !entry.happenedAt().isAfter(row.when()))
            .reduce((earlier, later) -> later)
            .filter(entry -> entry.is(How.MICROWAVE))
            .isPresent();
  }

  private static boolean isHotAgain(Temperature given, LogEntry before) {
    double was = before.temperature().orElseThrow().celsiusDegrees();
    double is = given.celsiusDegrees();
    return was < HOT_CELSIUS && is >= HOT_CELSIUS && is > was + RISE_CELSIUS;
  }

  /** A reading far from the one before it, soon after it. */
  private Optional<Question> farApart(Temperature given, Row row) {
    return before(row)
        .filter(last -> !isHeated(given, row) && !isBetween(given, row))
        .filter(last -> Duration.between(last.happenedAt(), row.when()).compareTo(SOON) <= 0)
        .filter(
            last -> {
              double before = last.temperature().orElseThrow().celsiusDegrees();
              return Math.abs(given.celsiusDegrees() - before) > FAR_CELSIUS;
            })
        .map(last -> after("far", "entry.doubt", given, last));
  }

  /** A figure that hardly follows the reading before it. */
  private Question after(String asked, String key, Temperature given, LogEntry last) {
    String before = last.temperature().orElseThrow().text();
    String says = visitor.say(key, given.text(), before, desk.clock(last.happenedAt(), visitor));
    return Question.of(asked, given.text() + ":" + last.happenedAt(), says);
  }

  /**
   * Whether a figure hardly follows the one before it, but would if it were of the other scale:
   * from hot to cold with no look between, or warmer than it was.
   */
  private static boolean isOfOtherScale(Temperature given, double before, Duration since) {
    double degrees = given.celsiusDegrees();
    double figure = given.degrees(given.scale());
    double other = given.scale() == Scale.FAHRENHEIT ? figure : (figure - 32) / 1.8;
    boolean isAtOnceCold =
        before >= WARM_CELSIUS
            && degrees <= COLD_CELSIUS
            && other > degrees
            && other <= before
            && since.compareTo(LONG) <= 0;
    boolean isWarmer = degrees > before + RISE_CELSIUS && other <= before && other >= 0;
    return isAtOnceCold || isWarmer;
  }

  /** A figure that food does not reach, and what it is in °F, or with a point put into it. */
  static Optional<Question> tooHot(Temperature given, Visitor visitor) {
    if (given.celsiusDegrees() <= HOTTEST_CELSIUS) {
      return Optional.empty();
    }
    String asks = visitor.say("entry.doubt.hot", given.text());
    boolean isWhole = given.hundredths() % 100 == 0;
    Temperature pointed = new Temperature(given.hundredths() / 10, given.scale());
    String meant =
        Stream.concat(
                RoundDoubt.inOtherScale(given)
                    .filter(other -> other.celsiusDegrees() <= HOTTEST_CELSIUS),
                isWhole ? Stream.of(pointed) : Stream.empty())
            .map(each -> visitor.say("entry.doubt.point", each.text(visitor.scale())))
            .collect(Collectors.joining(" "));
    String says = meant.isEmpty() ? asks : meant + " " + asks;
    return Optional.of(Question.of("hot", given.text(), says));
  }

  private Optional<Question> tooCold(Temperature given, Row row) {
    boolean mayBeFrozen = row.word() == Word.FROZEN || isIn(MAY_BE_FROZEN, row);
    return !mayBeFrozen && given.celsiusDegrees() < FROZEN_CELSIUS
        ? Optional.of(visitor.say("entry.doubt.frozen", given.text()))
            .map(says -> Question.of("cold", given.text(), says))
        : Optional.empty();
  }

  /** Food that was cold and is warm at the first row of its reheat: when did its time begin? */
  private Optional<Question> warmAlready(Temperature given, Row row) {
    return row.word() == Word.REHEATING && isIn(COLD, row) && given.celsiusDegrees() > COLD_CELSIUS
        ? Optional.of(visitor.say("entry.doubt.reheating", given.text()))
            .map(says -> Question.of("warm-already", given.text(), says))
        : Optional.empty();
  }

  /** What is said to have happened to a part before it was one happened to all of its source. */
  private Optional<Question> before(Instant when) {
    String sources = view.sources().stream().map(LotId::text).collect(Collectors.joining(" "));
    return view.entries().stream()
        .map(LogEntry::happenedAt)
        .min(Comparator.naturalOrder())
        .filter(begun -> !sources.isEmpty() && when.isBefore(begun))
        .map(begun -> visitor.say("entry.doubt.before", desk.clock(begun, visitor), sources))
        .map(says -> Question.of("before", when, says));
  }
}
