package chillwright.core.rules;

import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Elapsed;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A finding being put together; every judge ends with one of its three endings. */
final class Draft {
  private final Rule rule;
  private final LotId lot;
  private final Instant opensAt;
  private final List<LogEntry> evidence = new ArrayList<>();
  private final Set<Remark> remarks = EnumSet.noneOf(Remark.class);
  private Optional<Instant> deadline = Optional.empty();
  private Elapsed elapsed = Elapsed.UNKNOWN;
  private Optional<LogEntry> decisive = Optional.empty();

  Draft(Rule rule, LotId lot, Instant opensAt) {
    this.rule = rule;
    this.lot = lot;
    this.opensAt = opensAt;
  }

  Draft deadline(Optional<Instant> lastMoment) {
    deadline = lastMoment;
    return this;
  }

  Draft elapsed(Elapsed bounds) {
    elapsed = bounds;
    return this;
  }

  Draft remark(Remark remark, boolean applies) {
    if (applies) {
      remarks.add(remark);
    }
    return this;
  }

  Draft decisive(Optional<LogEntry> entry) {
    decisive = entry;
    entry.ifPresent(evidence::add);
    return this;
  }

  Draft evidence(Optional<LogEntry> entry) {
    entry.ifPresent(evidence::add);
    return this;
  }

  Draft evidence(List<LogEntry> entries) {
    evidence.addAll(entries);
    return this;
  }

  /** Settled by something that happened at that moment. */
  Finding settled(Verdict verdict, Instant at) {
    return new Finding(
        rule,
        lot,
        opensAt,
        at.isBefore(opensAt) ? opensAt : at,
        verdict,
        deadline,
        elapsed,
        decisive,
        ids(),
        List.copyOf(remarks));
  }

  /** Pending up to and with its last moment, settled from the next millisecond on. */
  Finding pendingUntil(Instant lastMoment, Verdict then) {
    deadline = Optional.of(lastMoment);
    return settled(then, lastMoment.plusMillis(1));
  }

  private List<EntryId> ids() {
    return evidence.stream()
        .sorted(Comparator.comparing(LogEntry::happenedAt))
        .map(LogEntry::id)
        .distinct()
        .toList();
  }
}
