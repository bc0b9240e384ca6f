package chillwright.paper;

import java.util.List;

/**
 * A plan to work by: what is done on each day, and between when and when.
 *
 * @param problems why there is no plan; empty with one
 * @param pans of the dishes, with their portions
 * @param shopping what is to be bought, week by week
 * @param bounds of each dish that stand beside no task, with the rule behind each
 * @param size of its pages
 */
public record RunSheet(
    RecordHead head,
    List<String> problems,
    List<Day> days,
    List<String> pans,
    List<Week> shopping,
    List<String> bounds,
    Sheet.Size size) {
  /** A day with what is done on it. */
  public record Day(String title, List<Task> tasks) {
    public Day {
      tasks = List.copyOf(tasks);
    }
  }

  /**
   * Something that is done.
   *
   * @param clock from when until when
   * @param uses what it holds meanwhile; blank for nothing
   * @param reason the bound that it keeps to; blank for none
   */
  public record Task(String clock, String dish, String step, String uses, String reason) {}

  /** A week with what is to be bought for it. */
  public record Week(String title, List<String> lines) {
    public Week {
      lines = List.copyOf(lines);
    }
  }

  public RunSheet {
    problems = List.copyOf(problems);
    days = List.copyOf(days);
    pans = List.copyOf(pans);
    shopping = List.copyOf(shopping);
    bounds = List.copyOf(bounds);
  }
}
