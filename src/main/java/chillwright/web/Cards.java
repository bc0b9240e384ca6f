package chillwright.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The fields of a body as cells of text, so that a form and a request are read the same way. */
final class Cards {
  private Cards() {}

  /**
   * The fields that are there, each as text; an array of texts with blanks between them.
   *
   * @param texts fields that hold text
   * @param counts fields that hold a whole number
   * @param lists fields that hold an array of words
   * @throws RequestFault if a field is unknown or of another type
   */
  static Map<String, String> of(
      Body body, List<String> texts, List<String> counts, List<String> lists) {
    List<String> known = new ArrayList<>(texts);
    known.addAll(counts);
    known.addAll(lists);
    Fields fields = new Fields(body.json(), "", known);
    Map<String, String> cells = new LinkedHashMap<>();
    for (String name : texts) {
      fields.text(name).ifPresent(text -> cells.put(name, text));
    }
    for (String name : counts) {
      fields.node(name).flatMap(n -> count(fields, name, n)).ifPresent(t -> cells.put(name, t));
    }
    for (String name : lists) {
      fields.node(name).flatMap(n -> words(fields, name, n)).ifPresent(t -> cells.put(name, t));
    }
    fields.requireFaultless();
    return cells;
  }

  private static Optional<String> count(Fields fields, String name, JsonNode node) {
    if (!node.isIntegralNumber()) {
      fields.wrongType(name, node, "a whole number");
      return Optional.empty();
    }
    return Optional.of(node.toString());
  }

  private static Optional<String> words(Fields fields, String name, JsonNode node) {
    List<String> words = new ArrayList<>();
    if (!node.isArray()) {
      fields.wrongType(name, node, "an array of texts");
      return Optional.empty();
    }
    for (int i = 0; i < node.size(); i++) {
      boolean isWord = node.get(i).isTextual() && node.get(i).textValue().matches("[^\\s,]+");
      if (isWord) {
        words.add(node.get(i).textValue());
      } else {
        fields.wrongItem(name, i, node.get(i), "a word");
      }
    }
    return Optional.of(String.join(" ", words));
  }
}
