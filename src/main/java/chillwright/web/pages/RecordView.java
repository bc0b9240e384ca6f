package chillwright.web.pages;

import java.util.List;

/**
 * What went out of compliance, or was not shown, in some days.
 *
 * @param places those that were beyond their limit
 * @param morePlaces whether only the newest readings of places were looked at
 */
public record RecordView(
    String from,
    String to,
    List<Item> items,
    boolean more,
    List<PlaceItem> places,
    boolean morePlaces,
    String pdf,
    String csv,
    String readings) {
  /**
   * A place beyond its limit.
   *
   * @param says what was read, when, and whether it was within its limit again
   * @param limit what it is held against; blank for none
   * @param action what was done about it
   */
  public record PlaceItem(String place, String says, String limit, String action) {}

  /** A limit that was missed, or not shown, and what was done. */
  public record Item(
      String code,
      String food,
      Sign standing,
      String clock,
      String says,
      String action,
      String citation) {}
}
