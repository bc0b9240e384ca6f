package chillwright.core.log;

import chillwright.core.log.Problem.Where.InField;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * How a part that was made by mistake goes back into the lot it was divided from: {@code portions}
 * of the part with its count and the lot in {@code to}, and corrections that void the lot's own
 * rows for it. Nothing of it is counted as served or discarded then. A lot of which nothing was
 * left could not be frozen, so it takes the freezing over from the part.
 *
 * @param portions all that the part began with
 * @param rows of the whole, to be voided
 * @param takenOver entries of the part that the whole is to tell as well; mostly none
 */
public record PutBack(
    LotId part, LotId whole, int portions, List<EntryId> rows, List<LogEntry> takenOver) {
  /** Words that leave food as it was, or tell of some of its portions. */
  private static final Set<Word> TELLS_NO_PHASE =
      EnumSet.of(Word.READING, Word.MOVED, Word.ACTION, Word.PORTIONS, Word.SERVED, Word.DISCARDED);

  /** Why a part does not go back. */
  public enum Refusal {
    /** The counts of the two lots do not tell what left one for the other. */
    UNCOUNTED,
    /** All of the whole was served or discarded. */
    WHOLE_CLOSED,
    /** Something was told of the part that would get lost, such as a reading. */
    TOLD_MORE,
    /** The whole stands otherwise by now, or the part began otherwise than it stood. */
    OTHER_STATE,
    /** It was frozen, and what is left of the whole is not. */
    WHOLE_NOT_FROZEN,
    /** It was frozen on a later day than the whole, so it has used more days. */
    FROZEN_LATER,
    /** It was frozen before the last entry of the whole, which that freezing would change. */
    WHOLE_TOLD_LATER,
    /** Another lot was made of it. */
    USED;

    /** As texts name it. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  public PutBack {
    rows = List.copyOf(rows);
    takenOver = List.copyOf(takenOver);
  }

  /** The same entries as rows of the whole, with a note that says why it has them. */
  public List<Row> rowsTakenOver(String note) {
    return takenOver.stream().map(entry -> row(entry, note)).toList();
  }

  private Row row(LogEntry entry, String note) {
    return new Row(
        new InField("", ""),
        Optional.of(whole),
        entry.word(),
        entry.happenedAt(),
        Optional.empty(),
        entry.by(),
        Optional.of(entry.note().map(own -> own + "; " + note).orElse(note)),
        Optional.empty(),
        entry.details());
  }

  /** Empty where the lot is no part, or is refused. */
  public static Optional<PutBack> of(LotLog part, ZoneId zone) {
    if (!part.isDivided() || refusal(part, zone).isPresent()) {
      return Optional.empty();
    }
    List<LogEntry> own = Corrections.applied(part.entries());
    LotLog whole = part.sources().get(0);
    List<LogEntry> all = Corrections.applied(whole.entries());
    return Optional.of(
        new PutBack(
            part.lot(),
            whole.lot(),
            own.get(0).details().portions().getAsInt(),
            new HandedOn(whole.entries()).standingFor(part.lot()),
            own.size() == 1 || isFrozen(all) ? List.of() : own.subList(1, own.size())));
  }

  /** Why a part does not go back; empty where it does, and of what is no part. */
  public static Optional<Refusal> refusal(LotLog part, ZoneId zone) {
    List<LogEntry> own = Corrections.applied(part.entries());
    if (!part.isDivided()) {
      return Optional.empty();
    }
    LotLog whole = part.sources().get(0);
    OptionalInt began = own.isEmpty() ? OptionalInt.empty() : own.get(0).details().portions();
    long gone = new HandedOn(whole.entries()).portionsFor(part.lot());
    if (began.isEmpty() || gone != began.getAsInt()) {
      return Optional.of(Refusal.UNCOUNTED);
    }
    List<LogEntry> all = Corrections.applied(whole.entries());
    return all.stream().anyMatch(PutBack::takesAll)
        ? Optional.of(Refusal.WHOLE_CLOSED)
        : untold(own, all, part.lot(), zone);
  }

  /**
   * What the whole would not tell of the part. It tells all where nothing happened to the part and
   * both stand alike, or where both were frozen, the part no later by the day and with nothing read
   * of it: then the days of the whole are no more than its own.
   */
  private static Optional<Refusal> untold(
      List<LogEntry> own, List<LogEntry> whole, LotId part, ZoneId zone) {
    LogEntry first = own.get(0);
    if (first.temperature().isPresent() || first.is(How.SOFT)) {
      return Optional.of(Refusal.TOLD_MORE);
    }
    if (own.size() == 1) {
      return state(own).equals(state(whole)) ? Optional.empty() : Optional.of(Refusal.OTHER_STATE);
    }
    boolean onlyFroze =
        own.stream().skip(1).allMatch(row -> row.word() == Word.MOVED || isFreezing(row));
    if (!onlyFroze || !isFrozen(own)) {
      return Optional.of(Refusal.TOLD_MORE);
    }
    if (!isFrozen(whole)) {
      return notFrozen(own, whole, part);
    }
    boolean beganFrozen = first.word() == Word.FROZEN;
    return beganFrozen || !day(own, zone).isAfter(day(whole, zone))
        ? Optional.empty()
        : Optional.of(Refusal.FROZEN_LATER);
  }

  /**
   * A whole that is empty takes the freezing over, but only at its end: parts divided off later
   * begin with what it tells until then.
   */
  private static Optional<Refusal> notFrozen(List<LogEntry> own, List<LogEntry> whole, LotId part) {
    OptionalInt left = Portions.of(whole).left();
    if (own.get(0).word() == Word.FROZEN || left.isEmpty() || left.getAsInt() > 0) {
      return Optional.of(Refusal.WHOLE_NOT_FROZEN);
    }
    Instant frozen = own.get(1).happenedAt();
    boolean isLast =
        whole.stream()
            .filter(row -> row.details().to().filter(part.text()::equals).isEmpty())
            .allMatch(row -> row.happenedAt().isBefore(frozen));
    return isLast ? Optional.empty() : Optional.of(Refusal.WHOLE_TOLD_LATER);
  }

  private static boolean isFreezing(LogEntry row) {
    return row.word() == Word.FROZEN
        && row.temperature().isEmpty()
        && row.details().how().filter(how -> how != How.HARD).isEmpty();
  }

  private static boolean isFrozen(List<LogEntry> rows) {
    return state(rows).filter(Word.FROZEN::equals).isPresent();
  }

  /** Whether a row of that word tells what became of all of the food. */
  static boolean tellsPhase(Word word) {
    return !TELLS_NO_PHASE.contains(word);
  }

  /** The last row that tells what became of all of it; what was cooked cools from then on. */
  static Optional<Word> state(List<LogEntry> rows) {
    return rows.stream()
        .map(LogEntry::word)
        .filter(PutBack::tellsPhase)
        .reduce((before, last) -> last)
        .map(word -> word == Word.COOKED || word == Word.PREPARED ? Word.COOLING : word);
  }

  /** The day on which it was frozen first. */
  private static LocalDate day(List<LogEntry> rows, ZoneId zone) {
    return rows.stream()
        .filter(row -> row.word() == Word.FROZEN)
        .map(row -> LocalDate.ofInstant(row.happenedAt(), zone))
        .min(Comparator.naturalOrder())
        .orElseThrow();
  }

  private static boolean takesAll(LogEntry entry) {
    return (entry.word() == Word.SERVED || entry.word() == Word.DISCARDED)
        && entry.details().portions().isEmpty();
  }
}
