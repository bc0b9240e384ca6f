package chillwright.web.pages;

import chillwright.core.ahead.Ahead;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.PrintedLife;
import chillwright.core.heat.Surface;
import chillwright.core.log.Problem;
import chillwright.core.portions.Pan;
import chillwright.print.AheadText;
import chillwright.print.Language;
import chillwright.rulebook.Handbook;
import chillwright.service.ahead.BadQuestion;
import chillwright.service.ahead.KitchenFoods;
import chillwright.service.ahead.Parameter;
import chillwright.service.ahead.Question;
import chillwright.service.ahead.Setting;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Questions asked before cooking, or when the power is gone; no set-up, and nothing is stored. */
final class AheadPage {
  static final String ADDRESS = "/ahead";

  /** Asks for the form alone, filled with what is given. */
  static final String FORM = "form";

  /** Keys of the words to choose from that stand in no table. */
  static final List<String> APPLIANCES = List.of("refrigerator", "full-freezer", "half-freezer");

  static final List<String> FAULTS =
      List.of(
          "missing",
          "unknown",
          "one-of-two.pans",
          "one-of-two.ice",
          "one-of-two.frozen-life",
          "one-of-two.thawing",
          "bad-length",
          "bad-volume",
          "bad-weight",
          "bad-time",
          "bad-since",
          "two-times",
          "two-moments",
          "two-foods",
          "no-unit-length",
          "no-unit-volume",
          "no-unit-freezer",
          "no-unit-weight",
          "no-unit-time",
          "bad-temperature",
          "not-warmer",
          "bad-count",
          "bad-number",
          "bad-date",
          "bad-steps",
          "before-frozen",
          "not-over",
          "past-day",
          "needs-cold",
          "other-kind");

  private static final Pattern BARE = Pattern.compile("[-+\u2212]?\\d{1,3}(?:[.,]\\d{1,2})?");

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
          new AheadView("", Map.of(), Map.of(), List.of(), List.of(), questions(visitor));
      answer(context, HttpStatus.OK, visitor, none);
      return;
    }
    Map<String, String> given = new LinkedHashMap<>();
    for (Parameter parameter : asked.get().parameters()) {
      Optional.ofNullable(context.queryParam(parameter.name()))
          .map(String::strip)
          .filter(text -> !text.isEmpty())
          .ifPresent(text -> given.put(parameter.name(), inScale(parameter, text, visitor)));
    }
    if (given.isEmpty() || context.queryParam(FORM) != null) {
      open(context, visitor, asked.get(), given);
    } else {
      answered(context, visitor, asked.get(), given);
    }
  }

  /** A link to a question opens its form; what holds of food without power needs no figure. */
  private void open(
      Context context, Visitor visitor, Question question, Map<String, String> given) {
    List<Part> says = question == Question.OUTAGE ? Part.afterOutage(visitor) : List.of();
    AheadView view =
        new AheadView(question.key(), given, Map.of(), says, List.of(), questions(visitor));
    answer(context, HttpStatus.OK, visitor, view);
  }

  private void answered(
      Context context, Visitor visitor, Question asked, Map<String, String> given) {
    try {
      Ahead ahead = asked.answer(understood(given, visitor), setting(choice(context)));
      AheadText text = new AheadText(visitor.language(), visitor.scale());
      List<Part> says = Part.of(ahead.told(), text);
      List<String> small =
          Stream.concat(text.cautions(ahead).stream(), text.sources(ahead).stream()).toList();
      AheadView view = new AheadView(asked.key(), given, Map.of(), says, small, questions(visitor));
      answer(context, HttpStatus.OK, visitor, view);
    } catch (BadQuestion bad) {
      Map<String, String> wrong = new LinkedHashMap<>();
      bad.problems()
          .forEach(
              problem ->
                  wrong.merge(field(problem), fault(asked, problem, visitor), AheadPage::joined));
      AheadView view =
          new AheadView(asked.key(), given, wrong, List.of(), List.of(), questions(visitor));
      answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, view);
    }
  }

  /** A food that is written by its title in the language of the page is told by its key. */
  private static Map<String, String> understood(Map<String, String> given, Visitor visitor) {
    Map<String, String> understood = new LinkedHashMap<>(given);
    for (PrintedFood food : Handbook.shipped().foods()) {
      understood.computeIfPresent(
          "food",
          (name, word) ->
              word.equalsIgnoreCase(visitor.language().named(food.title())) ? food.key() : word);
    }
    return understood;
  }

  private Setting setting(HomeChoice choice) {
    ZonedDateTime now = desk.kitchen().now().atZone(desk.zone());
    return Setting.of(desk.kitchen().library(), choice.book(), now)
        .with(new KitchenFoods(desk.kitchen()));
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
                        shown(parameter, example, visitor),
                        choices(question, parameter, visitor),
                        parameter.label().equals(Parameter.OWN_FOOD)))
            .toList());
  }

  /** The value of the example as a person would write it. */
  private static String shown(Parameter parameter, Map<String, String> example, Visitor visitor) {
    String value = example.getOrDefault(parameter.name(), "");
    return Handbook.shipped().foods().stream()
        .filter(food -> parameter.name().equals("food") && food.key().equals(value))
        .map(food -> visitor.language().named(food.title()))
        .findFirst()
        .orElse(value);
  }

  /** What may be chosen, by the titles that the answers use too. */
  private List<Choice> choices(Question question, Parameter parameter, Visitor visitor) {
    Handbook handbook = Handbook.shipped();
    Language language = visitor.language();
    return switch (parameter.name()) {
      case "food" -> choices(handbook.foods(), PrintedFood::key, PrintedFood::title, language);
      case "surface" ->
          choices(question.surfaces(handbook), Surface::key, Surface::title, language);
      case "pan" -> choices(handbook.pans(), Pan::key, Pan::title, language);
      case "life" -> choices(handbook.lives(), PrintedLife::key, PrintedLife::title, language);
      case "category" ->
          desk.kitchen().library().keepingList().categories().stream()
              .filter(category -> category.freezer().max().isPresent())
              .map(category -> new Choice(category.key(), language.titled(category)))
              .toList();
      default -> named(parameter, visitor);
    };
  }

  private static <T> List<Choice> choices(
      List<T> all, Function<T, String> key, Function<T, String> title, Language language) {
    return all.stream()
        .map(one -> new Choice(key.apply(one), language.named(title.apply(one))))
        .toList();
  }

  private static List<Choice> named(Parameter parameter, Visitor visitor) {
    List<String> keys =
        parameter.name().equals("appliance")
            ? APPLIANCES
            : parameter.label().contains("|")
                ? List.of(parameter.label().split("[|]", -1))
                : List.of();
    return keys.stream().map(key -> new Choice(key, visitor.say("ahead.choice." + key))).toList();
  }

  /** A temperature without its scale is in that of the person; nothing else is guessed at. */
  private static String inScale(Parameter parameter, String text, Visitor visitor) {
    return parameter.label().equals(Parameter.TEMPERATURE) && BARE.matcher(text).matches()
        ? text.replace(',', '.') + visitor.scaleLetter()
        : text;
  }

  private static String field(Problem problem) {
    return ((Problem.Where.InField) problem.where()).pointer();
  }

  private static String joined(String one, String other) {
    return one + " " + other;
  }

  /** A fault in the words of the page, at the label of its field. */
  private static String fault(Question question, Problem problem, Visitor visitor) {
    String name = field(problem);
    String label = visitor.say("ahead." + question.key() + "." + name);
    if (problem.code().equals("one-of-two")) {
      return visitor.say("ahead.fault.one-of-two." + question.key());
    }
    String code = problem.code().startsWith("unknown-") ? "unknown" : problem.code();
    String[] either = problem.allowed().split(" or ", 2);
    return code.startsWith("two-")
        ? visitor.say(
            "ahead.fault." + code,
            label,
            problem.given(),
            visitor.language().named(either[0]),
            visitor.language().named(either[1]))
        : visitor.say("ahead.fault." + code, label, problem.given());
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, AheadView view) {
    HomeChoice choice = choice(context);
    // Of all questions only these hold their answer against limits of a rule set.
    boolean isRuled =
        view.isAsked(Question.COOLING.key())
            || (view.isAsked(Question.ICE.key()) && !view.given().containsKey("to"));
    boolean isByRules = isRuled && !view.says().isEmpty();
    String judgedBy =
        isByRules ? Desk.judgedBy(visitor, choice.book()) : visitor.say("ahead.by-figures");
    Frame frame =
        desk.frame(visitor, "page.ahead", ADDRESS, List.of()).judgedBy(judgedBy).asked(context);
    AheadView chosen = view.at(choice.isHome(), new KitchenFoods(desk.kitchen()).names());
    desk.answer(context, status, Templates.PAGES.ahead(frame, chosen));
  }

  private HomeChoice choice(Context context) {
    String given = Optional.ofNullable(context.queryParam(HomeChoice.FIELD)).orElse("");
    return new HomeChoice(desk.kitchen(), given);
  }
}
