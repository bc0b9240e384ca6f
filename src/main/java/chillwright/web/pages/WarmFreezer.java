package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import chillwright.service.Day.PlaceRound;
import chillwright.service.LotView;
import chillwright.service.Page;
import chillwright.service.ahead.Question;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Ways from a freezer that reads too warm to what that cost the food in it, with all that the log
 * knows of it. Nobody looked between two readings: the spell is reckoned from the last one that was
 * cold enough, as warm all along as the warmest since.
 */
record WarmFreezer(Desk desk, Visitor visitor) {
  /** So many lots are looked up, and so many readings before. */
  private static final int MOST = 12;

  private static final int LOOKED_BACK = 100;
  private static final DateTimeFormatter SAID =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
  private static final Duration SHORTEST = Duration.ofMinutes(6);

  /** A warm spell that may last still. */
  private record Spell(Instant from, Temperature warmest) {}

  /** A way for each food inside, and day of freezing; none of a place that is cold enough. */
  List<Choice> ways(PlaceRound place) {
    boolean isFreezer = place.known().filter(known -> known.kind() == Kind.FREEZER).isPresent();
    if (!isFreezer || !place.calls()) {
      return List.of();
    }
    Optional<Spell> spell = spell(place);
    Map<String, Choice> ways = new LinkedHashMap<>();
    for (LotState lot : place.inside().stream().limit(MOST).toList()) {
      spell
          .flatMap(of -> desk.kitchen().lots().lot(lot.lot()).flatMap(view -> way(view, of)))
          .ifPresent(way -> ways.putIfAbsent(way.key(), way));
    }
    return List.copyOf(ways.values());
  }

  private Optional<Spell> spell(PlaceRound place) {
    List<LogEntry> newest =
        desk
            .kitchen()
            .places()
            .readings(
                Optional.of(place.name()),
                Optional.empty(),
                Optional.of(desk.kitchen().now()),
                Page.Wanted.first(LOOKED_BACK))
            .items()
            .stream()
            .flatMap(reading -> reading.standing().stream())
            .filter(entry -> entry.temperature().isPresent())
            .toList();
    List<LogEntry> warm = newest.stream().takeWhile(entry -> isWarm(place, entry)).toList();
    return warm.stream()
        .map(entry -> entry.temperature().orElseThrow())
        .max(Comparator.comparingDouble(Temperature::celsiusDegrees))
        .map(
            warmest ->
                new Spell(
                    newest.get(Math.min(warm.size(), newest.size() - 1)).happenedAt(), warmest));
  }

  private static boolean isWarm(PlaceRound place, LogEntry entry) {
    Temperature read = entry.temperature().orElseThrow();
    return !PlaceLimit.isFreezing(read) || place.limit().filter(of -> !of.isMet(read)).isPresent();
  }

  /** Empty of what is not frozen, or was thawed between, or has no months in the freezer. */
  private Optional<Choice> way(LotView view, Spell spell) {
    LotState lot = view.state();
    List<LogEntry> entries =
        view.judged().map(judged -> judged.timeline().entries()).orElse(List.of());
    boolean isFrozen = lot.standing().filter(s -> s.phase() == Phase.FROZEN).isPresent();
    boolean wasThawed = entries.stream().anyMatch(entry -> entry.word() == Word.THAWING);
    boolean hasMonths =
        desk.kitchen()
            .library()
            .keepingList()
            .category(lot.category())
            .filter(kind -> kind.freezer().max().isPresent())
            .isPresent();
    return entries.stream()
        .filter(entry -> entry.word() == Word.FROZEN && isFrozen && !wasThawed && hasMonths)
        .map(LogEntry::happenedAt)
        .findFirst()
        .map(frozen -> way(lot, frozen, spell));
  }

  private Choice way(LotState lot, Instant frozen, Spell spell) {
    Instant since = spell.from().isBefore(frozen) ? frozen : spell.from();
    Duration warm = Duration.between(since, desk.kitchen().now());
    String day = frozen.atZone(desk.zone()).toLocalDate().toString();
    List<String> given = new ArrayList<>();
    given.add("question=" + Question.FROZEN_LIFE.key());
    given.add("category=" + lot.category());
    desk.kitchen()
        .setUp()
        .food(lot.food())
        .map(KnownFood::category)
        .filter(lot.category()::equals)
        .ifPresent(same -> given.add("food-name=" + encoded(lot.food())));
    given.add("frozen=" + day);
    given.add("since=" + encoded(SAID.format(since.atZone(desk.zone()))));
    if (warm.compareTo(SHORTEST) < 0) {
      given.add(AheadPage.FORM + "=open");
    } else {
      // Rounded down: a spell is not to end later than now.
      double hours = Math.floor(warm.toMinutes() / 6.0) / 10;
      given.add(
          "steps="
              + encoded(String.format(Locale.ROOT, "%s:%.1fh", spell.warmest().text(), hours)));
    }
    return new Choice(
        given.stream().collect(Collectors.joining("&", AheadPage.ADDRESS + "?", "")),
        visitor.say(
            "day.warm-cost",
            Isolated.of(lot.food()),
            desk.times(visitor).day(frozen.atZone(desk.zone()).toLocalDate())));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
