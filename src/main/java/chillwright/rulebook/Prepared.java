package chillwright.rulebook;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * The trees of this jar's own files as the build has read them, since reading YAML takes a good
 * part of a short command. Each is used only for the very text that it was made of; any other text,
 * and all of them where nothing was prepared, is read as YAML.
 */
final class Prepared {
  private static final String RESOURCE = "rules/prepared.trees";

  private final Map<String, Made> byName = new HashMap<>();

  /** A tree in bytes, and the sum of the text that it was made of. */
  private record Made(long sum, ByteBuffer tree) {}

  /** What this jar holds, read with the first file that asks. */
  private static final class OfThisJar {
    static final Prepared FILES = read();

    private static Prepared read() {
      try (InputStream in = Prepared.class.getResourceAsStream("/" + RESOURCE)) {
        return in == null ? new Prepared() : Prepared.read(in.readAllBytes());
      } catch (IOException broken) {
        throw new UncheckedIOException(broken);
      }
    }
  }

  private Prepared() {}

  static Prepared ofThisJar() {
    return OfThisJar.FILES;
  }

  /** Run by the build: prepares the files in that folder of compiled classes, and marks those. */
  public static void main(String[] args) throws IOException {
    Path classes = Path.of(args[0]);
    JudgingMark.write(classes);
    Path target = classes.resolve(RESOURCE);
    // What an earlier build prepared must not be read here.
    Files.deleteIfExists(target);
    Files.write(target, write(Shipped.files()));
  }

  /** Prepares those files. */
  static byte[] write(List<TextFile> files) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeInt(files.size());
      for (TextFile file : files) {
        write(file, out);
      }
    }
    return bytes.toByteArray();
  }

  private static void write(TextFile file, DataOutputStream out) throws IOException {
    ByteArrayOutputStream tree = new ByteArrayOutputStream();
    try (DataOutputStream nodes = new DataOutputStream(tree)) {
      TreeBytes.write(YamlText.tree(file.text()), nodes);
    }
    out.writeUTF(file.name());
    out.writeLong(sum(file.text()));
    out.writeInt(tree.size());
    tree.writeTo(out);
  }

  static Prepared read(byte[] bytes) throws IOException {
    Prepared prepared = new Prepared();
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      int count = in.readInt();
      for (int i = 0; i < count; i++) {
        String name = in.readUTF();
        prepared.byName.put(
            name, new Made(in.readLong(), ByteBuffer.wrap(in.readNBytes(in.readInt()))));
      }
    }
    return prepared;
  }

  /** A tree of its own for each caller; empty where none was made of this text. */
  Optional<JsonNode> tree(TextFile file) {
    return Optional.ofNullable(byName.get(file.name()))
        .filter(made -> made.sum() == sum(file.text()))
        .map(made -> tree(made.tree().array()));
  }

  private static JsonNode tree(byte[] bytes) {
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      return TreeBytes.read(in);
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static long sum(String text) {
    CRC32 sum = new CRC32();
    sum.update(text.getBytes(StandardCharsets.UTF_8));
    return sum.getValue();
  }
}
