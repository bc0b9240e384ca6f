package chillwright.print;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.plan.Bound;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Moved;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Plan.Conflict;
import chillwright.core.plan.Plan.Kind;
import chillwright.core.plan.Plan.Task;
import chillwright.core.plan.Thawing;
import chillwright.core.rules.Rule;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A plan in words: the days with their tasks, the bounds with their reasons, what stands in the
 * way.
 *
 * @param zone the kitchen's zone
 * @param scale in which limits are told; in both printed ones where it is empty
 * @param served when all is on the table; the year of another year's day is told
 */
public record PlanText(ZoneId zone, Instant served, Language language, Optional<Scale> scale) {
  private static final List<String> THINGS =
      List.of("oven", "hob", Menu.HANDS, Menu.REFRIGERATOR, Menu.FREEZER, Menu.FREEZING, Menu.WARM);

  /** A day with what is to be done on it. */
  public record Day(String title, List<String> lines) {
    public Day {
      lines = List.copyOf(lines);
    }
  }

  /** In English. */
  public PlanText(Menu menu) {
    this(menu, Language.ENGLISH);
  }

  public PlanText(Menu menu, Language language) {
    this(menu.zone(), menu.serving(), language, Optional.empty());
  }

  /** With limits in one scale. */
  public PlanText(Menu menu, Language language, Scale scale) {
    this(menu.zone(), menu.serving(), language, Optional.of(scale));
  }

  /** All of a plan, for a terminal or plain paper. */
  public List<String> lines(Menu menu, Plan plan) {
    List<String> lines = new ArrayList<>();
    open(menu).ifPresent(lines::add);
    lines.add(verdict(plan));
    for (Conflict conflict : plan.conflicts()) {
      lines.add("  " + conflict(conflict));
    }
    remarks(plan).forEach(remark -> lines.add("  " + remark));
    thawing(menu, plan).forEach(says -> lines.add("  " + says));
    for (Day day : days(plan)) {
      lines.add("");
      lines.add(day.title());
      day.lines().forEach(line -> lines.add("  " + line));
    }
    lines.add("");
    lines.addAll(portions(menu));
    for (Day week : shopping(menu, plan, Map.of())) {
      lines.add("");
      lines.add(week.title());
      week.lines().forEach(line -> lines.add("  " + line));
    }
    lines.add("");
    lines.add(say("plan.bounds"));
    bounds(plan).forEach(bound -> lines.add("  " + bound));
    return lines;
  }

  /** What is to be bought, week by week. */
  public List<Day> shopping(Menu menu, Plan plan, Map<String, Integer> missing) {
    return new ShoppingText(this).weeks(menu, plan, missing);
  }

  /** Whether there is a plan, and how sure that is. */
  public String verdict(Plan plan) {
    String key = plan.isFound() ? "plan.found" : "plan.none";
    return say(key) + " " + say(plan.isProven() ? key + ".proven" : key + ".not-proven");
  }

  /** The tasks day by day. */
  public List<Day> days(Plan plan) {
    Map<LocalDate, List<String>> days = new TreeMap<>();
    for (Task task : plan.tasks()) {
      LocalDate day = task.start().atZone(zone).toLocalDate();
      days.computeIfAbsent(day, d -> new ArrayList<>()).add(line(task, plan));
    }
    return days.entrySet().stream()
        .map(day -> new Day(title(day.getKey()), day.getValue()))
        .toList();
  }

  /** A day as it stands above its tasks. */
  public String title(LocalDate day) {
    return times().day(day);
  }

  private String line(Task task, Plan plan) {
    String uses = uses(task);
    String limits = limits().of(task, plan);
    return span(task)
        + "  "
        + task.dish()
        + ": "
        + what(task)
        + (limits.isEmpty() ? "" : ": " + limits)
        + (uses.isEmpty() ? "" : " (" + uses + ")")
        + closed(task, plan);
  }

  /** At what hours of it food must be read while nobody is there; blank for none. */
  private String closed(Task task, Plan plan) {
    boolean cools = task.kind() == Kind.COOL || task.kind() == Kind.CHILL;
    String hours =
        plan.unattended().stream()
            .filter(limit -> cools && limit.dish().equals(task.dish()))
            .map(limit -> moment(limit.by()))
            .collect(Collectors.joining(", "));
    return hours.isEmpty() ? "" : ". " + say("plan.step.closed", hours);
  }

  /** From when until when; the end with its day where that is another. */
  public String span(Task task) {
    Instant end = task.end();
    boolean isSameDay =
        task.start().atZone(zone).toLocalDate().equals(end.atZone(zone).toLocalDate());
    return times().hour(task.start())
        + " - "
        + (isSameDay ? times().hour(end) : times().moment(end));
  }

  /** What a task is, without its dish. */
  public String what(Task task) {
    return task.step().isEmpty() ? say("plan.task." + key(task.kind())) : task.step();
  }

  /** A task's kind as it stands in an answer. */
  public static String key(Kind kind) {
    return switch (kind) {
      case MAKE -> "make";
      case COOL -> "cool";
      case AIR_COOL -> "air-cool";
      case CHILL -> "chill";
      case FREEZE -> "freeze";
      case TAKE_OUT -> "take-out";
      case FINISH -> "finish";
      case HOLD -> "hold";
    };
  }

  /** What a kitchen has, in this language, where we have a word for it; else the cook's own. */
  String thing(String name) {
    return THINGS.contains(name) ? say("plan.thing." + name) : name;
  }

  /** What a task holds; blank for nothing. */
  public String uses(Task task) {
    return task.uses().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(use -> thing(use.getKey()) + " " + amount(use.getKey(), use.getValue()))
        .collect(Collectors.joining(", "));
  }

  /** So much of a thing: room for food in the unit of whoever reads, what freezes in kilograms. */
  String amount(String thing, double amount) {
    if (thing.equals(Menu.FREEZING)) {
      return amount(amount) + " kg";
    }
    boolean isRoom = List.of(Menu.REFRIGERATOR, Menu.FREEZER, Menu.WARM).contains(thing);
    return isRoom ? new Volumes(language, scale).brief(amount) : amount(amount);
  }

  static String amount(double amount) {
    return BigDecimal.valueOf(amount)
        .setScale(1, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Why a task stands where it does: the bound of its part, with its reason. */
  public List<String> because(Task task, Plan plan) {
    return new ReasonText(this).because(task, plan);
  }

  /** What a plan calls for beside its tasks, or could do without. */
  public List<String> remarks(Plan plan) {
    return Stream.concat(
            plan.unattended().stream().map(this::unattended),
            plan.needless().stream()
                .map(
                    kept ->
                        say(
                            "plan.needless",
                            kept.dish().name(),
                            moment(kept.made()),
                            moment(kept.served()))))
        .toList();
  }

  /** A limit that falls due while nobody is there. */
  String unattended(Plan.Unattended limit) {
    String key = limit.isBegun() ? "plan.unattended.begun" : "plan.unattended";
    return say(key, limit.dish(), moment(limit.by()), cited(limit.rule()));
  }

  /** All bounds with their reasons, after a line on what they hold with. */
  public List<String> bounds(Plan plan) {
    return new BoundText(this).all(plan);
  }

  /** One bound with its reason. */
  public String bound(Bound bound) {
    return new BoundText(this).says(bound);
  }

  String moment(Instant moment) {
    return times().moment(moment);
  }

  private Times times() {
    return Times.at(served, zone, language);
  }

  /** A task that moved, from when to when, and why. */
  public String moved(Moved moved) {
    String why = say("plan.why." + moved.why().key(), moved.since().map(this::moment).orElse(""));
    return say(
        "plan.moved",
        moved.task().dish(),
        what(moved.task()),
        moment(moved.task().start()),
        moment(moved.was()),
        why);
  }

  /** Why there is no plan, and what would help. */
  public String conflict(Conflict conflict) {
    return new ConflictText(this).says(conflict);
  }

  String cited(Rule rule) {
    String says = language.saidByRules(rule.says());
    String limit =
        limits()
            .of(rule)
            .map(text -> says.replaceFirst("\\.$", "") + ": " + text + ".")
            .orElse(says);
    return limit + " [" + rule.citation().text() + "]";
  }

  PlanLimits limits() {
    return new PlanLimits(language, scale);
  }

  /** What every plan says of itself. */
  public String caution() {
    return say("plan.caution");
  }

  /**
   * What is said of thawing, wherever food is thawed or raw; then by when it is cooked, and each
   * step that says not where.
   */
  public List<String> thawing(Menu menu, Plan plan) {
    if (menu.dishes().stream().noneMatch(Thawing::isIn)) {
      return List.of();
    }
    Stream<String> where =
        menu.dishes().stream()
            .flatMap(
                dish ->
                    Stream.concat(dish.make().stream(), dish.finish().stream())
                        .filter(step -> Thawing.isNowhere(step.name(), step.uses()))
                        .map(step -> say("plan.thawing.where.of", dish.name(), step.name())));
    return Stream.of(
            Stream.of(thawing(language)), new ThawedRaw(this).says(menu, plan).stream(), where)
        .flatMap(says -> says)
        .toList();
  }

  String day(LocalDate day) {
    return times().day(day);
  }

  /** How raw food is thawed without harm. */
  public static String thawing(Language language) {
    return language.say("plan.thawing");
  }

  /** When all is on the table. */
  public String serving(Menu menu) {
    return say(
        "plan.serving", Times.kept(zone, language).moment(menu.serving()), menu.zone().getId());
  }

  /** When hands are there; empty where they always are. */
  public Optional<String> open(Menu menu) {
    if (menu.open().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        say("plan.open", menu.open().stream().map(this::hours).collect(Collectors.joining("; "))));
  }

  private String hours(Menu.Hours hours) {
    String days =
        hours.days().stream()
            .sorted()
            .map(day -> day.getDisplayName(TextStyle.SHORT, language.locale()))
            .collect(Collectors.joining(", "));
    return days + " " + hours.from() + " - " + hours.to();
  }

  /** The same of dishes of which none is begun. */
  public List<String> portions(Menu menu) {
    return portions(menu, Map.of());
  }

  /**
   * For whom, and how much of each dish, with its pans where a portion has a size.
   *
   * @param begun dishes that are begun, with how many portions of them are still to be made; empty
   *     where nobody counted
   */
  public List<String> portions(Menu menu, Map<String, OptionalInt> begun) {
    List<String> lines = new ArrayList<>();
    menu.guests().ifPresent(guests -> lines.add(say("plan.guests", guests)));
    PanText pans = new PanText(language, scale);
    menu.dishes().stream()
        .filter(dish -> dish.due().isPresent())
        .map(dish -> say("plan.due", dish.name(), moment(menu.due(dish))))
        .forEach(lines::add);
    menu.dishes().stream()
        .flatMap(
            dish ->
                begun.containsKey(dish.name())
                    ? made(dish, begun.get(dish.name()))
                    : Stream.of(
                        pans.says(dish, menu)
                            .orElseGet(() -> say("plan.portions", dish.name(), dish.portions()))))
        .forEach(lines::add);
    return lines;
  }

  private Stream<String> made(Dish dish, OptionalInt missing) {
    if (missing.isEmpty()) {
      return Stream.of(say("plan.made.uncounted", dish.name(), dish.portions()));
    }
    int more = missing.getAsInt();
    return more == 0
        ? Stream.of(say("plan.made", dish.name(), dish.portions()))
        : Stream.concat(
            Stream.of(say("plan.made.missing", dish.name(), dish.portions(), more)),
            new PanText(language, scale).pans(dish, more).stream());
  }

  String say(String key, Object... filled) {
    return language.say(key, filled);
  }
}
