package chillwright.web.pages;

import chillwright.core.plan.Bound;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Task;
import chillwright.paper.RecordHead;
import chillwright.paper.RunSheet;
import chillwright.paper.RunSheetPaper;
import chillwright.paper.Sheet;
import chillwright.print.PlanText;
import chillwright.print.ReasonText;
import chillwright.service.Plans.Planned;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** A plan on paper, day by day, to work by. */
final class PlanPdf {
  static final String ADDRESS = "/plans/{plan}/sheet.pdf";

  private final Desk desk;
  private final PlansPage plans;

  PlanPdf(Desk desk, PlansPage plans) {
    this.desk = desk;
    this.plans = plans;
  }

  void answer(Context context) {
    Visitor visitor = desk.visitor(context);
    Optional<Planned> found = plans.plan(context, visitor);
    if (found.isEmpty()) {
      return;
    }
    Optional<Sheet.Size> size =
        Sheet.page(Optional.ofNullable(context.queryParam("paper")).orElse("letter"));
    if (size.isEmpty()) {
      desk.fault(context, visitor, HttpStatus.BAD_REQUEST, "fault.paper");
      return;
    }
    Planned planned = found.get();
    byte[] pdf =
        RunSheetPaper.of(sheet(planned, visitor, size.get()), new PaperWords(visitor.language()));
    context.header(
        Header.CONTENT_DISPOSITION, "inline; filename=\"plan-" + planned.code() + ".pdf\"");
    context.contentType(LabelsPdf.TYPE).result(pdf);
  }

  private RunSheet sheet(Planned planned, Visitor visitor, Sheet.Size size) {
    PlanText text = new PlanText(planned.menu(), visitor.language(), visitor.scale());
    Plan plan = planned.plan();
    List<String> problems = new ArrayList<>(PlanViews.lots(planned, text, desk).toList());
    planned.leftOut().stream()
        .map(lot -> lot.lot() + ": " + PlanViews.says(lot, visitor))
        .forEach(problems::add);
    if (!plan.isFound()) {
      problems.add(text.verdict(plan));
      plan.conflicts().stream().map(text::conflict).forEach(problems::add);
    }
    problems.addAll(text.remarks(plan));
    problems.addAll(text.thawing(planned.menu(), planned.plan()));
    Set<Bound> told = new HashSet<>();
    List<RunSheet.Day> days = days(plan, text, told);
    return new RunSheet(
        head(planned, visitor, text),
        problems,
        days,
        PlanViews.portions(planned, text, visitor),
        text.shopping(planned.menu(), plan, planned.missing()).stream()
            .map(week -> new RunSheet.Week(week.title(), week.lines()))
            .toList(),
        new ReasonText(text).others(plan, told),
        size);
  }

  private RecordHead head(Planned planned, Visitor visitor, PlanText text) {
    String name = PlanTree.of(planned.input(), desk.zone()).name();
    return new RecordHead(
        name.isEmpty() ? planned.code() : name,
        desk.kitchen().settings().name().orElse(visitor.say("kitchen.unnamed")),
        List.of(
            text.serving(planned.menu())
                + text.open(planned.menu()).map(open -> " " + open).orElse(""),
            visitor.say("paper.made", new LotSheets(desk, visitor).moment(desk.kitchen().now()))),
        List.of(text.caution(), desk.kitchen().judge().book().defers().strip()));
  }

  /** The reason of a part stands once, beside the first of its steps. */
  private static List<RunSheet.Day> days(Plan plan, PlanText text, Set<Bound> told) {
    ReasonText reasons = new ReasonText(text);
    Map<LocalDate, List<RunSheet.Task>> days = new TreeMap<>();
    for (Task task : plan.tasks()) {
      String reason = reasons.once(task, plan, told);
      days.computeIfAbsent(task.start().atZone(text.zone()).toLocalDate(), day -> new ArrayList<>())
          .add(
              new RunSheet.Task(
                  text.span(task), task.dish(), text.what(task), text.uses(task), reason));
    }
    return days.entrySet().stream()
        .map(day -> new RunSheet.Day(text.title(day.getKey()), day.getValue()))
        .toList();
  }
}
