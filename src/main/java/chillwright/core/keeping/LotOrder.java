package chillwright.core.keeping;

/** The orders a list of lots on hand can be asked for. */
public enum LotOrder {
  /** By the moment a lot was first logged: first in, first out. Lots never logged are left out. */
  OLDEST("oldest"),
  /**
   * What to use first: by last day of safety; after those, frozen lots by the day they are at their
   * best until; after those, lots with neither.
   */
  USE_FIRST("use-first"),
  /** Only lots to which a corrective action is owed, the longest owed first. */
  OWED("owed");

  private final String text;

  LotOrder(String text) {
    this.text = text;
  }

  /** As it is asked for. */
  public String text() {
    return text;
  }
}
