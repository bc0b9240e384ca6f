package chillwright.cli;

import chillwright.service.Progress;
import java.io.PrintWriter;

/**
 * Where a command speaks: results on standard output, words about the work on standard error.
 *
 * @param isWatched whether a person sees standard error as it comes
 */
record Console(PrintWriter out, PrintWriter err, boolean isWatched) {
  void result(String text) {
    out.println(text);
    out.flush();
  }

  void word(String text) {
    err.println(text);
    err.flush();
  }

  /** Tells how far long work has come, on one line, where a person watches. */
  Progress progress() {
    if (!isWatched) {
      return Progress.NONE;
    }
    return (what, count) -> {
      err.print("\r" + what + ": " + count + "   ");
      err.flush();
    };
  }
}
