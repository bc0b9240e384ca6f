package chillwright.core.rules;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.KeepingList;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.LotLog;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Food that cools by Newton's law, T(t) = Ta + (T0 - Ta) e^(-kt), crosses each limit at a moment
 * that can be worked out. Read at random moments, rounded away from no side, the record may be too
 * thin to tell, but it must never tell the wrong thing: a cooling that missed 16 Del. Admin. Code
 * 3-501.14(A) is never {@code in}, one that met it is never {@code out}.
 */
class CoolingSoundnessTest {
  private static final Instant START = Instant.parse("2026-03-02T12:00:00Z");
  private static final RuleSet RULES = rules();
  private static final KeepingList KEEPING = library().keepingList();
  private static final int RUNS = 200;

  static IntStream seeds() {
    return IntStream.range(0, 25);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void a_verdict_never_contradicts_the_food(int seed) {
    SplittableRandom random = new SplittableRandom(seed);
    for (int run = 0; run < RUNS; run++) {
      Pot pot = Pot.random(random);
      List<Finding> findings = Assessment.of(timeline(pot, random), RULES);
      check(findings, "cooling.cooked.first-stage", pot.hours(135, 70) <= 2, pot);
      check(findings, "cooling.cooked.total", pot.hours(135, 41) <= 6, pot);
    }
  }

  private static void check(List<Finding> findings, String rule, boolean met, Pot pot) {
    Verdict wrong = met ? Verdict.OUT : Verdict.IN;
    assertThat(findings)
        .filteredOn(finding -> finding.rule().id().equals(rule))
        .as("%s of %s, which %s it", rule, pot, met ? "met" : "missed")
        .allSatisfy(finding -> assertThat(finding.settled()).isNotEqualTo(wrong));
  }

  /** A pot in surroundings of {@code air} °F. */
  private record Pot(double from, double air, double perHour) {
    static Pot random(SplittableRandom random) {
      return new Pot(
          random.nextDouble(140, 205), random.nextDouble(20, 40), random.nextDouble(0.15, 1.6));
    }

    double at(double hours) {
      return air + (from - air) * Math.exp(-perHour * hours);
    }

    /** Hours from one temperature to another, by Newton's law of cooling. */
    double hours(double warm, double cold) {
      return Math.log((warm - air) / (cold - air)) / perHour;
    }
  }

  private static Timeline timeline(Pot pot, SplittableRandom random) {
    List<LogEntry> entries = new ArrayList<>();
    entries.add(entry(0, Word.COOKED, 0, random.nextBoolean() ? pot.from() : Double.NaN));
    double hours = 0;
    int readings = random.nextInt(1, 12);
    for (int i = 1; i <= readings; i++) {
      hours += random.nextDouble(0.05, 1.5);
      entries.add(entry(i, Word.READING, hours, pot.at(hours)));
    }
    return Timeline.of(
            new LotLog(new LotId("P"), entries, List.of()), KEEPING, ZoneOffset.UTC, Instant.MAX)
        .orElseThrow();
  }

  private static LogEntry entry(int number, Word word, double hours, double fahrenheit) {
    Instant when = START.plus(Duration.ofMillis(Math.round(hours * 3_600_000)));
    boolean isFirst = number == 0;
    Details details =
        new Details(
            isFirst ? Optional.of("Soup") : Optional.empty(),
            isFirst ? Optional.of("soup_or_stew") : Optional.empty(),
            Double.isNaN(fahrenheit) ? Optional.empty() : Optional.of(read(fahrenheit)),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    return new LogEntry(
        new EntryId("e" + number),
        word,
        when,
        when,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        details);
  }

  private static Temperature read(double fahrenheit) {
    return new Temperature((int) Math.round(fahrenheit * 100), Scale.FAHRENHEIT);
  }

  private static RuleSet rules() {
    return library().ruleBook("us-food-code-2022").orElseThrow().on(LocalDate.of(2026, 3, 2));
  }

  private static RuleLibrary library() {
    try {
      return RuleLibrary.load(Optional.empty());
    } catch (BrokenRules broken) {
      throw new IllegalStateException(broken);
    }
  }
}
