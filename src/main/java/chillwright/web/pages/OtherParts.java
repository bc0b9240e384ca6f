package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.core.log.Word;
import chillwright.service.Kitchen;
import chillwright.service.LotView;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** The parts of a lot, or of the batch that it is a part of: what is done to one is done to all. */
record OtherParts(Kitchen kitchen, LotView view) {
  /** So many are offered. */
  private static final int OFFERED = 50;

  private static final String ALSO = "also";

  /** Those on hand; of a part that is used up, not the others of its batch. */
  List<LotState> onHand() {
    LotState own = view.state();
    return Stream.concat(Stream.of(own.lot()), source().filter(s -> own.isOnHand()).stream())
        .flatMap(whole -> kitchen.lots().parts(whole).stream())
        .filter(part -> !part.lot().equals(own.lot()) && part.food().equals(own.food()))
        .limit(OFFERED)
        .toList();
  }

  /** Whether nothing is left but parts: then the lot itself takes no entry. */
  boolean areAlone() {
    return !view.state().isOnHand() && !onHand().isEmpty();
  }

  /** The lot of which it is nothing but a part. */
  private Optional<LotId> source() {
    return view.sources().size() == 1 ? Optional.of(view.sources().get(0)) : Optional.empty();
  }

  /** The lot of that code, on hand or not; empty where it is none of the parts. */
  Optional<LotView> part(String code) {
    List<LotId> own = List.of(view.state().lot());
    return Optional.of(code)
        .filter(LotId::isCode)
        .map(LotId::new)
        .filter(lot -> !own.contains(lot))
        .flatMap(kitchen.lots()::lot)
        .filter(
            part ->
                part.sources().equals(own)
                    || (source().isPresent() && part.sources().equals(view.sources())));
  }

  /** What the page offers, with what was filled in of it. */
  LotPageView.Others shown(
      Filled form, Visitor visitor, Function<LotView, List<LotPageView.Next>> next) {
    boolean isFresh = !form.has("token") && !form.has("kept");
    boolean areAlone = areAlone();
    // Portions are taken from one of them: whoever takes them says which.
    boolean isTicked = areAlone && !form.given("entry").equals(Word.PORTIONS.text());
    List<String> ticked = codes(form.given(ALSO));
    List<LotState> onHand = onHand();
    Map<LotPageView.Next, List<String>> told = new LinkedHashMap<>();
    if (areAlone) {
      for (LotState part : onHand) {
        next(part, next).forEach(line -> put(told, line, part.lot().text()));
      }
    }
    return new LotPageView.Others(
        areAlone,
        told.entrySet().stream()
            .filter(line -> line.getValue().size() > 1)
            .map(line -> new LotPageView.Shared(line.getKey(), line.getValue()))
            .toList(),
        onHand.stream()
            .map(
                part ->
                    new LotPageView.Other(
                        part.lot().text(),
                        LotLines.where(part, visitor),
                        isFresh ? isTicked : ticked.contains(part.lot().text()),
                        form.given(temperature(part.lot().text())),
                        standing(part),
                        ofOne(part.lot().text(), told)))
            .toList());
  }

  private static void put(
      Map<LotPageView.Next, List<String>> told, LotPageView.Next line, String code) {
    told.computeIfAbsent(line, l -> new ArrayList<>()).add(code);
  }

  /** What is told of that part alone. */
  private static List<LotPageView.Next> ofOne(
      String code, Map<LotPageView.Next, List<String>> told) {
    return told.entrySet().stream()
        .filter(line -> line.getValue().equals(List.of(code)))
        .map(Map.Entry::getKey)
        .toList();
  }

  private Sign standing(LotState part) {
    return Sign.of(part.standing().flatMap(of -> of.verdicts().at(kitchen.now())));
  }

  private List<LotPageView.Next> next(
      LotState part, Function<LotView, List<LotPageView.Next>> next) {
    return kitchen.lots().lot(part.lot()).map(next).orElse(List.of());
  }

  /** The codes that are ticked, and those of lots whose temperature is given. */
  static List<String> asked(Form form) {
    String prefix = temperature("");
    Stream<String> read =
        form.all().entrySet().stream()
            .filter(field -> field.getKey().startsWith(prefix) && !field.getValue().isEmpty())
            .map(field -> field.getKey().substring(prefix.length()))
            .sorted();
    return Stream.concat(codes(form.words(ALSO)).stream(), read).distinct().toList();
  }

  private static List<String> codes(String words) {
    return Arrays.stream(words.split("[\\s,]+")).filter(code -> !code.isEmpty()).toList();
  }

  /** The field for the temperature that was read in one of them. */
  static String temperature(String code) {
    return "temperature-" + code;
  }

  /** The address of a page that is to tell for which of them something was saved. */
  static String on(String page, Collection<String> codes) {
    String sign = page.contains("?") ? "&" : "?";
    return codes.isEmpty() ? page : page + sign + ALSO + "=" + String.join(",", codes);
  }

  /** Tells it; of no lot that is none of the parts. */
  Optional<Frame.Notice> saved(Context context, Visitor visitor) {
    boolean isKept = context.queryParamMap().containsKey("kept");
    String asked = Optional.ofNullable(context.queryParam(ALSO)).orElse("");
    List<String> codes =
        codes(asked).stream().limit(OFFERED).filter(code -> part(code).isPresent()).toList();
    return codes.isEmpty() || isKept
        ? Optional.empty()
        : Optional.of(new Frame.Notice(visitor.say("entry.also.done"), codes, Optional.empty()));
  }
}
