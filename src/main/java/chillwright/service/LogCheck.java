package chillwright.service;

import chillwright.core.forecast.Forecast;
import chillwright.core.log.Admission;
import chillwright.core.log.Corrections;
import chillwright.core.log.Incoming;
import chillwright.core.log.Intake;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Problem;
import chillwright.core.log.Stored;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.service.Judge.Judged;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Checks a log that is not stored: every fault of it, and what the rules say of its faultless lots.
 *
 * @param now the moment of the check, after which no row may lie by more than five minutes
 */
public record LogCheck(Judge judge, Instant now) {

  /**
   * What came of a check: lots worst first, and all faults of the input.
   *
   * @param ofPlaces readings of places, corrections applied
   */
  public record Checked(
      Instant at, List<Judged> lots, List<LogEntry> ofPlaces, List<Problem> problems) {
    public Checked {
      lots = List.copyOf(lots);
      ofPlaces = List.copyOf(ofPlaces);
      problems = List.copyOf(problems);
    }

    /** Forecasts of one of the lots; what is around its food is what its place last read. */
    public List<Forecast> forecasts(Judged lot) {
      List<LogEntry> around = Stays.during(lot.timeline(), ofPlaces, at);
      return Forecasts.beside(lot.timeline(), lot.ruleSet(), around, at);
    }

    /** Whether any lot is out of compliance. */
    public boolean isAnyOut() {
      return lots.stream()
          .anyMatch(
              lot ->
                  Assessment.verdict(lot.findings(), at).filter(Verdict.OUT::equals).isPresent());
    }
  }

  /** Judges the rows as of a moment; rows after it are read for faults but left out. */
  public Checked check(List<? extends Incoming> rows, Instant at) {
    Admission admission =
        new Intake(Stored.NOTHING, judge.keepingList(), judge.zone(), now).admit(rows);
    List<Judged> lots =
        admission.lots().stream()
            .map(lot -> judge.judge(lot.log(), at))
            .flatMap(Optional::stream)
            .sorted(worstFirst(at))
            .toList();
    return new Checked(at, lots, Corrections.applied(admission.ofPlaces()), admission.problems());
  }

  /** Worst first; of equal verdicts the lot whose next limit passes first. */
  private static Comparator<Judged> worstFirst(Instant at) {
    return Comparator.<Judged, Integer>comparing(
            lot ->
                Assessment.verdict(lot.findings(), at)
                    .map(Verdict::ordinal)
                    .orElse(Verdict.values().length))
        .thenComparing(lot -> nextDeadline(lot, at))
        .thenComparing(lot -> lot.timeline().lot());
  }

  private static Instant nextDeadline(Judged lot, Instant at) {
    return lot.findings().stream()
        .filter(finding -> finding.at(at) == Verdict.PENDING)
        .map(Finding::settlesAt)
        .min(Comparator.naturalOrder())
        .orElse(Instant.MAX);
  }
}
