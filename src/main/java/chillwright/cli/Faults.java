package chillwright.cli;

import chillwright.core.log.Problem;
import chillwright.print.FaultText;

/** What a command says when it cannot go on, and with which exit code. */
final class Faults {
  /** Usage or input at fault. */
  static final int WRONG = 2;

  private Faults() {}

  /**
   * Says what went wrong; a fault of ours is passed on so that it is not mistaken for bad input.
   */
  static int report(Exception fault, Console console) throws Exception {
    console.clear();
    if (!(fault instanceof UsageFault usage)) {
      throw fault;
    }
    console.word(usage.getMessage());
    for (Problem problem : usage.problems()) {
      console.word(FaultText.line(problem));
    }
    return WRONG;
  }
}
