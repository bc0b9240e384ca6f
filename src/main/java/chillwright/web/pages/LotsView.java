package chillwright.web.pages;

import java.util.List;

/**
 * Lots in a list.
 *
 * @param says what the order means; blank where it needs no words
 * @param total lots and portions in all; blank where the list goes on
 * @param place to which it is narrowed; blank for all
 * @param goodOn the day on which all of it must have life left, as a form field writes it; blank
 *     for none
 * @param recipients who got portions lately; then every lot asks for whom they are taken
 * @param next address of the part after this one; blank at the end
 * @param csv address of the same list as CSV
 * @param here address of the list, narrowed as it is shown
 */
public record LotsView(
    String says,
    String total,
    List<Place> places,
    String place,
    String goodOn,
    List<Item> items,
    List<String> recipients,
    String next,
    String csv,
    String here) {
  /** A place to which the list can be narrowed. */
  public record Place(String name, String address, boolean isShown) {}

  /**
   * A lot.
   *
   * @param where phase, place and portions left
   * @param says its dates, a sentence each
   * @param canTake whether portions can be taken out of it here
   * @param moves places it can be moved to with nothing else happening to it
   */
  public record Item(
      String code,
      String food,
      Sign standing,
      String where,
      List<String> says,
      boolean canTake,
      List<String> moves) {}

  public LotsView {
    places = List.copyOf(places);
    items = List.copyOf(items);
    recipients = List.copyOf(recipients);
  }
}
