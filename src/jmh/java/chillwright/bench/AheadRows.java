package chillwright.bench;

import chillwright.core.forecast.Forecaster;
import chillwright.core.log.Category;
import chillwright.core.log.Incoming;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Dish.Route;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Planner;
import chillwright.core.plan.Progress;
import chillwright.core.plan.Step;
import chillwright.core.rules.RuleSet;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Judge;
import chillwright.service.Judge.Judged;
import chillwright.service.LogCheck;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Forecasts of all lots that cool, and a plan of a dozen dishes; in this JVM, warmed up. */
final class AheadRows implements Ground.Group {
  private static final int LOTS = 1_000;
  private static final int ROUNDS = 9;

  /** Passes until the code is compiled, as it is in a service that has run for some minutes. */
  private static final int WARM_UP = 60;

  private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");
  private static final Instant SERVING = Instant.parse("2026-03-21T18:00:00Z");

  @Override
  public List<Line> lines(Ground ground) throws IOException, BrokenRules {
    RuleLibrary library = RuleLibrary.load(Optional.empty());
    RuleBook book = library.ruleBook("us-food-code-2022").orElseThrow();
    Category soup = library.keepingList().category("soup_or_stew").orElseThrow();
    RuleSet rules = book.on(LocalDate.of(2026, 3, 21));
    Menu menu = menu(soup);
    List<Line> lines = new ArrayList<>();
    lines.add(forecasts(new Judge(book, library.keepingList(), ZoneOffset.UTC)));
    Plan plan = Planner.plan(menu, rules);
    lines.add(
        plan(
            "a plan of 12 dishes over 3 weeks"
                + (plan.isFound() ? "" : " (none found)")
                + (plan.isProven() ? ", proven the freshest" : ", not proven the freshest"),
            menu,
            rules,
            Duration.ofSeconds(2)));
    lines.add(freshness(plan, menu, rules));
    Progress late =
        new Progress(SERVING.minus(Duration.ofHours(60)), Optional.empty(), Optional.empty());
    Menu later = menu.at(SERVING.minus(Duration.ofHours(50)), Map.of("dish 0", late));
    lines.add(plan("the same moved by one late lot", later, rules, Duration.ofSeconds(1)));
    return lines;
  }

  /**
   * Against what no plan can better: each dish planned with the kitchen to itself, and a day more
   * for two of the four frozen ones, since the freezer takes two of them in a day.
   */
  private static Line freshness(Plan plan, Menu menu, RuleSet rules) {
    Duration least = Duration.ofDays(2);
    for (Dish dish : menu.dishes()) {
      Menu one =
          new Menu(
              menu.serving(), menu.zone(), menu.from(), menu.has(), menu.open(), List.of(dish));
      least = least.plus(age(Planner.plan(one, rules)));
    }
    double ratio = (double) age(plan).toMinutes() / least.toMinutes();
    return Line.what("age of its 12 dishes when served, in all")
        .measured(
            "%d h; no plan has less than %d h: %.3f"
                .formatted(age(plan).toHours(), least.toHours(), ratio))
        .judged("at most 1.1 of the least", plan.isFound() && ratio <= 1.1);
  }

  /** From the end of each making to the serving. */
  private static Duration age(Plan plan) {
    Map<String, Instant> made = new HashMap<>();
    plan.tasks().stream()
        .filter(task -> task.kind() == Plan.Kind.MAKE)
        .forEach(task -> made.merge(task.dish(), task.end(), (a, b) -> a.isAfter(b) ? a : b));
    return made.values().stream()
        .map(end -> Duration.between(end, SERVING))
        .reduce(Duration.ZERO, Duration::plus);
  }

  private static Line forecasts(Judge judge) throws IOException {
    StringBuilder log = new StringBuilder("lot,food,category,when,entry,temperature,air\n");
    for (int lot = 0; lot < LOTS; lot++) {
      log.append("L").append(lot).append(",Soup,soup_or_stew,").append(NOON);
      log.append(",cooked,135F,38F\n");
      for (int reading = 1; reading <= 4; reading++) {
        Instant when = NOON.plus(Duration.ofMinutes(20L * reading));
        log.append("L").append(lot).append(",,,").append(when).append(",reading,");
        log.append(135 - 14 * reading).append("F,\n");
      }
    }
    Instant now = NOON.plus(Duration.ofMinutes(85));
    List<Incoming> rows = new ArrayList<>();
    byte[] bytes = log.toString().getBytes(StandardCharsets.UTF_8);
    new CsvLog(new Cells(now)).read("log", new ByteArrayInputStream(bytes), rows::add);
    List<Judged> lots = new LogCheck(judge, now).check(rows, now).lots();
    long start = System.nanoTime();
    int found = pass(lots, now);
    long first = System.nanoTime() - start;
    for (int round = 0; round < WARM_UP; round++) {
      pass(lots, now);
    }
    Times times = new Times();
    for (int round = 0; round < ROUNDS; round++) {
      start = System.nanoTime();
      pass(lots, now);
      times.add(System.nanoTime() - start);
    }
    return Line.what("forecasts of " + lots.size() + " running lots (" + found + "), warm")
        .measured(Times.text(times.median()) + ", the first pass " + Times.text(first))
        .judged("at most 50 ms", times.median() <= 50_000_000L);
  }

  private static int pass(List<Judged> lots, Instant now) {
    int found = 0;
    for (Judged lot : lots) {
      found += Forecaster.of(lot.timeline(), lot.ruleSet(), Optional.empty(), now).size();
    }
    return found;
  }

  private static Line plan(String what, Menu menu, RuleSet rules, Duration most) {
    Times times = new Times();
    for (int round = 0; round < ROUNDS; round++) {
      long start = System.nanoTime();
      Planner.plan(menu, rules);
      times.add(System.nanoTime() - start);
    }
    return Line.what(what)
        .measured(Times.text(times.median()))
        .judged("at most " + Times.text(most.toNanos()), times.median() <= most.toNanos());
  }

  /** Twelve dishes, four of each way to keep them, for a small kitchen. */
  private static Menu menu(Category soup) {
    List<Dish> dishes = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      Route route = List.of(Route.CHILLED, Route.FROZEN, Route.FRESH).get(i % 3);
      String heat = i % 2 == 0 ? "oven" : "hob";
      List<Step> finish =
          route == Route.FRESH
              ? List.of()
              : List.of(new Step("reheat", Duration.ofMinutes(45), Map.of(heat, 1.0)));
      dishes.add(
          new Dish(
              "dish " + i,
              soup,
              40,
              route,
              List.of(
                  new Step("prepare", Duration.ofMinutes(30), Map.of("hands", 1.0)),
                  new Step("cook", Duration.ofMinutes(60), Map.of(heat, 1.0, "hands", 1.0))),
              finish,
              Map.of("refrigerator", 10.0, "freezer", 10.0, "freezing", 9.0, "warm", 10.0),
              route == Route.FROZEN ? Duration.ofHours(24) : Duration.ZERO,
              Duration.ofMinutes(120),
              Optional.empty()));
    }
    Map<String, Double> has =
        Map.of(
            "oven",
            3.0,
            "hob",
            4.0,
            "hands",
            3.0,
            "refrigerator",
            120.0,
            "freezer",
            80.0,
            "freezing",
            20.0,
            "warm",
            120.0);
    return new Menu(
        SERVING, ZoneOffset.UTC, SERVING.minus(Duration.ofDays(21)), has, List.of(), dishes);
  }
}
