package chillwright.web.pages;

import java.util.List;

/**
 * The day: the round of refrigerators and freezers, what is unfinished, and lines to sign on paper.
 */
public record DayView(List<Place> places, List<Open> open, boolean moreOpen, Filled form) {
  /**
   * A place of the round.
   *
   * @param lots address of the list of lots inside
   * @param last what was read there last, with its time; blank where nothing was
   * @param isReadToday whether that was today
   */
  public record Place(String name, String lots, String last, boolean isReadToday) {
    /** Tells its field from the others of the page. */
    public String id() {
      return Integer.toHexString(name.hashCode());
    }
  }

  /** A lot that somebody has to go on with. */
  public record Open(String code, String food, Sign standing, String clock, String says) {}
}
