package chillwright.core.learning;

import chillwright.core.learning.CoolingRun.Outcome;
import chillwright.core.learning.CoolingRun.Stage;
import chillwright.core.log.Details;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Reads the coolings of a lot that are over out of its findings. */
public final class CoolingRuns {
  /** Rows that tell where food stands while it cools; a stove or an oven is before that. */
  private static final Set<Word> STANDS =
      EnumSet.of(Word.COOLING, Word.READING, Word.CHILLED, Word.MOVED);

  private final Timeline timeline;
  private final RuleSet rules;

  private CoolingRuns(Timeline timeline, RuleSet rules) {
    this.timeline = timeline;
    this.rules = rules;
  }

  /**
   * The coolings of a lot, in order of time. One that had ended before the lot was divided from
   * another is the other's, and is not told again.
   *
   * @param findings those of the lot
   * @param now a cooling of which a limit is still pending is left out
   */
  public static List<CoolingRun> of(
      Timeline timeline, RuleSet rules, List<Finding> findings, Instant now) {
    Map<Instant, List<Finding>> byStart =
        findings.stream()
            .filter(finding -> isCooling(finding.rule()))
            .filter(finding -> finding.lot().equals(timeline.lot()))
            .filter(finding -> !finding.has(Remark.FROM_SOURCE))
            .collect(Collectors.groupingBy(Finding::opensAt, TreeMap::new, Collectors.toList()));
    CoolingRuns runs = new CoolingRuns(timeline, rules);
    return byStart.values().stream()
        .filter(limits -> limits.stream().noneMatch(limit -> limit.at(now) == Verdict.PENDING))
        .filter(limits -> limits.stream().anyMatch(runs::isOwn))
        .map(runs::run)
        .toList();
  }

  /** The way of a cooling that runs since a moment, as far as it has gone. */
  public static CoolingMethod begun(Timeline timeline, RuleSet rules, Instant since) {
    List<LogEntry> rows =
        timeline.entries().stream().filter(row -> !row.happenedAt().isBefore(since)).toList();
    return new CoolingRuns(timeline, rules).method(rows, Instant.MAX);
  }

  /** Whether a rule is about cooling to a limit in time. */
  public static boolean isCooling(Rule rule) {
    return rule.occasions().stream().anyMatch(Occasion::isCooling)
        && rule.shape() instanceof Reach reach
        && reach.within().isPresent();
  }

  private boolean isOwn(Finding limit) {
    return limit.settlesAt().isAfter(timeline.beganAt()) || timeline.inherited().isEmpty();
  }

  private CoolingRun run(List<Finding> limits) {
    Outcome outcome = outcome(limits);
    Instant began = limits.get(0).opensAt();
    Instant end = end(limits, outcome);
    List<LogEntry> rows =
        timeline.entries().stream()
            .filter(row -> !row.happenedAt().isBefore(began) && !row.happenedAt().isAfter(end))
            .toList();
    return new CoolingRun(
        timeline.lot(),
        method(rows, end),
        began,
        outcome,
        limits.stream().map(CoolingRuns::stage).toList(),
        told(rows, Details::air));
  }

  private Outcome outcome(List<Finding> limits) {
    if (limits.stream().anyMatch(limit -> limit.settled() == Verdict.OUT)) {
      return Outcome.MISSED;
    }
    Set<Rule> judged = limits.stream().map(Finding::rule).collect(Collectors.toSet());
    boolean isWhole =
        limits.get(0).rule().occasions().stream()
            .filter(Occasion::isCooling)
            .anyMatch(occasion -> judged.containsAll(limitsOf(occasion)));
    return isWhole && limits.stream().allMatch(CoolingRuns::isMade)
        ? Outcome.MADE
        : Outcome.NOT_SHOWN;
  }

  private List<Rule> limitsOf(Occasion occasion) {
    return rules.rules(occasion).stream().filter(CoolingRuns::isCooling).toList();
  }

  private static boolean isMade(Finding limit) {
    return limit.settled() == Verdict.IN
        && limit.elapsed().longest().isPresent()
        && !limit.has(Remark.CLOSED_BY_REHEAT);
  }

  /** What was done after a limit was missed is no part of the way that missed it. */
  private static Instant end(List<Finding> limits, Outcome outcome) {
    Comparator<Instant> order = Comparator.naturalOrder();
    return outcome == Outcome.MISSED
        ? limits.stream()
            .filter(limit -> limit.settled() == Verdict.OUT)
            .map(Finding::settlesAt)
            .min(order)
            .orElseThrow()
        : limits.stream().map(Finding::settlesAt).max(order).orElseThrow();
  }

  private static Stage stage(Finding limit) {
    Optional<Duration> took =
        limit.has(Remark.CLOSED_BY_REHEAT) ? Optional.empty() : limit.elapsed().longest();
    return new Stage(limit.rule(), limit.settled() == Verdict.OUT, took);
  }

  private CoolingMethod method(List<LogEntry> rows, Instant end) {
    List<String> places = new ArrayList<>();
    List<LogEntry> before =
        rows.stream()
            .filter(row -> STANDS.contains(row.word()) && row.happenedAt().isBefore(end))
            .toList();
    for (String place : told(before, Details::place)) {
      if (places.isEmpty() || !places.get(places.size() - 1).equals(place)) {
        places.add(place);
      }
    }
    return new CoolingMethod(
        timeline.food().name(),
        last(told(rows, Details::container)),
        last(told(rows, Details::depth)),
        places);
  }

  private static <T> Optional<T> last(List<T> all) {
    return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
  }

  private static <T> List<T> told(List<LogEntry> rows, Function<Details, Optional<T>> cell) {
    return rows.stream().map(LogEntry::details).map(cell).flatMap(Optional::stream).toList();
  }
}
