package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * A process that has ended.
 *
 * @param nanos from its start to its end
 */
record Run(int code, long nanos, String out, String err) {

  /** Runs a command to its end in that folder, with further words of the environment. */
  static Run of(List<String> command, Path folder, Map<String, String> environment)
      throws IOException, InterruptedException {
    Path out = Files.createTempFile(folder, "run", ".out");
    Path err = Files.createTempFile(folder, "run", ".err");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().putAll(environment);
    long start = System.nanoTime();
    int code = builder.start().waitFor();
    long nanos = System.nanoTime() - start;
    Run run = new Run(code, nanos, Files.readString(out), Files.readString(err));
    Files.delete(out);
    Files.delete(err);
    return run;
  }

  static Run of(List<String> command, Path folder) throws IOException, InterruptedException {
    return of(command, folder, Map.of());
  }

  /** This run, if it ended as it should. */
  Run requireCode(int expected) {
    if (code != expected) {
      throw new IllegalStateException("a command ended with " + code + ": " + err + out);
    }
    return this;
  }
}
