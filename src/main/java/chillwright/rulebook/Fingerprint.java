package chillwright.rulebook;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.zip.CRC32;

/**
 * A short mark of what a set of figures says. People edit a file and forget its version; the mark
 * changes all the same, so that lots judged by the old figures are noticed. It guards against
 * forgetting, not against malice, and is worked out at every start: a checksum does.
 */
final class Fingerprint {
  private final CRC32 sum = new CRC32();

  /** Adds a word, told apart from its neighbours by its length. */
  Fingerprint add(String word) {
    byte[] bytes = word.getBytes(StandardCharsets.UTF_8);
    mark('s', bytes.length);
    sum.update(bytes);
    return this;
  }

  /** Adds all that a tree says, in the order of its file. */
  Fingerprint add(JsonNode tree) {
    if (tree.isObject()) {
      mark('o', tree.size());
      tree.properties().forEach(field -> add(field.getKey()).add(field.getValue()));
    } else if (tree.isArray()) {
      mark('a', tree.size());
      tree.forEach(this::add);
    } else {
      mark(tree.isTextual() ? 't' : 'v', 0);
      add(tree.asText());
    }
    return this;
  }

  private void mark(char kind, int size) {
    sum.update(kind);
    for (int shift = 0; shift < Integer.SIZE; shift += Byte.SIZE) {
      sum.update(size >>> shift);
    }
  }

  /** Eight hex digits: enough to tell the few states of a folder apart. */
  String text() {
    return HexFormat.of().toHexDigits((int) sum.getValue());
  }
}
