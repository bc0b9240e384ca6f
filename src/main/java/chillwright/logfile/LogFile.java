package chillwright.logfile;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

/**
 * A log file to be read.
 *
 * @param name as faults will show it
 * @param path where it lies
 */
public record LogFile(String name, Path path) {
  public LogFile {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(path, "path");
  }

  /** A file that is known by the path it was given with. */
  public static LogFile of(Path path) {
    return new LogFile(path.toString(), path);
  }

  /** Files that are known by the paths they were given with. */
  public static List<LogFile> of(List<Path> paths) {
    return paths.stream().map(LogFile::of).toList();
  }
}
