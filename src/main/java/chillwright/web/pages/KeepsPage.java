package chillwright.web.pages;

import static java.time.temporal.ChronoUnit.MINUTES;

import chillwright.core.heat.Outage;
import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.TimeAlone;
import chillwright.print.Figures;
import chillwright.print.KeepText;
import chillwright.print.Language;
import chillwright.print.Refreezing;
import chillwright.rulebook.Handbook;
import chillwright.rulebook.RuleBook;
import chillwright.service.KeepQuestion;
import chillwright.service.SetUp;
import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** The home cook's questions: how long it keeps, whether it may be eaten, or frozen again. */
final class KeepsPage {
  static final String ADDRESS = "/keeps";

  private static final List<String> FIELDS =
      List.of(
          "category",
          "made",
          "frozen",
          "thawed",
          "opened",
          "until",
          "left",
          "hours",
          "since",
          "till",
          "hot",
          "home");
  private static final String HOME = "us-home";

  private static final Pattern KEY = Pattern.compile("[a-z]+(?:_[a-z]+)+");

  private final Desk desk;

  KeepsPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    Map<String, String> fields = new HashMap<>();
    for (String name : FIELDS) {
      Optional.ofNullable(context.queryParam(name))
          .ifPresent(text -> fields.put(name, text.strip()));
    }
    Frame frame = desk.frame(visitor, "page.keeps", ADDRESS, List.of());
    desk.answer(context, Templates.PAGES.keeps(frame, view(fields, visitor)));
  }

  private KeepsView view(Map<String, String> fields, Visitor visitor) {
    List<String> faults = new ArrayList<>();
    Optional<Asked> asked = asked(fields, visitor, faults);
    KeepingList list = desk.kitchen().library().keepingList();
    return new KeepsView(
        new Filled(fields, faults, ""),
        new Known(desk.kitchen()).categories(visitor.language()),
        asked.map(a -> visitor.language().titled(a.category())).orElse(""),
        asked.map(a -> a.says(visitor)).orElse(List.of()),
        asked.stream()
            .flatMap(a -> a.answer().keeping().because().stream())
            .map(line -> visitor.language().because(line).replace(" (--made)", ""))
            .map(desk.times(visitor)::retold)
            .toList(),
        asked.map(a -> a.source(list, visitor.language())).orElse(""),
        leftOut(fields, visitor),
        refreezing(visitor),
        power(visitor),
        Part.afterOutage(visitor),
        isHome(fields));
  }

  /**
   * A question with its answer.
   *
   * @param canAskHome whether the chart for homes has days where the rules of the kitchen have none
   */
  private record Asked(
      Category category, KeepQuestion.Answer answer, KeepText text, boolean canAskHome) {
    List<String> says(Visitor visitor) {
      List<String> says = new ArrayList<>(text.says(answer.rules()));
      if (text.saysOfSafety().isEmpty() && canAskHome) {
        says.add(visitor.say("keeps.ask-home"));
      }
      return says.isEmpty() ? List.of(visitor.say("keeps.no-date")) : says;
    }

    String source(KeepingList list, Language language) {
      String note = category.note().map(words -> named(words, list, language) + " ").orElse("");
      boolean isTold =
          answer.keeping().because().stream().anyMatch(line -> line.startsWith("figures: "));
      return note
          + (isTold ? "" : category.source() + " · ")
          + language.named(answer.rules().title())
          + ", "
          + answer.rules().version();
    }
  }

  /** A note that names other categories by their keys, with their titles instead. */
  private static String named(String note, KeepingList list, Language language) {
    return KEY.matcher(note)
        .replaceAll(
            found ->
                list.category(found.group())
                    .map(category -> "\u201c" + language.titled(category) + "\u201d")
                    .orElse(found.group()));
  }

  private Optional<Asked> asked(Map<String, String> fields, Visitor visitor, List<String> faults) {
    String key = fields.getOrDefault("category", "");
    if (key.isEmpty()) {
      return Optional.empty();
    }
    Optional<Category> category = desk.kitchen().library().keepingList().category(key);
    if (category.isEmpty()) {
      faults.add(visitor.say("keeps.unknown", key));
      return Optional.empty();
    }
    KeepQuestion question =
        new KeepQuestion(
            category.get(),
            date(fields, "made", visitor, faults),
            date(fields, "opened", visitor, faults),
            date(fields, "until", visitor, faults),
            date(fields, "frozen", visitor, faults),
            date(fields, "thawed", visitor, faults));
    question
        .wrongDates()
        .forEach(
            wrong ->
                faults.add(
                    visitor.say(
                        "keeps.wrong-date",
                        visitor.say("keeps." + wrong.name()),
                        wrong.given(),
                        wrong.says())));
    if (!faults.isEmpty()) {
      return Optional.empty();
    }
    Instant now = desk.kitchen().now();
    KeepQuestion.Answer answer =
        question.answer(book(isHome(fields)), desk.zone(), LocalDate.ofInstant(now, desk.zone()));
    KeepText text =
        new KeepText(
            category.get(),
            answer.keeping(),
            desk.zone(),
            now,
            visitor.language(),
            visitor.scale(),
            answer.age());
    boolean canAskHome = !isHome(fields) && category.get().fridge().max().isPresent();
    return Optional.of(new Asked(category.get(), answer, text, canAskHome));
  }

  private static Optional<LocalDate> date(
      Map<String, String> fields, String name, Visitor visitor, List<String> faults) {
    String given = fields.getOrDefault(name, "");
    if (given.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(LocalDate.parse(given));
    } catch (DateTimeException e) {
      faults.add(visitor.say("keeps.bad-date", given));
      return Optional.empty();
    }
  }

  private RuleBook book(boolean isForHomes) {
    RuleBook own = desk.kitchen().judge().book();
    return isForHomes ? desk.kitchen().library().ruleBook(HOME).orElse(own) : own;
  }

  /** As the person says; at home, where nobody has set up a kitchen. */
  private boolean isHome(Map<String, String> fields) {
    String given = fields.getOrDefault("home", "");
    return given.isEmpty() ? !isSetUp() : !given.equals("no");
  }

  private boolean isSetUp() {
    SetUp setUp = desk.kitchen().setUp();
    return desk.kitchen().settings().name().isPresent()
        || !setUp.people().isEmpty()
        || !setUp.places().isEmpty()
        || !setUp.foods().isEmpty();
  }

  private Optional<RuleSet> home() {
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    return desk.kitchen().library().ruleBook(HOME).map((RuleBook book) -> book.on(today));
  }

  /**
   * By the home rules, which judge by time alone; a business logs the food and its temperatures.
   */
  private String leftOut(Map<String, String> fields, Visitor visitor) {
    Optional<Rule> rule = home().flatMap(rules -> rules.rule(Occasion.SET_OUT));
    boolean isAsked = fields.containsKey("left") || fields.containsKey("hours");
    if (!isAsked || rule.isEmpty()) {
      return "";
    }
    Optional<Duration> outside = outside(fields);
    if (outside.isEmpty()) {
      return visitor.say("left.wrong");
    }
    TimeAlone limit = (TimeAlone) rule.get().shape();
    boolean isHot = fields.containsKey("hot");
    Duration within = isHot ? limit.withinHotAir().orElse(limit.within()) : limit.within();
    Duration out = outside.get();
    String key = out.compareTo(within) > 0 ? "left.discard" : "left.keep";
    return visitor.say("left.out", Figures.duration(out))
        + " "
        + visitor.say(key, Figures.duration(within), rule.get().citation().text());
  }

  /** Hours as a person writes them, or from one time of day to another; empty where neither is. */
  private Optional<Duration> outside(Map<String, String> fields) {
    String hours = fields.getOrDefault("hours", "").strip().replace(',', '.');
    if (hours.matches("\\d{1,3}(\\.\\d{1,3})?|1000")) {
      return Optional.of(Duration.ofSeconds(Math.round(Double.parseDouble(hours) * 3600)));
    }
    if (hours.matches("\\d{1,3}:[0-5]\\d")) {
      String[] parts = hours.split(":", -1);
      return Optional.of(
          Duration.ofHours(Long.parseLong(parts[0])).plusMinutes(Long.parseLong(parts[1])));
    }
    return hours.isEmpty() ? sinceTimeOfDay(fields) : Optional.empty();
  }

  /** A later time of day is that of the day before. */
  private Optional<Duration> sinceTimeOfDay(Map<String, String> fields) {
    String till = fields.getOrDefault("till", "");
    try {
      LocalTime from = LocalTime.parse(fields.getOrDefault("since", ""));
      LocalTime to =
          till.isEmpty()
              ? LocalTime.ofInstant(desk.kitchen().now(), desk.zone()).truncatedTo(MINUTES)
              : LocalTime.parse(till);
      Duration span = Duration.between(from, to);
      // The same time twice is no time at all, or a whole day: nobody may guess.
      return span.isZero()
          ? Optional.empty()
          : Optional.of(span.isNegative() ? span.plusDays(1) : span);
    } catch (DateTimeException notTimes) {
      return Optional.empty();
    }
  }

  /** How long closed doors keep the cold, and what is not to be eaten after that. */
  private List<String> power(Visitor visitor) {
    Outage outage = Handbook.shipped().outage();
    List<String> says = new ArrayList<>();
    says.add(
        visitor.say(
            "power.closed",
            Figures.duration(outage.staysCold(Outage.Appliance.REFRIGERATOR)),
            Figures.duration(outage.staysCold(Outage.Appliance.FULL_FREEZER)),
            Figures.duration(outage.staysCold(Outage.Appliance.HALF_FREEZER)),
            outage.refrigeratorHours().source()));
    home()
        .flatMap(rules -> rules.rule(Occasion.COLD_HOLDING))
        .map(
            rule ->
                visitor.say(
                    "power.warm",
                    Figures.limitInBoth(rule, visitor.language(), visitor.scale())
                        + " ["
                        + rule.citation().text().strip()
                        + "]",
                    rule.actions().stream()
                        .map(act -> told(act, visitor))
                        .collect(Collectors.joining("; "))))
        .ifPresent(says::add);
    return says;
  }

  /** An act with where it is printed, which may be elsewhere than the limit. */
  private static String told(Rule.Action act, Visitor visitor) {
    String says = visitor.language().saidByRules(act.says());
    return says + " [" + act.citation().text().strip() + "]";
  }

  private List<String> refreezing(Visitor visitor) {
    return home()
        .flatMap(rules -> Refreezing.advice(rules, visitor.language(), visitor.scale()))
        .stream()
        .toList();
  }
}
