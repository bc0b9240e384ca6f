package chillwright.web.pages;

import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.plan.Plan.Task;
import chillwright.print.PlanText;
import chillwright.service.CardKind;
import chillwright.service.CardRows;
import chillwright.service.LotView;
import chillwright.service.Page;
import chillwright.service.Places.PlaceReading;
import chillwright.service.Plans.Planned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The lists of the pages as tables to take away; those of lots and pulls stand with their pages.
 */
final class Tables {
  static final String LOG = "/lots/{lot}/log.csv";
  static final String READINGS = "/record/readings.csv";
  static final String PLANS = PlansPage.ADDRESS + ".csv";
  static final String TASKS = "/plans/{plan}/tasks.csv";

  /** More rows are no table that anybody reads. */
  private static final int MOST_ROWS = 50_000;

  private static final List<String> PLAN = List.of("plan", "name", "serving");
  private static final List<String> TASK = List.of("dish", "task", "step", "start", "end", "uses");

  private final Desk desk;

  Tables(Desk desk) {
    this.desk = desk;
  }

  /** Where the things of a kind that a kitchen describes are found, as the command takes them. */
  static String address(CardKind kind) {
    return RulesPage.ADDRESS + "/" + kind.name().toLowerCase(Locale.ROOT) + ".csv";
  }

  void cards(Context context, CardKind kind) throws IOException {
    List<List<String>> rows =
        CardRows.of(desk.kitchen().setUp(), kind).stream()
            .map(row -> kind.cells().stream().map(row::get).toList())
            .toList();
    new Table(kind.cells(), rows).answer(context, kind.name().toLowerCase(Locale.ROOT));
  }

  /**
   * All that was written of a lot, after the logs of what it came from and before those of its
   * parts, as a log file.
   */
  void log(Context context) throws IOException {
    Optional<LotView> view = LotPage.view(desk, context, desk.visitor(context));
    if (view.isPresent()) {
      String lot = view.get().state().lot().text();
      Map<LotId, LotView> lots = new LinkedHashMap<>();
      gather(view.get(), lots);
      LabelsPdf.everyPart(desk.kitchen(), view.get()).forEach(part -> gather(part, lots));
      new LogTable(desk.zone()).of(List.copyOf(lots.values())).answer(context, lot);
    }
  }

  /** The sources first: without them a part cannot be judged. */
  private void gather(LotView lot, Map<LotId, LotView> lots) {
    for (LotId source : lot.sources()) {
      if (!lots.containsKey(source)) {
        desk.kitchen().lots().lot(source).ifPresent(found -> gather(found, lots));
      }
    }
    lots.put(lot.state().lot(), lot);
  }

  /** What was read of places in some days, the newest first, as a log file. */
  void readings(Context context) throws IOException {
    Visitor visitor = desk.visitor(context);
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Parameters parameters = new Parameters(context, visitor, RecordPage.NAMES);
    Parameters.Period days = parameters.period(today.minusDays(RecordPage.DAYS), today);
    List<LogEntry> entries = new ArrayList<>();
    if (parameters.faults().isEmpty() && !isWhole(days, entries)) {
      parameters.refuse(visitor.say("fault.long-table", MOST_ROWS));
    }
    if (parameters.faults().isEmpty()) {
      new LogTable(desk.zone()).of("", entries).answer(context, "readings");
      return;
    }
    String says = visitor.say("fault.list");
    desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, parameters.faults());
  }

  /** Adds the entries of the days; false if there are too many. */
  private boolean isWhole(Parameters.Period days, List<LogEntry> entries) {
    Optional<Instant> from = Optional.of(days.from().atStartOfDay(desk.zone()).toInstant());
    Optional<Instant> to =
        Optional.of(days.to().plusDays(1).atStartOfDay(desk.zone()).toInstant().minusMillis(1));
    Page.Wanted wanted = Page.Wanted.first(Page.MOST);
    while (entries.size() <= MOST_ROWS) {
      Page<PlaceReading> page =
          desk.kitchen().places().readings(Optional.empty(), from, to, wanted);
      for (PlaceReading reading : page.items()) {
        entries.add(reading.written());
        entries.addAll(reading.corrections());
      }
      if (page.next().isEmpty()) {
        return true;
      }
      wanted = new Page.Wanted(Page.MOST, page.next());
    }
    return false;
  }

  /** The plans that are kept, the latest serving first. */
  void plans(Context context) throws IOException {
    List<List<String>> rows =
        PlansPage.kept(desk).stream()
            .map(plan -> List.of(plan.code(), plan.name(), plan.serving()))
            .toList();
    new Table(PLAN, rows).answer(context, "plans");
  }

  /** The tasks of a plan. */
  void tasks(Context context, PlansPage plans) throws IOException {
    Optional<Planned> planned = plans.plan(context, desk.visitor(context));
    if (planned.isPresent()) {
      List<List<String>> rows = planned.get().plan().tasks().stream().map(this::row).toList();
      new Table(TASK, rows).answer(context, planned.get().code());
    }
  }

  private List<String> row(Task task) {
    Map<String, Double> uses = new TreeMap<>(task.uses());
    return List.of(
        task.dish(),
        PlanText.key(task.kind()),
        task.step(),
        OffsetDateTime.ofInstant(task.start(), desk.zone()).toString(),
        OffsetDateTime.ofInstant(task.end(), desk.zone()).toString(),
        uses.entrySet().stream()
            .map(use -> use.getKey() + " " + plain(use.getValue()))
            .collect(Collectors.joining(", ")));
  }

  /** Without the zero behind the point of a whole amount. */
  private static String plain(double amount) {
    return BigDecimal.valueOf(amount).stripTrailingZeros().toPlainString();
  }
}
