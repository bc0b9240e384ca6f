package chillwright.web.pages;

import chillwright.service.AllergenAsked;
import chillwright.service.Kitchen;
import chillwright.service.Recall;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Trace;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a page was asked to trace, and what was found of it.
 *
 * @param given the fields that were filled in; an answer needs exactly one
 * @param trace of a food, a lot or somebody who got portions
 * @param recall of an allergen
 */
record TraceAsked(
    Map<String, String> given,
    Optional<Trace> trace,
    Optional<Recall> recall,
    List<String> faults) {
  static final String FOOD = "food";
  static final String LOT = "lot";
  static final String TO = "to";
  static final String ALLERGEN = "allergen";

  private static final int LONGEST = 500;
  private static final Map<String, String> NAMES =
      Map.of(
          FOOD, "batch.food", LOT, "trace.lot", TO, "trace.recipient", ALLERGEN, "trace.allergen");

  TraceAsked {
    given = Map.copyOf(given);
    faults = List.copyOf(faults);
  }

  static TraceAsked of(Context context, Visitor visitor, Kitchen kitchen) {
    Parameters parameters = new Parameters(context, visitor, NAMES);
    Map<String, String> given = new LinkedHashMap<>();
    for (String name : List.of(FOOD, LOT, TO, ALLERGEN)) {
      parameters.text(name, LONGEST).ifPresent(text -> given.put(name, text));
    }
    if (given.size() > 1) {
      String filled =
          given.entrySet().stream()
              .map(field -> visitor.say(title(field.getKey()), field.getValue()))
              .collect(Collectors.joining("; "));
      parameters.refuse(visitor.say("trace.only-one", filled));
    }
    Optional<Trace> trace = Optional.empty();
    Optional<Recall> recall = Optional.empty();
    if (parameters.faults().isEmpty()) {
      trace = trace(given, kitchen);
      recall =
          Optional.ofNullable(given.get(ALLERGEN))
              .map(text -> kitchen.tracing().allergen(AllergenAsked.of(text)));
    }
    if (given.containsKey(LOT) && trace.isEmpty() && parameters.faults().isEmpty()) {
      parameters.refuse(visitor.say("fault.no-lot", given.get(LOT)));
    }
    return new TraceAsked(given, trace, recall, parameters.faults());
  }

  /** The key of how an answer to that field is called. */
  static String title(String field) {
    return "trace.asked." + (field.equals(TO) ? "recipient" : field);
  }

  private static Optional<Trace> trace(Map<String, String> given, Kitchen kitchen) {
    Tracing tracing = kitchen.tracing();
    return Optional.ofNullable(given.get(FOOD))
        .map(tracing::food)
        .or(() -> Optional.ofNullable(given.get(TO)).map(tracing::recipient))
        .or(
            () ->
                Optional.ofNullable(given.get(LOT))
                    .flatMap(kitchen.lots()::meant)
                    .flatMap(lot -> tracing.lot(lot, Tracing.MOST_LOTS)));
  }

  boolean isAnswered() {
    return trace.isPresent() || recall.isPresent();
  }

  boolean isCut() {
    return trace.filter(Trace::isCut).isPresent() || recall.filter(Recall::isCut).isPresent();
  }

  /** How many lots there are in the longest list of the answer. */
  int mostInOneList() {
    int traced = trace.map(found -> found.lots().size()).orElse(0);
    int recalled =
        recall.map(found -> Math.max(found.bearing().size(), found.unsure().size())).orElse(0);
    return Math.max(traced, recalled);
  }

  /** The one field that was answered, as it was filled in. */
  Map.Entry<String, String> answered() {
    return given.entrySet().iterator().next();
  }

  /** The fields that are filled in where only one can be; else none. */
  Set<String> tooMany() {
    return given.size() > 1 ? given.keySet() : Set.of();
  }

  String query() {
    return "?"
        + answered().getKey()
        + "="
        + URLEncoder.encode(answered().getValue(), StandardCharsets.UTF_8);
  }
}
