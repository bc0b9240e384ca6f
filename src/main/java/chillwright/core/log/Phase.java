package chillwright.core.log;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;

/** Where a lot stands, in the trade's words. */
public enum Phase {
  COOKED,
  PREPARED,
  RECEIVED,
  OPENED,
  HOT_HOLDING,
  COOLING,
  CHILLED,
  FROZEN,
  THAWING,
  REHEATING,
  TIME_CONTROL,
  SET_OUT,
  SERVED,
  DISCARDED,
  /** All of it was taken, or went into other lots. */
  USED_UP,
  /** All of it went back into the lot that it was divided from. */
  PUT_BACK,
  /** What was left of it was found missing when somebody counted. */
  COUNTED_OUT;

  private static final Set<Phase> ENDS =
      EnumSet.of(SERVED, DISCARDED, USED_UP, PUT_BACK, COUNTED_OUT);

  /** As it is written in answers, such as "hot-holding"; most are words of log files too. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Whether nothing is left of the lot. */
  public boolean isEnd() {
    return ENDS.contains(this);
  }
}
