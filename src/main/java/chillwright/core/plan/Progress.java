package chillwright.core.plan;

import chillwright.core.keeping.Keeping;
import chillwright.core.rules.Rule;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * How far a dish has come, as its lot tells, or its lots.
 *
 * @param made when it was made, or its making began
 * @param frozen when it went into the freezer; empty where it has not
 * @param takenOut when it came out; empty where it has not
 * @param keeping until when the lot, and each of the parts it was divided into, keeps; none where
 *     that is not known
 * @param cools limits of cooling that it still waits for
 */
public record Progress(
    Instant made,
    Optional<Instant> frozen,
    Optional<Instant> takenOut,
    List<Keeping> keeping,
    List<Cools> cools) {
  /** A limit of cooling, and by when it must be shown. */
  public record Cools(Rule rule, Instant by) {}

  public Progress {
    keeping = List.copyOf(keeping);
    cools = List.copyOf(cools);
  }

  /** Of which no more is known. */
  public Progress(Instant made, Optional<Instant> frozen, Optional<Instant> takenOut) {
    this(made, frozen, takenOut, List.of(), List.of());
  }

  boolean isInFreezer() {
    return frozen.isPresent() && takenOut.isEmpty();
  }

  /**
   * Of a dish that became several lots: as far as the one that is least far along, with the days of
   * all. What {@link #keepsCold} is not waited for, since it needs no freezer.
   *
   * @param lots at least one
   * @param served the day on which it is eaten
   */
  public static Progress ofAll(List<Progress> lots, LocalDate served) {
    boolean isAnyFrozen = lots.stream().anyMatch(lot -> lot.frozen().isPresent());
    List<Progress> slow =
        lots.stream().filter(lot -> !isAnyFrozen || !lot.keepsCold(served)).toList();
    return new Progress(
        lots.stream().map(Progress::made).max(Comparator.naturalOrder()).orElseThrow(),
        last(slow, Progress::frozen),
        last(slow, Progress::takenOut),
        lots.stream().flatMap(lot -> lot.keeping().stream()).toList(),
        lots.stream().flatMap(lot -> lot.cools().stream()).toList());
  }

  /** When the last of them did it; empty until all have. */
  private static Optional<Instant> last(
      List<Progress> lots, Function<Progress, Optional<Instant>> did) {
    return lots.stream().allMatch(lot -> did.apply(lot).isPresent())
        ? lots.stream().flatMap(lot -> did.apply(lot).stream()).max(Comparator.naturalOrder())
        : Optional.empty();
  }

  /** Whether it was never frozen, and its days in the refrigerator last until a day. */
  public boolean keepsCold(LocalDate served) {
    return frozen.isEmpty()
        && !keeping.isEmpty()
        && keeping.stream()
            .allMatch(
                days ->
                    days.lastDayMissed().isEmpty()
                        && OwnDays.cold(days).filter(last -> !last.isBefore(served)).isPresent());
  }
}
