package chillwright.rulebook;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.SchemaLocation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The schemas' own words. Each description completes the sentence "Write ...", so what is allowed
 * at a place is said once, beside the check itself.
 */
final class SchemaText {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Map<String, JsonNode> READ = new ConcurrentHashMap<>();

  private SchemaText() {}

  /** What the nearest described schema around a keyword asks for. */
  static String describe(SchemaLocation keyword) {
    return around(keyword).stream()
        .map(schema -> schema.path("description").asText())
        .filter(words -> !words.isEmpty())
        .findFirst()
        .orElse("what the schema asks for");
  }

  /** What is asked for under a key, seen from a keyword of the mapping around it. */
  static String describe(SchemaLocation keyword, String key) {
    String file = file(keyword);
    return around(keyword).stream()
        .map(schema -> schema.path("properties").path(key))
        .filter(JsonNode::isObject)
        .findFirst()
        .flatMap(schema -> description(file, schema))
        .orElseGet(() -> describe(keyword));
  }

  /** The keys that the mapping around a keyword may have. */
  static List<String> keys(SchemaLocation keyword) {
    List<String> keys = new ArrayList<>();
    around(keyword).stream()
        .map(schema -> schema.path("properties"))
        .filter(JsonNode::isObject)
        .findFirst()
        .ifPresent(properties -> properties.fieldNames().forEachRemaining(keys::add));
    return keys;
  }

  /** The description of a schema, or of the one it refers to. */
  private static Optional<String> description(String file, JsonNode schema) {
    if (schema.has("description")) {
      return Optional.of(schema.path("description").asText());
    }
    String[] reference = schema.path("$ref").asText().split("#", 2);
    if (reference.length < 2) {
      return Optional.empty();
    }
    String other = reference[0].isEmpty() ? file : "rulebook/" + reference[0];
    return description(other, root(other).at(reference[1]));
  }

  /** The schemas around a keyword, nearest first. */
  private static List<JsonNode> around(SchemaLocation keyword) {
    JsonNode root = root(file(keyword));
    String pointer = keyword.getFragment().toString();
    List<JsonNode> schemas = new ArrayList<>();
    while (pointer.contains("/")) {
      pointer = pointer.substring(0, pointer.lastIndexOf('/'));
      schemas.add(root.at(pointer));
    }
    return schemas;
  }

  private static String file(SchemaLocation location) {
    return location.getAbsoluteIri().toString().replace("classpath:", "");
  }

  private static JsonNode root(String file) {
    return READ.computeIfAbsent(file, SchemaText::read);
  }

  private static JsonNode read(String file) {
    try {
      return JSON.readTree(Shipped.text(file));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("not JSON in the jar: " + file, e);
    }
  }
}
