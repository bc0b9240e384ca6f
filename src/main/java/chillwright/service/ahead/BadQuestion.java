package chillwright.service.ahead;

import chillwright.core.log.Problem;
import java.util.List;

/** A question that cannot be answered as asked; every fault is listed. */
public final class BadQuestion extends Exception {
  private static final long serialVersionUID = 1L;

  private final transient List<Problem> problems;

  BadQuestion(List<Problem> problems) {
    super(problems.size() + " faults");
    this.problems = List.copyOf(problems);
  }

  /** At least one; the place of each is the name of a parameter. */
  public List<Problem> problems() {
    return problems;
  }
}
