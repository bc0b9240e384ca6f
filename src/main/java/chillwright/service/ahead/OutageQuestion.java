package chillwright.service.ahead;

import static chillwright.core.heat.Outage.Appliance.REFRIGERATOR;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Ahead.Source;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.OutageFoods;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Outage;
import chillwright.core.heat.OutageFood;
import chillwright.core.heat.OutageFood.Place;
import chillwright.rulebook.Handbook;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** How long a closed refrigerator or freezer stays cold once the power is gone. */
final class OutageQuestion implements Question.Answering {
  @Override
  public List<Parameter> parameters() {
    return List.of(
        Parameter.needed(
            "appliance", "APPLIANCE", "refrigerator, full-freezer or half-freezer; kept closed."),
        Parameter.needed(
            "without-power",
            "TIME",
            "Since when, or how long: yesterday 14:00, 18:00, 6h or 90 min; H:MM is a time"
                + " of day."),
        Parameter.optional("freezer", "VOLUME", "Of a full freezer, for dry ice."));
  }

  @Override
  public Ahead answer(Given given, Setting setting) throws BadQuestion {
    Outage.Appliance appliance =
        given.one(
            "appliance", List.of(Outage.Appliance.values()), OutageQuestion::key, Optional.empty());
    OffsetDateTime since = given.since("without-power", setting.asked());
    OptionalDouble freezer = given.amount("freezer", Measured.VOLUME);
    given.requireFaultless();
    Outage outage = setting.handbook().outage();
    Duration gone = Duration.between(since, setting.asked());
    Duration left = outage.left(appliance, gone);
    Place place = appliance == REFRIGERATOR ? Place.REFRIGERATOR : Place.FREEZER;
    List<Told> told = new ArrayList<>();
    told.add(
        Told.of(
            "outage.since",
            Filled.moment("since", since),
            Filled.hours("gone", gone.toMinutes() / 60.0)));
    told.add(
        Told.of(
            left.isZero() ? "outage.over" : "outage.left",
            Filled.hours("left", left.toMinutes() / 60.0),
            Filled.hours("whole", outage.staysCold(appliance).toMinutes() / 60.0)));
    freezer.ifPresent(litres -> told.add(dryIce(outage, litres)));
    List<OutageFood> foods = setting.handbook().outageFoods();
    told.addAll(OutageFoods.told(foods, place));
    List<Source> sources = sources(setting.handbook());
    foods.stream()
        .filter(food -> food.place() == place)
        .map(food -> new Source("food by food", food.source(), food.status()))
        .distinct()
        .forEach(sources::add);
    List<String> cautions =
        freezer.isPresent() ? List.of("look", "touched", "dry-ice") : List.of("look", "touched");
    return new Ahead("outage", told, cautions, sources);
  }

  private static String key(Outage.Appliance appliance) {
    return appliance.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static Told dryIce(Outage outage, double litres) {
    double pounds = outage.dryIcePounds(litres / Common.CUBIC_FOOT);
    return Told.of(
        "outage.dry-ice", Filled.amount("dryIce", pounds * Common.POUND, Filled.Unit.KILOGRAMS));
  }

  private static List<Source> sources(Handbook handbook) {
    return new ArrayList<>(
        Stream.of("outage-refrigerator", "outage-freezer-full", "outage-freezer-half", "dry-ice")
            .map(key -> Common.source(handbook.figure(key)))
            .toList());
  }
}
