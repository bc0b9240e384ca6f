package chillwright.web.pages;

import java.util.List;
import java.util.Set;

/**
 * Who got some of a food or of a lot, what somebody got, or what bears an allergen.
 *
 * @param given what stands in the fields; blank again once it was answered
 * @param tooMany fields that are filled in where only one can be
 * @param foods to choose from
 * @param allergens to choose from
 * @param asked what was asked for; blank where nothing was
 * @param says what the answer goes by
 * @param told who got some, once each; last what was taken with nobody named
 * @param notices that not all of it is shown
 * @param csv where the same is had as a table; blank where nothing was asked
 */
public record TraceView(
    Filled given,
    Set<String> tooMany,
    List<String> foods,
    List<Choice> allergens,
    String asked,
    List<String> says,
    List<Told> told,
    List<String> notices,
    List<Group> groups,
    String csv) {
  /**
   * Lots that were found for the same reason.
   *
   * @param title blank where there is only one such group
   * @param says how much was found, and why
   */
  public record Group(String title, List<String> says, List<Line> lots) {
    public Group {
      says = List.copyOf(says);
      lots = List.copyOf(lots);
    }
  }

  /**
   * A lot on the way.
   *
   * @param began when it came into being; blank where nothing is logged of it
   * @param where phase, place and portions left
   * @param notes what it has to do with the allergen that was asked for
   * @param outs what left it, a line each
   */
  public record Line(
      String code,
      String food,
      String began,
      String where,
      List<Source> from,
      List<String> notes,
      List<String> outs) {
    public Line {
      from = List.copyOf(from);
      notes = List.copyOf(notes);
      outs = List.copyOf(outs);
    }
  }

  /** What marks a field that is filled in beside another; none of the others. */
  public String wrong(String field) {
    return tooMany.contains(field) ? "true" : null;
  }

  /** Somebody who got some, with what and when. */
  public record Told(String who, List<String> what) {
    public Told {
      what = List.copyOf(what);
    }
  }

  /** A lot that one came from. */
  public record Source(String code, String food) {}

  public TraceView {
    tooMany = Set.copyOf(tooMany);
    foods = List.copyOf(foods);
    allergens = List.copyOf(allergens);
    says = List.copyOf(says);
    told = List.copyOf(told);
    notices = List.copyOf(notices);
    groups = List.copyOf(groups);
  }
}
