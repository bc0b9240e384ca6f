package chillwright.core.log;

import java.time.Instant;
import java.util.Optional;

/**
 * What a row says apart from its id, to tell a repeat from something new. What it repeats of its
 * lot's first row does not count: that is compared with the first row instead.
 */
record Content(
    Word word,
    Instant when,
    Optional<String> by,
    Optional<String> note,
    Optional<EntryId> corrects,
    Details details) {
  /** Of what tells most contents apart; the rest is left to equals, since an import asks often. */
  @Override
  public int hashCode() {
    return 31 * when.hashCode() + word.hashCode();
  }

  static Content of(Row row) {
    return new Content(
        row.word(),
        row.when(),
        row.by(),
        row.note(),
        row.corrects(),
        own(row.word(), row.details()));
  }

  static Content of(LogEntry entry) {
    return new Content(
        entry.word(),
        entry.happenedAt(),
        entry.by(),
        entry.note(),
        entry.corrects(),
        own(entry.word(), entry.details()));
  }

  private static Details own(Word word, Details details) {
    Details told = word == Word.CORRECTION ? details : details.withoutFirstRowCells();
    // The kitchen may have named the place since, and spells it otherwise: that is no change.
    return told.place().isPresent() ? told.at(PlaceName.key(told.place().get())) : told;
  }
}
