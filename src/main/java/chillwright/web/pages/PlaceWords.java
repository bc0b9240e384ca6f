package chillwright.web.pages;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Verdict;
import chillwright.service.Day.PlaceRound;
import java.util.Optional;

/** Places in the words of a person. */
final class PlaceWords {
  private PlaceWords() {}

  /** What the readings of a place are held against. */
  static Optional<String> limit(KnownPlace place, RuleSet rules, Visitor visitor) {
    return PlaceLimit.of(place, rules).map(limit -> limit(limit, visitor));
  }

  static String limit(PlaceLimit limit, Visitor visitor) {
    String figure =
        visitor.say(limit.isColdSide() ? "place.at-most" : "place.at-least", limit.limit().text());
    return switch (limit.source()) {
      case RULES -> figure + " [" + limit.citation() + "]";
      case HOUSE -> visitor.say("place.own", figure);
      case QUALITY -> visitor.say("place.quality", figure) + " [" + limit.citation() + "]";
    };
  }

  /** How its last reading stands. */
  static String standing(PlaceRound place, Visitor visitor) {
    if (place.known().isEmpty()) {
      return visitor.say("place.unnamed");
    }
    if (place.isThawing()) {
      return visitor.say("place.thawing");
    }
    String beyond = isQuality(place) ? "place.warmer" : "place.beyond";
    String within = isQuality(place) ? "place.cold-enough" : "place.within";
    return place.isWithin().map(isWithin -> visitor.say(isWithin ? within : beyond)).orElse("");
  }

  /** The frame around it: quality is nothing that is in or out. */
  static Sign sign(PlaceRound place) {
    if (place.isThawing()) {
      return Sign.of(Verdict.NOT_SHOWN);
    }
    if (isQuality(place)) {
      return Sign.NONE;
    }
    return place.isWithin().map(isWithin -> new Sign(isWithin ? "in" : "out")).orElse(Sign.NONE);
  }

  private static boolean isQuality(PlaceRound place) {
    return place.limit().filter(l -> l.source() == PlaceLimit.Source.QUALITY).isPresent();
  }
}
