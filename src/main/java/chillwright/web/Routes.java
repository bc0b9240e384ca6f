package chillwright.web;

import chillwright.service.CardKind;
import chillwright.service.Kitchen;
import chillwright.service.ahead.Question;
import chillwright.web.pages.FaultPage;
import chillwright.web.pages.PageRoutes;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Handler;

/** All addresses of the service. */
final class Routes {
  static final String API = "/api/v1";
  static final String HEALTH = API + "/health";
  static final String LOTS = API + "/lots";

  private final RoutesConfig routes;

  private Routes(RoutesConfig routes) {
    this.routes = routes;
  }

  static void register(RoutesConfig routes, Kitchen kitchen, Guard guard) {
    routes.before(guard::check);
    new Problems(new FaultPage(kitchen)).register(routes);
    PageRoutes.register(routes, kitchen, guard.needsKey());
    Freshness freshness = new Freshness(kitchen);
    Routes all = new Routes(routes);
    all.get(API + "/pull", new PullHandlers(kitchen)::list);
    all.get(API + "/trace", new TraceHandlers(kitchen)::trace);
    all.plans(new PlanHandlers(kitchen));
    all.ahead(new AheadHandlers(kitchen));
    all.setUp(new SetUpHandlers(kitchen));
    all.probes(new ProbeHandlers(kitchen));
    all.days(new DayHandlers(kitchen));
    all.get(API + "/cooling-methods", new CoolingMethodHandlers(kitchen)::list);
    all.all(
        new KitchenHandlers(kitchen),
        new LotHandlers(kitchen, freshness),
        new PlaceHandlers(kitchen),
        new ReportHandlers(kitchen, freshness),
        new CheckHandlers(kitchen),
        new ImportHandlers(kitchen));
  }

  private void all(
      KitchenHandlers kitchen,
      LotHandlers lots,
      PlaceHandlers places,
      ReportHandlers reports,
      CheckHandlers checks,
      ImportHandlers imports) {
    get(API + "/kitchen", kitchen::kitchen);
    routes.put(API + "/kitchen", kitchen::name);
    routes.put(API + "/kitchen/address", kitchen::address);
    get(HEALTH, kitchen::health);
    get(API + "/openapi.json", kitchen::openApi);

    get(LOTS, lots::list);
    routes.post(LOTS, lots::create);
    get(LOTS + "/{lot}", lots::one);
    get(LOTS + "/{lot}/entries", lots::entries);
    routes.post(LOTS + "/{lot}/entries", lots::log);

    get(API + "/readings", places::list);
    routes.post(API + "/readings", places::log);

    routes.post(API + "/imports", imports::take);

    get(API + "/due", reports::due);
    get(API + "/reports/out-of-compliance", reports::outOfCompliance);

    routes.post(API + "/checks", checks::check);
    get(API + "/keeping", checks::categories);
    routes.post(API + "/keeping", checks::keep);

    get(API + "/rule-sets", kitchen::ruleSets);
    get(API + "/rule-sets/{id}", kitchen::ruleSet);
  }

  private void plans(PlanHandlers plans) {
    get(API + "/plans", plans::list);
    get(API + "/plans/{plan}", plans::one);
    routes.put(API + "/plans/{plan}", plans::save);
    routes.delete(API + "/plans/{plan}", plans::delete);
  }

  private void ahead(AheadHandlers ahead) {
    for (Question question : Question.values()) {
      get(API + "/ahead/" + question.key(), context -> ahead.answer(context, question));
    }
  }

  private void setUp(SetUpHandlers setUp) {
    get(API + "/label-statement", setUp::statement);
    routes.put(API + "/label-statement", setUp::putStatement);
    get(API + "/foods", setUp::foods);
    routes.put(API + "/foods/{name}", setUp::food);
    routes.delete(API + "/foods/{name}", setUp.retire(CardKind.FOODS, "food", "name"));
    get(API + "/places", setUp::places);
    routes.put(API + "/places/{name}", setUp::place);
    routes.delete(API + "/places/{name}", setUp.retire(CardKind.PLACES, "place", "name"));
    get(API + "/people", setUp::people);
    routes.put(API + "/people/{initials}", setUp::person);
    routes.delete(API + "/people/{initials}", setUp.retire(CardKind.PEOPLE, "person", "initials"));
    routes.delete(API + "/probes/{name}", setUp.retire(CardKind.PROBES, "probe", "name"));
  }

  private void probes(ProbeHandlers probes) {
    get(API + "/probes", probes::list);
    routes.put(API + "/probes/{name}", probes::say);
    get(API + "/probes/{name}/checks", probes::checks);
    routes.post(API + "/probes/{name}/checks", probes::check);
  }

  private void days(DayHandlers days) {
    get(API + "/days/{date}", days::day);
    routes.post(API + "/days/{date}/handovers", days::handOver);
    routes.post(API + "/days/{date}/signatures", days::sign);
  }

  /** What can be got can be asked about, too. */
  private void get(String path, Handler handler) {
    routes.get(path, handler);
    routes.head(path, handler);
  }
}
