package chillwright.web.pages;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Folded;
import chillwright.core.log.HandOut;
import chillwright.service.AllergenAsked;
import chillwright.service.Recall.Recalled;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Tells, after a food was given allergens more, which labels do not name them. What is told is
 * looked up then: the address only says what to look for.
 */
record AllergenAdded(Desk desk, Visitor visitor) {
  private static final String SAID = "said";
  private static final String ADDED = "added";

  /** So many are looked up: each is a look through the whole log. */
  private static final int MOST = 12;

  /** So many lots are named; the trace has them all. */
  private static final int NAMED = 12;

  /** What a food names by now and did not before. */
  static List<String> between(Optional<KnownFood> before, KnownFood after) {
    Set<String> known = new HashSet<>();
    before.ifPresent(food -> all(food).forEach(name -> known.add(Folded.of(name))));
    return all(after).filter(name -> !known.contains(Folded.of(name))).toList();
  }

  private static Stream<String> all(KnownFood food) {
    return Stream.concat(
        food.allergens().stream().map(Allergen::key),
        food.otherAllergens().stream().flatMap(AllergenAdded::each));
  }

  private static Stream<String> each(String others) {
    return Stream.of(others.split("[,;\n]")).map(String::strip).filter(name -> !name.isEmpty());
  }

  /** The address of the page that is to tell it. */
  static String address(String food, List<String> added) {
    return added.stream()
        .limit(MOST)
        .map(name -> "&" + ADDED + "=" + encoded(name))
        .collect(Collectors.joining("", RulesPage.ADDRESS + "?" + SAID + "=" + encoded(food), ""));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** A notice for each of them that the food names; none where the address asks for nothing. */
  List<Frame.Notice> of(Context context) {
    Optional<KnownFood> food =
        Optional.ofNullable(context.queryParam(SAID)).flatMap(desk.kitchen().setUp()::food);
    return food.stream()
        .flatMap(
            known ->
                context.queryParams(ADDED).stream()
                    .filter(name -> !name.isBlank())
                    .distinct()
                    .limit(MOST)
                    .map(AllergenAsked::of)
                    .filter(asked -> asked.isIn(known.allergens(), known.otherAllergens()))
                    .flatMap(asked -> notice(known.name(), asked).stream()))
        .toList();
  }

  /** Nothing of a food that no lot is of. */
  private Optional<Frame.Notice> notice(String food, AllergenAsked asked) {
    Instant now = desk.kitchen().now();
    List<Recalled> lots =
        desk.kitchen().tracing().allergen(asked).bearing().stream()
            .filter(lot -> lot.foods().contains(food))
            .toList();
    if (lots.isEmpty()) {
      return Optional.empty();
    }
    List<String> onHand =
        lots.stream()
            .filter(lot -> lot.traced().lot().isOnHand())
            .filter(lot -> lot.onBoxes().last(now).stream().anyMatch(last -> !last.names(asked)))
            .map(lot -> lot.lot().text())
            .toList();
    List<Optional<String>> got = new ArrayList<>();
    for (Recalled lot : lots) {
      for (HandOut out : lot.traced().handOuts()) {
        if (lot.isUnnamed(out)) {
          got.add(out.entry().details().to().map(Folded::of));
        }
      }
    }
    String name = asked.ofLaw().map(of -> visitor.say("allergen." + of.key())).orElse(asked.text());
    long nobody = got.stream().filter(Optional::isEmpty).count();
    long somebody = got.stream().flatMap(Optional::stream).distinct().count();
    boolean isNone = onHand.isEmpty() && got.isEmpty();
    String trace = TracePage.ADDRESS + "?" + TraceAsked.ALLERGEN + "=" + encoded(asked.text());
    return Optional.of(
        new Frame.Notice(
            isNone
                ? visitor.say("setup.added.none", food, name)
                : visitor.say("setup.added", food, name, onHand.size(), somebody, nobody),
            onHand.stream().limit(NAMED).toList(),
            Optional.empty(),
            List.of(new Choice(trace, visitor.say("setup.added.trace", name)))));
  }
}
