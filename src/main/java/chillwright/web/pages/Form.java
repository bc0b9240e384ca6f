package chillwright.web.pages;

import chillwright.service.OnceKey;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** The fields of a form as they were sent; a field that is not there is blank. */
final class Form {
  private final Map<String, List<String>> fields;

  Form(Map<String, List<String>> fields) {
    this.fields = Map.copyOf(fields);
  }

  String text(String name) {
    List<String> values = fields.getOrDefault(name, List.of());
    return values.isEmpty() ? "" : values.get(0).strip();
  }

  /** All values of a field that stands in the form several times, in its order. */
  List<String> values(String name) {
    return fields.getOrDefault(name, List.of()).stream().map(String::strip).toList();
  }

  Map<String, String> all() {
    Map<String, String> first = new HashMap<>();
    fields.keySet().forEach(name -> first.put(name, text(name)));
    return first;
  }

  /** All values of a field that may be ticked several times, with a blank between them. */
  String words(String name) {
    return String.join(" ", fields.getOrDefault(name, List.of()));
  }

  /** Names of the questions that were answered with a tick. */
  Set<String> answered() {
    return new HashSet<>(List.of(words("sure").strip().split("\\s+")));
  }

  /** Makes the same form, sent twice, count once. */
  Optional<OnceKey> once(String address) {
    if (!has("once")) {
      return Optional.empty();
    }
    Map<String, List<String>> sent = new TreeMap<>(fields);
    sent.remove("token");
    sent.remove("once");
    byte[] bytes = sent.toString().getBytes(StandardCharsets.UTF_8);
    return Optional.of(OnceKey.of(text("once"), "POST " + address, bytes));
  }

  /** The same with one value of that field. */
  Form with(String name, String value) {
    Map<String, List<String>> others = new HashMap<>(fields);
    others.put(name, List.of(value));
    return new Form(others);
  }

  /** The same with that field left blank. */
  Form without(String name) {
    Map<String, List<String>> others = new HashMap<>(fields);
    others.remove(name);
    return new Form(others);
  }

  boolean has(String name) {
    return !text(name).isEmpty();
  }
}
