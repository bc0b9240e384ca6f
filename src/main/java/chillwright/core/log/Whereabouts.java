package chillwright.core.log;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Where food is, as far as its rows tell. */
public final class Whereabouts {
  /** What does not happen in the place where food was kept before. */
  private static final Set<Phase> ELSEWHERE =
      EnumSet.of(Phase.REHEATING, Phase.HOT_HOLDING, Phase.SET_OUT, Phase.TIME_CONTROL);

  private Whereabouts() {}

  /**
   * Where rows in order of time left the food. Food that is reheated, held hot, set out or put
   * under time control without a place left where it was: its place is not known.
   */
  public static Optional<String> last(List<LogEntry> entries) {
    Optional<String> place = Optional.empty();
    Optional<Phase> phase = Optional.empty();
    for (LogEntry entry : entries) {
      Optional<Phase> entered =
          entry.word().phase().filter(next -> !Portions.isOutgoing(entry.word()));
      boolean isElsewhere = entered.filter(ELSEWHERE::contains).isPresent();
      if (entry.details().place().isPresent() || (isElsewhere && !entered.equals(phase))) {
        place = entry.details().place();
      }
      phase = entered.isPresent() ? entered : phase;
    }
    return place;
  }
}
