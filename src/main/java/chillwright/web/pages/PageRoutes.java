package chillwright.web.pages;

import chillwright.print.Language;
import chillwright.service.CardKind;
import chillwright.service.Kitchen;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.Set;

/** The addresses of the pages. */
public final class PageRoutes {
  /** What a browser may ask for before it has given the access key. */
  public static final Set<String> OPEN =
      Set.of(EnterPage.ADDRESS, Faces.CSS.path(), Faces.SCRIPT.path(), Faces.WORKER.path());

  private static final int LONGEST_BACK = 4000;

  private final RoutesConfig routes;
  private final Desk desk;

  private PageRoutes(RoutesConfig routes, Desk desk) {
    this.routes = routes;
    this.desk = desk;
  }

  /** Whether an address is that of a calendar, which the key of calendars opens. */
  public static boolean isCalendar(String path) {
    return path.equals(DeadlinesFeed.ADDRESS) || PlansPage.isCalendar(path);
  }

  /**
   * Adds the pages to the addresses of the service.
   *
   * @param needsKey whether whoever opens one must have given the access key
   */
  public static void register(RoutesConfig routes, Kitchen kitchen, boolean needsKey) {
    new PageRoutes(routes, new Desk(kitchen, needsKey)).all();
  }

  private void all() {
    get(NowPage.ADDRESS, new NowPage(desk)::show);
    LotsPages lots = new LotsPages(desk);
    get(LotsPages.ON_HAND, lots::onHand);
    get(LotsPages.ALL, lots::all);
    LotPage lot = new LotPage(desk);
    get(LotPage.ADDRESS, lot::show);
    routes.post(LotPage.ENTRIES, lot::log);
    CorrectPage correct = new CorrectPage(desk);
    get(CorrectPage.ADDRESS, correct::show);
    routes.post(CorrectPage.ADDRESS, correct::take);
    ShareForms share = new ShareForms(desk, lot);
    routes.post(ShareForms.PARTS, share::divide);
    routes.post(ShareForms.COUNTS, share::count);
    routes.post(ShareForms.COMBINED, share::combine);
    routes.post(ShareForms.BACK, share::putBack);
    routes.post(ShareForms.MORE, share::countMore);
    get(LabelsPdf.ADDRESS, new LabelsPdf(desk)::answer);
    RecordPdf record = new RecordPdf(desk);
    get(RecordPdf.ADDRESS, record::period);
    get(RecordPdf.OF_LOT, record::lot);
    get(DeadlinesFeed.ADDRESS, new DeadlinesFeed(desk)::answer);
    LotsCsv tables = new LotsCsv(desk);
    get(LotsCsv.ON_HAND, tables::onHand);
    get(LotsCsv.ALL, tables::all);
    Tables lists = new Tables(desk);
    get(Tables.LOG, lists::log);
    get(Tables.READINGS, lists::readings);
    for (CardKind kind : CardKind.values()) {
      get(Tables.address(kind), context -> lists.cards(context, kind));
    }
    NewBatchPage batch = new NewBatchPage(desk);
    get(NewBatchPage.ADDRESS, batch::show);
    routes.post(NewBatchPage.ADDRESS, batch::begin);
    get(KeepsPage.ADDRESS, new KeepsPage(desk)::show);
    get(RecordPage.ADDRESS, new RecordPage(desk)::show);
    get(CoolingMethodsPage.ADDRESS, new CoolingMethodsPage(desk)::show);
    setUp(new SetUpPage(desk));
    get(AheadPage.ADDRESS, new AheadPage(desk)::show);
    plans(new PlansPage(desk));
    followed(new PullPage(desk), new TracePage(desk));
    day(new DayPage(desk), new DayTables(desk));
    EnterPage enter = new EnterPage(desk);
    get(EnterPage.ADDRESS, enter::show);
    routes.post(EnterPage.ADDRESS, enter::enter);
    routes.post(WaysPage.ADDRESS, this::choose);
    WaysPage ways = new WaysPage(desk);
    get(WaysPage.ADDRESS, ways::list);
    for (WaysPage.Way way : WaysPage.Way.values()) {
      get(way.address(), context -> ways.show(context, way));
    }
    for (Faces face : Faces.values()) {
      get(face.path(), face::answer);
    }
  }

  private void day(DayPage day, DayTables tables) {
    get(DayPage.ADDRESS, day::show);
    get(DayTables.ROUND, tables::round);
    get(DayTables.OPEN, tables::open);
    routes.post(DayPage.READINGS, day::read);
    routes.post(DayPage.HANDOVERS, day::handOver);
    routes.post(DayPage.SIGNATURES, day::sign);
  }

  private void setUp(SetUpPage setUp) {
    get(RulesPage.ADDRESS, setUp::show);
    routes.post(SetUpPage.NAME, setUp::name);
    routes.post(SetUpPage.PEOPLE, setUp::person);
    routes.post(SetUpPage.PLACES, setUp::place);
    routes.post(SetUpPage.FOODS, setUp::food);
    routes.post(SetUpPage.PROBES, setUp::probe);
    routes.post(SetUpPage.CHECKS, setUp::check);
    routes.post(SetUpPage.STATEMENT, setUp::statement);
    routes.post(SetUpPage.RETIRED, setUp::retire);
    ReachForms reach = new ReachForms(desk, setUp);
    routes.post(ReachForms.LABEL_ADDRESS, reach::address);
    routes.post(ReachForms.FEED, reach::makeFeed);
    routes.post(ReachForms.FEED_END, reach::endFeed);
  }

  /** What is to come of lots, and what became of them. */
  private void followed(PullPage pull, TracePage trace) {
    get(PullPage.ADDRESS, pull::show);
    get(PullPage.CSV, pull::table);
    get(TracePage.ADDRESS, trace::show);
    get(TracePage.CSV, trace::table);
  }

  private void plans(PlansPage plans) {
    get(PlansPage.ADDRESS, plans::all);
    get(Tables.PLANS, new Tables(desk)::plans);
    get(PlansPage.ONE, plans::show);
    get(PlansPage.CALENDAR, plans::calendar);
    get(Tables.TASKS, context -> new Tables(desk).tasks(context, plans));
    get(PlanPdf.ADDRESS, new PlanPdf(desk, plans)::answer);
    routes.post(PlansPage.ADDRESS, plans::save);
    routes.post(PlansPage.ONE + "/event", plans::event);
    routes.post(PlansPage.ONE + "/kitchen", plans::kitchen);
    routes.post(PlansPage.ONE + "/dishes", plans::dish);
    routes.post(PlanBatches.ADDRESS, new PlanBatches(desk, plans)::begin);
  }

  /** What can be got can be asked about, too. */
  private void get(String path, Handler handler) {
    routes.get(path, handler);
    routes.head(path, handler);
  }

  /** The language and the scale that a person wants to read. */
  private void choose(Context context) {
    Optional<Form> form = desk.form(context);
    if (form.isEmpty()) {
      return;
    }
    Language.ofTag(form.get().text(Visitor.LANGUAGE))
        .ifPresent(language -> Visitor.keep(context, Visitor.LANGUAGE, language.tag(), true));
    Visitor.scale(form.get().text(Visitor.SCALE))
        .ifPresent(scale -> Visitor.keep(context, Visitor.SCALE, EntryForm.letter(scale), true));
    String back = form.get().text("back");
    context.redirect(isOurs(back) ? back : NowPage.ADDRESS, HttpStatus.SEE_OTHER);
  }

  /** A page of ours, with what it was asked as a browser writes it. */
  private static boolean isOurs(String address) {
    return address.length() <= LONGEST_BACK
        && address.matches("/|/[a-z-]+(/[A-Za-z0-9._-]+)?([?][A-Za-z0-9._~%&=+*:,;!/?-]*)?");
  }
}
