package chillwright.cli;

import java.io.PrintWriter;

/** Where a command speaks: results on standard output, words about the work on standard error. */
record Console(PrintWriter out, PrintWriter err) {
  void result(String text) {
    out.println(text);
    out.flush();
  }

  void word(String text) {
    err.println(text);
    err.flush();
  }
}
