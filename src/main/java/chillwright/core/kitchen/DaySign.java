package chillwright.core.kitchen;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A day closed with the manager's sign, or opened again. Never changed: the last one of a day says
 * how it stands.
 *
 * @param by initials
 * @param unfinished lots that were owed something, or ran on, when it was written
 * @param out lots among them that were out, or treated as missed; empty where nobody counted them
 * @param unread places that had been read less often than they should be
 */
public record DaySign(
    LocalDate day,
    Word word,
    String by,
    Optional<String> note,
    int unfinished,
    OptionalInt out,
    int unread,
    Instant writtenAt) {
  /** What a sign does. */
  public enum Word {
    CLOSED,
    REOPENED;

    /** As it is written in requests. */
    public String key() {
      return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Word> ofKey(String key) {
      return Arrays.stream(values()).filter(word -> word.key().equals(key)).findFirst();
    }
  }

  public DaySign {
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(word, "word");
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(note, "note");
    Objects.requireNonNull(writtenAt, "writtenAt");
  }
}
