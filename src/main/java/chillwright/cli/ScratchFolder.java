package chillwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** Folders of which nothing is kept. */
final class ScratchFolder {
  private ScratchFolder() {}

  static Path make(String name) {
    try {
      return Files.createTempDirectory(name);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  static void delete(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }
}
