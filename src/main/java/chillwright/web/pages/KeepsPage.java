package chillwright.web.pages;

import chillwright.core.heat.Outage;
import chillwright.core.log.Category;
import chillwright.core.log.FoodWords;
import chillwright.core.log.KeepingList;
import chillwright.core.log.OtherQuestion;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.TimeAlone;
import chillwright.logfile.SaidTime.Toward;
import chillwright.print.Figures;
import chillwright.print.KeepText;
import chillwright.rulebook.Handbook;
import chillwright.rulebook.RuleBook;
import chillwright.service.KeepQuestion;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The home cook's questions: how long it keeps, whether it may be eaten, or frozen again. */
final class KeepsPage {
  static final String ADDRESS = "/keeps";

  private static final List<String> FIELDS =
      List.of(
          "category",
          "dish",
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
          "again",
          "ice",
          "read",
          "warm",
          "home");
  private static final List<String> CARRIED =
      List.of("made", "frozen", "thawed", "opened", "until", "home", "dish");
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
    KeepsView view = view(fields, visitor);
    HomeChoice choice = home(fields);
    // What stood outside and what thawed is answered by the advice for homes, whoever asks.
    boolean isByHome = fields.containsKey("left") || fields.containsKey("again");
    RuleBook book = isByHome ? choice.homeBook() : choice.book();
    Frame frame =
        desk.frame(visitor, "page.keeps", ADDRESS, List.of())
            .judgedBy(Desk.judgedBy(visitor, book))
            .asked(context);
    HttpStatus status = view.wrong().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT;
    desk.answer(context, status, Templates.PAGES.keeps(frame, view));
  }

  private KeepsView view(Map<String, String> fields, Visitor visitor) {
    Map<String, String> wrong = new TreeMap<>();
    KeepingList list = desk.kitchen().library().keepingList();
    NoDays noDays = new NoDays(list, visitor);
    Optional<OtherQuestion> other = OtherQuestion.of(fields.getOrDefault("dish", ""));
    Optional<String> untold = noDays.says(fields);
    List<Category> kinds = untold.isPresent() ? List.of() : named(fields, visitor, wrong);
    Optional<Asked> asked = other.isPresent() ? Optional.empty() : asked(fields, visitor, wrong);
    RuleSet home = homeRules(home(fields));
    String leftOut =
        home.rule(Occasion.SET_OUT).map(new LeftOut(fields, desk, visitor, wrong)::says).orElse("");
    List<String> again = new FreezeAgain(fields, home, visitor, wrong).says(category(fields));
    return new KeepsView(
        Filled.with(fields),
        wrong,
        new Known(desk.kitchen()).categories(visitor.language()),
        kinds.stream().map(kind -> link(kind, fields, visitor)).toList(),
        kinds.stream().anyMatch(kind -> !kind.tcs()),
        asked
            .map(a -> visitor.language().titled(a.category()))
            .orElse(untold.isPresent() ? fields.get("dish") : ""),
        asked.map(a -> says(a, fields, visitor)).orElse(untold.map(List::of).orElse(List.of())),
        asked.stream()
            .flatMap(a -> a.answer().keeping().because().stream())
            .filter(line -> !line.startsWith("figures: "))
            .map(line -> visitor.language().because(line).replace(" (--made)", ""))
            .map(desk.times(visitor)::retold)
            .toList(),
        asked.map(a -> a.note(noDays, visitor)).orElse(""),
        asked.map(a -> a.source(visitor)).orElse(SourceNames.NONE),
        hotAir(home, visitor),
        leftOut,
        again,
        power(home, visitor),
        Part.afterOutage(visitor),
        home(fields).isHome());
  }

  /** A kind that stands in for the dish is said to do so before all else. */
  private static List<String> says(Asked asked, Map<String, String> fields, Visitor visitor) {
    String dish = fields.getOrDefault("dish", "");
    List<String> says = new ArrayList<>(asked.says(visitor));
    if (FoodWords.isStandIn(asked.category(), dish)) {
      String kind = visitor.language().titled(asked.category());
      says.add(0, visitor.say("keeps.stand-in", dish, kind));
    }
    return says;
  }

  /**
   * A question with its answer.
   *
   * @param isMadeToday whether that was taken for want of any day
   * @param isUndated whether it is frozen since a day that is not given
   * @param canAskHome whether the chart for homes has days where the rules of the kitchen have none
   */
  private record Asked(
      Category category,
      KeepQuestion.Answer answer,
      KeepText text,
      boolean isMadeToday,
      boolean isUndated,
      boolean canAskHome) {
    List<String> says(Visitor visitor) {
      List<String> says = new ArrayList<>(text.says(answer.rules()));
      if (isUndated) {
        text.whatIfFrozen().ifPresent(months -> says.add(0, months));
        says.add(0, visitor.say("keeps.frozen-when"));
        return says;
      }
      if (text.saysOfSafety().isEmpty() && canAskHome) {
        says.add(visitor.say("keeps.ask-home"));
      }
      if (isMadeToday && !text.says().isEmpty()) {
        says.add(0, visitor.say("keeps.made-today"));
      }
      text.whatIfFrozen().ifPresent(says::add);
      return says.isEmpty() ? List.of(visitor.say("keeps.no-date")) : says;
    }

    String note(NoDays noDays, Visitor visitor) {
      return category.note().map(visitor.language()::named).map(noDays::titled).orElse("");
    }

    SourceNames source(Visitor visitor) {
      String rules =
          visitor.language().named(answer.rules().title()) + ", " + answer.rules().version();
      return SourceNames.of(category.source(), rules, visitor);
    }
  }

  /** Air above which food may stand outside for a shorter time. */
  private static String hotAir(RuleSet home, Visitor visitor) {
    return home.rule(Occasion.SET_OUT)
        .flatMap(rule -> rule.shape() instanceof TimeAlone time ? time.hotAir() : Optional.empty())
        .map(limit -> limit.both(visitor.scale()))
        .orElse("");
  }

  private Optional<Asked> asked(
      Map<String, String> fields, Visitor visitor, Map<String, String> wrong) {
    String key = fields.getOrDefault("category", "");
    if (isNothingNamed(fields)) {
      wrong.put("category", visitor.say("keeps.choose"));
    }
    if (key.isEmpty() || (fields.containsKey("again") && category(fields).isPresent())) {
      return Optional.empty();
    }
    Optional<Category> category = category(fields);
    if (category.isEmpty()) {
      wrong.put("category", visitor.say("keeps.unknown", key));
      return Optional.empty();
    }
    KeepQuestion question =
        new KeepQuestion(
            category.get(),
            date(fields, "made", visitor, wrong),
            date(fields, "opened", visitor, wrong),
            date(fields, "until", visitor, wrong),
            date(fields, "frozen", visitor, wrong),
            date(fields, "thawed", visitor, wrong));
    question.wrongDates().forEach(date -> wrong.put(date.name(), said(date, visitor)));
    if (!wrong.isEmpty()) {
      return Optional.empty();
    }
    Instant now = desk.kitchen().now();
    LocalDate today = LocalDate.ofInstant(now, desk.zone());
    RuleBook book = home(fields).book();
    boolean isUndated = question.isUndated(fields.getOrDefault("dish", ""));
    KeepQuestion.Answer answer =
        isUndated
            ? question.undated(book, desk.zone(), today)
            : question.answer(book, desk.zone(), today);
    KeepText text =
        new KeepText(
            category.get(),
            answer.keeping(),
            desk.zone(),
            now,
            visitor.language(),
            visitor.scale(),
            answer.age(),
            answer.thawed());
    boolean canAskHome = !home(fields).isHome() && category.get().fridge().max().isPresent();
    boolean isMadeToday = Stream.of("made", "opened", "frozen").noneMatch(day -> has(fields, day));
    return Optional.of(new Asked(category.get(), answer, text, isMadeToday, isUndated, canAskHome));
  }

  /**
   * The kinds that a food may be which is asked about in the person's own words; where they are the
   * words of one kind, that is taken.
   */
  private List<Category> named(
      Map<String, String> fields, Visitor visitor, Map<String, String> wrong) {
    String dish = fields.getOrDefault("dish", "");
    if (dish.isEmpty() || !fields.getOrDefault("category", "").isEmpty()) {
      return List.of();
    }
    KeepingList list = desk.kitchen().library().keepingList();
    List<Category> titled = new NoDays(list, visitor).kinds(dish);
    FoodWords.Found found =
        titled.isEmpty() ? new FoodWords(list).kinds(dish) : new FoodWords.Found(titled, true);
    List<Category> kinds = found.kinds();
    if (kinds.isEmpty()) {
      wrong.put("dish", visitor.say("keeps.not-listed", dish));
    } else if (kinds.size() == 1 && found.isCertain()) {
      fields.put("category", kinds.get(0).key());
      return List.of();
    }
    return kinds;
  }

  /** The same question of that kind. */
  private static Choice link(Category kind, Map<String, String> fields, Visitor visitor) {
    StringBuilder address = new StringBuilder(ADDRESS).append("?category=").append(kind.key());
    for (String name : CARRIED) {
      String given = fields.getOrDefault(name, "");
      if (!given.isEmpty()) {
        address.append('&').append(name).append('=');
        address.append(URLEncoder.encode(given, StandardCharsets.UTF_8));
      }
    }
    return new Choice(address + "#answer", visitor.language().titled(kind));
  }

  private Optional<Category> category(Map<String, String> fields) {
    return desk.kitchen().library().keepingList().category(fields.getOrDefault("category", ""));
  }

  /** What a date contradicts, by the labels of the form. */
  private String said(KeepQuestion.WrongDate date, Visitor visitor) {
    String key = date.flaw() == KeepQuestion.Flaw.ALONE ? "keeps.alone" : "keeps.too-early";
    return visitor.say(
        key,
        visitor.say("keeps." + date.name()),
        desk.times(visitor).day(date.given()),
        visitor.say("keeps." + date.against()));
  }

  /** A day of a kitchen, not so far ahead that only a slip can have made it. */
  private Optional<LocalDate> date(
      Map<String, String> fields, String name, Visitor visitor, Map<String, String> wrong) {
    String given = fields.getOrDefault(name, "");
    if (given.isEmpty()) {
      return Optional.empty();
    }
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Optional<LocalDate> date =
        Parameters.read(given, today, name.equals("until") ? Toward.AHEAD : Toward.PAST)
            .filter(day -> name.equals("until") || !day.isAfter(today.plusYears(1)));
    if (date.isEmpty()) {
      wrong.put(name, visitor.say("keeps.bad-date", given));
    }
    return date;
  }

  /** Whether the form was sent without any food. */
  private static boolean isNothingNamed(Map<String, String> fields) {
    boolean isOther = fields.containsKey("again") || fields.containsKey("left");
    boolean isSent = fields.containsKey("category") || fields.containsKey("dish");
    return isSent && !isOther && !has(fields, "category") && !has(fields, "dish");
  }

  private static boolean has(Map<String, String> fields, String name) {
    return !fields.getOrDefault(name, "").isEmpty();
  }

  private HomeChoice home(Map<String, String> fields) {
    return new HomeChoice(desk.kitchen(), fields.getOrDefault(HomeChoice.FIELD, ""));
  }

  private RuleSet homeRules(HomeChoice choice) {
    return choice.homeBook().on(LocalDate.ofInstant(desk.kitchen().now(), desk.zone()));
  }

  /** How long closed doors keep the cold, and what is not to be eaten after that. */
  private List<String> power(RuleSet home, Visitor visitor) {
    Outage outage = Handbook.shipped().outage();
    List<String> says = new ArrayList<>();
    says.add(
        visitor.say(
            "power.closed",
            Figures.duration(outage.staysCold(Outage.Appliance.REFRIGERATOR)),
            Figures.duration(outage.staysCold(Outage.Appliance.FULL_FREEZER)),
            Figures.duration(outage.staysCold(Outage.Appliance.HALF_FREEZER)),
            outage.refrigeratorHours().source()));
    home.rule(Occasion.COLD_HOLDING)
        .map(
            rule ->
                visitor.say(
                    "power.warm",
                    Figures.limitInBoth(rule, visitor.language(), visitor.scale())
                        + " ["
                        + rule.citation().text().strip()
                        + "]",
                    rule.actions().stream()
                        .map(act -> told(act, rule, visitor))
                        .collect(Collectors.joining("; "))))
        .ifPresent(says::add);
    return says;
  }

  /** Words that name the limit of their rule, with the figure of the person's scale first. */
  private static String inScale(String says, Rule rule, Visitor visitor) {
    Optional<Limit> limit = rule.shape() instanceof Hold hold ? hold.atMost() : Optional.empty();
    return visitor.scale() == Scale.FAHRENHEIT
        ? says
        : limit
            .map(most -> says.replace(most.text(Scale.FAHRENHEIT), most.both(visitor.scale())))
            .orElse(says);
  }

  /** An act with where it is printed, which may be elsewhere than the limit. */
  private static String told(Rule.Action act, Rule rule, Visitor visitor) {
    String says = visitor.language().saidByRules(act.says());
    return inScale(says, rule, visitor) + " [" + act.citation().text().strip() + "]";
  }
}
