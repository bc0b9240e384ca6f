package chillwright.web.pages;

import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Thawing;
import chillwright.print.DishLotsText;
import chillwright.print.PlanText;
import chillwright.rulebook.Handbook;
import chillwright.service.Plans.LeftOut;
import chillwright.service.Plans.Planned;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Puts a plan and the forms that change it on its page. */
final class PlanViews {
  /** What a kitchen has, whether or not it was said: the commonest things. */
  private static final List<String> COMMON =
      List.of("oven", "hob", "hands", "refrigerator", "freezer", "freezing", "warm");

  /** Blank rows below those that are filled. */
  private static final int MORE_STEPS = 2;

  private final Desk desk;
  private final Visitor visitor;

  PlanViews(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
  }

  /**
   * The page of a plan.
   *
   * @param tree what its forms hold, which is what was sent where that was at fault
   */
  PlanView of(Planned planned, PlanTree tree, PlanFaults faults) {
    PlanText text = new PlanText(planned.menu(), visitor.language(), visitor.scale());
    boolean isEmpty = planned.menu().dishes().isEmpty();
    List<String> kept = planned.menu().dishes().stream().map(Dish::name).toList();
    Known known = new Known(desk.kitchen());
    List<PlanForm> dishes = new ArrayList<>();
    for (int i = 0; i < kept.size() && i < tree.dishes().size(); i++) {
      dishes.add(dish(tree, i, kept.get(i), faults));
    }
    return new PlanView(
        planned.code(),
        text.serving(planned.menu()),
        text.open(planned.menu()).orElse(""),
        isEmpty ? "" : text.verdict(planned.plan()),
        PlanRules.of(desk, visitor),
        planned.leftOut().stream()
            .map(lot -> new Choice(lot.lot().toString(), says(lot, visitor)))
            .toList(),
        Stream.of(
                lots(planned, text, desk),
                planned.plan().conflicts().stream().map(text::conflict),
                text.remarks(planned.plan()).stream())
            .flatMap(says -> says)
            .toList(),
        planned.moved().stream().map(text::moved).toList(),
        text.days(planned.plan()),
        text.bounds(planned.plan()),
        portions(planned, text, visitor),
        text.shopping(planned.menu(), planned.plan(), planned.missing()),
        batches(planned),
        made(faults),
        text.thawing(planned.menu(), planned.plan()),
        text.caution(),
        faults.others(),
        PlanMarks.of(tree, faults, visitor),
        event(tree, faults),
        kitchen(tree, faults, isEmpty),
        dishes,
        dish(tree, kept.size(), "", faults),
        named(tree.ofSteps().stream()),
        named(tree.things().stream().filter(PlanTree.KEPT_IN::contains)),
        named(Stream.concat(COMMON.stream(), tree.things().stream()).distinct()),
        known.categories(visitor.language()),
        known.foods(),
        Handbook.shipped().pans().stream()
            .map(pan -> new Choice(pan.key(), visitor.language().named(pan.title())))
            .toList(),
        tree.text(),
        PlanVolumes.of(visitor).sent());
  }

  private List<Choice> named(Stream<String> things) {
    return things.map(name -> new Choice(name, title(name))).toList();
  }

  private String title(String thing) {
    return COMMON.contains(thing) ? visitor.say(PlanVolumes.of(visitor).key(thing)) : thing;
  }

  /** The keys of what a kitchen has. */
  static List<String> keys() {
    return COMMON.stream()
        .flatMap(
            name -> Stream.of(false, true).map(isQuarts -> new PlanVolumes(isQuarts).key(name)))
        .distinct()
        .toList();
  }

  PlanForm event(PlanTree tree, PlanFaults faults) {
    boolean isOpen =
        Stream.of("/name", "/serving", "/guests").anyMatch(faults.at().keySet()::contains);
    return new PlanForm(
        "event",
        "",
        tree.fields(""),
        faults.at(),
        faults.asked(),
        isOpen,
        tree.name(),
        Map.of(),
        "");
  }

  private PlanForm kitchen(PlanTree tree, PlanFaults faults, boolean isOpen) {
    boolean isOfPlan = faults.lots().isEmpty();
    return new PlanForm(
        "kitchen",
        "/kitchen",
        PlanVolumes.of(visitor).shown(tree.fields("/kitchen")),
        faults.at(),
        faults.asked(),
        isOpen || faults.isIn("/kitchen") || (isOfPlan && !faults.others().isEmpty()),
        "",
        Map.of("open", tree.rows("/kitchen/open") + 1),
        "");
  }

  private static PlanForm made(PlanFaults faults) {
    boolean isOpen = !faults.lots().isEmpty();
    return new PlanForm(
        PlanFaults.LOTS.substring(1),
        PlanFaults.LOTS,
        faults.lots(),
        faults.at(),
        faults.asked(),
        isOpen,
        "",
        Map.of(),
        "");
  }

  private PlanForm dish(PlanTree tree, int number, String title, PlanFaults faults) {
    String at = "/dishes/" + number;
    Map<String, Integer> rows =
        Map.of(
            "make", tree.rows(at + "/make") + MORE_STEPS,
            "finish", tree.rows(at + "/finish") + MORE_STEPS);
    boolean isOpen = faults.isIn(at) || (number == 0 && title.isEmpty());
    Map<String, String> fields = new HashMap<>(withHands(tree, at, rows));
    fields.replaceAll((name, text) -> faults.typed().getOrDefault(at + "/" + name, text));
    return new PlanForm(
        "d" + number,
        at,
        fields,
        faults.at(),
        faults.asked(),
        isOpen,
        title,
        rows,
        caution(fields));
  }

  /** Of a raw kind, or with a step that thaws. */
  private String caution(Map<String, String> fields) {
    boolean isRaw =
        desk.kitchen()
            .library()
            .keepingList()
            .category(fields.getOrDefault("category", ""))
            .filter(kind -> kind.tcs() && !kind.readyToEat())
            .isPresent();
    boolean isThawed =
        fields.entrySet().stream()
            .anyMatch(of -> of.getKey().endsWith("/step") && Thawing.isNamed(of.getValue()));
    return isRaw || isThawed ? PlanText.thawing(visitor.language()) : "";
  }

  /** A step that is still to be written takes one person, unless the cook says otherwise. */
  private Map<String, String> withHands(PlanTree tree, String at, Map<String, Integer> rows) {
    Map<String, String> fields = PlanVolumes.of(visitor).shown(tree.fields(at));
    if (tree.things().contains(Menu.HANDS)) {
      rows.forEach(
          (list, count) -> {
            for (int row = count - MORE_STEPS; row < count; row++) {
              fields.put(list + "/" + row + "/uses/" + Menu.HANDS, "1");
            }
          });
    }
    return fields;
  }

  private List<PlanView.Batch> batches(Planned planned) {
    return planned.menu().dishes().stream()
        .map(
            dish ->
                new PlanView.Batch(
                    dish.name(),
                    Stream.of(planned.lots(dish.name()), planned.named(dish.name()))
                        .flatMap(List::stream)
                        .map(LotId::text)
                        .toList(),
                    planned.open().getOrDefault(dish.name(), 0),
                    desk.kitchen().dishLots().offered(planned, dish).stream()
                        .map(lot -> new Choice(lot.lot().text(), LotLines.where(lot, visitor)))
                        .toList()))
        .toList();
  }

  /** How much of each dish, and which of them do not go by the guests. */
  static List<String> portions(Planned planned, PlanText text, Visitor visitor) {
    PlanTree kept = PlanTree.of(planned.input(), planned.menu().zone());
    List<String> names = kept.dishes();
    Stream<String> own =
        IntStream.range(0, planned.menu().guests().isPresent() ? names.size() : 0)
            .filter(dish -> kept.fields("/dishes/" + dish).containsKey("portions"))
            .mapToObj(dish -> visitor.say("plans.own-portions", names.get(dish)));
    Stream<String> larger =
        IntStream.range(0, names.size())
            .filter(dish -> isThawedLarger(kept.fields("/dishes/" + dish), planned.menu()))
            .mapToObj(dish -> visitor.say("plans.larger", names.get(dish)));
    return Stream.of(text.portions(planned.menu(), planned.begun()).stream(), own, larger)
        .flatMap(says -> says)
        .toList();
  }

  /** Whether more is bought of raw food that thaws than when its steps were written. */
  private static boolean isThawedLarger(Map<String, String> fields, Menu menu) {
    String writtenFor = fields.getOrDefault("ingredientsFor", "");
    return writtenFor.matches("\\d{1,7}")
        && menu.dishes().stream()
            .filter(dish -> dish.name().equals(fields.get("dish")))
            .filter(dish -> !dish.category().readyToEat() && Thawing.isIn(dish))
            .anyMatch(dish -> dish.portions() > Integer.parseInt(writtenFor));
  }

  /** Of the lots that dishes became: too few portions, what counts twice, and is not frozen. */
  static Stream<String> lots(Planned planned, PlanText text, Desk desk) {
    DishLotsText said = new DishLotsText(text);
    Stream<String> shared =
        desk.kitchen().dishLots().shared().withOthers(planned).stream()
            .map(lot -> said.shared(lot.lot(), lot.other().title()));
    Stream<String> cold =
        planned.menu().dishes().stream()
            .filter(dish -> planned.followed().containsKey(dish.name()))
            .flatMap(
                dish ->
                    planned.followed().get(dish.name()).cold().stream()
                        .map(lot -> said.cold(dish, lot, planned.menu())));
    Stream<String> toCome =
        planned.followed().entrySet().stream()
            .filter(dish -> !dish.getValue().toCome().isEmpty())
            .sorted(Map.Entry.comparingByKey())
            .map(dish -> said.toCome(dish.getKey(), dish.getValue().toCome()));
    return Stream.of(said.missing(planned.open()).stream(), toCome, shared, cold)
        .flatMap(says -> says);
  }

  /** Which lots a dish is not planned from, before something else is said; else blank. */
  static String leftOut(Planned planned, String dish, Visitor visitor) {
    return planned.leftOut().stream()
        .filter(lot -> lot.dish().equals(dish))
        .map(lot -> lot.lot() + ": " + says(lot, visitor) + " ")
        .collect(Collectors.joining());
  }

  /** Why no dish is planned from a lot. */
  static String says(LeftOut lot, Visitor visitor) {
    String why = lot.isOut() ? "plans.left-out.out" : "plans.left-out.not-shown";
    return visitor.say(why, lot.dish());
  }
}
