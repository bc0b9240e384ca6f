package chillwright.bench;

import java.io.IOException;
import java.nio.file.Path;

/** Writes a log for measuring: FILE LOTS [FAULTS]. */
final class GenerateLog {
  private GenerateLog() {}

  public static void main(String[] args) throws IOException {
    int faults = args.length > 2 ? Integer.parseInt(args[2]) : 0;
    BenchLog.write(Path.of(args[0]), Integer.parseInt(args[1]), faults);
  }
}
