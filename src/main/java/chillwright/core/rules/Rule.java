package chillwright.core.rules;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * One limit of an authority, with the figures in force on a certain day.
 *
 * @param id stable name that starts with its topic, such as "cooling.cooked.first-stage"
 * @param says the rule as one plain sentence
 * @param occasions when it bears on a lot; at least one
 * @param status what binds: law, model-code, guidance, practice or house
 * @param actions what the rule set offers to do when the limit is missed, strictest first
 */
public record Rule(
    String id,
    String says,
    Set<Occasion> occasions,
    Shape shape,
    String status,
    Citation citation,
    List<Action> actions) {
  /**
   * A corrective action as the rule set gives it, such as "discard".
   *
   * @param offeredFor how long after the limit's last moment it is still offered; empty for ever
   */
  public record Action(String says, Citation citation, Optional<Duration> offeredFor) {
    public Action {
      Objects.requireNonNull(says, "says");
      Objects.requireNonNull(citation, "citation");
      Objects.requireNonNull(offeredFor, "offeredFor");
    }

    /** Whether it is a reheat; what the text calls it is all that a rule set says of its kind. */
    public boolean isReheat() {
      return says.startsWith("reheat");
    }

    /** Whether it is a reheat that is offered without the leave of an authority. */
    public boolean isReheatByItself() {
      return isReheat() && !says.contains("authority");
    }
  }

  public Rule {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(says, "says");
    occasions = Set.copyOf(occasions);
    Objects.requireNonNull(shape, "shape");
    Objects.requireNonNull(status, "status");
    Objects.requireNonNull(citation, "citation");
    actions = List.copyOf(actions);
  }

  /** The first word of the id, such as "cooling". */
  public String topic() {
    int dot = id.indexOf('.');
    return dot < 0 ? id : id.substring(0, dot);
  }
}
