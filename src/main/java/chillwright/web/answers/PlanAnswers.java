package chillwright.web.answers;

import chillwright.core.plan.Bound;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Task;
import chillwright.core.rules.Rule;
import chillwright.print.PlanText;
import chillwright.rulebook.RuleBook;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Turns plans into answers. */
public record PlanAnswers(RuleBook book) {
  /**
   * A plan, or why there is none.
   *
   * @param verdict "plan" or "no-plan"
   * @param proven of a plan that none keeps the food waiting less, of none that there is none
   */
  public record Answer(
      String verdict,
      boolean proven,
      OffsetDateTime serving,
      Answers.RuleSetRef ruleSet,
      List<TaskLine> tasks,
      List<BoundLine> bounds,
      List<ConflictLine> conflicts,
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

  /** Between which moments something of a dish must happen; rule and citation null without one. */
  public record BoundLine(
      String dish,
      String bound,
      Optional<OffsetDateTime> from,
      Optional<OffsetDateTime> to,
      Optional<String> rule,
      Optional<String> citation,
      String says) {}

  /** A plan that is kept. */
  public record Kept(String plan, OffsetDateTime saidAt) {}

  public static Kept kept(String code, Instant saidAt, ZoneId zone) {
    return new Kept(code, OffsetDateTime.ofInstant(saidAt, zone));
  }

  /** What stands in the way, and how much would be enough. */
  public record ConflictLine(
      String why, String dish, String resource, Optional<Double> enough, String says) {}

  public Answer answer(Menu menu, Plan plan) {
    PlanText text = new PlanText(menu.zone());
    return new Answer(
        plan.isFound() ? "plan" : "no-plan",
        plan.isProven(),
        time(menu.serving(), menu),
        new Answers.RuleSetRef(book.id(), book.version()),
        plan.tasks().stream().map(task -> task(task, plan, menu, text)).toList(),
        plan.bounds().stream().map(bound -> bound(bound, menu, text)).toList(),
        plan.conflicts().stream().map(conflict -> conflict(conflict, text)).toList(),
        text.caution(),
        book.defers().strip());
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
