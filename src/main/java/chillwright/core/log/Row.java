package chillwright.core.log;

import java.time.Instant;
import java.util.Optional;

/**
 * One row of a log file or request whose cells could all be read, not yet admitted to the log: it
 * may still repeat an entry, name an unknown one, or come after the end of its lot.
 *
 * @param where the whole row
 * @param lot empty only for a reading (or correction) of a place
 * @param when to the millisecond
 * @param id as given; empty where the row has none
 */
public record Row(
    Problem.Where where,
    Optional<LotId> lot,
    Word word,
    Instant when,
    Optional<EntryId> id,
    Optional<String> by,
    Optional<String> note,
    Optional<EntryId> corrects,
    Details details)
    implements Incoming {}
