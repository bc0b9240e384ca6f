package chillwright.web.answers;

import java.time.OffsetDateTime;
import java.util.List;
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
 * @param actions what would bring it there sooner, the soonest first; those without a time last
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
    String basis,
    List<Action> actions) {
  public ForecastLine {
    actions = List.copyOf(actions);
  }

  /**
   * What would bring it there sooner if it is done now.
   *
   * @param expected null where no printed figure tells
   * @param latest null where nothing bounds it
   * @param basis the figure behind it
   */
  public record Action(
      String act,
      String says,
      Optional<OffsetDateTime> expected,
      Optional<OffsetDateTime> earliest,
      Optional<OffsetDateTime> latest,
      String basis) {}

  /** The warmest it may read by a moment to be in time: "94 °F". */
  public record Target(String temperature, OffsetDateTime by) {}
}
