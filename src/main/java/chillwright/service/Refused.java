package chillwright.service;

import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import java.util.List;
import java.util.stream.Collectors;

/** Something told or asked that the kitchen does not take, with every fault; nothing was stored. */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What kind of refusal it is. */
  public enum Why {
    /** What was given has faults. */
    FAULTS,
    /** A lot of that code exists already. */
    LOT_EXISTS,
    /** A day is closed, or open, already. */
    DAY_STANDS,
    /** The key was used for another request. */
    KEY_REUSED
  }

  private final Why why;
  private final transient List<Problem> problems;

  Refused(Why why, List<Problem> problems) {
    super(problems.stream().map(Problem::says).collect(Collectors.joining(" ")));
    this.why = why;
    this.problems = List.copyOf(problems);
  }

  /** For one fault in a field of a request. */
  static Refused field(Why why, Problem problem) {
    return new Refused(why, List.of(problem));
  }

  static Problem problem(String code, String pointer, String given, String allowed, String says) {
    return new Problem(code, new InField("", pointer), given, allowed, says);
  }

  public Why why() {
    return why;
  }

  /** At least one. */
  public List<Problem> problems() {
    return problems;
  }
}
