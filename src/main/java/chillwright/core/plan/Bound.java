package chillwright.core.plan;

import chillwright.core.rules.Rule;
import java.time.Instant;
import java.util.Optional;

/**
 * Between which moments something of a dish must happen.
 *
 * @param from not before it; empty where nothing sets it
 * @param to not after it; empty where nothing sets it
 * @param rule whose figure it rests on; empty where it follows from the menu or from quality alone
 * @param isClosed whether nobody is there at its end
 * @param source where a figure without a rule was printed; blank where it is the cook's own
 * @param isPlanned whether it holds together with all others of a plan; else it is the dish's own,
 *     whatever the other dishes need
 */
public record Bound(
    String dish,
    Kind kind,
    Optional<Instant> from,
    Optional<Instant> to,
    Optional<Rule> rule,
    boolean isClosed,
    String source,
    boolean isPlanned) {
  /** What must happen. */
  public enum Kind {
    MAKE("make"),
    FREEZE("freeze-by"),
    TAKE_OUT("take-out"),
    REHEAT("reheat-start"),
    HOLD("hot-holding"),
    COOL("cooling"),
    COLD("cold-holding"),
    THAW("thawing"),
    TABLE("on-the-table");

    private final String text;

    Kind(String text) {
      this.text = text;
    }

    /** As it stands in an answer. */
    public String text() {
      return text;
    }
  }

  /** Whether no other moment is left than one. */
  public boolean isMoment() {
    return from.isPresent() && from.equals(to);
  }

  /** Whether no moment is left. */
  public boolean isEmpty() {
    return from.isPresent() && to.filter(from.get()::isAfter).isPresent();
  }
}
