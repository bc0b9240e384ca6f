package chillwright.cli;

import chillwright.core.log.Category;
import chillwright.core.log.FoodWords;
import chillwright.core.log.KeepingList;
import chillwright.core.log.OtherQuestion;
import chillwright.core.log.Untold;
import chillwright.print.KeepText;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.KeepQuestion;
import chillwright.web.answers.AnswerMaker;
import chillwright.web.answers.Json;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Answers how long a kind of food keeps; no log and no set-up needed. */
@Command(
    name = "keep",
    mixinStandardHelpOptions = true,
    description = {
      "How long does it keep? Answers with dates, the arithmetic behind them and their source.",
      "Without a category it lists the categories. Dates are written 2026-11-24."
    },
    footer = {
      "",
      "Examples:",
      "  chillwright keep soup_or_stew --made 2026-11-22 --frozen 2026-11-24",
      "  chillwright keep chili --made 2026-11-22",
      "  chillwright keep stock_or_meat_broth --made 2026-11-22 --rule-set us-home",
      "",
      "Exit codes: 0 answered, 2 something in the question is wrong."
    })
final class KeepCommand implements Callable<Integer> {
  @Parameters(
      arity = "0..1",
      paramLabel = "CATEGORY",
      description = "Key of the keeping list, or a word that leads to one, as chili.")
  private Optional<String> category = Optional.empty();

  @Option(
      names = "--made",
      paramLabel = "DATE",
      description = "Day it was made (default: today; unknown with --frozen).")
  private Optional<LocalDate> made = Optional.empty();

  @Option(names = "--opened", paramLabel = "DATE", description = "Day a bought pack was opened.")
  private Optional<LocalDate> opened = Optional.empty();

  @Option(names = "--until", paramLabel = "DATE", description = "Maker's date on that pack.")
  private Optional<LocalDate> until = Optional.empty();

  @Option(names = "--frozen", paramLabel = "DATE", description = "Day it was frozen.")
  private Optional<LocalDate> frozen = Optional.empty();

  @Option(names = "--thawed", paramLabel = "DATE", description = "Day it was thawed through.")
  private Optional<LocalDate> thawed = Optional.empty();

  @Mixin private RuleOptions ruleOptions;
  @Mixin private Format format;

  private final Clock clock;
  private final Console console;

  KeepCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    RuleLibrary library = ruleOptions.library();
    RuleBook book = ruleOptions.book(library);
    if (category.isEmpty()) {
      console.result(KeepText.categories(library.keepingList()));
      return 0;
    }
    Category wanted = category(library.keepingList(), category.get());
    KeepQuestion question = new KeepQuestion(wanted, made, opened, until, frozen, thawed);
    requirePossible(question);
    ZoneId zone = ZoneId.systemDefault();
    Instant now = clock.instant();
    LocalDate today = LocalDate.ofInstant(now, zone);
    boolean isUndated = question.isUndated(category.get());
    KeepQuestion.Answer answer =
        isUndated ? question.undated(book, zone, today) : question.answer(book, zone, today);
    if (isUndated && !format.isJson()) {
      console.result(
          "Frozen, of no stated day: give it with --frozen for its dates. While it stays frozen no"
              + " last day in the refrigerator runs.");
    }
    console.result(
        format.isJson()
            ? Json.text(new AnswerMaker(zone, now).keep(book, wanted, answer))
            : new KeepText(wanted, answer.keeping(), zone, now, answer.age(), answer.thawed())
                .answer(answer.rules(), book.defers()));
    if (ruleOptions.id().isEmpty() && !format.isJson()) {
      console.word(
          "These are the days of a food business. For food at home, which often has fewer, add"
              + " --rule-set us-home.");
    }
    return 0;
  }

  private static void requirePossible(KeepQuestion question) {
    String wrong =
        question.wrongDates().stream()
            .map(date -> "--" + date.name() + " " + date.given() + " " + date.says() + ".")
            .collect(Collectors.joining(System.lineSeparator()));
    if (!wrong.isEmpty()) {
      throw new UsageFault(wrong, List.of());
    }
  }

  /** By its key, its title or another word for the food, where that leads to one kind alone. */
  private static Category category(KeepingList list, String given) {
    Optional<Category> known = list.category(given);
    if (known.isPresent()) {
      return known.get();
    }
    OtherQuestion.of(given)
        .ifPresent(
            asked -> {
              throw new UsageFault(other(given, asked), List.of());
            });
    List<Category> kinds =
        list.categories().stream()
            .filter(kind -> kind.title().equalsIgnoreCase(given.strip()))
            .toList();
    FoodWords.Found found =
        kinds.isEmpty() ? new FoodWords(list).kinds(given) : new FoodWords.Found(kinds, true);
    Optional<Untold> untold =
        kinds.isEmpty() ? new FoodWords(list).untold(given) : Optional.empty();
    if (untold.isPresent()) {
      throw new UsageFault(
          "\"%s\": no category may stand for it. %s".formatted(given, untold.get().says()),
          List.of());
    }
    kinds = found.kinds();
    if (found.isCertain() && kinds.size() == 1) {
      return kinds.get(0);
    }
    throw new UsageFault(kinds.isEmpty() ? unknown(given) : several(given, kinds), List.of());
  }

  private static String other(String given, OtherQuestion asked) {
    String way =
        switch (asked) {
          case LEFT_OUT -> "food that stood without cold is judged by a log (`chillwright check`)";
          case FREEZE_AGAIN ->
              "give the food alone: its answer tells whether it may be frozen again";
          case POWER_OUT -> "`chillwright ahead outage` tells how long it stays cold";
        };
    return ("\"%s\": no days answer that; %s. Page /keeps asks for what it needs."
            + " Unsure, discard it.")
        .formatted(given, way);
  }

  private static String unknown(String given) {
    return "There is no category \"%s\". `chillwright keep` lists them all.".formatted(given);
  }

  /** The likeliest stands first. */
  private static String several(String given, List<Category> kinds) {
    String listed =
        kinds.stream()
            .map(kind -> System.lineSeparator() + "  " + kind.key() + ": " + kind.title())
            .collect(Collectors.joining());
    return ("\"%s\" may be one of these; give its key, and unsure that of what needs the cold and"
            + " keeps shortest:%s")
        .formatted(given, listed);
  }
}
