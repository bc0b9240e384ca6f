package chillwright.service;

import chillwright.core.learning.CoolingMethod;
import chillwright.core.learning.CoolingRun;
import chillwright.core.learning.CoolingRuns;
import chillwright.core.learning.Likewise;
import chillwright.core.learning.MethodRecord;
import chillwright.core.log.LotId;
import chillwright.core.rules.Finding;
import chillwright.core.rules.OpenCooling;
import chillwright.service.FoundFindings.Found;
import chillwright.storage.FindingRow;
import chillwright.storage.Session;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What the coolings in the kitchen's own log show of the ways it cools. */
public final class CoolingMethods {
  /** The period that is looked through where none is asked for: the last 12 weeks. Our own. */
  public static final Duration USUAL = Duration.ofDays(84);

  /** Findings looked at, the newest; two a cooling. It bounds what one look can cost. */
  private static final int MOST_FINDINGS = 4000;

  /** Of the newest coolings of one food, since it is asked at each look at a lot that cools. */
  private static final int MOST_ALIKE = 200;

  /** How many lots are read together. */
  private static final int TOGETHER = 200;

  private final Kitchen kitchen;

  CoolingMethods(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * What is asked.
   *
   * @param food only that one, however it is capitalized
   * @param from empty for {@link #USUAL} before the end
   * @param to empty for now
   */
  public record Asked(
      Optional<String> food,
      Optional<String> container,
      Optional<Instant> from,
      Optional<Instant> to) {
    /** All ways of the usual period. */
    public static final Asked ALL =
        new Asked(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  /**
   * What was found in the period, by food, container, depth and place.
   *
   * @param isCut whether only the newest coolings of the period were looked at
   */
  public record Shown(Instant from, Instant to, List<MethodRecord> methods, boolean isCut) {
    public Shown {
      methods = List.copyOf(methods);
    }
  }

  /** The ways of cooling whose coolings settled in a period. */
  public Shown find(Asked asked) {
    Instant now = kitchen.now();
    Instant to = asked.to().filter(now::isAfter).orElse(now);
    Instant from = asked.from().orElse(to.minus(USUAL));
    return kitchen
        .database()
        .read(
            session -> {
              List<LotId> found = session.findings().cooled(from, to, MOST_FINDINGS);
              List<LotId> lots = found.stream().distinct().toList();
              List<CoolingRun> runs =
                  runs(session, lots, now).stream()
                      .filter(run -> run.method().isOf(asked.food(), asked.container()))
                      .toList();
              return new Shown(from, to, MethodRecord.of(runs), found.size() == MOST_FINDINGS);
            });
  }

  /**
   * How coolings of the usual period went that began as the one that runs in a lot; empty where
   * none runs, or none began so.
   */
  public Optional<Likewise> like(LotView view) {
    return view.judged()
        .flatMap(
            judged ->
                OpenCooling.of(judged.timeline(), judged.ruleSet())
                    .map(
                        open ->
                            CoolingRuns.begun(judged.timeline(), judged.ruleSet(), open.since())))
        .flatMap(begun -> like(begun, view.state().lot()));
  }

  private Optional<Likewise> like(CoolingMethod begun, LotId running) {
    Instant now = kitchen.now();
    return kitchen
        .database()
        .read(
            session -> {
              List<LotId> lots =
                  session
                      .findings()
                      .cooled(begun.food(), now.minus(USUAL), now, MOST_ALIKE)
                      .stream()
                      .distinct()
                      .filter(lot -> !lot.equals(running))
                      .toList();
              return Likewise.of(begun, runs(session, lots, now));
            });
  }

  private List<CoolingRun> runs(Session session, List<LotId> lots, Instant now) {
    List<CoolingRun> runs = new ArrayList<>();
    for (int start = 0; start < lots.size(); start += TOGETHER) {
      List<LotId> some = lots.subList(start, Math.min(lots.size(), start + TOGETHER));
      FoundFindings found = FoundFindings.of(session, kitchen.judge(), some);
      Map<LotId, List<FindingRow>> rows = session.findings().of(some);
      for (LotId lot : some) {
        found
            .of(lot)
            .ifPresent(of -> runs.addAll(runs(of, rows.getOrDefault(lot, List.of()), now)));
      }
    }
    return runs;
  }

  private static List<CoolingRun> runs(Found lot, List<FindingRow> rows, Instant now) {
    List<Finding> findings = rows.stream().map(lot::finding).toList();
    return CoolingRuns.of(lot.timeline(), lot.ruleSet(), findings, now);
  }
}
