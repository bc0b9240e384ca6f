package chillwright.web.pages;

import java.util.List;

/**
 * What needs a hand now, and what falls due next.
 *
 * @param places whose last reading asks for something that nobody has done
 * @param events those whose plans ask for something within a day
 * @param people initials to choose from
 * @param calendar where the same is had as a calendar
 */
public record NowView(
    List<Place> places,
    List<Hand> hands,
    boolean moreHands,
    List<Next> dues,
    boolean moreDues,
    List<Event> events,
    List<String> people,
    String calendar) {
  /**
   * A place beyond its limit, or a freezer in which food may be thawing.
   *
   * @param lots address of the list of lots inside
   */
  public record Place(String name, Sign sign, String standing, String says, String lots) {}

  /** Whether nothing calls for a hand. */
  public boolean isQuiet() {
    return places.isEmpty() && hands.isEmpty();
  }

  /**
   * A lot that is out, or to which an act is owed.
   *
   * @param next what falls due next of it all the same
   * @param takesReading whether a reading of the food would tell more
   */
  public record Hand(
      String code,
      String food,
      Sign standing,
      List<String> says,
      List<LotPageView.Next> next,
      boolean takesReading) {
    public Hand {
      says = List.copyOf(says);
      next = List.copyOf(next);
    }
  }

  /**
   * A lot with a limit still ahead.
   *
   * @param until the last moment that complies, as RFC 3339 writes it
   * @param forecast when it is expected to reach the limit; blank where that is not told, or in
   *     time
   * @param mended what was missed of it and mended since; blank where nothing was
   * @param takesReading whether a reading of the food is what it waits for
   */
  public record Next(
      String code,
      String food,
      String clock,
      String until,
      String left,
      String says,
      String forecast,
      String mended,
      boolean takesReading) {}

  /** An event with what its plan asks for soon, or that it has no plan any more. */
  public record Event(String code, String name, List<String> says) {
    public Event {
      says = List.copyOf(says);
    }
  }

  public NowView {
    events = List.copyOf(events);
    places = List.copyOf(places);
    hands = List.copyOf(hands);
    dues = List.copyOf(dues);
    people = List.copyOf(people);
  }
}
