package chillwright.web.answers;

import chillwright.core.plan.Bound;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Moved;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Shopping;
import chillwright.core.portions.Measure;
import chillwright.core.rules.Rule;
import chillwright.print.Language;
import chillwright.print.PanText;
import chillwright.print.PlanText;
import chillwright.print.ShoppingText;
import chillwright.rulebook.RuleBook;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Turns plans into answers. */
public record PlanAnswers(RuleBook book) {
  /**
   * A plan, or why there is none.
   *
   * @param verdict "plan" or "no-plan"
   * @param guests how many are served; null where nobody said
   * @param leftOut lots that no dish is planned from
   * @param shared lots that another plan to come goes by too
   * @param proven of a plan that none keeps the food waiting less, of none that there is none
   */
  public record Answer(
      String verdict,
      boolean proven,
      OffsetDateTime serving,
      Optional<Integer> guests,
      List<DishLine> dishes,
      List<LeftOutLine> leftOut,
      List<SharedLine> shared,
      Answers.RuleSetRef ruleSet,
      List<TaskLine> tasks,
      List<BoundLine> bounds,
      List<PanLine> pans,
      List<WeekLine> shopping,
      List<ConflictLine> conflicts,
      List<MovedLine> moved,
      String caution,
      String defers) {}

  /**
   * Something to do, or a stretch in which a dish is kept.
   *
   * @param kind make, cool, chill, freeze, take-out, finish or hold
   * @param because the bounds it keeps to
   */
  public record TaskLine(
      String dish,
      String step,
      String kind,
      OffsetDateTime start,
      OffsetDateTime end,
      Map<String, Double> uses,
      List<String> because) {}

  /**
   * A dish, with how many portions of it are made.
   *
   * @param missing how many its lots have too few
   * @param lots that it became, where the plan was told
   */
  public record DishLine(
      String dish,
      String route,
      int portions,
      int missing,
      List<String> lots,
      OffsetDateTime due) {}

  /**
   * A lot that its dish is not planned from.
   *
   * @param verdict "out" or "not-shown"
   */
  public record LeftOutLine(String lot, String dish, String verdict, String says) {}

  /** A lot that another plan to come goes by too, so that its portions count for both. */
  public record SharedLine(String lot, String dish, String plan, String says) {}

  /** Between which moments something of a dish must happen; rule and citation null without one. */
  public record BoundLine(
      String dish,
      String bound,
      Optional<OffsetDateTime> from,
      Optional<OffsetDateTime> to,
      Optional<String> rule,
      Optional<String> citation,
      String says) {}

  /**
   * A dish as pans; only dishes whose portions have a size have one.
   *
   * @param litres of food
   * @param pan its key in the table of pans
   * @param pans how many
   * @param room litres that the pans take up where they stand
   * @param fits whether this dish alone fits, by what the kitchen has
   * @param tools ladles and scoops that measure a portion
   * @param source who printed what the pan holds
   */
  public record PanLine(
      String dish,
      int portions,
      double litres,
      String pan,
      double depthInches,
      int pans,
      double room,
      Map<String, Boolean> fits,
      List<String> tools,
      String source,
      String says) {}

  /**
   * What is to be bought for the dishes that are begun in a week.
   *
   * @param week as ISO 8601 numbers it
   * @param from its Monday
   */
  public record WeekLine(String week, LocalDate from, List<ItemLine> items) {}

  /** Something to buy; amount null where no cook gave one. */
  public record ItemLine(
      String name, Optional<BigDecimal> amount, String unit, List<String> dishes) {}

  /** A plan that is kept. */
  public record Kept(String plan, OffsetDateTime saidAt) {}

  public static Kept kept(String code, Instant saidAt, ZoneId zone) {
    return new Kept(code, OffsetDateTime.ofInstant(saidAt, zone));
  }

  /** What stands in the way, and how much would be enough. */
  public record ConflictLine(
      String why, String dish, String resource, Optional<Double> enough, String says) {}

  /** A task that stands at another time than before. */
  public record MovedLine(
      String dish,
      String step,
      OffsetDateTime was,
      OffsetDateTime start,
      String why,
      String says) {}

  /** A plan that nothing was before. */
  public Answer answer(Menu menu, Plan plan) {
    return answer(menu, plan, List.of(), Map.of(), Map.of(), Map.of(), List.of(), List.of());
  }

  /**
   * A plan that is kept.
   *
   * @param missing how many portions the lots of a dish have too few, by dish
   * @param begun the same of dishes that are begun; empty where nobody counted
   * @param lots the lots that dishes became, by dish
   * @param leftOut lots that no dish is planned from
   * @param shared lots that another plan to come goes by too
   */
  public Answer answer(
      Menu menu,
      Plan plan,
      List<Moved> moved,
      Map<String, Integer> missing,
      Map<String, OptionalInt> begun,
      Map<String, List<String>> lots,
      List<LeftOutLine> leftOut,
      List<SharedLine> shared) {
    PlanText text = new PlanText(menu);
    return new Answer(
        plan.isFound() ? "plan" : "no-plan",
        plan.isProven(),
        time(menu.serving(), menu),
        menu.guests().stream().boxed().findFirst(),
        menu.dishes().stream()
            .map(
                dish ->
                    new DishLine(
                        dish.name(),
                        dish.route().text(),
                        dish.portions(),
                        missing.getOrDefault(dish.name(), 0),
                        lots.getOrDefault(dish.name(), List.of()),
                        time(menu.due(dish), menu)))
            .toList(),
        leftOut,
        shared,
        new Answers.RuleSetRef(book.id(), book.version()),
        plan.tasks().stream().map(task -> task(task, plan, menu, text)).toList(),
        plan.bounds().stream().map(bound -> bound(bound, menu, text)).toList(),
        menu.dishes().stream().flatMap(dish -> pans(dish, menu, begun).stream()).toList(),
        Shopping.of(menu, plan, missing).stream().map(PlanAnswers::week).toList(),
        plan.conflicts().stream().map(conflict -> conflict(conflict, text)).toList(),
        moved.stream().map(one -> moved(one, menu, text)).toList(),
        text.caution(),
        book.defers().strip());
  }

  /** Of a dish that is begun, those for what is still to be made; none where that is nothing. */
  private static Optional<PanLine> pans(Dish dish, Menu menu, Map<String, OptionalInt> begun) {
    PanText words = new PanText(Language.ENGLISH);
    boolean isBegun = begun.containsKey(dish.name());
    int portions = isBegun ? begun.get(dish.name()).orElse(0) : dish.portions();
    return dish.filling()
        .filter(filling -> portions > 0)
        .map(
            filling ->
                new PanLine(
                    dish.name(),
                    portions,
                    rounded(filling.litres(portions)),
                    filling.pan().key(),
                    filling.depthInches(),
                    filling.pans(portions),
                    rounded(filling.room(portions)),
                    PanText.room(dish, menu),
                    filling.tools().stream().map(Measure::key).toList(),
                    filling.pan().source(),
                    (isBegun ? words.pans(dish, portions) : words.says(dish, menu)).orElseThrow()));
  }

  private static WeekLine week(Shopping.Week week) {
    return new WeekLine(
        week.iso(), week.monday(), week.items().stream().map(PlanAnswers::item).toList());
  }

  private static ItemLine item(Shopping.Item item) {
    return new ItemLine(item.name(), ShoppingText.amount(item), item.unit(), item.dishes());
  }

  private static double rounded(double litres) {
    return Math.round(litres * 10) / 10.0;
  }

  private static MovedLine moved(Moved moved, Menu menu, PlanText text) {
    return new MovedLine(
        moved.task().dish(),
        text.what(moved.task()),
        time(moved.was(), menu),
        time(moved.task().start(), menu),
        moved.why().key(),
        text.moved(moved));
  }

  private static OffsetDateTime time(Instant moment, Menu menu) {
    return OffsetDateTime.ofInstant(moment, menu.zone());
  }

  private static TaskLine task(Task task, Plan plan, Menu menu, PlanText text) {
    return new TaskLine(
        task.dish(),
        text.what(task),
        PlanText.key(task.kind()),
        time(task.start(), menu),
        time(task.end(), menu),
        new TreeMap<>(task.uses()),
        text.because(task, plan));
  }

  private static BoundLine bound(Bound bound, Menu menu, PlanText text) {
    return new BoundLine(
        bound.dish(),
        bound.kind().text(),
        bound.from().map(moment -> time(moment, menu)),
        bound.to().map(moment -> time(moment, menu)),
        bound.rule().map(Rule::id),
        bound.rule().map(rule -> rule.citation().text()),
        text.bound(bound));
  }

  private static ConflictLine conflict(Conflict conflict, PlanText text) {
    return new ConflictLine(
        conflict.why().name().toLowerCase(Locale.ROOT).replace('_', '-'),
        conflict.dish(),
        conflict.resource(),
        Optional.of(conflict.enough()).filter(amount -> amount > 0),
        text.conflict(conflict));
  }
}
