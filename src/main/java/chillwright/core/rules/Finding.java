package chillwright.core.rules;

import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Elapsed;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What one rule says of one lot. Pending until {@code settlesAt}, then one verdict for good: while
 * no new entry comes, a finding changes at most once by itself, so no clock is needed to make it.
 *
 * @param lot whose record was judged: the lot itself, or the source it came from
 * @param opensAt when the rule began to bear on the lot
 * @param settlesAt first millisecond at which {@code settled} holds
 * @param settled the verdict from then on; never {@link Verdict#PENDING}
 * @param deadline last moment that still complies, where there is one
 * @param elapsed bounds of the time judged; for holding, {@code longest} is the longest gap between
 *     looks, or where it is out, the time since the last good reading
 * @param decisive the entry that decided, where one did
 * @param evidence entries the finding rests on, in order of time
 */
public record Finding(
    Rule rule,
    LotId lot,
    Instant opensAt,
    Instant settlesAt,
    Verdict settled,
    Optional<Instant> deadline,
    Elapsed elapsed,
    Optional<LogEntry> decisive,
    List<EntryId> evidence,
    List<Remark> remarks) {
  public Finding {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(lot, "lot");
    Objects.requireNonNull(opensAt, "opensAt");
    Objects.requireNonNull(settlesAt, "settlesAt");
    if (settled == Verdict.PENDING) {
      throw new IllegalArgumentException("a finding settles on a verdict that is not pending");
    }
    evidence = List.copyOf(evidence);
    remarks = List.copyOf(remarks);
  }

  /** The verdict at a moment. */
  public Verdict at(Instant now) {
    return now.isBefore(settlesAt) ? Verdict.PENDING : settled;
  }

  /** The corrective actions that the rule set still offers at a moment, strictest first. */
  public List<Rule.Action> offered(Instant now) {
    return rule.actions().stream()
        .filter(act -> offeredUntil(act).filter(now::isAfter).isEmpty())
        .toList();
  }

  /** Last moment at which one of its rule's actions is offered; empty for one that always is. */
  public Optional<Instant> offeredUntil(Rule.Action act) {
    return act.offeredFor().map(deadline.orElse(settlesAt)::plus);
  }

  public boolean has(Remark remark) {
    return remarks.contains(remark);
  }
}
