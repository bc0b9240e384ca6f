package chillwright.web.pages;

import java.util.List;
import java.util.Map;

/**
 * Lots in a list.
 *
 * @param says what the order means; blank where it needs no words
 * @param total lots and portions in all; blank where the list goes on
 * @param place to which it is narrowed; blank for all
 * @param good what was asked of a day on which all of it must have life left
 * @param groups lots that stand together, those that must go first before the others
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
    Good good,
    List<Group> groups,
    List<String> recipients,
    String next,
    String csv,
    String here) {
  /**
   * Which lots are good on a day.
   *
   * @param day as a form field writes it; blank where none is asked for
   * @param days for which they must be good after it; blank for none
   * @param says what the list then rests on
   * @param leftOut lots that are on hand and not in the list
   * @param cut that not all lots were looked at; blank where they were
   * @param wrong what is wrong in a field, by its name; then nothing is listed
   */
  public record Good(
      String day,
      String days,
      String says,
      List<LeftOut> leftOut,
      String cut,
      Map<String, String> wrong) {
    static final Good NOT_ASKED = new Good("", "", "", List.of(), "", Map.of());

    public Good {
      leftOut = List.copyOf(leftOut);
      wrong = Map.copyOf(wrong);
    }

    public boolean isAsked() {
      return !says.isEmpty();
    }

    public boolean isRefused() {
      return !wrong.isEmpty();
    }

    /** Blank where nothing is. */
    public String wrong(String field) {
      return wrong.getOrDefault(field, "");
    }
  }

  /** A lot that is not in the list, and why. */
  public record LeftOut(String code, String food, String why) {}

  /** A place to which the list can be narrowed. */
  public record Place(String name, String address, boolean isShown) {}

  /**
   * Lots under one heading.
   *
   * @param title blank where there is only one such group
   */
  public record Group(String title, List<Item> items) {
    public Group {
      items = List.copyOf(items);
    }
  }

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
    groups = List.copyOf(groups);
    recipients = List.copyOf(recipients);
  }
}
