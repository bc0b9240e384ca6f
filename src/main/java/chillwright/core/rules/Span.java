package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.log.Timeline;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One stretch of a lot's life in one phase.
 *
 * @param phase empty before the first row that names one
 * @param rows all rows of the stretch, the one that opened it first
 * @param ending the row that ended it: of the next phase, or the one that closed the lot
 */
record Span(Optional<Phase> phase, List<LogEntry> rows, Optional<LogEntry> ending) {
  Span {
    rows = List.copyOf(rows);
  }

  LogEntry opening() {
    return rows.get(0);
  }

  Instant from() {
    return opening().happenedAt();
  }

  Optional<Instant> to() {
    return ending.map(LogEntry::happenedAt);
  }

  boolean is(Phase wanted) {
    return phase.filter(wanted::equals).isPresent();
  }

  boolean isIn(Set<Phase> wanted) {
    return phase.filter(wanted::contains).isPresent();
  }

  /** The stretches of a lot's life, in order of time. */
  static List<Span> of(Timeline timeline) {
    List<Span> spans = new ArrayList<>();
    List<LogEntry> rows = new ArrayList<>();
    Optional<Phase> phase = Optional.empty();
    Optional<Instant> closed = timeline.closedAt();
    Optional<LogEntry> closing = Optional.empty();
    for (LogEntry entry : timeline.entries()) {
      Optional<Phase> next = phaseOf(entry);
      if (next.isPresent()) {
        if (!rows.isEmpty()) {
          spans.add(new Span(phase, rows, Optional.of(entry)));
        }
        rows = new ArrayList<>();
        phase = next;
      }
      rows.add(entry);
      if (Portions.isOutgoing(entry.word())
          && closed.filter(entry.happenedAt()::equals).isPresent()) {
        closing = Optional.of(entry);
      }
    }
    spans.add(new Span(phase, rows, closing));
    return spans;
  }

  /** The phase a row opens; a row that only takes portions out opens none. */
  private static Optional<Phase> phaseOf(LogEntry entry) {
    return Portions.isOutgoing(entry.word()) ? Optional.empty() : entry.word().phase();
  }
}
