package chillwright.web.pages;

import chillwright.core.plan.Pull;
import chillwright.core.plan.Pull.Need;
import chillwright.core.plan.PullList;
import chillwright.print.PullText;
import chillwright.service.Pulls;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

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
        list.pulls().isEmpty()
            ? visitor.say("pull.none")
            : visitor.say("pull.says", list.pulls().size(), portions),
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

  private static List<PullView.Day> byDay(PullList list, PullText text) {
    Map<LocalDate, List<PullView.Line>> days = new TreeMap<>();
    for (Pull pull : list.pulls()) {
      days.computeIfAbsent(pull.day(), day -> new ArrayList<>())
          .add(new PullView.Line(pull.lot().lot().text(), text.line(pull), text.why(pull)));
    }
    return days.entrySet().stream()
        .map(day -> new PullView.Day(text.title(day.getKey()), day.getValue()))
        .toList();
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
    List<List<String>> rows =
        desk.kitchen().pulls().list(days).pulls().stream().map(this::cells).toList();
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
}
