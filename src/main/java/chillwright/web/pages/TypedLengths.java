package chillwright.web.pages;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Lengths of time in the form of a dish that were typed with their unit, as they were typed; the
 * tree keeps a bare figure in the unit of the field.
 */
final class TypedLengths {
  private TypedLengths() {}

  /** By the place in the dish, as {@link PlanTree#fields} names it. */
  static Map<String, String> of(Form form) {
    Map<String, String> typed = new LinkedHashMap<>();
    for (String list : List.of("make", "finish")) {
      int kept = 0;
      for (int row = 0; row < PlanTree.MOST_ROWS; row++) {
        String at = list + "/" + row + "/";
        if (form.has(at + "step") || form.has(at + "minutes")) {
          put(typed, list + "/" + kept++ + "/minutes", form.text(at + "minutes"));
        }
      }
    }
    List.of("thawHours", "holdMinutes").forEach(name -> put(typed, name, form.text(name)));
    return typed;
  }

  private static void put(Map<String, String> typed, String at, String text) {
    if (!text.matches("[0-9.,]*")) {
      typed.put(at, text);
    }
  }

  /** The same by the place in the tree. */
  static Map<String, String> under(String dish, Map<String, String> typed) {
    Map<String, String> places = new LinkedHashMap<>();
    typed.forEach((at, text) -> places.put(dish + "/" + at, text));
    return places;
  }
}
