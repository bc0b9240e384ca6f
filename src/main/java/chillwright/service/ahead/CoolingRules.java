package chillwright.service.ahead;

import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Told;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape;
import chillwright.core.rules.Shape.TimeAlone;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What the rules say of food that cools; where they print no time, what a business must do. */
record CoolingRules(Setting setting) {
  private static final double HOUR = 3600;

  /** The rules of a set that say where cooked food must be, and when. */
  private static List<Rule> stages(RuleSet rules) {
    return rules.rules(Occasion.COOLING_COOKED).stream()
        .filter(rule -> rule.shape() instanceof Shape.Reach reach && reach.within().isPresent())
        .toList();
  }

  /** The set that was asked for prints no time, so that one for food businesses stands in. */
  boolean isAdvised() {
    return stages(setting.rules()).isEmpty();
  }

  /** What the food is held against. */
  List<Rule> limits() {
    return stages(isAdvised() ? setting.business() : setting.rules());
  }

  /** What stands in for a time to cool where a set has none, as the advice for homes. */
  private Optional<Rule> setOut() {
    return setting.rules().rule(Occasion.SET_OUT).filter(rule -> rule.shape() instanceof TimeAlone);
  }

  /** How cold its refrigerator keeps food, as the set says. */
  private Optional<Rule> cold() {
    return setting
        .rules()
        .rule(Occasion.COLD_HOLDING)
        .filter(rule -> rule.shape() instanceof Shape.Hold hold && hold.atMost().isPresent());
  }

  /** Where its time to cool ends when it has none: how cold its refrigerator is, °C. */
  Optional<Double> coldEnough() {
    return cold().flatMap(rule -> ((Shape.Hold) rule.shape()).atMost()).map(CoolingRules::degrees);
  }

  /** How cold food that cools must become: by the last limit, or as its refrigerator is, °C. */
  double end() {
    List<Rule> limits = limits();
    Optional<Double> cold = isAdvised() ? coldEnough() : Optional.empty();
    return cold.orElseGet(
        () -> degrees(((Shape.Reach) limits.get(limits.size() - 1).shape()).to()));
  }

  /** Where {@link #end} is printed. */
  List<Source> endSources() {
    List<Rule> limits = limits();
    Rule last = limits.get(limits.size() - 1);
    return List.of(source(isAdvised() ? cold().orElse(last) : last));
  }

  /** How long it may stay outside. */
  Optional<Told> outside() {
    return setOut().map(CoolingRules::outside);
  }

  private static Told outside(Rule rule) {
    TimeAlone limit = (TimeAlone) rule.shape();
    Filled within = Filled.hours("within", inHours(limit.within()));
    return limit
        .hotAir()
        .map(
            air ->
                Told.of(
                    "cooling.set-out",
                    within,
                    Filled.hours("in-hot-air", inHours(limit.withinHotAir().orElseThrow())),
                    Filled.amount("hot-air", degrees(air), Filled.Unit.CELSIUS)))
        .orElseGet(() -> Told.of("cooling.set-out.always", within));
  }

  /** A sentence that names the first and the last limit; there must be one. */
  Told advice(String ends) {
    List<Rule> rules = limits();
    Shape.Reach first = (Shape.Reach) rules.get(0).shape();
    Shape.Reach last = (Shape.Reach) rules.get(rules.size() - 1).shape();
    Told told =
        Told.of(
            "cooling.advice" + ends,
            Filled.amount("first", degrees(first.to()), Filled.Unit.CELSIUS),
            Filled.hours("first-limit", inHours(first.within().orElseThrow())),
            Filled.amount("last", degrees(last.to()), Filled.Unit.CELSIUS),
            Filled.hours("last-limit", inHours(last.within().orElseThrow())));
    return last.from()
        .map(from -> told.with(Filled.amount("from", degrees(from), Filled.Unit.CELSIUS)))
        .orElse(told);
  }

  List<Source> sources() {
    return Stream.of(
            limits().stream(),
            isAdvised() ? cold().stream() : Stream.<Rule>empty(),
            isAdvised() ? setOut().stream() : Stream.<Rule>empty())
        .flatMap(rules -> rules)
        .map(CoolingRules::source)
        .toList();
  }

  static Source source(Rule rule) {
    return new Source(rule.says(), rule.citation().text(), rule.citation().state());
  }

  /** A limit as it is shown in both scales: its figure in Fahrenheit, where there is one. */
  static double degrees(Limit limit) {
    return limit.in(Scale.FAHRENHEIT).celsiusDegrees();
  }

  static double inHours(Duration time) {
    return time.toMillis() / 1000.0 / HOUR;
  }
}
