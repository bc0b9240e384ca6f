package chillwright.rulebook;

import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Dish.Route;
import chillwright.core.plan.Filling;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Menu.Hours;
import chillwright.core.plan.Step;
import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Reads what is to be planned, written by hand as YAML or JSON. It has the form of {@code
 * plan.schema.json}; every fault is told at once.
 */
public final class PlanFile {
  /** How far ahead anybody plans. */
  private static final long MOST_DAYS = 400;

  private final KeepingList keeping;
  private final Instant now;
  private final Faults faults = new Faults();

  private PlanFile(KeepingList keeping, Instant now) {
    this.keeping = keeping;
    this.now = now;
  }

  /**
   * The menu of a text.
   *
   * @param name of the file, for its faults; blank for a request
   * @param zone of the kitchen, where the text names none
   * @param now when work may begin, where the text does not say
   * @throws BrokenRules with every fault
   */
  public static Menu read(String name, String text, KeepingList keeping, ZoneId zone, Instant now)
      throws BrokenRules {
    PlanFile reading = new PlanFile(keeping, now);
    return reading.read(new TextFile(name, text, false), zone, false);
  }

  /** The same of a plan that is still being written: it may have no dish yet. */
  public static Menu begun(String text, KeepingList keeping, ZoneId zone, Instant now)
      throws BrokenRules {
    return new PlanFile(keeping, now).read(new TextFile("", text, false), zone, true);
  }

  private Menu read(TextFile file, ZoneId zone, boolean mayBeEmpty) throws BrokenRules {
    Optional<Document> document = YamlText.read(file, faults);
    document.ifPresent(found -> faults.addAll(SchemaCheck.PLAN.allFaults(found)));
    faults.throwIfAny();
    Spot root = Spot.whole(document.orElseThrow());
    if (!mayBeEmpty && root.at("dishes").items().isEmpty()) {
      faults.add(
          root.at("dishes")
              .fault("wrong-value", "a list of 1 to 40 dishes", "there is no dish. Write one."));
    }
    Optional<Menu> menu = menu(root, zone);
    faults.throwIfAny();
    return menu.orElseThrow();
  }

  /**
   * What a text says, unchecked, for a form that changes a part of it.
   *
   * @throws BrokenRules where it is no YAML
   */
  public static JsonNode tree(String text) throws BrokenRules {
    Faults faults = new Faults();
    Optional<Document> document = YamlText.read(new TextFile("", text, false), faults);
    faults.throwIfAny();
    return document.orElseThrow().root();
  }

  /**
   * What the event of a text is called; blank where it has no name.
   *
   * @throws BrokenRules where it is no YAML
   */
  public static String name(String text) throws BrokenRules {
    return tree(text).path("name").asText();
  }

  /** The JSON schema of such a file. */
  public static String schema() {
    return Shipped.text("rulebook/plan.schema.json");
  }

  private Optional<Menu> menu(Spot root, ZoneId usual) {
    Instant serving = moment(root.at("serving"));
    Instant from = root.has("from") ? moment(root.at("from")) : now;
    ZoneId zone = root.has("zone") ? zone(root.at("zone"), usual) : usual;
    if (!from.isBefore(serving)) {
      faults.add(
          root.at("serving")
              .fault(
                  "wrong-value",
                  "after work begins",
                  "this is not after " + from + ", when work begins. Write a later time."));
    } else if (Duration.between(from, serving).toDays() > MOST_DAYS) {
      faults.add(
          root.at("serving")
              .fault(
                  "wrong-value",
                  "at most " + MOST_DAYS + " days after work begins",
                  "this is too far ahead. Write from where work begins later."));
    }
    Map<String, Double> has = amounts(root.at("kitchen").at("has"));
    List<Hours> open = root.at("kitchen").at("open").items().stream().map(this::hours).toList();
    OptionalInt guests =
        root.has("guests") ? OptionalInt.of(root.at("guests").node().asInt()) : OptionalInt.empty();
    List<Dish> dishes = dishes(root, guests, has);
    for (Spot dish : root.at("dishes").items()) {
      if (dish.has("due")) {
        requireBetween(dish.at("due"), from, serving);
      }
    }
    return faults.isEmpty()
        ? Optional.of(new Menu(serving, zone, from, has, open, dishes).serving(guests))
        : Optional.empty();
  }

  /** The plan ends with its serving time, and what is due is so before it. */
  private void requireBetween(Spot due, Instant from, Instant serving) {
    if (!moment(due).isAfter(from) || moment(due).isAfter(serving)) {
      faults.add(
          due.fault(
              "wrong-value",
              "after work begins, and not after serving",
              "a dish is due between when work begins and serving. Write serving as the last"
                  + " moment at which anything is due."));
    }
  }

  private static Instant moment(Spot spot) {
    return OffsetDateTime.parse(spot.text()).toInstant();
  }

  private ZoneId zone(Spot spot, ZoneId usual) {
    try {
      return ZoneId.of(spot.text());
    } catch (DateTimeException unknown) {
      faults.add(
          spot.fault(
              "wrong-value",
              "a time zone, such as America/Denver",
              "this is no time zone. Write one such as America/Denver or UTC."));
      return usual;
    }
  }

  private static Map<String, Double> amounts(Spot spot) {
    Map<String, Double> amounts = new HashMap<>();
    spot.keys().forEach(key -> amounts.put(key, spot.at(key).node().asDouble()));
    return amounts;
  }

  private Hours hours(Spot spot) {
    Set<DayOfWeek> days =
        spot.at("days").items().stream()
            .map(Spot::text)
            .map(PlanFile::day)
            .collect(Collectors.toSet());
    return new Hours(days, LocalTime.parse(spot.text("from")), LocalTime.parse(spot.text("to")));
  }

  private static DayOfWeek day(String three) {
    return Arrays.stream(DayOfWeek.values())
        .filter(day -> day.name().toLowerCase(Locale.ROOT).startsWith(three))
        .findFirst()
        .orElseThrow();
  }

  private List<Dish> dishes(Spot root, OptionalInt guests, Map<String, Double> has) {
    Set<String> names = new HashSet<>();
    List<Dish> dishes = new ArrayList<>();
    for (Spot spot : root.at("dishes").items()) {
      if (!names.add(spot.text("dish"))) {
        faults.add(
            spot.at("dish")
                .fault(
                    "doubled-name",
                    "a name of its own for each dish",
                    "another dish has this name. Give each its own."));
      }
      dish(spot, guests, has).ifPresent(dishes::add);
    }
    return dishes;
  }

  private Optional<Dish> dish(Spot spot, OptionalInt guests, Map<String, Double> has) {
    Optional<Category> category = category(spot);
    Route route =
        Arrays.stream(Route.values())
            .filter(one -> one.text().equals(spot.text("route")))
            .findFirst()
            .orElseThrow();
    List<Step> make = steps(spot.at("make"), has);
    List<Step> finish = steps(spot.at("finish"), has);
    requireKnown(spot.at("keeps"), has);
    if (route == Route.FROZEN && !spot.has("thawHours")) {
      faults.add(
          spot.at("thawHours")
              .fault(
                  "missing-key",
                  "how long it thaws, in hours; 0 where it is heated from frozen",
                  "a frozen dish needs it. Write how long it thaws in the refrigerator."));
    }
    if (route == Route.FRESH && spot.has("madeBy")) {
      faults.add(
          spot.at("madeBy")
              .fault(
                  "made-fresh",
                  "a day for a dish that is kept cold or frozen",
                  "a dish that is made fresh is made for its hour. Write chilled or frozen as its"
                      + " route, or leave the day out."));
    }
    Duration thaw = minutes(spot.at("thawHours").node(), 60);
    Duration hold = minutes(spot.at("holdMinutes").node(), 1);
    PlanPortions sizes = new PlanPortions(faults);
    int portions = sizes.portions(spot, guests);
    Optional<Filling> filling = sizes.filling(spot);
    Map<String, Double> keeps = amounts(spot.at("keeps"));
    filling.ifPresent(found -> PlanPortions.keep(found, portions, has.keySet(), keeps));
    return category.map(
        found ->
            new Dish(
                spot.text("dish"),
                found,
                portions,
                route,
                make,
                finish,
                keeps,
                thaw,
                hold,
                filling,
                PlanPortions.ingredients(spot, portions),
                spot.has("due") ? Optional.of(moment(spot.at("due"))) : Optional.empty(),
                spot.has("madeBy")
                    ? Optional.of(LocalDate.parse(spot.text("madeBy")))
                    : Optional.empty()));
  }

  private static Duration minutes(JsonNode node, int each) {
    return Duration.ofMinutes(Math.round(node.asDouble(0) * each));
  }

  private Optional<Category> category(Spot spot) {
    Optional<Category> category = keeping.category(spot.text("category"));
    if (category.isEmpty()) {
      faults.add(
          spot.at("category")
              .fault(
                  "unknown-category",
                  "a key of the keeping list",
                  "this is not in the keeping list." + keeping.question(spot.text("category"))));
    } else if (category.get().freezes() == Category.Freezes.NO
        && spot.text("route").equals(Route.FROZEN.text())) {
      faults.add(
          spot.at("route")
              .fault(
                  "does-not-freeze",
                  "fresh or chilled",
                  "food of this category does not freeze. Write fresh or chilled."));
    }
    return category;
  }

  private List<Step> steps(Spot list, Map<String, Double> has) {
    List<Step> steps = new ArrayList<>();
    for (Spot spot : list.items()) {
      requireKnown(spot.at("uses"), has);
      steps.add(
          new Step(
              spot.text("step"),
              Duration.ofMinutes(spot.at("minutes").node().asLong()),
              amounts(spot.at("uses"))));
    }
    return steps;
  }

  /** A misspelt thing would be one that is never short. */
  private void requireKnown(Spot amounts, Map<String, Double> has) {
    for (String name : amounts.keys()) {
      if (!has.containsKey(name)) {
        String known = has.keySet().stream().sorted().collect(Collectors.joining(", "));
        faults.add(
            amounts
                .at(name)
                .fault(
                    "unknown-thing",
                    known.isEmpty() ? "a thing named under kitchen, has" : known,
                    "the kitchen has no such thing. Name it under kitchen, has, with how much"
                        + " there is of it."));
      }
    }
  }
}
