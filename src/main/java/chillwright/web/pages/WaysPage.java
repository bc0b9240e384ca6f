package chillwright.web.pages;

import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.NoFigure;
import chillwright.print.Figures;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/**
 * How each job is done, a sheet of paper each, with the limits that this kitchen is judged by. The
 * steps name no figure, so that none can differ from the rule set.
 */
final class WaysPage {
  static final String ADDRESS = "/ways";

  /** A job, by the last part of its address. */
  enum Way {
    COOLING("cooling", "way.cooling", "way.cooling.steps", "cooling.cooked."),
    MISSED("missed-limit", "way.missed", "way.missed.steps", "cooling.cooked."),
    REHEATING("reheating", "way.reheating", "way.reheating.steps", "reheating."),
    FREEZING("freezing", "way.freezing", "way.freezing.steps", "frozen.", "date-mark."),
    DAY("day-round", "way.day", "way.day.steps", "cold-holding.", "hot-holding."),
    OUTAGE("outage", "way.outage", "way.outage.steps", "cold-holding.", "frozen.");

    private final String name;
    private final String title;
    private final String steps;
    private final List<String> rules;

    Way(String name, String title, String steps, String... rules) {
      this.name = name;
      this.title = title;
      this.steps = steps;
      this.rules = List.of(rules);
    }

    String address() {
      return ADDRESS + "/" + name;
    }

    private boolean has(Rule rule) {
      return rules.stream().anyMatch(rule.id()::startsWith) && !(rule.shape() instanceof NoFigure);
    }
  }

  private final Desk desk;

  WaysPage(Desk desk) {
    this.desk = desk;
  }

  /** All jobs, to choose from. */
  void list(Context context) {
    Visitor visitor = desk.visitor(context);
    List<WaysView.Job> jobs =
        Arrays.stream(Way.values())
            .map(way -> new WaysView.Job(way.address(), visitor.say(way.title)))
            .toList();
    WaysView view = new WaysView(jobs, List.of(), List.of(), List.of(), List.of());
    Frame frame = desk.frame(visitor, "ways.title", ADDRESS, List.of());
    desk.answer(context, Templates.PAGES.ways(frame, view));
  }

  /** One job. */
  void show(Context context, Way way) {
    Visitor visitor = desk.visitor(context);
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    List<String> limits =
        desk.kitchen().judge().book().on(today).rules().stream()
            .filter(way::has)
            .map(rule -> limit(rule, visitor))
            .distinct()
            .toList();
    List<String> steps = visitor.say(way.steps).lines().toList();
    boolean isOutage = way == Way.OUTAGE;
    WaysView view =
        new WaysView(
            List.of(),
            steps,
            limits,
            isOutage ? Part.afterOutage(visitor) : List.of(),
            isOutage ? links(visitor) : List.of());
    Frame frame = desk.frame(visitor, way.title, way.address(), List.of());
    desk.answer(context, Templates.PAGES.ways(frame, view));
  }

  /** Pages for what the steps after a power failure ask for. */
  private static List<WaysView.Job> links(Visitor visitor) {
    return List.of(
        new WaysView.Job("/day", visitor.say("way.outage.day")),
        new WaysView.Job("/on-hand", visitor.say("way.outage.inside")),
        new WaysView.Job("/keeps#power", visitor.say("way.outage.home")));
  }

  private static String limit(Rule rule, Visitor visitor) {
    return Figures.limitInBoth(rule, visitor.language())
        + " ["
        + rule.citation().text().strip()
        + "]";
  }
}
