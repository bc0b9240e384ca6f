package chillwright.cli;

import chillwright.service.Progress;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/** Where a command speaks: results on standard output, words about the work on standard error. */
final class Console {
  /** Oftener than this nobody can read a number that runs. */
  private static final long EVERY_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  private final PrintWriter out;
  private final PrintWriter err;
  private final boolean isWatched;

  /** What of long work is counted, if its line stands there; it is this long, and this old. */
  private String counted = "";

  private int length;
  private long told;

  /**
   * @param isWatched whether standard output is a terminal, where a person sees what comes
   */
  Console(PrintWriter out, PrintWriter err, boolean isWatched) {
    this.out = out;
    this.err = err;
    this.isWatched = isWatched;
  }

  PrintWriter out() {
    return out;
  }

  PrintWriter err() {
    return err;
  }

  synchronized void result(String text) {
    clear();
    out.println(text);
    out.flush();
  }

  synchronized void word(String text) {
    clear();
    err.println(text);
    err.flush();
  }

  /**
   * Tells how far long work has come, on one line that makes room for what is said next. It goes to
   * the terminal only: not to a file, though the words about the work may go there.
   */
  Progress progress() {
    return isWatched ? this::tell : Progress.NONE;
  }

  private synchronized void tell(String what, long count) {
    long now = System.nanoTime();
    if (what.equals(counted) && now - told < EVERY_NANOS) {
      return;
    }
    String line = String.format(Locale.ROOT, "%s: %,d", what, count);
    out.print("\r" + line + " ".repeat(Math.max(0, length - line.length())));
    out.flush();
    counted = what;
    length = Math.max(length, line.length());
    told = now;
  }

  /** Wipes the line of progress, if there is one. */
  synchronized void clear() {
    if (length > 0) {
      out.print("\r" + " ".repeat(length) + "\r");
      out.flush();
      counted = "";
      length = 0;
    }
  }
}
