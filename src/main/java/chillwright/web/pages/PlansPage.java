package chillwright.web.pages;

import chillwright.core.log.LotId;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Plan.Task;
import chillwright.print.PlanText;
import chillwright.service.Plans;
import chillwright.service.Plans.Planned;
import chillwright.service.Refused;
import io.javalin.http.Context;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Make-ahead plans: those that are kept, a new one, the page of each, and its calendar. */
final class PlansPage {
  static final String ADDRESS = "/plans";
  static final String ONE = "/plans/{plan}";
  static final String CALENDAR = "/plans/{plan}/tasks.ics";

  private static final Pattern CALENDARS = Pattern.compile("/plans/[^/]+/tasks\\.ics");

  private final Desk desk;
  private final Object changing = new Object();

  static boolean isCalendar(String path) {
    return CALENDARS.matcher(path).matches();
  }

  PlansPage(Desk desk) {
    this.desk = desk;
  }

  void all(Context context) {
    Visitor visitor = desk.visitor(context);
    list(context, HttpStatus.OK, visitor, blank(), PlanFaults.NONE, example(visitor));
  }

  private PlanTree blank() {
    return PlanTree.blank(desk.zone());
  }

  private Filled example(Visitor visitor) {
    String inTwoWeeks =
        desk.kitchen()
            .now()
            .atZone(desk.zone())
            .plusDays(14)
            .truncatedTo(ChronoUnit.DAYS)
            .withHour(18)
            .format(DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ssXXX", Locale.ROOT));
    return Filled.with(Map.of("input", visitor.say("plans.example", inTwoWeeks)));
  }

  private void list(
      Context context,
      HttpStatus status,
      Visitor visitor,
      PlanTree tree,
      PlanFaults faults,
      Filled text) {
    List<PlansView.Kept> kept =
        kept(desk).stream()
            .map(
                plan ->
                    new PlansView.Kept(
                        plan.code(), plan.name(), desk.times(visitor).retold(plan.serving())))
            .toList();
    PlanForm form = new PlanViews(desk, visitor).event(tree, faults);
    Frame frame = desk.frame(visitor, "page.plans", ADDRESS, List.of());
    PlanRules rules = PlanRules.of(desk, visitor);
    PlansView view =
        new PlansView(
            kept, rules, form, faults.others(), PlanMarks.of(tree, faults, visitor), text);
    desk.answer(context, status, Templates.PAGES.plans(frame, view));
  }

  /** The plans that are kept, the latest serving first. */
  static List<PlansView.Kept> kept(Desk desk) {
    return desk.kitchen().plans().all().stream()
        .map(
            plan -> {
              PlanTree of = PlanTree.of(plan.input(), desk.zone());
              String name = of.name().isEmpty() ? plan.code() : of.name();
              String serving = of.fields("").get("serving").replace('T', ' ');
              return new PlansView.Kept(plan.code(), name, serving);
            })
        .sorted(Comparator.comparing(PlansView.Kept::serving).reversed())
        .toList();
  }

  /** The plans that were told a lot, with what their events are called. */
  static List<Choice> told(Desk desk, LotId lot) {
    return desk.kitchen().dishLots().plans(lot).stream()
        .map(plan -> new Choice(plan.code(), PlanTree.of(plan.input(), desk.zone()).name()))
        .map(plan -> plan.title().isEmpty() ? new Choice(plan.key(), plan.key()) : plan)
        .toList();
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    plan(context, visitor)
        .ifPresent(
            planned -> {
              PlanTree tree = PlanTree.of(planned.input(), desk.zone());
              show(context, HttpStatus.OK, visitor, planned, tree, PlanFaults.NONE);
            });
  }

  /** The plan as it was, with why at the field in which lots of a dish are named. */
  void refuse(
      Context context, Visitor visitor, Planned planned, String says, Dish dish, String typed) {
    PlanTree tree = PlanTree.of(planned.input(), desk.zone());
    PlanFaults faults = PlanFaults.ofLots(says, dish.name(), typed, visitor);
    show(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, planned, tree, faults);
  }

  /** The same, where a tick says that it is right. */
  void ask(
      Context context, Visitor visitor, Planned planned, Question asked, Dish dish, String typed) {
    PlanTree tree = PlanTree.of(planned.input(), desk.zone());
    PlanFaults faults = PlanFaults.ofLots(asked.says(), dish.name(), typed, visitor).with(asked);
    show(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, planned, tree, faults);
  }

  private void show(
      Context context,
      HttpStatus status,
      Visitor visitor,
      Planned planned,
      PlanTree tree,
      PlanFaults faults) {
    String kept = PlanTree.of(planned.input(), desk.zone()).name();
    String title = kept.isEmpty() ? planned.code() : kept;
    Frame frame = desk.titled(visitor, title, ADDRESS + "/" + planned.code(), List.of());
    PlanView view = new PlanViews(desk, visitor).of(planned, tree, faults);
    desk.answer(context, status, Templates.PAGES.plan(frame, view));
  }

  /** A plan by the code in the address; where there is none the page says so. */
  Optional<Planned> plan(Context context, Visitor visitor) {
    String code = context.pathParam("plan");
    Optional<Planned> planned =
        Plans.isCode(code) ? desk.kitchen().plans().plan(code) : Optional.empty();
    if (planned.isEmpty()) {
      unknown(context, visitor);
    }
    return planned;
  }

  /** Says that there is no plan of the code in the address, or none any more. */
  void unknown(Context context, Visitor visitor) {
    String code = context.pathParam("plan");
    desk.fault(context, visitor, HttpStatus.NOT_FOUND, "plans.unknown", code);
  }

  /** Begins a plan by its name, or keeps one that is written as text. */
  void save(Context context) {
    Optional<Form> sent = desk.form(context);
    if (sent.isEmpty()) {
      return;
    }
    Visitor visitor = desk.visitor(context);
    if (sent.get().has("input")) {
      text(context, sent.get(), visitor);
    } else {
      begin(context, sent.get(), visitor);
    }
  }

  private void text(Context context, Form sent, Visitor visitor) {
    String code = sent.text("plan");
    if (!Plans.isCode(code)) {
      refuse(context, visitor, sent, List.of(visitor.say("plans.code.wrong")));
      return;
    }
    try {
      desk.kitchen().plans().save(code, sent.text("input"));
      context.redirect(ADDRESS + "/" + code, HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      refuse(context, visitor, sent, EntryForm.faults(refused.problems(), desk, visitor));
    }
  }

  private void refuse(Context context, Visitor visitor, Form sent, List<String> faults) {
    Filled form = Filled.refused(sent.all(), faults);
    list(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, blank(), PlanFaults.NONE, form);
  }

  /** With the kitchen of the last plan that has one, since it is most likely the same. */
  private void begin(Context context, Form sent, Visitor visitor) {
    List<Plans.Kept> before = desk.kitchen().plans().all();
    PlanTree tree = blank();
    tree.event(sent);
    before.stream()
        .sorted(Comparator.comparing(Plans.Kept::saidAt).reversed())
        .map(kept -> PlanTree.of(kept.input(), desk.zone()))
        .filter(PlanTree::hasKitchen)
        .findFirst()
        .ifPresent(tree::kitchenOf);
    try {
      String code = PlanCode.of(tree.name(), before.stream().map(Plans.Kept::code).toList());
      desk.kitchen().plans().save(code, tree.text());
      context.redirect(ADDRESS + "/" + code, HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      PlanFaults faults = PlanFaults.of(refused.problems(), visitor);
      HttpStatus status = HttpStatus.UNPROCESSABLE_CONTENT;
      list(context, status, visitor, tree, faults, example(visitor));
    }
  }

  void event(Context context) {
    change(context, PlanTree::event);
  }

  void kitchen(Context context) {
    change(context, PlanTree::kitchen);
  }

  /** Adds a dish, changes the one that is named, or takes it away. */
  void dish(Context context) {
    change(
        context,
        (tree, form) -> {
          if (form.has("remove")) {
            tree.remove(form.text("was"));
            return;
          }
          Known known = new Known(desk.kitchen());
          Optional<String> before =
              known
                  .food(form.text("dish"))
                  .map(food -> food.category())
                  .or(() -> known.category(form.text("dish")));
          String category = form.has("category") ? form.text("category") : before.orElse("");
          tree.dish(form.text("was"), form, category);
        });
  }

  /** What a form does to what is to be planned. */
  private interface Change {
    void make(PlanTree tree, Form form);
  }

  /** One after the other, so that of two who change a plan at once neither loses what is saved. */
  private void change(Context context, Change change) {
    Optional<Form> sent = desk.form(context).map(PlanVolumes::kept);
    if (sent.isPresent()) {
      synchronized (changing) {
        change(context, change, sent.get());
      }
    }
  }

  /** Leads to the plan as it is now, which tells what the change moved. */
  private void change(Context context, Change change, Form sent) {
    boolean isRead = sent.has(Visitor.LANGUAGE);
    Visitor visitor =
        desk.visitor(context)
            .reading(Optional.of(sent.text(Visitor.LANGUAGE)).filter(tag -> isRead));
    Optional<Planned> found = plan(context, visitor);
    if (found.isEmpty()) {
      return;
    }
    Planned before = found.get();
    PlanTree tree = PlanTree.of(before.input(), desk.zone());
    int old = tree.dishes().indexOf(sent.text("was"));
    int number = old < 0 ? tree.dishes().size() : old;
    change.make(tree, sent);
    if (isRead) {
      // What is half typed goes on in the other language, and is not saved by that.
      Visitor.keep(context, Visitor.LANGUAGE, visitor.language().tag(), true);
      PlanFaults open = PlanFaults.unsaved("/dishes/" + number, visitor);
      show(context, HttpStatus.OK, visitor, before, tree, open);
      return;
    }
    Map<String, Question> asked = asked(tree, before, sent, visitor);
    if (Question.isOpen(asked.values(), sent.answered())) {
      PlanFaults open = PlanFaults.asking(asked, visitor).as(typed(tree, sent));
      show(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, before, tree, open);
      return;
    }
    String was = sent.text("was");
    String dish = sent.text("dish");
    // The plan that is answered with must find the lots under the new name already.
    boolean isRenamed = rename(before, was, dish);
    try {
      desk.kitchen().plans().save(before.code(), tree.text());
      // So that a page that is loaded again writes nothing again.
      context.redirect(ADDRESS + "/" + before.code(), HttpStatus.SEE_OTHER);
    } catch (Refused refused) {
      if (isRenamed) {
        desk.kitchen().dishLots().rename(before.code(), /* was= */ dish, /* dish= */ was);
      }
      PlanFaults faults = PlanFaults.of(refused.problems(), visitor).as(typed(tree, sent));
      show(context, HttpStatus.UNPROCESSABLE_CONTENT, visitor, before, tree, faults);
    }
  }

  /** Lengths of time of the dish that was sent, as they were typed. */
  private static Map<String, String> typed(PlanTree tree, Form sent) {
    int number = tree.dishes().indexOf(sent.text("dish"));
    return number < 0 ? Map.of() : TypedLengths.under("/dishes/" + number, TypedLengths.of(sent));
  }

  /** What can hardly be of the dish that was sent; nothing of another form. */
  private Map<String, Question> asked(PlanTree tree, Planned before, Form sent, Visitor visitor) {
    int number = tree.dishes().indexOf(sent.text("dish"));
    if (number < 0 || !sent.has("dish")) {
      return Map.of();
    }
    PlanTree kept = PlanTree.of(before.input(), desk.zone());
    int old = kept.dishes().indexOf(sent.text("was"));
    String at = "/dishes/" + number;
    Map<String, String> fields = tree.fields(at);
    Map<String, String> known = old < 0 ? Map.of() : kept.fields("/dishes/" + old);
    return desk.kitchen()
        .library()
        .keepingList()
        .category(fields.getOrDefault("category", ""))
        .map(kind -> ThawDoubt.of(at, fields, known, TypedLengths.of(sent), kind, visitor))
        .orElse(Map.of());
  }

  /** Lots stay with their dish; a name that another dish has is none to take. */
  private boolean rename(Planned plan, String was, String dish) {
    List<String> names = PlanTree.of(plan.input(), desk.zone()).dishes();
    boolean isNew = !dish.isEmpty() && !names.contains(dish) && plan.lots(dish).isEmpty();
    boolean isRenamed = isNew && names.contains(was) && !plan.lots(was).isEmpty();
    if (isRenamed) {
      desk.kitchen().dishLots().rename(plan.code(), was, dish);
    }
    return isRenamed;
  }

  /** The tasks as a calendar that other programs read. */
  void calendar(Context context) {
    Visitor visitor =
        desk.visitor(context).reading(Optional.ofNullable(context.queryParam(Visitor.LANGUAGE)));
    Optional<Planned> found = plan(context, visitor);
    if (found.isEmpty()) {
      return;
    }
    Planned planned = found.get();
    PlanText text = new PlanText(planned.menu(), visitor.language());
    ICalendar calendar = new ICalendar(planned.code());
    int number = 0;
    for (Task task : planned.plan().tasks()) {
      String id = planned.code() + "/" + number++ + "@" + planned.saidAt().toEpochMilli();
      String address = desk.address(context) + ADDRESS + "/" + planned.code();
      String says = PlanViews.leftOut(planned, task.dish(), visitor) + text.caution();
      calendar.add(
          new ICalendar.Event(
              id, task.start(), task.dish() + ": " + text.what(task), says, address),
          desk.kitchen().now());
    }
    context.header(Header.CONTENT_DISPOSITION, "inline; filename=\"tasks.ics\"");
    context.contentType("text/calendar; charset=utf-8").result(calendar.end());
  }
}
