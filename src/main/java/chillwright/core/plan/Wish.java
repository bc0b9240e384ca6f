package chillwright.core.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * What a plan has of a dish where that can be: safe and legal without, but better so.
 *
 * @param isAhead a dish made ahead and kept cold is made on the day before it is served, or earlier
 * @param isWatched the limits of its cooling fall while somebody is there to read it
 */
record Wish(boolean isAhead, boolean isWatched) {
  static final Wish NONE = new Wish(false, false);

  /** What is given up first: a day ahead, then a reading, which is asked for out of hours. */
  static final List<Wish> ALL =
      List.of(new Wish(true, true), new Wish(false, true), new Wish(true, false), NONE);

  /** The dishes, each with what it can have by itself; the first as wished for at most. */
  static List<Job> jobs(List<Window> windows, Grid grid, Wish most) {
    Timetable empty = new Timetable(grid);
    List<Job> jobs = new ArrayList<>();
    for (Window window : windows) {
      jobs.add(
          ALL.stream()
              .filter(wish -> most.isAhead || !wish.isAhead)
              .filter(wish -> most.isWatched || !wish.isWatched)
              .map(wish -> Job.of(window, grid, wish))
              .filter(job -> hasRoom(job, empty))
              .findFirst()
              .orElseGet(() -> Job.of(window, grid, NONE)));
    }
    return jobs;
  }

  private static boolean hasRoom(Job job, Timetable empty) {
    for (int make = job.makeTo(); make >= job.makeFrom(); make--) {
      if (empty.fit(job.make(), make)) {
        return true;
      }
    }
    return false;
  }
}
