package chillwright.web.pages;

import chillwright.core.plan.Dish;
import chillwright.core.plan.Plan.Task;
import chillwright.print.PlanText;
import chillwright.service.Plans;
import chillwright.service.Plans.Planned;
import chillwright.service.Refused;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Make-ahead plans: what is to be planned, the days that come of it, and its calendar. */
final class PlansPage {
  static final String ADDRESS = "/plans";
  static final String ONE = "/plans/{plan}";
  static final String CALENDAR = "/plans/{plan}/tasks.ics";

  private final Desk desk;

  PlansPage(Desk desk) {
    this.desk = desk;
  }

  void all(Context context) {
    Visitor visitor = desk.visitor(context);
    String inTwoWeeks =
        desk.kitchen()
            .now()
            .atZone(desk.zone())
            .plusDays(14)
            .truncatedTo(ChronoUnit.DAYS)
            .withHour(18)
            .format(DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssXXX", Locale.ROOT));
    Filled form = Filled.with(Map.of("input", visitor.say("plans.example", inTwoWeeks)));
    answer(context, HttpStatus.OK, visitor, empty("", form));
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    plan(context, visitor)
        .ifPresent(planned -> answer(context, HttpStatus.OK, visitor, view(planned, visitor)));
  }

  private Optional<Planned> plan(Context context, Visitor visitor) {
    String code = context.pathParam("plan");
    Optional<Planned> planned =
        Plans.isCode(code) ? desk.kitchen().plans().plan(code) : Optional.empty();
    if (planned.isEmpty()) {
      desk.fault(context, visitor, HttpStatus.NOT_FOUND, "plans.unknown", code);
    }
    return planned;
  }

  /** Keeps what is to be planned, and shows what comes of it. */
  void save(Context context) {
    Optional<Form> sent = desk.form(context);
    if (sent.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    String code = sent.get().text("plan");
    if (!Plans.isCode(code)) {
      refuse(context, visitor, sent.get(), List.of(visitor.say("plans.code.wrong")));
      return;
    }
    try {
      desk.kitchen().plans().save(code, sent.get().text("input"));
      context.redirect(ADDRESS + "/" + code, HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      refuse(context, visitor, sent.get(), EntryForm.faults(refused.problems()));
    }
  }

  private void refuse(Context context, Visitor visitor, Form sent, List<String> faults) {
    Filled form = new Filled(sent.all(), faults, "");
    answer(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, empty("", form));
  }

  private List<String> kept() {
    return desk.kitchen().plans().all().stream().map(Plans.Kept::code).toList();
  }

  private PlansView empty(String code, Filled form) {
    return new PlansView(
        code, kept(), "", "", List.of(), List.of(), List.of(), List.of(), List.of(), "", form);
  }

  private PlansView view(Planned planned, Visitor visitor) {
    PlanText text = new PlanText(planned.menu().zone(), visitor.language());
    return new PlansView(
        planned.code(),
        kept(),
        text.serving(planned.menu()),
        text.verdict(planned.plan()),
        planned.plan().conflicts().stream().map(text::conflict).toList(),
        planned.moved().stream().map(text::moved).toList(),
        text.days(planned.plan()),
        planned.plan().bounds().stream().map(text::bound).toList(),
        planned.menu().dishes().stream().map(PlansPage::batch).toList(),
        text.caution(),
        Filled.with(Map.of("plan", planned.code(), "input", planned.input())));
  }

  private static PlansView.Batch batch(Dish dish) {
    String address =
        NewBatchPage.ADDRESS
            + "?food="
            + encoded(dish.name())
            + "&category="
            + encoded(dish.category().key())
            + "&portions="
            + dish.portions();
    return new PlansView.Batch(dish.name(), address);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private void answer(Context context, HttpStatus status, Visitor visitor, PlansView view) {
    Frame frame =
        view.code().isEmpty()
            ? desk.frame(visitor, "page.plans", ADDRESS, List.of())
            : desk.titled(visitor, view.code(), ADDRESS, List.of());
    desk.answer(context, status, Templates.PAGES.plans(frame, view).render());
  }

  /** The tasks as a calendar that other programs read. */
  void calendar(Context context) {
    Visitor visitor = desk.visitor(context);
    Optional<Planned> found = plan(context, visitor);
    if (found.isEmpty()) {
      return;
    }
    Planned planned = found.get();
    PlanText text = new PlanText(planned.menu().zone(), visitor.language());
    ICalendar calendar = new ICalendar(planned.code());
    Instant now = desk.kitchen().now();
    int number = 0;
    for (Task task : planned.plan().tasks()) {
      String id = planned.code() + "/" + number++ + "@" + planned.saidAt().toEpochMilli();
      String address = context.scheme() + "://" + context.host() + ADDRESS + "/" + planned.code();
      calendar.add(
          new ICalendar.Event(
              id, task.start(), task.dish() + ": " + text.what(task), text.caution(), address),
          now);
    }
    context.header(Header.CONTENT_DISPOSITION, "inline; filename=\"tasks.ics\"");
    context.contentType("text/calendar; charset=utf-8").result(calendar.end());
  }
}
