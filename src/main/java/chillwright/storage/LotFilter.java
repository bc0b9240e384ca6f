package chillwright.storage;

import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Which lots a list shows. All that is given must hold. Given a verdict, a place or a last day, the
 * list holds lots on hand only, unless the phase is one of those that close a lot.
 *
 * @param verdict the lot's verdict at {@code now}
 * @param lastDayBefore its last day of safety is before this day
 */
public record LotFilter(
    Optional<Phase> phase,
    Optional<String> place,
    Optional<Verdict> verdict,
    Optional<LocalDate> lastDayBefore,
    Instant now) {}
