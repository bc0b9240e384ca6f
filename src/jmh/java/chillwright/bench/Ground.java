package chillwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * Where a bench runs, and on what.
 *
 * @param folder its files, on the disk that the build is on
 */
record Ground(Path folder, Program program, Size size) {

  /** One group of lines of the table. */
  interface Group {
    List<Line> lines(Ground ground) throws Exception;
  }

  Path file(String name) {
    return folder.resolve(name);
  }

  /** The log that is imported; made once. */
  Path log() throws IOException {
    Path log = file("log.csv");
    return Files.exists(log) ? log : BenchLog.write(log, size.importLots(), 0);
  }

  /** A kitchen that once had so many lots and has some on hand; made once. */
  Path kitchen(int lots) throws IOException, InterruptedException {
    Path database = file("kitchen-" + lots + ".db");
    if (!Files.exists(database)) {
      Path log = KitchenLog.write(file("kitchen.csv"), lots, Instant.now());
      Run.of(importOf(log, database), folder).requireCode(0);
      Files.delete(log);
    }
    return database;
  }

  List<String> importOf(Path log, Path database) {
    return program.command("import", log.toString(), "--db", database.toString(), "--zone", "UTC");
  }

  /** Removes a database with the files that SQLite keeps beside it. */
  void remove(Path database) throws IOException {
    for (String end : List.of("", "-wal", "-shm", ".lock")) {
      Files.deleteIfExists(database.resolveSibling(database.getFileName() + end));
    }
  }

  /** Removes everything; what will not go is left, since a bench fails nothing. */
  static void clear(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException | UncheckedIOException e) {
      System.err.println("Some files of the bench are left: " + e.getMessage());
    }
  }
}
