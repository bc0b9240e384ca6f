package chillwright.web.pages;

import java.util.List;

/**
 * How jobs are done: the list of them, or one with its steps.
 *
 * @param limits those of the kitchen's rule set that the job is about, with where they are printed
 */
public record WaysView(List<Job> jobs, List<String> steps, List<String> limits) {
  public WaysView {
    jobs = List.copyOf(jobs);
    steps = List.copyOf(steps);
    limits = List.copyOf(limits);
  }

  /** A job to choose. */
  public record Job(String address, String title) {}
}
