package chillwright.rulebook;

import chillwright.core.log.Problem;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Reads YAML 1.2 into a tree. A doubled key is refused, 041 is forty-one and "no" is a word. So is
 * a list or mapping that is repeated by an alias: each citation stands where its figure stands.
 */
final class YamlText {
  private YamlText() {}

  /** The tree of a file; empty, with a fault, where it is no YAML. */
  static Optional<Document> read(TextFile file, Faults faults) {
    try {
      Optional<JsonNode> made =
          file.isProven() ? Prepared.ofThisJar().tree(file) : Optional.empty();
      JsonNode root = made.orElseGet(() -> tree(file.text()));
      return Optional.of(new Document(file.name(), file.stem(), root, file.isProven()));
    } catch (MarkedYamlEngineException e) {
      String place = e.getProblemMark().map(YamlText::place).orElse("");
      faults.add(fault(file, place + e.getProblem()));
    } catch (YamlEngineException e) {
      faults.add(fault(file, e.getMessage()));
    } catch (StackOverflowError e) {
      // The library bounds aliases and length, and reads what is nested by calling itself.
      faults.add(fault(file, "it is nested too deeply"));
    }
    return Optional.empty();
  }

  /**
   * The tree of a text.
   *
   * @throws YamlEngineException if it is no YAML
   */
  static JsonNode tree(String text) {
    LoadSettings settings = LoadSettings.builder().setMaxAliasesForCollections(0).build();
    return node(new Load(settings).loadFromString(text));
  }

  /** People count lines and columns from 1. */
  private static String place(Mark mark) {
    return "line " + (mark.getLine() + 1) + ", column " + (mark.getColumn() + 1) + ": ";
  }

  private static Problem fault(TextFile file, String what) {
    String says = "%s. Look at the indentation, quotes and brackets there; the rest was not read.";
    return Spot.whole(file.name(), "").fault("yaml-syntax", "YAML 1.2", says.formatted(what));
  }

  private static JsonNode node(Object value) {
    JsonNodeFactory make = JsonNodeFactory.instance;
    if (value instanceof Map<?, ?> map) {
      ObjectNode node = make.objectNode();
      map.forEach((key, inner) -> node.set(String.valueOf(key), node(inner)));
      return node;
    }
    if (value instanceof List<?> list) {
      ArrayNode node = make.arrayNode();
      list.forEach(inner -> node.add(node(inner)));
      return node;
    }
    return scalar(value, make);
  }

  private static JsonNode scalar(Object value, JsonNodeFactory make) {
    if (value == null) {
      return make.nullNode();
    }
    if (value instanceof Boolean yes) {
      return make.booleanNode(yes);
    }
    if (value instanceof Double number && Double.isFinite(number)) {
      return make.numberNode(number);
    }
    if (value instanceof Integer || value instanceof Long || value instanceof BigInteger) {
      return make.numberNode(new BigInteger(value.toString()));
    }
    return make.textNode(value.toString());
  }
}
