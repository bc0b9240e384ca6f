package chillwright.core.log;

import java.util.Objects;

/**
 * One fault of an input, the same shape for files, requests, rule files and the command line.
 *
 * @param code stable key of the kind of fault, such as "unknown-column"
 * @param where place of the fault
 * @param given what was given, as given; may be empty where something is missing
 * @param allowed what is allowed
 * @param says one sentence a cook can act on: what is wrong and what to do
 */
public record Problem(String code, Where where, String given, String allowed, String says) {
  /** Where a fault stands. */
  public sealed interface Where {
    /** The cell of that column, in the row that this place is. */
    Where at(String column);

    /** In a file; line 1 is the first, column is the header's name, empty for the whole line. */
    record InFile(String file, long line, String column) implements Where {
      @Override
      public Where at(String cell) {
        return new InFile(file, line, cell);
      }
    }

    /** In a request body or rule file: a JSON pointer such as "/entries/0/temperature". */
    record InField(String file, String pointer) implements Where {
      @Override
      public Where at(String cell) {
        return new InField(file, pointer + "/" + cell);
      }
    }
  }

  public Problem {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(where, "where");
    Objects.requireNonNull(given, "given");
    Objects.requireNonNull(allowed, "allowed");
    Objects.requireNonNull(says, "says");
  }
}
