package chillwright.web.answers;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * When food that cools is expected to reach a limit. No verdict rests on it.
 *
 * @param expected null where it never gets there in these surroundings, or where the readings
 *     cannot tell; {@code basis} says which
 * @param latest null where nothing bounds it
 * @param target what it must read by a moment to be in time still
 * @param outlook in-time, unsure, unread, late or not-told
 * @param basis what it rests on, and why it is wide
 */
public record ForecastLine(
    String rule,
    String limit,
    Optional<OffsetDateTime> deadline,
    Optional<OffsetDateTime> expected,
    Optional<OffsetDateTime> earliest,
    Optional<OffsetDateTime> latest,
    Optional<Target> target,
    String outlook,
    String says,
    String basis) {
  /** The warmest it may read by a moment to be in time: "94 °F". */
  public record Target(String temperature, OffsetDateTime by) {}
}
