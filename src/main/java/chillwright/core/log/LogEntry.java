package chillwright.core.log;

import chillwright.core.measure.Temperature;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * One immutable fact about a lot, as it was written down. Nothing is ever edited: a mistake is a
 * later entry with {@link Word#CORRECTION} that names this one.
 *
 * @param happenedAt when it happened, to the millisecond
 * @param writtenAt when it was written down; later for a late entry
 * @param by initials or name of the person
 * @param note free words; the reason, on a correction
 * @param corrects the entry that a correction corrects; empty for every other word
 */
public record LogEntry(
    EntryId id,
    Word word,
    Instant happenedAt,
    Instant writtenAt,
    Optional<String> by,
    Optional<String> note,
    Optional<EntryId> corrects,
    Details details) {
  /**
   * How long after it happened an entry may be written down without being marked late: the time to
   * wash hands and find the phone. A mark only, no limit: common practice, no source.
   */
  public static final Duration AT_ONCE = Duration.ofMinutes(15);

  public LogEntry {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(word, "word");
    Objects.requireNonNull(happenedAt, "happenedAt");
    Objects.requireNonNull(writtenAt, "writtenAt");
    Objects.requireNonNull(details, "details");
    if (corrects.isPresent() != (word == Word.CORRECTION)) {
      throw new IllegalArgumentException("only a correction, and every correction, names an entry");
    }
  }

  public Optional<Temperature> temperature() {
    return details.temperature();
  }

  /** Whether it was written down noticeably later than it happened; shown, and no fault. */
  public boolean isLate() {
    return Duration.between(happenedAt, writtenAt).compareTo(AT_ONCE) > 0;
  }

  public boolean is(How how) {
    return details.how().filter(how::equals).isPresent();
  }

  LogEntry with(Details corrected) {
    return new LogEntry(id, word, happenedAt, writtenAt, by, note, corrects, corrected);
  }
}
