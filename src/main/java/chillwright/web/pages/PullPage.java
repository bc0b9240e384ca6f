package chillwright.web.pages;

import chillwright.core.plan.Pull;
import chillwright.core.plan.Pull.Need;
import chillwright.core.plan.Pull.Unlogged;
import chillwright.core.plan.PullList;
import chillwright.print.PullText;
import chillwright.service.Pulls;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The pull list: what comes out of the freezer, and what is to be used, in the next days. */
final class PullPage {
  static final String ADDRESS = "/pull";
  static final String CSV = "/pull.csv";

  private static final List<Integer> SPANS = List.of(1, 3, 7, 14, 60);
  private static final List<String> HEADER =
      List.of("day", "at", "lot", "food", "place", "portions", "why", "last_day", "plan", "dish");

  private final Desk desk;

  PullPage(Desk desk) {
    this.desk = desk;
  }

  private static Parameters parameters(Context context, Visitor visitor) {
    return new Parameters(context, visitor, Map.of("days", "pull.asked"));
  }

  private static int days(Parameters parameters) {
    return parameters.days("days", Pulls.MOST_DAYS).orElse(Pulls.USUAL_DAYS);
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Parameters parameters = parameters(context, visitor);
    int days = days(parameters);
    Frame frame =
        desk.frame(visitor, "page.pull", ADDRESS, Frame.Notice.plain(parameters.faults()))
            .asked(context);
    PullView view =
        desk.view(ADDRESS + " " + days, visitor, PullView.class, () -> view(visitor, days));
    desk.answer(context, Templates.PAGES.pull(frame, view));
  }

  private PullView view(Visitor visitor, int days) {
    PullList list = desk.kitchen().pulls().list(days);
    PullText text = new PullText(desk.times(visitor));
    int portions = list.pulls().stream().mapToInt(pull -> pull.portions().orElse(0)).sum();
    List<Choice> spans =
        SPANS.stream()
            .map(
                span ->
                    new Choice(
                        Integer.toString(span),
                        span == 1 ? visitor.say("pull.today") : visitor.say("pull.days", span)))
            .toList();
    return new PullView(
        says(visitor, list, portions),
        spans,
        days,
        byDay(list, text),
        list.missing().entrySet().stream()
            .sorted(Comparator.comparing(lack -> lack.getKey().at()))
            .map(lack -> text.missing(lack.getKey(), lack.getValue()))
            .toList(),
        text.caution(),
        CSV + "?days=" + days);
  }

  private static String says(Visitor visitor, PullList list, int portions) {
    List<String> says = new ArrayList<>();
    if (!list.pulls().isEmpty()) {
      says.add(visitor.say("pull.says", list.pulls().size(), portions));
    }
    if (!list.unlogged().isEmpty()) {
      says.add(visitor.say("pull.unlogged", list.unlogged().size()));
    }
    return says.isEmpty() ? visitor.say("pull.none") : String.join(" ", says);
  }

  /** A line of a day, after those without an hour and those of an earlier one. */
  private record Timed(LocalDate day, Instant at, PullView.Line line) {}

  private static List<PullView.Day> byDay(PullList list, PullText text) {
    List<Timed> lines = new ArrayList<>();
    for (Pull pull : list.pulls()) {
      String address = "/lots/" + pull.lot().lot().text();
      PullView.Line line = new PullView.Line(address, text.line(pull), text.why(pull));
      lines.add(new Timed(pull.day(), pull.at().orElse(Instant.MIN), line));
    }
    for (Unlogged dish : list.unlogged()) {
      String address = PlansPage.ADDRESS + "/" + dish.plan();
      PullView.Line line = new PullView.Line(address, text.line(dish), text.why(dish));
      lines.add(new Timed(day(dish, text.times().zone()), dish.at(), line));
    }
    lines.sort(Comparator.comparing(Timed::day).thenComparing(Timed::at));
    Map<LocalDate, List<PullView.Line>> days = new TreeMap<>();
    lines.forEach(
        line -> days.computeIfAbsent(line.day(), day -> new ArrayList<>()).add(line.line()));
    return days.entrySet().stream()
        .map(day -> new PullView.Day(text.title(day.getKey()), day.getValue()))
        .toList();
  }

  private static LocalDate day(Unlogged dish, ZoneId zone) {
    return LocalDate.ofInstant(dish.at(), zone);
  }

  void table(Context context) throws IOException {
    Visitor visitor = desk.visitor(context);
    Parameters parameters = parameters(context, visitor);
    int days = days(parameters);
    if (!parameters.faults().isEmpty()) {
      String says = visitor.say("fault.list");
      desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, parameters.faults());
      return;
    }
    PullList list = desk.kitchen().pulls().list(days);
    List<List<String>> rows =
        Stream.concat(
                list.pulls().stream().map(this::cells), list.unlogged().stream().map(this::cells))
            .toList();
    new Table(HEADER, rows).answer(context, "pull");
  }

  private List<String> cells(Pull pull) {
    return List.of(
        pull.day().toString(),
        pull.at().map(at -> OffsetDateTime.ofInstant(at, desk.zone()).toString()).orElse(""),
        pull.lot().lot().text(),
        pull.lot().food(),
        pull.lot().standing().flatMap(standing -> standing.place()).orElse(""),
        pull.portions().isPresent() ? Integer.toString(pull.portions().getAsInt()) : "",
        pull.why().key(),
        pull.lastDay().map(LocalDate::toString).orElse(""),
        pull.need().map(Need::plan).orElse(""),
        pull.need().map(Need::dish).orElse(""));
  }

  private List<String> cells(Unlogged dish) {
    return List.of(
        day(dish, desk.zone()).toString(),
        OffsetDateTime.ofInstant(dish.at(), desk.zone()).toString(),
        "",
        dish.dish(),
        "",
        Integer.toString(dish.portions()),
        dish.why(),
        "",
        dish.plan(),
        dish.dish());
  }
}
