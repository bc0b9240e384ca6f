package chillwright.service;

import chillwright.core.measure.Temperature.Scale;
import chillwright.rulebook.RuleBook;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * What the kitchen is.
 *
 * @param zone day counts are local days of this zone
 * @param ruleBook the rules its logs are judged by
 * @param scale the scale it prefers to see
 * @param address what the code on its labels leads to; empty for that of whoever prints one
 * @param olderVersion a version of the figures that may have judged some of its lots, other than
 *     that of the rule book; recomputing ends that
 */
public record Settings(
    Optional<String> name,
    ZoneId zone,
    RuleBook ruleBook,
    Scale scale,
    Instant createdAt,
    Optional<String> address,
    Optional<String> olderVersion) {}
