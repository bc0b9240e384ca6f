package chillwright.logfile;

import chillwright.core.log.Problem.Where;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Problem.Where.InFile;

/** Where a row stands: a line of a file, or an object in a request. */
public record Place(Where row) {
  public static Place line(String file, long line) {
    return new Place(new InFile(file, line, ""));
  }

  /**
   * In a request.
   *
   * @param pointer JSON pointer of the object that holds the fields, such as "/entries/0"; empty
   *     for the whole body
   */
  public static Place object(String pointer) {
    return new Place(new InField("", pointer));
  }

  Where cell(String title) {
    return row.at(title);
  }
}
