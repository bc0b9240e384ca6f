package chillwright.web.pages;

import java.util.List;

/**
 * Who got some of a food or of a lot.
 *
 * @param says how much was found; blank where nothing was asked
 * @param notices that not all of it is shown
 * @param csv where the same is had as a table; blank where nothing was asked
 */
public record TraceView(
    String food,
    String lot,
    List<String> foods,
    String says,
    List<String> notices,
    List<Line> lots,
    String csv) {
  /**
   * A lot on the way.
   *
   * @param began when it came into being; blank where nothing is logged of it
   * @param where phase, place and portions left
   * @param outs what left it, a line each
   */
  public record Line(
      String code, String food, String began, String where, List<Source> from, List<String> outs) {
    public Line {
      from = List.copyOf(from);
      outs = List.copyOf(outs);
    }
  }

  /** A lot that one came from. */
  public record Source(String code, String food) {}

  public TraceView {
    foods = List.copyOf(foods);
    notices = List.copyOf(notices);
    lots = List.copyOf(lots);
  }
}
