package chillwright.rulebook;

import chillwright.core.log.Problem;
import java.util.List;
import java.util.stream.Collectors;

/** Rule or keeping files that cannot be used: nothing was loaded, and every fault is listed. */
public final class BrokenRules extends Exception {
  private final List<Problem> problems;

  BrokenRules(List<Problem> problems) {
    super(problems.stream().map(Problem::says).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** All faults of all files; at least one. Each has its place as file and JSON pointer. */
  public List<Problem> problems() {
    return problems;
  }
}
