package chillwright.web.pages;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.KnownPlace.Kind;
import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.Person;
import chillwright.core.kitchen.ProbeCheck;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.rules.RuleSet;
import chillwright.service.CardKind;
import chillwright.service.Refused;
import chillwright.service.SetUp;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The kitchen: its name, people, places and foods, and every limit that it is judged by. */
final class SetUpPage {
  static final String NAME = RulesPage.ADDRESS + "/name";
  static final String PEOPLE = RulesPage.ADDRESS + "/people";
  static final String PLACES = RulesPage.ADDRESS + "/places";
  static final String FOODS = RulesPage.ADDRESS + "/foods";
  static final String PROBES = RulesPage.ADDRESS + "/probes";
  static final String CHECKS = RulesPage.ADDRESS + "/checks";
  static final String STATEMENT = RulesPage.ADDRESS + "/statement";
  static final String RETIRED = RulesPage.ADDRESS + "/retired";

  /** Keys of what stands beside fields whose names are not words of the page. */
  private static final Map<String, String> TITLES =
      Map.ofEntries(
          Map.entry("initials", "setup.initials"),
          Map.entry("name", "setup.name"),
          Map.entry("kind", "setup.kind"),
          Map.entry("rounds", "setup.rounds.field"),
          Map.entry("category", "batch.category"),
          Map.entry("portions", "setup.portions.field"),
          Map.entry("container", "setup.container"),
          Map.entry("place", "setup.place"),
          Map.entry("reheating", "setup.reheating"),
          Map.entry("thawing", "setup.thawing"),
          Map.entry("roomDays", "setup.room-days"),
          Map.entry("otherAllergens", "setup.other-allergens"),
          Map.entry("ingredients", "setup.ingredients"));

  private static final List<String> FIGURES = List.of("ownLimit", "reading");

  private final Desk desk;
  private final SetUp setUp;

  SetUpPage(Desk desk) {
    this.desk = desk;
    this.setUp = desk.kitchen().setUp();
  }

  /** Forms are blank, or filled with what a link of the page asks to change. */
  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Map<String, Filled> forms = new HashMap<>();
    asked(context, "person")
        .flatMap(initials -> find(setUp.people(), p -> p.initials().equals(initials)))
        .ifPresent(person -> forms.put(PEOPLE, Filled.with(cells(person))));
    asked(context, "place")
        .flatMap(name -> find(setUp.places(), p -> p.name().equals(name)))
        .ifPresent(place -> forms.put(PLACES, Filled.with(cells(place, visitor))));
    asked(context, "food")
        .flatMap(setUp::food)
        .ifPresent(food -> forms.put(FOODS, Filled.with(cells(food))));
    asked(context, "probe")
        .flatMap(name -> find(setUp.probes(), p -> p.name().equals(name)))
        .ifPresent(probe -> forms.put(PROBES, Filled.with(cells(probe))));
    answer(context, HttpStatus.OK, visitor, forms);
  }

  private static Optional<String> asked(Context context, String name) {
    return Optional.ofNullable(context.queryParam(name));
  }

  private static <T> Optional<T> find(List<T> all, Predicate<T> isWanted) {
    return all.stream().filter(isWanted).findFirst();
  }

  /** Shows the page, with what was filled in by the addresses of its forms. */
  void answer(Context context, HttpStatus status, Visitor visitor, Map<String, Filled> forms) {
    Map<String, String> usual = Map.of("scale", visitor.scaleLetter());
    Filled name = Filled.with(Map.of("name", desk.kitchen().settings().name().orElse("")));
    SetUpView view =
        new SetUpView(
            forms.getOrDefault(NAME, name),
            ReachForms.view(desk, context, visitor, forms),
            new SetUpView.People(
                with(people(), CardKind.PEOPLE, "person"),
                forms.getOrDefault(PEOPLE, Filled.with(usual))),
            new SetUpView.Places(
                with(places(visitor), CardKind.PLACES, "place"),
                kinds(visitor),
                forms.getOrDefault(PLACES, Filled.with(usual))),
            foods(visitor, forms.getOrDefault(FOODS, Filled.with(usual))),
            probes(
                visitor,
                forms.getOrDefault(PROBES, Filled.with(Map.of())),
                forms.getOrDefault(CHECKS, Filled.with(usual))),
            forms.getOrDefault(
                STATEMENT, Filled.with(Map.of("statement", setUp.labelStatement().orElse("")))));
    List<Frame.Notice> notices = new AllergenAdded(desk, visitor).of(context);
    Frame frame = desk.frame(visitor, "page.kitchen", RulesPage.ADDRESS, notices);
    RulesView rules = new RulesPage(desk).view(visitor);
    desk.answer(context, status, Templates.PAGES.rules(frame, rules, view));
  }

  private List<SetUpView.Line> people() {
    return setUp.people().stream()
        .map(p -> line(p.initials(), p.name().orElse(""), "person"))
        .toList();
  }

  private List<SetUpView.Line> places(Visitor visitor) {
    RuleSet rules = setUp.rulesOfToday();
    return setUp.places().stream()
        .map(
            place -> {
              List<String> says = new ArrayList<>();
              says.add(visitor.say("kind." + place.kind().key()));
              PlaceWords.limit(place, rules, visitor).ifPresent(says::add);
              says.add(visitor.say("setup.rounds", place.rounds()));
              return line(place.name(), String.join(", ", says), "place");
            })
        .toList();
  }

  private static List<Choice> kinds(Visitor visitor) {
    return Arrays.stream(Kind.values())
        .map(kind -> new Choice(kind.key(), visitor.say("kind." + kind.key())))
        .toList();
  }

  private SetUpView.Foods foods(Visitor visitor, Filled form) {
    Known known = new Known(desk.kitchen());
    List<Choice> allergens =
        Arrays.stream(Allergen.values())
            .map(allergen -> new Choice(allergen.key(), visitor.say("allergen." + allergen.key())))
            .toList();
    List<SetUpView.Line> items = setUp.foods().stream().map(food -> line(food, visitor)).toList();
    return new SetUpView.Foods(
        with(items, CardKind.FOODS, "food"),
        known.categories(visitor.language()),
        allergens,
        known.places(),
        form);
  }

  private String says(KnownFood food, Visitor visitor) {
    List<String> says = new ArrayList<>();
    desk.kitchen()
        .library()
        .keepingList()
        .category(food.category())
        .ifPresent(category -> says.add(visitor.language().titled(category)));
    food.portions().ifPresent(count -> says.add(visitor.say("setup.portions", count)));
    food.roomDays().ifPresent(days -> says.add(visitor.say("setup.room-days.told", days)));
    food.container().ifPresent(says::add);
    food.place().ifPresent(says::add);
    food.allergens().forEach(allergen -> says.add(visitor.say("allergen." + allergen.key())));
    food.otherAllergens().ifPresent(says::add);
    return String.join(", ", says);
  }

  private SetUpView.Probes probes(Visitor visitor, Filled form, Filled check) {
    ProbeWords words = new ProbeWords(visitor, at -> desk.moment(at, visitor));
    List<SetUpView.Line> items =
        desk.kitchen().probes().all().stream()
            .map(checked -> line(checked.probe().name(), words.says(checked), "probe"))
            .toList();
    List<Choice> scales =
        Stream.of(KnownProbe.Scales.BOTH, KnownProbe.Scales.FAHRENHEIT, KnownProbe.Scales.CELSIUS)
            .map(of -> new Choice(of.key(), visitor.say("scales." + of.key())))
            .toList();
    List<Choice> methods =
        Arrays.stream(ProbeCheck.Method.values())
            .map(method -> new Choice(method.key(), visitor.say("check." + method.key())))
            .toList();
    return new SetUpView.Probes(
        with(items, CardKind.PROBES, "probe"), scales, form, methods, check);
  }

  /** A list, and after it what is offered no more. */
  private List<SetUpView.Line> with(List<SetUpView.Line> used, CardKind list, String kind) {
    Stream<SetUpView.Line> retired =
        setUp.retired(list).stream().map(name -> new SetUpView.Line(name, "", "", kind, ""));
    return Stream.concat(used.stream(), retired).toList();
  }

  /** The way to the form that describes a food. */
  static Choice describing(String food, Visitor visitor) {
    return new Choice(line(food, "", "food").change(), visitor.say("labels.to-food", food));
  }

  private static SetUpView.Line line(String name, String says, String kind) {
    String asked = URLEncoder.encode(name, StandardCharsets.UTF_8);
    String change = RulesPage.ADDRESS + "?" + kind + "=" + asked + "#" + kind + "-form";
    return new SetUpView.Line(name, says, change, kind, "");
  }

  private SetUpView.Line line(KnownFood food, Visitor visitor) {
    SetUpView.Line line = line(food.name(), says(food, visitor), "food");
    String warning = new AllergenNotes(visitor).of(food);
    return new SetUpView.Line(line.name(), line.says(), line.change(), line.kind(), warning);
  }

  private static Map<String, String> cells(Person person) {
    return Map.of("initials", person.initials(), "name", person.name().orElse(""));
  }

  private static Map<String, String> cells(KnownProbe probe) {
    return Map.of(
        "name", probe.name(), "scales", probe.scales().key(), "note", probe.note().orElse(""));
  }

  private static Map<String, String> cells(KnownPlace place, Visitor visitor) {
    Map<String, String> cells = new HashMap<>();
    cells.put("scale", visitor.scaleLetter());
    cells.put("name", place.name());
    cells.put("kind", place.kind().key());
    cells.put("rounds", Integer.toString(place.rounds()));
    place
        .ownLimit()
        .ifPresent(
            own -> {
              cells.put("ownLimit", own.text().replaceFirst(" .*", ""));
              cells.put("scale", EntryForm.letter(own.scale()));
            });
    return cells;
  }

  private static Map<String, String> cells(KnownFood food) {
    Map<String, String> cells = new HashMap<>();
    cells.put("name", food.name());
    cells.put("category", food.category());
    food.portions().ifPresent(count -> cells.put("portions", Integer.toString(count)));
    cells.put("container", food.container().orElse(""));
    cells.put("place", food.place().orElse(""));
    cells.put("reheating", food.reheating().orElse(""));
    cells.put("thawing", food.thawing().orElse(""));
    food.roomDays().ifPresent(days -> cells.put("roomDays", Integer.toString(days)));
    cells.put(
        "allergens", food.allergens().stream().map(Allergen::key).collect(Collectors.joining(" ")));
    cells.put("otherAllergens", food.otherAllergens().orElse(""));
    cells.put("ingredients", food.ingredients().orElse(""));
    return cells;
  }

  void name(Context context) {
    take(context, NAME, "kitchen", setUp::name);
  }

  void person(Context context) {
    take(context, PEOPLE, "people", setUp::person);
  }

  void place(Context context) {
    take(context, PLACES, "places", setUp::place);
  }

  void food(Context context) {
    take(context, FOODS, this::food);
  }

  /** Tells what its labels lack, where it names an allergen more. */
  private String food(Map<String, String> cells) {
    Optional<KnownFood> before = Optional.ofNullable(cells.get("name")).flatMap(setUp::food);
    KnownFood after = setUp.food(cells);
    List<String> added = AllergenAdded.between(before, after);
    return added.isEmpty() ? section("foods") : AllergenAdded.address(after.name(), added);
  }

  void statement(Context context) {
    take(context, STATEMENT, "kitchen", setUp::labelStatement);
  }

  void probe(Context context) {
    take(context, PROBES, "probes", setUp::probe);
  }

  void check(Context context) {
    Form sent = new Form(context.formParamMap());
    take(
        context,
        CHECKS,
        "probes",
        cells ->
            desk.kitchen()
                .probes()
                .check(cells.getOrDefault("probe", ""), cells, sent.once(CHECKS)));
  }

  /** Offers something no more, or again. */
  void retire(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Optional<CardKind> kind =
        Arrays.stream(CardKind.values())
            .filter(k -> k.name().toLowerCase(Locale.ROOT).equals(form.get().text("kind")))
            .findFirst();
    if (kind.isPresent() && changeUse(kind.get(), form.get())) {
      context.redirect(
          RulesPage.ADDRESS + "#" + kind.get().name().toLowerCase(Locale.ROOT),
          HttpStatus.SEE_OTHER);
      return;
    }
    String name = form.get().text("name");
    desk.fault(context, desk.visitor(context), HttpStatus.NOT_FOUND, "fault.no-card", name);
  }

  private boolean changeUse(CardKind kind, Form form) {
    return form.text("again").isEmpty()
        ? setUp.retire(kind, form.text("name"))
        : setUp.restore(kind, form.text("name"));
  }

  /** Takes a form, and shows its list; or shows the form again with every fault. */
  private void take(
      Context context, String address, String section, Consumer<Map<String, String>> said) {
    take(
        context,
        address,
        cells -> {
          said.accept(cells);
          return section(section);
        });
  }

  private static String section(String name) {
    return RulesPage.ADDRESS + "#" + name;
  }

  /** The same, where what was said has a word in where the answer leads. */
  private void take(Context context, String address, Function<Map<String, String>, String> said) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Map<String, String> cells = form.get().all();
    cells.put("allergens", form.get().words("allergens"));
    for (String figure : FIGURES) {
      cells.computeIfPresent(figure, (name, text) -> figure(text, form.get().text("scale")));
    }
    try {
      context.redirect(said.apply(cells), HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      FIGURES.forEach(figure -> cells.put(figure, form.get().text(figure)));
      Visitor visitor = desk.visitor(context);
      Filled again = Filled.refused(cells, faults(refused.problems(), visitor));
      answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, Map.of(address, again));
    }
  }

  /** What is wrong, told of the field by what stands beside it. */
  private static List<String> faults(List<Problem> problems, Visitor visitor) {
    return problems.stream()
        .map(
            problem -> {
              String field =
                  problem.where() instanceof InField in
                      ? in.pointer().substring(in.pointer().lastIndexOf('/') + 1)
                      : "";
              String says = visitor.language().fault(problem.says());
              return Optional.ofNullable(TITLES.get(field))
                  .map(
                      title ->
                          says.replaceFirst("(?<=[\"«])" + field + "(?=[\"»])", visitor.say(title)))
                  .orElse(says);
            })
        .toList();
  }

  /** A figure with the scale beside it, where it brings none of its own. */
  private static String figure(String text, String scale) {
    String dotted = text.replace(',', '.');
    boolean isBare = !dotted.isEmpty() && Character.isDigit(dotted.charAt(dotted.length() - 1));
    return isBare ? dotted + scale : dotted;
  }
}
