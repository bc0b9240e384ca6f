package chillwright.rulebook;

import chillwright.core.log.Problem;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Reads one rule that has passed the schema, with all its dated figures. */
final class RuleReader {
  private static final String NO_FIGURE = "no-figure";

  private final Faults faults;
  private final FigureCheck figures;

  RuleReader(Faults faults) {
    this.faults = faults;
    this.figures = new FigureCheck(faults);
  }

  /** The rule; empty, with its faults, where its parts do not fit each other. */
  Optional<DatedRule> read(Spot rule) {
    int before = faults.count();
    Set<Occasion> occasions = occasions(rule);
    checkShape(rule, occasions);
    NavigableMap<LocalDate, Optional<Rule>> byDay = new TreeMap<>();
    for (String day : rule.at("values").keys()) {
      Spot value = rule.at("values").at(day);
      LocalDate from = LocalDate.parse(day);
      if (value.node().isNull()) {
        byDay.put(from, Optional.empty());
      } else {
        shape(rule, value, occasions)
            .ifPresent(shape -> byDay.put(from, Optional.of(rule(rule, value, shape, occasions))));
      }
    }
    boolean isSound = faults.count() == before;
    return isSound ? Optional.of(new DatedRule(rule.text("id"), byDay)) : Optional.empty();
  }

  private Set<Occasion> occasions(Spot rule) {
    Set<Occasion> occasions = new LinkedHashSet<>();
    for (Spot place : rule.at("occasions").items()) {
      Optional<Occasion> occasion = Occasion.ofKey(place.text());
      occasion.ifPresent(occasions::add);
      if (occasion.isEmpty()) {
        faults.add(unknown(place));
      }
    }
    return occasions;
  }

  private static Problem unknown(Spot occasion) {
    String known =
        Arrays.stream(Occasion.values()).map(Occasion::key).collect(Collectors.joining(", "));
    String says =
        "there is no occasion %s. Write one of these: %s.".formatted(occasion.text(), known);
    return occasion.fault("unknown-occasion", known, says);
  }

  /** An assessment expects, say, a time of a time rule: another shape would judge nothing. */
  private void checkShape(Spot rule, Set<Occasion> occasions) {
    Spot place = rule.at("shape");
    for (Occasion occasion : occasions) {
      List<String> fitting = fitting(occasion);
      if (!fitting.contains(place.text())) {
        String allowed = String.join(", ", fitting);
        String says =
            "%s judges nothing on the occasion %s. Write one of these: %s."
                .formatted(place.text(), occasion.key(), allowed);
        faults.add(place.fault("shape-does-not-fit", allowed, says));
        return;
      }
    }
  }

  private static List<String> fitting(Occasion occasion) {
    return switch (occasion) {
      case COOLING_COOKED, COOLING_AMBIENT, COOLING_RECEIVED -> List.of("reach", NO_FIGURE);
      case REHEATING, REHEATING_MICROWAVE, REHEATING_COMMERCIAL, REHEATING_SERVE_NOW ->
          List.of("reach", NO_FIGURE);
      case RECEIVING, HOT_HOLDING, HOT_HOLDING_ROAST, COLD_HOLDING -> List.of("hold", NO_FIGURE);
      case TIME_CONTROL_START_4H, TIME_CONTROL_START_6H -> List.of("hold", NO_FIGURE);
      case THAWING_REFRIGERATOR,
          THAWING_RUNNING_WATER,
          THAWING_RUNNING_WATER_RAW,
          THAWING_WATER,
          THAWING_WHILE_COOKING ->
          List.of("hold", NO_FIGURE);
      case TIME_CONTROL_DISCARD_4H, TIME_CONTROL_DISCARD_6H, SET_OUT ->
          List.of("time-alone", NO_FIGURE);
      case DATE_MARK -> List.of("day-count", NO_FIGURE);
      case FROZEN -> List.of("stays-frozen", "hold", NO_FIGURE);
      case NO_TEMPERATURE_LIMIT -> List.of(NO_FIGURE);
    };
  }

  private Optional<Shape> shape(Spot rule, Spot day, Set<Occasion> occasions) {
    int before = faults.count();
    figures.checkLimits(day);
    if (faults.count() > before) {
      return Optional.empty();
    }
    Shape shape = Figures.shape(rule.text("shape"), day);
    figures.checkOrder(shape, occasions, day);
    return Optional.of(shape);
  }

  private static Rule rule(Spot rule, Spot day, Shape shape, Set<Occasion> occasions) {
    return new Rule(
        rule.text("id"),
        says(rule, day),
        occasions,
        shape,
        rule.text("status"),
        Figures.citation(day.at("cite")),
        rule.at("actions").items().stream().map(RuleReader::action).toList());
  }

  /** Where there is no figure, the sentence goes on with the reason why. */
  private static String says(Spot rule, Spot day) {
    return day.has("reason") ? rule.text("says") + " " + day.text("reason") : rule.text("says");
  }

  private static Rule.Action action(Spot action) {
    return new Rule.Action(
        action.text("says"),
        Figures.citation(action.at("cite")),
        Figures.time(action, "offered-for"));
  }
}
