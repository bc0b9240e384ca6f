package chillwright.service;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Planner;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.storage.CannotOpenException;
import chillwright.storage.Database;
import chillwright.storage.KitchenStore;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * One kitchen, open: what can be told to it is its {@link #logbook}, what can be asked of it are
 * its {@link #lots}, {@link #reports} and {@link #places}.
 */
public final class Kitchen implements AutoCloseable {
  private final Database database;
  private final KitchenStore.Settings stored;
  private final RuleLibrary library;
  private final InstantSource clock;
  private final Judge judge;
  private final LastJudged lastJudged = new LastJudged();
  private final Planning planning = new Planning(this::plan);
  private final LastPlans lastPlans = new LastPlans();
  private final String opened = UUID.randomUUID().toString();
  private volatile Told told = new Told("", Optional.empty());

  /** What the kitchen was told of itself, as of a revision; every page asks for it. */
  private record Told(String revision, Optional<Settings> settings) {}

  private Kitchen(Database database, KitchenStore.Settings stored, Opening opening) {
    this.database = database;
    this.stored = stored;
    this.library = opening.library();
    this.clock = opening.clock();
    RuleBook book =
        library.ruleBook(stored.ruleSet()).orElseThrow(() -> noRuleSet(stored.ruleSet(), library));
    this.judge = new Judge(book, library.keepingList(), stored.zone());
    requireCategories();
  }

  /**
   * Opens the kitchen's database, or makes it.
   *
   * @throws NotOpened with a plain word why, and what to do
   */
  public static Kitchen open(Opening opening) {
    Database database;
    try {
      database = Database.open(opening.file());
    } catch (CannotOpenException e) {
      throw new NotOpened(e.getMessage(), e);
    }
    try {
      Optional<KitchenStore.Settings> stored = database.read(session -> session.kitchen().find());
      stored.ifPresent(settings -> requireSame(settings, opening));
      return new Kitchen(database, stored.orElseGet(() -> create(database, opening)), opening);
    } catch (RuntimeException e) {
      database.close();
      throw e;
    }
  }

  private static KitchenStore.Settings create(Database database, Opening opening) {
    String id = opening.ruleSet().orElse(Opening.DEFAULT_RULE_SET);
    RuleBook book =
        opening.library().ruleBook(id).orElseThrow(() -> noRuleSet(id, opening.library()));
    KitchenStore.Settings settings =
        new KitchenStore.Settings(
            Optional.empty(),
            opening.zone().orElse(opening.systemZone()),
            id,
            opening.library().figures(book),
            Scale.FAHRENHEIT,
            Instant.ofEpochMilli(opening.clock().millis()),
            Optional.empty());
    return database.write(
        session -> {
          session.kitchen().create(settings);
          return settings;
        });
  }

  private static NotOpened noRuleSet(String id, RuleLibrary library) {
    String known = library.ruleBooks().stream().map(RuleBook::id).collect(Collectors.joining(", "));
    return new NotOpened(
        "There is no rule set "
            + id
            + " here, only "
            + known
            + ". If it is a local one, give its folder with --rules.");
  }

  private static void requireSame(KitchenStore.Settings stored, Opening opening) {
    opening
        .zone()
        .filter(zone -> !zone.equals(stored.zone()))
        .ifPresent(zone -> refuseOther(opening, "zone", zone.getId(), stored.zone().getId()));
    opening
        .ruleSet()
        .filter(id -> !id.equals(stored.ruleSet()))
        .ifPresent(id -> refuseOther(opening, "rule-set", id, stored.ruleSet()));
  }

  private static void refuseOther(Opening opening, String option, String asked, String stored) {
    throw new NotOpened(
        ("The kitchen in %s has the %s %s, not %s. Leave --%s out to go on with it, or give a new"
                + " file with --db and import the logs there.")
            .formatted(opening.file(), option.replace('-', ' '), stored, asked, option));
  }

  private void requireCategories() {
    List<String> used = database.read(session -> session.kitchen().categoriesUsed());
    List<String> missing =
        used.stream().filter(key -> library.keepingList().category(key).isEmpty()).toList();
    if (!missing.isEmpty()) {
      throw new NotOpened(
          "Lots of this kitchen have storage categories that are not in the keeping list: "
              + String.join(", ", missing)
              + ". Start it with --rules and the folder that has them.");
    }
  }

  public Settings settings() {
    String revision = revision();
    Told last = told;
    if (last.revision().equals(revision) && last.settings().isPresent()) {
      return last.settings().get();
    }
    Settings settings = read();
    told = new Told(revision, Optional.of(settings));
    return settings;
  }

  private Settings read() {
    KitchenStore.Settings now = database.read(session -> session.kitchen().find()).orElse(stored);
    return new Settings(
        now.name(),
        stored.zone(),
        judge.book(),
        stored.scale(),
        stored.createdAt(),
        now.address(),
        Optional.of(now.rulesVersion()).filter(version -> !version.equals(figures())));
  }

  /** Names the figures that lots are judged by now. */
  String figures() {
    return library.figures(judge.book());
  }

  public RuleLibrary library() {
    return library;
  }

  public Judge judge() {
    return judge;
  }

  LastJudged lastJudged() {
    return lastJudged;
  }

  /** What happened, told to the kitchen. */
  public Logbook logbook() {
    return new Logbook(this);
  }

  /** Log files, taken in whole. */
  public Imports imports() {
    return new Imports(this);
  }

  public Lots lots() {
    return new Lots(this);
  }

  public Reports reports() {
    return new Reports(this);
  }

  /** What its own coolings show. */
  public CoolingMethods coolingMethods() {
    return new CoolingMethods(this);
  }

  public Places places() {
    return new Places(this);
  }

  /** Plans as they are worked out, and those that were. */
  Planning planning() {
    return planning;
  }

  /** What plans were asked for before they were changed. */
  LastPlans lastPlans() {
    return lastPlans;
  }

  private Plan plan(Menu menu) {
    LocalDate served = menu.serving().atZone(menu.zone()).toLocalDate();
    return Planner.plan(menu, judge.book().on(served));
  }

  /** Make-ahead plans. */
  public Plans plans() {
    return new Plans(this);
  }

  /** Which lots their dishes became. */
  public DishLots dishLots() {
    return new DishLots(this);
  }

  /** Who got some of a food or of a lot. */
  public Tracing tracing() {
    return new Tracing(this);
  }

  /** What to take out of the freezer in the next days. */
  public Pulls pulls() {
    return new Pulls(this);
  }

  /** What is out of the freezer and goes by the kitchen's own days. */
  public FitLots fitLots() {
    return new FitLots(this);
  }

  public RoomLots roomLots() {
    return new RoomLots(this);
  }

  /** Its name, foods, places and people. */
  public SetUp setUp() {
    return new SetUp(this);
  }

  /** Labels that were made of lots. */
  public Labels labels() {
    return new Labels(this);
  }

  public Probes probes() {
    return new Probes(this);
  }

  public Days days() {
    return new Days(this);
  }

  public AccessKeys accessKeys() {
    return new AccessKeys(this);
  }

  public FeedKey feedKey() {
    return new FeedKey(this);
  }

  /**
   * Changes whenever anything is written, and with every opening; says nothing else. It is known
   * without asking the database.
   */
  public String revision() {
    return opened + "-" + database.commits();
  }

  Database database() {
    return database;
  }

  /** Day counts and clock times are those of this zone. */
  public ZoneId zone() {
    return judge.zone();
  }

  /** The moment, cut to the millisecond as all moments are kept. */
  public Instant now() {
    return Instant.ofEpochMilli(clock.millis());
  }

  /** Finishes the writes that wait, then closes the database. */
  @Override
  public void close() {
    database.close();
  }
}
