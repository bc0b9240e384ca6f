package chillwright.web.pages;

import chillwright.core.log.Category;
import chillwright.core.plan.Dish.Route;
import chillwright.core.plan.Thawing;
import chillwright.print.Figures;
import chillwright.rulebook.Handbook;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Steps that can hardly be meant: food that needs the cold and stands out, and thawing that is too
 * short to be, which is most often hours typed as minutes. Of a piece whose weight stands in the
 * name of its dish or step the shortest printed time counts, else that of a pound.
 */
final class ThawDoubt {
  /** The shortest advice of shops for a refrigerator, four hours a pound; it is no limit. */
  private static final double HOURS_OF_POUND = 4;

  private static final double POUNDS_IN_KILOGRAM = 2.20462;

  private static final Pattern WEIGHT = Pattern.compile("(\\d+(?:[.,]\\d+)?)\\s*(lb|kg)\\b");
  private static final Pattern STEP = Pattern.compile("(make|finish)/\\d+/step");
  private static final Pattern FROZEN = Pattern.compile("frozen|congelad");

  /** What cooks raw food through, which no minutes of one digit do; by no means all that does. */
  private static final Pattern COOKS =
      Pattern.compile("roast|bake|braise|stew|simmer|smoke|asar|asado|horn|guis|estof|ahum");

  /** Where food that needs the cold stands without it. */
  private static final Pattern OUT =
      Pattern.compile(
          "counter|room temp|(leave|left|stand|sit|rest)s?( it)? out|on the (table|bench|stove)"
              + "|encimera|(en|sobre) la mesa|temperatura ambiente|(dejar|reposar).* fuera");

  /** So long food may be out: USDA, refrigerate within 2 hours; thawing there is never right. */
  private static final int OUT_MINUTES = 120;

  /** A bare figure below this is rather hours: common practice, no source. */
  private static final double LEAST_MINUTES = 10;

  private final Map<String, String> fields;
  private final Map<String, String> before;
  private final Map<String, String> typed;
  private final Visitor visitor;

  private final boolean isRaw;

  private ThawDoubt(
      Map<String, String> fields,
      Map<String, String> before,
      Map<String, String> typed,
      boolean isRaw,
      Visitor visitor) {
    this.fields = fields;
    this.before = before;
    this.typed = typed;
    this.isRaw = isRaw;
    this.visitor = visitor;
  }

  /**
   * What is asked of a dish, by the place in the tree.
   *
   * @param before the same dish as it is kept; what stood there already is not asked about again
   * @param typed lengths of time that were typed with their unit
   */
  static Map<String, Question> of(
      String at,
      Map<String, String> fields,
      Map<String, String> before,
      Map<String, String> typed,
      Category category,
      Visitor visitor) {
    Map<String, Question> asked = new LinkedHashMap<>();
    if (category.tcs()) {
      new ThawDoubt(fields, before, typed, !category.readyToEat(), visitor).ask(at + "/", asked);
    }
    return asked;
  }

  private void ask(String at, Map<String, Question> asked) {
    fields.forEach(
        (field, step) -> {
          if (STEP.matcher(field).matches() && Thawing.isSlow(step)) {
            String minutes = field.replace("/step", "/minutes");
            boolean isKnown = step.equals(before.get(field));
            ask(at, minutes, step, 1, isKnown, asked);
          }
        });
    steps().forEach(field -> askOut(at, field, asked));
    if (fields.getOrDefault("route", "").equals(Route.FROZEN.text())) {
      ask(at, "thawHours", "", 60, true, asked);
    }
    if (isRaw) {
      steps().forEach(field -> askCooked(at, field, asked));
      askThawed(at, asked);
    }
  }

  private List<String> steps() {
    return fields.keySet().stream()
        .filter(field -> STEP.matcher(field).matches())
        .filter(field -> !fields.get(field).isEmpty())
        .toList();
  }

  /** "Cool on the counter overnight". */
  private void askOut(String at, String field, Map<String, Question> asked) {
    String step = fields.get(field);
    String minutes = field.replace("/step", "/minutes");
    String given = fields.getOrDefault(minutes, "");
    double lasts = given.matches("\\d+(\\.\\d+)?") ? Double.parseDouble(given) : 0;
    boolean isLong = lasts > OUT_MINUTES || Thawing.isNamed(step);
    boolean isSame = step.equals(before.get(field)) && given.equals(before.get(minutes));
    if (isLong && !isSame && OUT.matcher(step.toLowerCase(Locale.ROOT)).find()) {
      String says = visitor.say("plans.doubt.out", step, time(lasts));
      asked.put(at + minutes, Question.of("out", field + step + given, says));
    }
  }

  /** "Roast, 4": minutes where hours are meant. */
  private void askCooked(String at, String field, Map<String, Question> asked) {
    String step = fields.get(field);
    String minutes = field.replace("/step", "/minutes");
    String given = fields.getOrDefault(minutes, "");
    boolean isShort = given.matches("\\d+(\\.\\d+)?") && Double.parseDouble(given) < LEAST_MINUTES;
    boolean isSame = step.equals(before.get(field)) && given.equals(before.get(minutes));
    if (isShort && !isSame && COOKS.matcher(step.toLowerCase(Locale.ROOT)).find()) {
      String says = visitor.say("plans.doubt.heat", given, step);
      asked.putIfAbsent(at + minutes, Question.of("heat", field + step + given, says));
    }
  }

  /** A frozen bird of which no step thaws anything. */
  private void askThawed(String at, Map<String, Question> asked) {
    String all = named() + " " + String.join(" ", steps().stream().map(fields::get).toList());
    List<String> steps = steps();
    boolean isFrozen = FROZEN.matcher(named().toLowerCase(Locale.ROOT)).find();
    boolean isKnown = fields.getOrDefault("dish", "").equals(before.get("dish"));
    boolean isThawed = steps.stream().map(fields::get).anyMatch(Thawing::isNamed);
    if (isFrozen && !isThawed && !isKnown && !steps.isEmpty()) {
      String says = visitor.say("plans.doubt.unthawed");
      asked.putIfAbsent(
          at + steps.get(0).replace("/step", "/minutes"), Question.of("thaw", all, says));
    }
  }

  /** What it is called and what is bought for it. */
  private String named() {
    return fields.getOrDefault("dish", "") + " " + fields.getOrDefault("ingredients", "");
  }

  private void ask(
      String at,
      String field,
      String step,
      int each,
      boolean isKnown,
      Map<String, Question> asked) {
    String given = fields.getOrDefault(field, "");
    double minutes = given.matches("\\d+(\\.\\d+)?") ? Double.parseDouble(given) * each : 0;
    double least = least(step) * 60;
    boolean isSame = isKnown && given.equals(before.get(field));
    if (minutes > 0 && minutes < least && !isSame) {
      String bare = each == 1 ? "plans.doubt.thaw" : "plans.doubt.thaw.hours";
      String key = typed.containsKey(field) ? "plans.doubt.thaw.unit" : bare;
      String says = visitor.say(key, time(minutes), time(least), given);
      asked.put(at + field, Question.of("thaw", field + step + given, says));
    }
  }

  private static String time(double minutes) {
    return Figures.duration(Duration.ofMinutes(Math.round(minutes)));
  }

  private double least(String step) {
    OptionalDouble weight = weight(step);
    var figures = Handbook.shipped().thawing();
    var piece = new chillwright.core.heat.Thawing(weight.orElse(1), figures);
    if (Thawing.isInWater(step)) {
      return piece.coldWater().shortest();
    }
    return weight.isPresent() ? piece.refrigerator().shortest() : HOURS_OF_POUND;
  }

  /** In pounds, of the one piece that is named. */
  private OptionalDouble weight(String step) {
    String bought = isRaw ? named() : fields.getOrDefault("dish", "");
    Matcher named = WEIGHT.matcher(step + " " + bought);
    if (!named.find()) {
      return OptionalDouble.empty();
    }
    double amount = new BigDecimal(named.group(1).replace(',', '.')).doubleValue();
    double pounds = named.group(2).equals("kg") ? amount * POUNDS_IN_KILOGRAM : amount;
    return pounds > 0 ? OptionalDouble.of(pounds) : OptionalDouble.empty();
  }
}
