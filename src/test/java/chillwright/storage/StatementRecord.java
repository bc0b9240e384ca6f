package chillwright.storage;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.StackWalker.StackFrame;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.logging.ErrorManager;
import java.util.logging.Handler;
import java.util.logging.LogRecord;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Writes down each statement that the program has SQLite prepare while the unit tests run, one a
 * line, for {@link StatementPlansIT}. The driver logs every text it prepares, so nothing passes
 * unseen, however it was made; the logging configuration of the tests puts this handler there.
 */
public final class StatementRecord extends Handler {
  /** The property that names the file, to the tests that write it and to the one that reads it. */
  static final String FILE = "chillwright.statements";

  /** What the driver logs before the text, the thread in the first brackets. */
  private static final Pattern PREPARED = Pattern.compile("(?s).*?\\[SQLite EXEC] (.*)");

  /** Statements that have a plan. */
  private static final Pattern PLANNED =
      Pattern.compile("(?is)(SELECT|INSERT|UPDATE|DELETE|REPLACE|WITH)\\b.*");

  private final Optional<Path> file = Optional.ofNullable(System.getProperty(FILE)).map(Path::of);
  private final Set<String> known = new HashSet<>();

  /** For the logging configuration, which makes it by name. */
  public StatementRecord() throws IOException {
    if (file.isPresent()) {
      Files.createDirectories(file.get().getParent());
      Files.writeString(file.get(), "");
    }
  }

  /** In the thread that prepares, since where it comes from tells whose statement it is. */
  @Override
  public synchronized void publish(LogRecord record) {
    Matcher prepared = PREPARED.matcher(record.getMessage());
    if (file.isEmpty() || !prepared.matches()) {
      return;
    }
    String text = prepared.group(1).strip().replaceAll("\\R", " ");
    if (PLANNED.matcher(text).matches() && !known.contains(text) && isOfTheProgram()) {
      known.add(text);
      write(file.get(), text);
    }
  }

  private void write(Path to, String text) {
    try {
      Files.writeString(to, text + "\n", StandardOpenOption.APPEND);
    } catch (IOException e) {
      reportError("a statement is missing from " + to, e, ErrorManager.WRITE_FAILURE);
      throw new UncheckedIOException(e);
    }
  }

  /** Whether the nearest class of ours is no test; those that pass on any text do not count. */
  private static boolean isOfTheProgram() {
    return StackWalker.getInstance(StackWalker.Option.RETAIN_CLASS_REFERENCE)
        .walk(frames -> frames.filter(StatementRecord::asks).findFirst())
        .map(frame -> !isTest(frame.getDeclaringClass()))
        .orElse(false);
  }

  private static boolean asks(StackFrame frame) {
    Class<?> type = frame.getDeclaringClass();
    return type.getName().startsWith("chillwright.")
        && type != StatementRecord.class
        && type != Connections.class;
  }

  private static boolean isTest(Class<?> type) {
    String from = type.getProtectionDomain().getCodeSource().getLocation().getPath();
    return from.endsWith("/test-classes/");
  }

  @Override
  public void flush() {}

  @Override
  public void close() {}
}
