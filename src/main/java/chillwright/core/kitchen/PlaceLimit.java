package chillwright.core.kitchen;

import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Hold;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the readings of a place are held against. It says how the place does, and nothing of the
 * food inside, which has its own readings.
 *
 * @param source where it comes from
 * @param isColdSide whether readings must be at most this; else at least
 * @param citation where it is printed
 */
public record PlaceLimit(Source source, Limit limit, boolean isColdSide, String citation) {
  /** Who set a limit, and so how much it weighs. */
  public enum Source {
    /** The rule set. */
    RULES("rules"),
    /** The kitchen itself, stricter than its rule set. */
    HOUSE("house"),
    /** Advice about quality: food that stays frozen above it is no less safe for that. */
    QUALITY("quality");

    private final String key;

    Source(String key) {
      this.key = key;
    }

    public String key() {
      return key;
    }
  }

  /** The model code prints no figure for a freezer (3-501.11); this one is about quality. */
  private static final PlaceLimit FREEZER =
      new PlaceLimit(
          Source.QUALITY,
          Limit.of(-18, 0),
          true,
          "FoodSafety.gov, Cold Food Storage Chart: freezer at 0 °F (-18 °C) or below; its times"
              + " are for quality");

  public PlaceLimit {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(limit, "limit");
    Objects.requireNonNull(citation, "citation");
  }

  /** The kitchen's own figure where it gave one, else the authority's. */
  public static Optional<PlaceLimit> of(KnownPlace place, RuleSet rules) {
    Optional<PlaceLimit> printed = printed(place.kind(), rules);
    return place.ownLimit().map(figure -> own(place.kind(), figure)).or(() -> printed);
  }

  private static PlaceLimit own(Kind kind, Temperature figure) {
    OptionalInt hundredths = OptionalInt.of(figure.hundredths());
    boolean isCelsius = figure.scale() == Scale.CELSIUS;
    Limit limit =
        new Limit(
            isCelsius ? hundredths : OptionalInt.empty(),
            isCelsius ? OptionalInt.empty() : hundredths,
            true);
    return new PlaceLimit(Source.HOUSE, limit, kind != Kind.HOT_HOLDING, "");
  }

  /** What an authority says of a place of that kind. */
  public static Optional<PlaceLimit> printed(Kind kind, RuleSet rules) {
    return switch (kind) {
      case REFRIGERATOR -> held(Occasion.COLD_HOLDING, true, rules);
      case HOT_HOLDING -> held(Occasion.HOT_HOLDING, false, rules);
      case FREEZER -> Optional.of(FREEZER);
      case COUNTER, OTHER -> Optional.empty();
    };
  }

  private static Optional<PlaceLimit> held(Occasion occasion, boolean isColdSide, RuleSet rules) {
    return rules
        .rule(occasion)
        .filter(rule -> rule.shape() instanceof Hold)
        .flatMap(rule -> held(rule, isColdSide));
  }

  private static Optional<PlaceLimit> held(Rule rule, boolean isColdSide) {
    Hold hold = (Hold) rule.shape();
    return (isColdSide ? hold.atMost() : hold.atLeast())
        .map(limit -> new PlaceLimit(Source.RULES, limit, isColdSide, rule.citation().text()));
  }

  /** Whether food can stay frozen at that reading: not above 0 °C, where water freezes. */
  public static boolean isFreezing(Temperature reading) {
    return reading.nineHundredths() <= 0;
  }

  /** Whether a reading is within it. */
  public boolean isMet(Temperature reading) {
    return isColdSide ? limit.isColdEnough(reading) : limit.isHotEnough(reading);
  }
}
