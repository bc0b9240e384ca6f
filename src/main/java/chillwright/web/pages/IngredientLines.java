package chillwright.web.pages;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * Ingredients as a cook types them, one line each: "2 kg flour", "1 1/2 cups milk", "6 eggs",
 * "salt". A figure that stands first is the amount, the word after it the unit where another
 * follows, the rest the name.
 */
final class IngredientLines {
  private static final String FIGURE = "\\d{1,7}(?:[.,]\\d{1,4})?";
  private static final Pattern LINE =
      Pattern.compile(
          "(?:"
              + "(?:(?<whole>\\d{1,4})\\s+)?(?<over>\\d{1,3})/(?<under>[1-9]\\d{0,2})(?!\\d)"
              + "|(?<figure>"
              + FIGURE
              + ")(?![\\d.,/])"
              + ")?\\s*(?<rest>.*)");

  private IngredientLines() {}

  /** As they are kept; a line without a name keeps a blank one, which is at fault then. */
  static ArrayNode read(String lines) {
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    lines
        .lines()
        .map(String::strip)
        .filter(line -> !line.isEmpty())
        .forEach(line -> add(list, line));
    return list;
  }

  private static void add(ArrayNode list, String line) {
    Matcher parts = LINE.matcher(line.replace("½", " 1/2").replace("¼", " 1/4").strip());
    if (!parts.matches()) {
      throw new IllegalStateException("every line has a rest: " + line);
    }
    ObjectNode one = list.addObject();
    String rest = parts.group("rest").strip();
    boolean hasAmount = parts.group("figure") != null || parts.group("over") != null;
    int blank = rest.indexOf(' ');
    if (hasAmount && blank > 0) {
      one.put("unit", rest.substring(0, blank));
    }
    one.put("name", hasAmount && blank > 0 ? rest.substring(blank + 1).strip() : rest);
    if (hasAmount) {
      one.put("amount", amount(parts));
    }
  }

  private static BigDecimal amount(Matcher parts) {
    if (parts.group("figure") != null) {
      return new BigDecimal(parts.group("figure").replace(',', '.'));
    }
    BigDecimal whole = new BigDecimal(parts.group("whole") == null ? "0" : parts.group("whole"));
    BigDecimal under = new BigDecimal(parts.group("under"));
    return whole.add(new BigDecimal(parts.group("over")).divide(under, 4, RoundingMode.HALF_UP));
  }

  /** As they stand in a form. */
  static String text(JsonNode list) {
    return StreamSupport.stream(list.spliterator(), false)
        .map(IngredientLines::line)
        .collect(Collectors.joining("\n"));
  }

  private static String line(JsonNode one) {
    JsonNode amount = one.path("amount");
    String figure =
        amount.isNumber()
            ? amount.decimalValue().stripTrailingZeros().toPlainString()
            : amount.asText();
    return Stream.of(figure, one.path("unit").asText(), one.path("name").asText())
        .filter(part -> !part.isBlank())
        .collect(Collectors.joining(" "));
  }
}
