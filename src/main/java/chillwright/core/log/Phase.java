package chillwright.core.log;

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
  DISCARDED;

  /** The word as it is written in log files and answers, such as "hot-holding". */
  public String word() {
    return Word.ofPhase(this).text();
  }
}
