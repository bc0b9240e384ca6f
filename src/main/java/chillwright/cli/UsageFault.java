package chillwright.cli;

import chillwright.core.log.Problem;
import java.util.List;

/** A command that cannot be carried out as given; ends with exit code 2 and says why. */
final class UsageFault extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  UsageFault(String says, List<Problem> problems) {
    super(says);
    this.problems = List.copyOf(problems);
  }

  List<Problem> problems() {
    return problems;
  }
}
