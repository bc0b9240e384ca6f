package chillwright.web.pages;

import java.util.List;

/**
 * What the kitchen's coolings show.
 *
 * @param csv address of the same as CSV
 */
public record CoolingMethodsView(
    String from,
    String to,
    String food,
    String container,
    List<String> foods,
    List<Item> items,
    boolean isCut,
    String caution,
    String csv) {
  /**
   * A way of cooling.
   *
   * @param standing how it stands, the class in the style
   */
  public record Item(String standing, String method, List<String> says) {}
}
