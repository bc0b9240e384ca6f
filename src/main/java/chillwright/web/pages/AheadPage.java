package chillwright.web.pages;

import chillwright.core.ahead.Ahead;
import chillwright.core.heat.Surface;
import chillwright.core.log.Problem;
import chillwright.print.AheadText;
import chillwright.print.Language;
import chillwright.rulebook.Handbook;
import chillwright.service.ahead.BadQuestion;
import chillwright.service.ahead.Parameter;
import chillwright.service.ahead.Question;
import chillwright.service.ahead.Setting;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Questions asked before cooking, or when the power is gone; no set-up, and nothing is stored. */
final class AheadPage {
  static final String ADDRESS = "/ahead";

  private static final List<String> APPLIANCES =
      List.of("refrigerator", "full-freezer", "half-freezer");

  /** What its lists offer besides printed titles. */
  static final List<String> CHOICES =
      List.of(
          "refrigerator",
          "full-freezer",
          "half-freezer",
          "still_air",
          "moving_air",
          "stirred_bath",
          "running_water",
          "top",
          "both",
          "slab",
          "cylinder",
          "sphere",
          "mixed",
          "meat",
          "vegetables",
          "roast",
          "casserole");

  private final Desk desk;

  AheadPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    String key = Optional.ofNullable(context.queryParam("question")).orElse("");
    Optional<Question> asked =
        Arrays.stream(Question.values()).filter(one -> one.key().equals(key)).findFirst();
    if (asked.isEmpty()) {
      AheadView none =
          new AheadView("", Map.of(), List.of(), List.of(), List.of(), questions(visitor));
      answer(context, HttpStatus.OK, visitor, none);
      return;
    }
    Map<String, String> given = new LinkedHashMap<>();
    for (Parameter parameter : asked.get().parameters()) {
      Optional.ofNullable(context.queryParam(parameter.name()))
          .map(String::strip)
          .filter(text -> !text.isEmpty())
          .ifPresent(text -> given.put(parameter.name(), text));
    }
    if (given.isEmpty()) {
      open(context, visitor, asked.get());
    } else {
      answered(context, visitor, asked.get(), given);
    }
  }

  /** A link to a question opens its form; what holds of food without power needs no figure. */
  private void open(Context context, Visitor visitor, Question question) {
    List<Part> says = question == Question.OUTAGE ? Part.afterOutage(visitor) : List.of();
    AheadView view =
        new AheadView(question.key(), Map.of(), List.of(), says, List.of(), questions(visitor));
    answer(context, HttpStatus.OK, visitor, view);
  }

  private void answered(
      Context context, Visitor visitor, Question asked, Map<String, String> given) {
    try {
      Ahead ahead = asked.answer(given, setting());
      AheadText text = new AheadText(visitor.language(), visitor.scale());
      List<Part> says = Part.of(ahead.told(), text);
      List<String> small =
          Stream.concat(text.sources(ahead).stream(), text.cautions(ahead).stream()).toList();
      AheadView view =
          new AheadView(asked.key(), given, List.of(), says, small, questions(visitor));
      answer(context, HttpStatus.OK, visitor, view);
    } catch (BadQuestion bad) {
      List<String> faults = bad.problems().stream().map(Problem::says).toList();
      AheadView view =
          new AheadView(asked.key(), given, faults, List.of(), List.of(), questions(visitor));
      answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, view);
    }
  }

  private Setting setting() {
    LocalDateTime now = LocalDateTime.ofInstant(desk.kitchen().now(), desk.zone());
    return new Setting(
        desk.kitchen().judge().book().on(now.toLocalDate()),
        desk.kitchen().library().keepingList(),
        Handbook.shipped(),
        now);
  }

  private List<AheadView.Ask> questions(Visitor visitor) {
    return Arrays.stream(Question.values()).map(one -> ask(one, visitor)).toList();
  }

  private AheadView.Ask ask(Question question, Visitor visitor) {
    Map<String, String> example = new LinkedHashMap<>();
    for (String pair : question.example().split(" ", -1)) {
      int at = pair.indexOf('=');
      example.put(pair.substring(0, at), pair.substring(at + 1));
    }
    return new AheadView.Ask(
        question.key(),
        visitor.say("ahead." + question.key()),
        question.parameters().stream()
            .map(
                parameter ->
                    new AheadView.Field(
                        parameter.name(),
                        visitor.say("ahead." + question.key() + "." + parameter.name()),
                        parameter.isNeeded(),
                        example.getOrDefault(parameter.name(), ""),
                        choices(parameter, visitor)))
            .toList());
  }

  private List<AheadView.Option> choices(Parameter parameter, Visitor visitor) {
    Handbook handbook = Handbook.shipped();
    return switch (parameter.name()) {
      case "food" ->
          handbook.foods().stream().map(food -> printed(food.key(), food.title())).toList();
      case "life" ->
          handbook.lives().stream().map(life -> printed(life.key(), life.title())).toList();
      case "pan" -> handbook.pans().stream().map(pan -> printed(pan.key(), pan.title())).toList();
      case "surface" -> said(handbook.surfaces().stream().map(Surface::key).toList(), visitor);
      case "appliance" -> said(APPLIANCES, visitor);
      case "category" ->
          new Known(desk.kitchen())
              .categories(visitor.language()).stream()
                  .map(of -> option(of.key(), of.title(), visitor))
                  .toList();
      default ->
          parameter.label().contains("|")
              ? said(List.of(parameter.label().split("[|]", -1)), visitor)
              : List.of();
    };
  }

  /** A title as its table prints it. */
  private static AheadView.Option printed(String key, String title) {
    return new AheadView.Option(key, title, Language.ENGLISH.tag());
  }

  private static List<AheadView.Option> said(List<String> keys, Visitor visitor) {
    return keys.stream()
        .map(key -> option(key, visitor.say("ahead.choice." + key), visitor))
        .toList();
  }

  private static AheadView.Option option(String key, String title, Visitor visitor) {
    return new AheadView.Option(key, title, visitor.language().tag());
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, AheadView view) {
    Frame frame = desk.frame(visitor, "page.ahead", ADDRESS, List.of());
    desk.answer(context, status, Templates.PAGES.ahead(frame, view));
  }
}
