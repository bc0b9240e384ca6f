package chillwright.web.pages;

import java.util.List;

/**
 * What to take out of the freezer, and what to use, day by day.
 *
 * @param says for how many portions on how many days it is
 * @param missing dishes for which the freezer holds too little
 * @param csv where the same is had as a table
 */
public record PullView(
    String says,
    List<Choice> spans,
    int days,
    List<Day> pulls,
    List<String> missing,
    String caution,
    String csv) {
  /** A day with its lots. */
  public record Day(String title, List<Line> lines) {
    public Day {
      lines = List.copyOf(lines);
    }
  }

  /** A lot, or a dish of a plan: where more is told of it, what comes out, and why. */
  public record Line(String address, String what, String why) {}

  public PullView {
    spans = List.copyOf(spans);
    pulls = List.copyOf(pulls);
    missing = List.copyOf(missing);
  }
}
