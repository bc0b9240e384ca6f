package chillwright.print;

import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Problem.Where.InFile;

/** One fault as a line: where, what is wrong and what to do. */
public final class FaultText {
  private FaultText() {}

  /** "week-1.csv, line 12, temperature: …". */
  public static String line(Problem problem) {
    return where(problem.where()) + ": " + problem.says();
  }

  private static String where(Problem.Where where) {
    if (where instanceof InFile in) {
      String column = in.column().isEmpty() ? "" : ", " + in.column();
      return in.file() + ", line " + in.line() + column;
    }
    InField in = (InField) where;
    return in.file().isEmpty() ? in.pointer() : in.file() + " " + in.pointer();
  }
}
