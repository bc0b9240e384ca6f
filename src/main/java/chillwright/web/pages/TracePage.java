package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.Allergen;
import chillwright.core.log.Folded;
import chillwright.core.log.LotId;
import chillwright.service.Recall.Recalled;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Traced;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Tracing: every lot made of a food or of a lot, who got some, and what bears an allergen. */
final class TracePage {
  static final String ADDRESS = "/trace";
  static final String CSV = "/trace.csv";

  /** More lots are no page that anybody reads; the table has them all. */
  private static final int SHOWN = 500;

  private final Desk desk;

  TracePage(Desk desk) {
    this.desk = desk;
  }

  static String of(LotId lot) {
    return ADDRESS + "?" + TraceAsked.LOT + "=" + lot;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    TraceAsked asked = TraceAsked.of(context, visitor, desk.kitchen());
    List<TraceView.Group> groups = groups(asked, visitor);
    List<String> notices = new ArrayList<>();
    if (asked.isCut()) {
      notices.add(visitor.say("trace.cut", Tracing.MOST_LOTS));
    }
    if (asked.mostInOneList() > SHOWN) {
      notices.add(visitor.say("trace.shown", SHOWN));
    }
    TraceView view =
        new TraceView(
            Filled.with(asked.isAnswered() ? Map.of() : asked.given()),
            asked.tooMany(),
            new Known(desk.kitchen()).foods(),
            allergens(visitor),
            asked.isAnswered() ? title(asked, visitor) : "",
            says(asked, visitor),
            new WhomToTell(desk, visitor).of(asked),
            notices,
            groups,
            asked.isAnswered() ? CSV + asked.query() : "");
    Frame frame =
        desk.frame(visitor, "page.trace", ADDRESS, Frame.Notice.plain(asked.faults()))
            .asked(context);
    HttpStatus status = asked.faults().isEmpty() ? HttpStatus.OK : HttpStatus.BAD_REQUEST;
    desk.answer(context, status, Templates.PAGES.trace(frame, view));
  }

  /** Those of the law, then those that the kitchen named in words of its own. */
  private List<Choice> allergens(Visitor visitor) {
    Map<String, Choice> choices = new LinkedHashMap<>();
    for (Allergen allergen : Allergen.values()) {
      String name = visitor.say("allergen." + allergen.key());
      choices.put(Folded.of(name), new Choice(allergen.key(), name));
    }
    desk.kitchen().setUp().foods().stream()
        .flatMap(food -> food.otherAllergens().stream())
        .flatMap(others -> Arrays.stream(others.split("[,;\n]", -1)))
        .map(String::strip)
        .filter(name -> !name.isEmpty())
        .sorted()
        .forEach(name -> choices.putIfAbsent(Folded.of(name), new Choice(name, name)));
    return List.copyOf(choices.values());
  }

  private static String title(TraceAsked asked, Visitor visitor) {
    String value = Isolated.of(asked.answered().getValue());
    return switch (asked.answered().getKey()) {
      case TraceAsked.FOOD -> visitor.say("trace.asked.food", value);
      case TraceAsked.TO -> visitor.say("trace.asked.recipient", value);
      case TraceAsked.ALLERGEN -> visitor.say("trace.asked.allergen", name(asked, visitor));
      default -> visitor.say("trace.asked.lot", value);
    };
  }

  private static String name(TraceAsked asked, Visitor visitor) {
    return asked
        .recall()
        .flatMap(recall -> recall.asked().ofLaw())
        .map(allergen -> visitor.say("allergen." + allergen.key()))
        .orElse(asked.answered().getValue());
  }

  private List<String> says(TraceAsked asked, Visitor visitor) {
    if (asked.recall().isPresent()) {
      return new RecallWords(desk, visitor).basis();
    }
    return asked
        .trace()
        .filter(trace -> !trace.matched().isEmpty())
        .map(trace -> List.of(visitor.say("trace.matched", Isolated.joined(trace.matched()))))
        .orElse(List.of());
  }

  private List<TraceView.Group> groups(TraceAsked asked, Visitor visitor) {
    List<TraceView.Group> groups = new ArrayList<>();
    asked
        .trace()
        .ifPresent(
            trace -> {
              boolean isOfSomebody = asked.given().containsKey(TraceAsked.TO);
              String says =
                  isOfSomebody ? got(trace.lots(), visitor) : count(trace.lots(), visitor);
              List<TraceView.Line> lines =
                  trace.lots().stream()
                      .limit(SHOWN)
                      .map(lot -> line(lot, Optional.empty(), visitor))
                      .toList();
              groups.add(new TraceView.Group("", List.of(says), lines));
            });
    asked
        .recall()
        .ifPresent(
            recall -> {
              RecallWords words = new RecallWords(desk, visitor);
              groups.add(
                  group(
                      visitor.say("trace.bearing"),
                      words.foods(recall, recall.bearing()),
                      recall.bearing(),
                      visitor));
              groups.add(
                  group(
                      visitor.say("trace.unsure"),
                      words.foods(recall, recall.unsure()),
                      recall.unsure(),
                      visitor));
            });
    return groups;
  }

  private TraceView.Group group(
      String title, List<String> foods, List<Recalled> lots, Visitor visitor) {
    List<TraceView.Line> lines =
        lots.stream()
            .limit(SHOWN)
            .map(lot -> line(lot.traced(), Optional.of(lot), visitor))
            .toList();
    List<String> says = new ArrayList<>(foods);
    says.add(count(lots.stream().map(Recalled::traced).toList(), visitor));
    return new TraceView.Group(title, says, lines);
  }

  private static String count(List<Traced> lots, Visitor visitor) {
    int left =
        lots.stream()
            .map(Traced::lot)
            .filter(LotState::isOnHand)
            .mapToInt(lot -> lot.portions().left().orElse(0))
            .sum();
    return lots.isEmpty()
        ? visitor.say("trace.none")
        : visitor.say("trace.says", lots.size(), left);
  }

  /** How much went to those who were asked about. */
  private static String got(List<Traced> lots, Visitor visitor) {
    int portions =
        lots.stream()
            .flatMap(lot -> lot.handOuts().stream())
            .mapToInt(out -> out.entry().details().portions().orElse(0))
            .sum();
    return lots.isEmpty()
        ? visitor.say("trace.none")
        : visitor.say("trace.got", lots.size(), portions);
  }

  private TraceView.Line line(Traced traced, Optional<Recalled> recalled, Visitor visitor) {
    LotState lot = traced.lot();
    OutWords words = new OutWords(desk, visitor);
    RecallWords recall = new RecallWords(desk, visitor);
    return new TraceView.Line(
        lot.lot().text(),
        lot.food(),
        lot.standing().map(s -> desk.moment(s.beganAt(), visitor)).orElse(""),
        LotLines.where(lot, traced.ending(), visitor),
        traced.from().stream()
            .map(from -> new TraceView.Source(from.lot().text(), from.food()))
            .toList(),
        recalled.map(recall::notes).orElse(List.of()),
        traced.handOuts().stream()
            .map(out -> words.line(out) + recalled.map(of -> recall.early(of, out)).orElse(""))
            .toList());
  }

  void table(Context context) throws IOException {
    Visitor visitor = desk.visitor(context);
    TraceAsked asked = TraceAsked.of(context, visitor, desk.kitchen());
    if (!asked.isAnswered()) {
      String says = visitor.say("fault.list");
      List<String> faults =
          asked.faults().isEmpty() ? List.of(visitor.say("trace.nothing-asked")) : asked.faults();
      desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, faults);
      return;
    }
    new TraceTable(desk.zone(), visitor).of(asked).answer(context, "trace");
  }
}
