package chillwright.web.pages;

import java.util.List;

/**
 * How jobs are done: the list of them, or one with its steps.
 *
 * @param foods what becomes of foods then; mostly none
 * @param links pages that the job needs, mostly none
 * @param limits those of the kitchen's rule set that the job is about, with where they are printed
 */
public record WaysView(
    List<Job> jobs, List<String> steps, List<String> limits, List<Part> foods, List<Job> links) {
  public WaysView {
    jobs = List.copyOf(jobs);
    steps = List.copyOf(steps);
    limits = List.copyOf(limits);
    foods = List.copyOf(foods);
    links = List.copyOf(links);
  }

  /** A job to choose. */
  public record Job(String address, String title) {}
}
