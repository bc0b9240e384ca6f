package chillwright.web;

import chillwright.logfile.Texts;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.Locale;

/** What was given, as an answer may show it: short, and nothing in it that misleads a reader. */
final class Shown {
  private Shown() {}

  static String text(String given) {
    return Texts.shown(given);
  }

  /** The value as text, whatever its type. */
  static String json(JsonNode given) {
    return text(given.isTextual() ? given.textValue() : given.toString());
  }

  /** The kind of value, such as "an array". */
  static String kind(JsonNode given) {
    return switch (given.getNodeType()) {
      case ARRAY, OBJECT -> "an " + given.getNodeType().name().toLowerCase(Locale.ROOT);
      case STRING -> "text";
      case NUMBER -> "a number";
      case BOOLEAN -> given.toString();
      case NULL, MISSING, BINARY, POJO -> "null";
    };
  }
}
