package chillwright.core.learning;

import chillwright.core.learning.CoolingRun.Outcome;
import chillwright.core.learning.CoolingRun.Stage;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Rule;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a log shows of one way of cooling.
 *
 * @param made coolings that reached every limit in time
 * @param missed coolings that missed one
 * @param notShown coolings of which the record shows neither; they count for nothing
 * @param stages one for each limit, in the order of the rule set
 * @param air the coldest and the warmest that was read around the food; empty where nobody read
 * @param lastBegan when the newest of them began
 */
public record MethodRecord(
    CoolingMethod method,
    int made,
    int missed,
    int notShown,
    List<StageRecord> stages,
    List<Temperature> air,
    Instant lastBegan) {
  /**
   * Coolings without a miss from which on a way is called shown. Common practice, no source: once
   * is luck, and twice is what a new thermometer or a half-full pan can do.
   */
  public static final int ENOUGH = 3;

  /** How a way stands by this log alone. */
  public enum Standing {
    /** It made its limits at least {@link #ENOUGH} times and never missed. */
    SHOWN("made-every-time"),
    /** It missed at least once. */
    MISSED("missed"),
    /** It never missed, and was not done often enough to say more. */
    TOO_FEW("too-few");

    private final String key;

    Standing(String key) {
      this.key = key;
    }

    /** As it stands in an answer. */
    public String key() {
      return key;
    }
  }

  /**
   * One limit over all coolings of a way.
   *
   * @param worstMargin time left in the worst of them, at the latest it can have been reached;
   *     negative where that was late; empty where no reading showed it
   * @param median of the longest it can have taken
   */
  public record StageRecord(
      Rule rule, int missed, Optional<Duration> worstMargin, Optional<Duration> median) {}

  public MethodRecord {
    stages = List.copyOf(stages);
    air = List.copyOf(air);
  }

  public Standing standing() {
    if (missed > 0) {
      return Standing.MISSED;
    }
    return made >= ENOUGH ? Standing.SHOWN : Standing.TOO_FEW;
  }

  /** How many coolings counted. */
  public int runs() {
    return made + missed;
  }

  /** One record for each way, by food, container, depth and places. */
  public static List<MethodRecord> of(List<CoolingRun> runs) {
    Map<CoolingMethod, List<CoolingRun>> byMethod = new LinkedHashMap<>();
    for (CoolingRun run : runs) {
      byMethod.computeIfAbsent(run.method().plain(), m -> new ArrayList<>()).add(run);
    }
    return byMethod.values().stream()
        .map(MethodRecord::together)
        .sorted(
            Comparator.comparing((MethodRecord record) -> record.method().plain().food())
                .thenComparing(record -> record.method().plain().container().orElse(""))
                .thenComparing(record -> record.method().depth().map(d -> d.metres()).orElse(0.0))
                .thenComparing(record -> String.join(" ", record.method().plain().places())))
        .toList();
  }

  private static MethodRecord together(List<CoolingRun> runs) {
    return new MethodRecord(
        runs.get(0).method(),
        count(runs, Outcome.MADE),
        count(runs, Outcome.MISSED),
        count(runs, Outcome.NOT_SHOWN),
        stages(runs),
        air(runs),
        runs.stream().map(CoolingRun::began).max(Comparator.naturalOrder()).orElseThrow());
  }

  private static int count(List<CoolingRun> runs, Outcome outcome) {
    return (int) runs.stream().filter(run -> run.outcome() == outcome).count();
  }

  /** Of the coolings that count, by the id of the rule: its figures may have changed since. */
  private static List<StageRecord> stages(List<CoolingRun> runs) {
    Map<String, List<Stage>> byRule = new LinkedHashMap<>();
    runs.stream()
        .filter(run -> run.outcome() != Outcome.NOT_SHOWN)
        .flatMap(run -> run.stages().stream())
        .forEach(
            stage -> byRule.computeIfAbsent(stage.rule().id(), r -> new ArrayList<>()).add(stage));
    return byRule.values().stream().map(MethodRecord::stage).toList();
  }

  private static StageRecord stage(List<Stage> stages) {
    List<Duration> took =
        stages.stream().map(Stage::took).flatMap(Optional::stream).sorted().toList();
    return new StageRecord(
        stages.get(stages.size() - 1).rule(),
        (int) stages.stream().filter(Stage::isMissed).count(),
        stages.stream().map(Stage::margin).flatMap(Optional::stream).min(Comparator.naturalOrder()),
        median(took));
  }

  private static Optional<Duration> median(List<Duration> sorted) {
    if (sorted.isEmpty()) {
      return Optional.empty();
    }
    int middle = sorted.size() / 2;
    return Optional.of(
        sorted.size() % 2 == 1
            ? sorted.get(middle)
            : sorted.get(middle - 1).plus(sorted.get(middle)).dividedBy(2));
  }

  private static List<Temperature> air(List<CoolingRun> runs) {
    List<Temperature> read =
        runs.stream()
            .flatMap(run -> run.air().stream())
            .sorted(Comparator.comparing(Temperature::celsiusDegrees))
            .toList();
    return read.isEmpty() ? List.of() : List.of(read.get(0), read.get(read.size() - 1));
  }
}
