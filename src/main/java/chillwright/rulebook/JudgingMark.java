package chillwright.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/**
 * A mark of the code that judges lots and works out their dates. What is stored was made by it, so
 * a kitchen opened by another program has its lots judged anew. The build makes it of the compiled
 * classes: another compiler may change it for nothing, which costs one round of judging.
 */
final class JudgingMark {
  private static final String RESOURCE = "rules/judging.mark";
  private static final String CORE = "chillwright/core";
  private static final List<String> ROOMS = List.of("keeping", "log", "measure", "rules");

  private JudgingMark() {}

  /** The mark of this jar; empty where no build made one. */
  static String ofThisJar() {
    try (InputStream in = JudgingMark.class.getResourceAsStream("/" + RESOURCE)) {
      return in == null ? "" : new String(in.readAllBytes(), StandardCharsets.US_ASCII);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  /** Run by the build: writes the mark of that folder of compiled classes into it. */
  static void write(Path classes) throws IOException {
    Files.writeString(classes.resolve(RESOURCE), of(classes));
  }

  static String of(Path classes) throws IOException {
    CRC32 sum = new CRC32();
    for (String room : ROOMS) {
      for (Path file : files(classes.resolve(CORE).resolve(room))) {
        sum.update(file.getFileName().toString().getBytes(StandardCharsets.UTF_8));
        sum.update(Files.readAllBytes(file));
      }
    }
    return "%08x".formatted(sum.getValue());
  }

  private static List<Path> files(Path room) throws IOException {
    try (Stream<Path> files = Files.list(room)) {
      return files.sorted().collect(Collectors.toList());
    }
  }
}
