package chillwright.web.pages;

import chillwright.core.log.How;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The day: the round of places, what is unfinished and who takes it over, and the manager's sign.
 *
 * @param places to be read, those that call for something first; none moves for being read
 * @param others places of which nothing is asked
 * @param signs what was signed, in the order of writing
 * @param people initials to choose from
 * @param out how many lots are out, or treated as missed
 * @param unread how many places are to be read again today
 * @param unanswered how many are beyond their limit with nothing done about it
 * @param saved places where something was just saved
 * @param unsaved what of a round was not saved, by its place
 */
public record DayView(
    List<Place> places,
    List<Place> others,
    List<Open> open,
    boolean moreOpen,
    boolean isClosed,
    List<String> signs,
    List<String> people,
    int out,
    int unread,
    int unanswered,
    Filled form,
    Set<String> saved,
    Map<String, Filled> unsaved) {
  public DayView {
    saved = Set.copyOf(saved);
    unsaved = Map.copyOf(unsaved);
  }

  /** Whether something was just saved there. */
  public boolean isSaved(Place place) {
    return saved.contains(place.name());
  }

  /** The fields of its reading as they were filled in. */
  public Filled reading(Place place) {
    boolean isThere = place.name().equals(form.given("place")) && !form.has("corrects");
    return isThere ? form : unsaved.getOrDefault(place.name(), Filled.with(Map.of()));
  }

  /** Whether something was just saved at a place of which nothing is asked. */
  private boolean isSavedElsewhere() {
    return others.stream().anyMatch(this::isSaved);
  }

  /** Whether what is asked is of the form that was sent to that address. */
  public boolean isAskedAt(String address) {
    return form.given("form").equals(address) && !form.asked().isEmpty();
  }

  /** Whether it is of the reading of a place. */
  public boolean isAskedOf(Place place) {
    return unsaved.containsKey(place.name()) || (isAskedThere(place) && !isIdle());
  }

  /** Whether it is of a place that is said to be not in use. */
  public boolean isAskedIdle(Place place) {
    return isAskedThere(place) && isIdle();
  }

  private boolean isAskedThere(Place place) {
    boolean isThere = place.name().equals(form.given("place")) && !form.has("corrects");
    return isThere && isAskedAt(DayPage.READINGS);
  }

  private boolean isIdle() {
    return form.given("how").equals(How.NOT_IN_USE.text());
  }

  /** Whether it is of a corrected reading. */
  public boolean isAskedOf(Reading reading) {
    return form.given("corrects").equals(reading.id()) && isAskedAt(DayPage.READINGS);
  }

  /** Whether the places of which nothing is asked are shown, since one of them has a message. */
  public boolean isOpenElsewhere() {
    return !form.faults().isEmpty() || isAskedAt(DayPage.READINGS) || isSavedElsewhere();
  }

  /** Where a place stands on the page. */
  static String at(String place) {
    return "at-" + Integer.toHexString(place.hashCode());
  }

  /**
   * A place of the round.
   *
   * @param lots address of the list of lots inside
   * @param says what was read there last, with its time, and what it is held against
   * @param sign the frame around how it stands
   * @param standing how its last reading stands; blank where nothing can tell
   * @param isDue whether it should be read again today
   * @param isNotInUse whether it was said so today, so that nobody reads it
   * @param isFreezer whether it may read below zero
   * @param inside lots that are there while it reads beyond its limit
   * @param costs ways to what a freezer that reads too warm cost the food in it
   * @param calls whether its last reading asks for something to be done
   * @param acts what was done about it today, a line each
   * @param readings those of today, in order of time
   */
  public record Place(
      String name,
      String lots,
      List<String> says,
      Sign sign,
      String standing,
      boolean isDue,
      boolean isNotInUse,
      boolean isFreezer,
      List<Inside> inside,
      List<Choice> costs,
      boolean calls,
      List<String> acts,
      List<Reading> readings) {
    /** Tells its field from the others of the page. */
    public String id() {
      return Integer.toHexString(name.hashCode());
    }

    /** Where it stands on the page. */
    public String at() {
      return DayView.at(name);
    }

    /** The frame around all of it. */
    public String frame() {
      boolean calls = sign.key().equals("out") || sign.key().equals("not-shown");
      return calls ? sign.key() : isDue ? "pending" : "in";
    }
  }

  /**
   * A reading of today.
   *
   * @param text as it stands
   * @param was what it said before it was corrected; blank where it was not
   * @param why who corrected it, when and why
   * @param canBeCorrected whether it stands
   * @param isFigure whether it has a figure; what says that a place is not in use has none
   */
  public record Reading(
      String id, String text, String was, String why, boolean canBeCorrected, boolean isFigure) {}

  /** A lot in a place that reads beyond its limit. */
  public record Inside(String code, String food) {}

  /**
   * A lot that somebody has to go on with.
   *
   * @param says what is owed to it, then what falls due next
   * @param takenOver who took it over, in words; blank for nobody
   */
  public record Open(
      String code, String food, Sign standing, String clock, List<String> says, String takenOver) {}
}
