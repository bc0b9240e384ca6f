package chillwright.rulebook;

import chillwright.core.log.Problem;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.Iterator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * A place in a file and what stands there; a missing node where nothing does.
 *
 * @param pointer JSON pointer, empty for the whole file
 */
record Spot(String file, String pointer, JsonNode node) {
  /** As much of what was given as fits into a message. */
  private static final int SHOWN = 80;

  static Spot whole(Document document) {
    return new Spot(document.file(), "", document.root());
  }

  /** A file or folder as a whole, with what of it is at fault. */
  static Spot whole(String file, String given) {
    return new Spot(file, "", TextNode.valueOf(given));
  }

  Spot at(String key) {
    return new Spot(file, pointer + "/" + escaped(key), node.path(key));
  }

  /** The places of a list; none where this is no list. */
  List<Spot> items() {
    return IntStream.range(0, node.isArray() ? node.size() : 0)
        .mapToObj(index -> new Spot(file, pointer + "/" + index, node.path(index)))
        .toList();
  }

  /** The keys of a mapping, in the order of the file; none where this is no mapping. */
  List<String> keys() {
    Iterator<String> names = node.fieldNames();
    Iterable<String> once = () -> names;
    Stream<String> keys = StreamSupport.stream(once.spliterator(), false);
    return keys.toList();
  }

  boolean has(String key) {
    return node.has(key);
  }

  String text() {
    return node.asText();
  }

  String text(String key) {
    return node.path(key).asText();
  }

  /** A fault of what stands here; its sentence begins with the place. */
  Problem fault(String code, String allowed, String says) {
    return new Problem(code, where(), shown(node), allowed, named(file, pointer) + ": " + says);
  }

  private Problem.Where where() {
    return new Problem.Where.InField(file, pointer);
  }

  /** A place as people read it in a sentence: the file, then the keys that lead there. */
  static String named(String file, String pointer) {
    if (pointer.isEmpty()) {
      return file;
    }
    String path = pointer.substring(1).replace("/", ", ");
    String keys = path.replace("~1", "/").replace("~0", "~");
    return file.isEmpty() ? keys : file + ", " + keys;
  }

  /** What stands there, as text; cut short where it is long. */
  static String shown(JsonNode node) {
    String text = node.isMissingNode() ? "" : node.isTextual() ? node.asText() : node.toString();
    return text.length() <= SHOWN ? text : text.substring(0, SHOWN) + "...";
  }

  static String escaped(String key) {
    return key.replace("~", "~0").replace("/", "~1");
  }

  static boolean isIn(String pointer, String outer) {
    return pointer.equals(outer) || pointer.startsWith(outer + "/");
  }
}
