package chillwright.paper;

import java.util.List;

/**
 * Everything that stands in a record.
 *
 * @param troubles places beyond their limit, before all lots; their verdict is the place
 * @param places what readings of places are held against, a line each
 * @param placeRows readings of places; their word is the place
 * @param dayRows what was signed and handed over
 * @param size of its pages
 */
public record RecordDocument(
    RecordHead head,
    List<LotSheet.Found> troubles,
    List<LotSheet> lots,
    List<String> places,
    List<LotSheet.Row> placeRows,
    List<LotSheet.Row> dayRows,
    Sheet.Size size) {
  public RecordDocument {
    troubles = List.copyOf(troubles);
    lots = List.copyOf(lots);
    places = List.copyOf(places);
    placeRows = List.copyOf(placeRows);
    dayRows = List.copyOf(dayRows);
  }
}
