package chillwright.web.pages;

import chillwright.core.measure.SaidLength;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Thawing;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.PlanFile;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * What is to be planned, as a tree of which a form changes one part. Fields of a form are named as
 * their places in the tree, such as "make/0/minutes"; a figure that is none stays as it was
 * written, so that it is found at fault where every other fault is found.
 */
final class PlanTree {
  /** What food holds where it is kept; all else that a kitchen has is held by steps. */
  static final List<String> KEPT_IN = List.of("refrigerator", "freezer", "freezing", "warm");

  /** Rows of a list that a form can hold. */
  static final int MOST_ROWS = 40;

  /** A step that lasts longer is left alone, unless the cook says otherwise; our own choice. */
  private static final int UNATTENDED_MINUTES = 240;

  static final List<String> DAYS = List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

  /** The figures of a dish. */
  private static final List<String> FIGURES =
      List.of(
          "portions",
          "portionsPerGuest",
          "ingredientsFor",
          "portionFluidOunces",
          "portionMillilitres",
          "panDepthInches",
          "thawHours",
          "holdMinutes");

  private static final String INGREDIENTS = "ingredients";

  private static final JsonNodeFactory MAKE = JsonNodeFactory.instance;
  private static final DateTimeFormatter TYPED = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm");

  private final ObjectNode root;
  private final ZoneId zone;

  private PlanTree(ObjectNode root, ZoneId zone) {
    this.root = root;
    this.zone = zone;
  }

  /** One of which nothing is said yet. */
  static PlanTree blank(ZoneId zone) {
    ObjectNode root = MAKE.objectNode();
    root.putArray("dishes");
    return new PlanTree(root, zone);
  }

  /**
   * Of an input that the kitchen keeps, which has been read before.
   *
   * @param usual the zone of the kitchen, where the text names none
   */
  static PlanTree of(String input, ZoneId usual) {
    try {
      ObjectNode root = PlanFile.tree(input).deepCopy();
      ZoneId zone = root.has("zone") ? ZoneId.of(root.path("zone").asText()) : usual;
      return new PlanTree(root, zone);
    } catch (BrokenRules broken) {
      throw new IllegalStateException("a plan that is kept has been read before", broken);
    }
  }

  String text() {
    return root.toPrettyString();
  }

  /** What the event is called; blank where it has no name. */
  String name() {
    return root.path("name").asText();
  }

  List<String> dishes() {
    return StreamSupport.stream(root.path("dishes").spliterator(), false)
        .map(dish -> dish.path("dish").asText())
        .toList();
  }

  /** What the kitchen has, by name, as it was written. */
  List<String> things() {
    List<String> names = new ArrayList<>();
    root.path("kitchen").path("has").fieldNames().forEachRemaining(names::add);
    return names;
  }

  /** What steps hold of that: all but where food is kept, unless one stands in a step already. */
  List<String> ofSteps() {
    return things().stream()
        .filter(name -> !KEPT_IN.contains(name) || name.equals(Menu.REFRIGERATOR) || isInStep(name))
        .toList();
  }

  private boolean isInStep(String name) {
    return Stream.of("make", "finish")
        .flatMap(list -> root.path("dishes").findValues(list).stream())
        .flatMap(steps -> StreamSupport.stream(steps.spliterator(), false))
        .anyMatch(step -> step.path("uses").has(name));
  }

  /** Whether it says anything of the kitchen. */
  boolean hasKitchen() {
    return !root.path("kitchen").isEmpty();
  }

  /** Takes over what another plan says of the kitchen. */
  void kitchenOf(PlanTree other) {
    root.set("kitchen", other.root.path("kitchen").deepCopy());
  }

  /** Name, serving time and guests. */
  void event(Form form) {
    word(root, "name", form.text("name"));
    root.put("serving", moment(form.text("serving")));
    root.path("dishes").forEach(dish -> writtenFor((ObjectNode) dish));
    number(root, "guests", form.text("guests"));
  }

  private String moment(String typed) {
    try {
      return LocalDateTime.parse(typed)
          .atZone(zone)
          .format(DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssXXX"));
    } catch (DateTimeException e) {
      return typed;
    }
  }

  /** What there is, and when hands are there. */
  void kitchen(Form form) {
    ObjectNode kitchen = root.putObject("kitchen");
    amounts(kitchen, "has", "has/", form);
    ArrayNode open = MAKE.arrayNode();
    for (int row = 0; row < MOST_ROWS; row++) {
      String at = "open/" + row + "/";
      if (form.has(at + "days") || form.has(at + "from") || form.has(at + "to")) {
        ObjectNode hours = open.addObject();
        ArrayNode days = hours.putArray("days");
        for (String day : DAYS) {
          if (form.words(at + "days").contains(day)) {
            days.add(day);
          }
        }
        hours.put("from", form.text(at + "from")).put("to", form.text(at + "to"));
      }
    }
    if (!open.isEmpty()) {
      kitchen.set("open", open);
    }
  }

  /** A dish in place of the one of that name, or a new one. */
  void dish(String was, Form form, String category) {
    ObjectNode dish = find(was).orElseGet(() -> dishesOf().addObject());
    dish.put("dish", form.text("dish")).put("category", category).put("route", form.text("route"));
    FIGURES.forEach(name -> number(dish, name, figure(name, form.text(name))));
    word(dish, "pan", form.text("pan"));
    word(dish, "due", form.has("due") ? moment(form.text("due")) : "");
    word(dish, "madeBy", form.text("madeBy"));
    ingredients(dish, form);
    writtenFor(dish);
    steps(dish, "make", form);
    steps(dish, "finish", form);
    amounts(dish, "keeps", "keeps/", form);
  }

  private static void ingredients(ObjectNode dish, Form form) {
    if (form.has(INGREDIENTS)) {
      dish.set(INGREDIENTS, IngredientLines.read(form.text(INGREDIENTS)));
    } else {
      dish.remove(INGREDIENTS);
    }
  }

  /** Amounts for all portions are for as many as there are as they are written, not later on. */
  private void writtenFor(ObjectNode dish) {
    int guests = root.path("guests").asInt();
    double all =
        dish.has("portions")
            ? dish.path("portions").asDouble()
            : guests * dish.path("portionsPerGuest").asDouble(1);
    int portions = (int) Math.ceil(all - 1e-9);
    if (dish.has(INGREDIENTS) && !dish.has("ingredientsFor") && portions > 0) {
      dish.put("ingredientsFor", portions);
    }
  }

  private ArrayNode dishesOf() {
    return (ArrayNode) root.get("dishes");
  }

  private Optional<ObjectNode> find(String name) {
    return StreamSupport.stream(root.path("dishes").spliterator(), false)
        .filter(dish -> !name.isEmpty() && dish.path("dish").asText().equals(name))
        .map(ObjectNode.class::cast)
        .findFirst();
  }

  void remove(String name) {
    List<String> names = dishes();
    if (names.contains(name)) {
      dishesOf().remove(names.indexOf(name));
    }
  }

  private static void steps(ObjectNode dish, String list, Form form) {
    ArrayNode steps = MAKE.arrayNode();
    int known = dish.path(list).size();
    for (int row = 0; row < MOST_ROWS; row++) {
      String at = list + "/" + row + "/";
      if (form.has(at + "step") || form.has(at + "minutes")) {
        ObjectNode step = steps.addObject();
        step.put("step", form.text(at + "step"));
        number(step, "minutes", minutes(form.text(at + "minutes")));
        amounts(step, "uses", at + "uses/", form);
        if (row >= known && isUnattended(step)) {
          leaveAlone(step);
        }
      }
    }
    boolean isNeeded = list.equals("make");
    if (steps.isEmpty() && !isNeeded) {
      dish.remove(list);
    } else {
      dish.set(list, steps);
    }
  }

  /** Of a length of time that is said with its unit the figure in the unit of its field. */
  private static String figure(String name, String given) {
    return switch (name) {
      case "holdMinutes" -> minutes(given);
      case "thawHours" -> hours(given);
      default -> given;
    };
  }

  /** A bare figure is hours already; "2 days" are made so, and what is no whole hours stays. */
  private static String hours(String given) {
    OptionalDouble hours = SaidLength.hours(given);
    return hours.isPresent() && hours.getAsDouble() == Math.rint(hours.getAsDouble())
        ? Long.toString(Math.round(hours.getAsDouble()))
        : given;
  }

  /** A bare figure is minutes already; "4 h", "1:30" and "90 min" are made so. */
  private static String minutes(String given) {
    boolean isBare = given.matches("[0-9.,]*");
    return isBare
        ? given
        : SaidLength.of(given).map(length -> Long.toString(length.toMinutes())).orElse(given);
  }

  /** Whether nobody stands beside a step all the while, unless the cook says so. */
  private static boolean isUnattended(ObjectNode step) {
    return step.path("minutes").asLong() > UNATTENDED_MINUTES
        || Thawing.isNamed(step.path("step").asText());
  }

  /** Takes away the one person that a new row is given before its step is known. */
  private static void leaveAlone(ObjectNode step) {
    if (step.path("uses").path(Menu.HANDS).asInt() == 1) {
      ObjectNode uses = (ObjectNode) step.get("uses");
      uses.remove(Menu.HANDS);
      if (uses.isEmpty()) {
        step.remove("uses");
      }
    }
  }

  /** All amounts whose fields begin so. */
  private static void amounts(ObjectNode holder, String key, String prefix, Form form) {
    ObjectNode amounts = MAKE.objectNode();
    form.all().keySet().stream()
        .filter(name -> name.startsWith(prefix))
        .sorted()
        .forEach(name -> number(amounts, name.substring(prefix.length()), form.text(name)));
    if (amounts.isEmpty()) {
      holder.remove(key);
    } else {
      holder.set(key, amounts);
    }
  }

  private static void word(ObjectNode holder, String key, String text) {
    if (text.isEmpty()) {
      holder.remove(key);
    } else {
      holder.put(key, text);
    }
  }

  /** A decimal comma is taken, since some phones offer no dot. */
  private static void number(ObjectNode holder, String key, String text) {
    String dotted = text.replace(',', '.');
    if (text.isEmpty()) {
      holder.remove(key);
    } else if (dotted.matches("\\d{1,9}(\\.\\d{1,6})?")) {
      BigDecimal figure = new BigDecimal(dotted).stripTrailingZeros();
      holder.set(
          key,
          figure.scale() <= 0
              ? MAKE.numberNode(figure.toBigIntegerExact())
              : MAKE.numberNode(figure));
    } else {
      holder.put(key, text);
    }
  }

  /** What the part of the tree at a pointer says, by the names of the fields of its form. */
  Map<String, String> fields(String pointer) {
    Map<String, String> found = new LinkedHashMap<>();
    flat("", root.at(pointer), found);
    found.computeIfPresent("serving", (key, text) -> typed(text));
    found.computeIfPresent("due", (key, text) -> typed(text));
    found.put(INGREDIENTS, IngredientLines.text(root.at(pointer).path(INGREDIENTS)));
    return found;
  }

  private String typed(String moment) {
    try {
      return TYPED.format(OffsetDateTime.parse(moment).atZoneSameInstant(zone));
    } catch (DateTimeException e) {
      return moment;
    }
  }

  private static void flat(String at, JsonNode node, Map<String, String> found) {
    String under = at.isEmpty() ? "" : at + "/";
    if (node.isObject()) {
      node.properties().forEach(of -> flat(under + of.getKey(), of.getValue(), found));
    } else if (at.endsWith("days")) {
      String days =
          StreamSupport.stream(node.spliterator(), false)
              .map(JsonNode::asText)
              .collect(Collectors.joining(" "));
      found.put(at, days);
    } else if (node.isArray()) {
      for (int row = 0; row < node.size(); row++) {
        flat(under + row, node.get(row), found);
      }
    } else if (!node.isMissingNode()) {
      found.put(at, node.isNumber() ? node.decimalValue().toPlainString() : node.asText());
    }
  }

  /** How many rows a list of the tree has. */
  int rows(String pointer) {
    return root.at(pointer).size();
  }
}
