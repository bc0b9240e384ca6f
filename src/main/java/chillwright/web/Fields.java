package chillwright.web;

import chillwright.core.log.Nearest;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Reads the fields of a JSON object, and gathers what is wrong with them. */
final class Fields {
  private final ObjectNode object;
  private final String pointer;
  private final List<Problem> problems = new ArrayList<>();

  /**
   * @param pointer where the object stands; empty for the whole body
   * @param known all fields it may have
   */
  Fields(ObjectNode object, String pointer, List<String> known) {
    this.object = object;
    this.pointer = pointer;
    object
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                problems.add(unknown(name, known));
              }
            });
  }

  private Problem unknown(String name, List<String> known) {
    String shown = Shown.text(name);
    return new Problem(
        "unknown-field",
        at(name),
        shown,
        String.join(", ", known),
        "\"%s\" is no field here.%s".formatted(shown, Nearest.question(name, known)));
  }

  private InField at(String name) {
    return new InField("", pointer + "/" + Shown.text(name).replace("~", "~0").replace("/", "~1"));
  }

  List<Problem> problems() {
    return problems;
  }

  /**
   * @throws RequestFault if anything was wrong so far
   */
  void requireFaultless() {
    if (!problems.isEmpty()) {
      throw RequestFault.wrong(problems);
    }
  }

  /** What is there; a null counts as left out. */
  Optional<JsonNode> node(String name) {
    return Optional.ofNullable(object.get(name)).filter(node -> !node.isNull());
  }

  Optional<String> text(String name) {
    Optional<JsonNode> node = node(name);
    node.filter(given -> !given.isTextual()).ifPresent(given -> wrongType(name, given, "text"));
    return node.filter(JsonNode::isTextual).map(JsonNode::textValue);
  }

  /** Text that stands for something; what it cannot stand for is a fault. */
  <T> Optional<T> read(
      String name, String code, String allowed, Function<String, Optional<T>> reader) {
    Optional<String> given = text(name);
    Optional<T> found = given.flatMap(reader);
    if (given.isPresent() && found.isEmpty()) {
      refuse(name, code, given.get(), allowed);
    }
    return found;
  }

  void refuse(String name, String code, String given, String allowed) {
    String says = "\"%s\" cannot be %s: give %s.".formatted(Shown.text(given), name, allowed);
    refuse(name, code, given, allowed, says);
  }

  void refuse(String name, String code, String given, String allowed, String says) {
    problems.add(new Problem(code, at(name), Shown.text(given), allowed, says));
  }

  void missing(String name, String allowed) {
    problems.add(
        new Problem(
            "missing",
            at(name),
            "",
            allowed,
            "\"%s\" is missing: give %s.".formatted(name, allowed)));
  }

  void wrongType(String name, JsonNode given, String allowed) {
    wrongType(at(name), name, given, allowed);
  }

  /** For one item of a list. */
  void wrongItem(String name, int index, JsonNode given, String allowed) {
    InField at = new InField("", at(name).pointer() + "/" + index);
    wrongType(at, name + " " + index, given, allowed);
  }

  private void wrongType(InField at, String name, JsonNode given, String allowed) {
    problems.add(
        new Problem(
            "wrong-type",
            at,
            Shown.json(given),
            allowed,
            "\"%s\" must be %s, not %s.".formatted(name, allowed, Shown.kind(given))));
  }
}
