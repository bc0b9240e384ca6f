package chillwright.web.pages;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.Incoming;
import chillwright.core.log.PlaceName;
import chillwright.core.log.Row;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What of a reading of the round can hardly be, and what it was meant to be: common practice, no
 * source, and never more than a question.
 */
record RoundDoubt(Visitor visitor) {
  /** Food in a refrigerator that reads below would freeze. */
  private static final Limit FOOD_FREEZES = Limit.of(-2, 28);

  /** What a refrigerator that fails reads at most: a figure in °C where °F was taken. */
  private static final double FAILING_CELSIUS = 25;

  /** What a refrigerator that runs reads at most: a figure in °F where °C was taken. */
  private static final double RUNNING_CELSIUS = 10;

  /** Food is kept hot from here on: FDA Food Code 2022 3-501.16(A)(1). */
  private static final Limit HOT = Limit.of(57, 135);

  private static final double BOILING_CELSIUS = 100;

  /** Air in which food is only kept hot is no hotter, nor is a room. */
  private static final double HOTTEST_HELD_CELSIUS = 150;

  private static final double HOTTEST_ROOM_CELSIUS = 60;

  /** No freezer of a kitchen is colder. */
  private static final double COLDEST_FREEZER_CELSIUS = -35;

  /** What is asked of what an entry says of a place. */
  static List<Question> asked(String place, Incoming incoming, Desk desk, Visitor visitor) {
    if (!(incoming instanceof Row row)) {
      return List.of();
    }
    List<KnownPlace> places = desk.kitchen().setUp().places();
    return new IdleDoubt(desk, visitor)
            .of(row)
            .or(
                () ->
                    row.details()
                        .temperature()
                        .flatMap(given -> new RoundDoubt(visitor).of(place, places, given)))
            .stream()
            .toList();
  }

  private Optional<Question> of(String place, List<KnownPlace> places, Temperature given) {
    return PlaceName.among(places.stream().map(KnownPlace::name).toList(), place)
        .flatMap(name -> places.stream().filter(p -> p.name().equals(name)).findFirst())
        .flatMap(known -> of(known.name(), known.kind(), given));
  }

  /** The question; empty where nothing is odd. */
  Optional<Question> of(String place, Kind kind, Temperature given) {
    return switch (kind) {
      case REFRIGERATOR -> ofRefrigerator(place, given);
      case FREEZER -> ofFreezer(place, given);
      case HOT_HOLDING -> ofHotPlace(place, given);
      case COUNTER -> ofAir(place, given, HOTTEST_ROOM_CELSIUS);
      case OTHER -> Optional.empty();
    };
  }

  private Optional<Question> ofAir(String place, Temperature given, double hottestCelsius) {
    return given.celsiusDegrees() > hottestCelsius
        ? Optional.of(asks("round.doubt.hardly", place, given, List.of()))
        : Optional.empty();
  }

  private Optional<Question> ofRefrigerator(String place, Temperature given) {
    if (!FOOD_FREEZES.isHotEnough(given)) {
      List<Temperature> meant =
          inOtherScale(given)
              .filter(FOOD_FREEZES::isHotEnough)
              .filter(other -> other.celsiusDegrees() <= FAILING_CELSIUS)
              .toList();
      return Optional.of(asks("round.doubt.freezes", place, given, meant));
    }
    List<Temperature> meant =
        Stream.concat(inOtherScale(given), mistyped(given))
            .filter(FOOD_FREEZES::isHotEnough)
            .filter(other -> other.celsiusDegrees() <= RUNNING_CELSIUS)
            .toList();
    return Optional.of(given)
        .filter(RoundDoubt::isOfRoom)
        .map(read -> asks("round.doubt.warm", place, read, meant));
  }

  /** Warmer than a place that is meant to be cold gets by failing. */
  private static boolean isOfRoom(Temperature given) {
    return given.celsiusDegrees() > FAILING_CELSIUS;
  }

  private Optional<Question> ofFreezer(String place, Temperature given) {
    List<Temperature> meant =
        PlaceLimit.isFreezing(given)
            ? List.of()
            : Stream.concat(inOtherScale(given), belowZero(given))
                .filter(PlaceLimit::isFreezing)
                .filter(other -> other.celsiusDegrees() >= COLDEST_FREEZER_CELSIUS)
                .toList();
    if (meant.isEmpty()) {
      boolean isOdd = isOfRoom(given) || given.celsiusDegrees() < COLDEST_FREEZER_CELSIUS;
      return isOdd
          ? Optional.of(asks("round.doubt.hardly", place, given, List.of()))
          : Optional.empty();
    }
    return Optional.of(asks("round.doubt.thaws", place, given, meant));
  }

  /** A figure of the other scale: too cold to keep food hot, or hotter than water boils. */
  private Optional<Question> ofHotPlace(String place, Temperature given) {
    boolean isOdd = !isHot(given);
    return inOtherScale(given)
        .filter(other -> isOdd && isHot(other))
        .map(other -> asks("round.doubt.hot", place, given, List.of(other)))
        .findFirst()
        .or(() -> ofAir(place, given, HOTTEST_HELD_CELSIUS));
  }

  private static boolean isHot(Temperature reading) {
    return HOT.isHotEnough(reading) && reading.celsiusDegrees() <= BOILING_CELSIUS;
  }

  private Question asks(String key, String place, Temperature given, List<Temperature> meant) {
    String says =
        meant.stream()
            .map(each -> " " + visitor.say("entry.doubt.point", each.text(visitor.scale())))
            .collect(Collectors.joining("", visitor.say(key, given.text(), place), ""));
    return Question.of(key, place + ":" + given.text(), says);
  }

  /** The same figure in the other scale; none where no probe reads it. */
  static Stream<Temperature> inOtherScale(Temperature given) {
    Scale other = given.scale() == Scale.CELSIUS ? Scale.FAHRENHEIT : Scale.CELSIUS;
    return Temperature.isAccepted(given.hundredths(), other)
        ? Stream.of(new Temperature(given.hundredths(), other))
        : Stream.empty();
  }

  /** The same figure with its point one digit further left, or its two digits turned round. */
  private static Stream<Temperature> mistyped(Temperature given) {
    int figure = given.hundredths();
    boolean isOfTwoDigits = figure % 100 == 0 && figure >= 1000 && figure < 10_000;
    int turned = figure / 1000 * 100 + figure / 100 % 10 * 1000;
    return (isOfTwoDigits ? Stream.of(figure / 10, turned) : Stream.of(figure / 10))
        .filter(meant -> Temperature.isAccepted(meant, given.scale()))
        .map(meant -> new Temperature(meant, given.scale()));
  }

  /** The same figure with the sign that some keypads do not have. */
  private static Stream<Temperature> belowZero(Temperature given) {
    return given.scale() == Scale.CELSIUS
        ? Stream.of(new Temperature(-given.hundredths(), Scale.CELSIUS))
        : Stream.empty();
  }
}
