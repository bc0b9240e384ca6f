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

  /** Food that was frozen and thaws so left its freezer. */
  private static final Set<How> OUT_OF_FREEZER =
      EnumSet.of(How.REFRIGERATOR, How.RUNNING_WATER, How.WHILE_COOKING);

  private Whereabouts() {}

  /**
   * Where rows in order of time left the food. Food that is reheated, held hot, set out or put
   * under time control without a place left where it was, and so did frozen food that thaws in a
   * refrigerator, in water or while it cooks: its place is not known.
   */
  public static Optional<String> last(List<LogEntry> entries) {
    Optional<String> place = Optional.empty();
    Optional<Phase> phase = Optional.empty();
    for (LogEntry entry : entries) {
      Optional<Phase> entered =
          entry.word().phase().filter(next -> !Portions.isOutgoing(entry.word()));
      boolean isElsewhere =
          entered.filter(ELSEWHERE::contains).isPresent() || leavesFreezer(entry, phase);
      if (entry.details().place().isPresent() || (isElsewhere && !entered.equals(phase))) {
        place = entry.details().place();
      }
      phase = entered.isPresent() ? entered : phase;
    }
    return place;
  }

  private static boolean leavesFreezer(LogEntry entry, Optional<Phase> phase) {
    return entry.word() == Word.THAWING
        && phase.filter(Phase.FROZEN::equals).isPresent()
        && entry.details().how().filter(OUT_OF_FREEZER::contains).isPresent();
  }
}
