package chillwright.web.pages;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

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

  Map<String, String> all() {
    Map<String, String> first = new HashMap<>();
    fields.keySet().forEach(name -> first.put(name, text(name)));
    return first;
  }

  boolean has(String name) {
    return !text(name).isEmpty();
  }
}
