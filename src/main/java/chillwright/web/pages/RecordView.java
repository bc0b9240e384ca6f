package chillwright.web.pages;

import java.util.List;

/** What went out of compliance, or was not shown, in some days. */
public record RecordView(
    String from, String to, List<Item> items, boolean more, String pdf, String csv) {
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
