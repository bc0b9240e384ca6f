package chillwright.core.log;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Portions made and left of a lot, and when it was closed: {@code served} or {@code discarded}
 * without a count takes all that is left; with a count it takes only those, and closes the lot
 * where none are left.
 *
 * @param made empty where no count was ever given
 * @param left empty where it cannot be told; 0 once the lot is closed
 */
public record Portions(OptionalInt made, OptionalInt left, Optional<Instant> closedAt) {
  private static final Set<Word> OUTGOING = EnumSet.of(Word.PORTIONS, Word.SERVED, Word.DISCARDED);

  /** Whether a row of this word takes portions out of the lot. */
  public static boolean isOutgoing(Word word) {
    return OUTGOING.contains(word);
  }

  /** The row that says what the lot is also says how many were made; a late one may be earlier. */
  private static boolean namesTheLot(LogEntry entry) {
    Details details = entry.details();
    return details.food().isPresent()
        || details.category().isPresent()
        || !details.from().isEmpty();
  }

  /** Counted over a lot's own standing entries, in order of time. */
  static Portions of(List<LogEntry> own) {
    LogEntry first = own.stream().filter(Portions::namesTheLot).findFirst().orElse(own.get(0));
    OptionalInt made =
        first.word() == Word.PORTIONS ? OptionalInt.empty() : first.details().portions();
    OptionalInt left = made;
    for (LogEntry entry : own) {
      if (!isOutgoing(entry.word())) {
        continue;
      }
      OptionalInt taken = entry.details().portions();
      if (taken.isPresent() && left.isPresent()) {
        left = OptionalInt.of(left.getAsInt() - taken.getAsInt());
      }
      boolean takesAll = taken.isEmpty() && entry.word() != Word.PORTIONS;
      if (takesAll || (left.isPresent() && left.getAsInt() <= 0)) {
        return new Portions(made, OptionalInt.of(0), Optional.of(entry.happenedAt()));
      }
    }
    return new Portions(made, left, Optional.empty());
  }
}
