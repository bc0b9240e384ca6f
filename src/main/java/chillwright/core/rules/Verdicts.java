package chillwright.core.rules;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * How the verdict of a lot, the worst of its findings, changes by itself while no new entry comes:
 * a few moments tell it at any time. All are empty for a lot without findings.
 *
 * @param worst the worst verdict once every finding has settled
 * @param settledAt when the last finding settles
 * @param outFrom when the first finding settles {@code out}
 * @param notShownFrom when the first finding settles {@code not-shown}
 */
public record Verdicts(
    Optional<Verdict> worst,
    Optional<Instant> settledAt,
    Optional<Instant> outFrom,
    Optional<Instant> notShownFrom) {
  /** Of a lot without findings. */
  public static final Verdicts NONE =
      new Verdicts(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  public Verdicts {
    Objects.requireNonNull(worst, "worst");
    if (worst.isPresent() != settledAt.isPresent()) {
      throw new IllegalArgumentException("a verdict needs the moment it settles, and no other");
    }
  }

  public static Verdicts of(List<Finding> findings) {
    return new Verdicts(
        findings.stream().map(Finding::settled).min(Comparator.naturalOrder()),
        findings.stream().map(Finding::settlesAt).max(Comparator.naturalOrder()),
        first(findings, finding -> finding.settled() == Verdict.OUT),
        first(findings, finding -> finding.settled() == Verdict.NOT_SHOWN));
  }

  private static Optional<Instant> first(List<Finding> findings, Predicate<Finding> wanted) {
    return findings.stream().filter(wanted).map(Finding::settlesAt).min(Comparator.naturalOrder());
  }

  /** The verdict of the lot at a moment; empty for a lot without findings. */
  public Optional<Verdict> at(Instant now) {
    if (isReached(outFrom, now)) {
      return Optional.of(Verdict.OUT);
    }
    if (isReached(notShownFrom, now)) {
      return Optional.of(Verdict.NOT_SHOWN);
    }
    return settledAt.isEmpty() || isReached(settledAt, now) ? worst : Optional.of(Verdict.PENDING);
  }

  private static boolean isReached(Optional<Instant> moment, Instant now) {
    return moment.isPresent() && !now.isBefore(moment.get());
  }
}
