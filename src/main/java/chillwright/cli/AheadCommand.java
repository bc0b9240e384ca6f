package chillwright.cli;

import chillwright.core.ahead.Ahead;
import chillwright.core.log.Problem;
import chillwright.print.AheadText;
import chillwright.print.Language;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.ahead.BadQuestion;
import chillwright.service.ahead.Parameter;
import chillwright.service.ahead.Question;
import chillwright.service.ahead.Setting;
import chillwright.web.answers.AheadAnswers;
import chillwright.web.answers.Json;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Spec;

/** Answers questions before cooking; on its own it shows which. */
@Command(
    name = "ahead",
    mixinStandardHelpOptions = true,
    description = {
      "Works it out before you cook: cooling, pans, ice, freezing, thawing, frozen quality.",
      "An estimate from handbook figures, never a verdict: a reading is always better."
    },
    footer = {
      "",
      "Examples:",
      "  chillwright ahead cooling --food chili --surroundings 38F --depth 2in",
      "  chillwright ahead pans --volume 20L --depth 2in",
      "  chillwright ahead thawing --weight 12lb --cooking 4h --serve-in 9h --format json",
      "",
      "Exit codes: 0 answered, 2 something in the question is wrong."
    })
final class AheadCommand implements Runnable {
  @Spec private CommandSpec spec;

  /** The command with a subcommand for each question, made of the question's own parameters. */
  static CommandLine of(Clock clock, Console console) {
    CommandLine ahead = new CommandLine(new AheadCommand());
    for (Question question : Question.values()) {
      Asking asking = new Asking(question, clock, console);
      CommandSpec spec = CommandSpec.forAnnotatedObject(asking).name(question.key());
      spec.usageMessage().description(question.asks());
      spec.usageMessage()
          .footer(
              "",
              "Example:",
              "  chillwright ahead " + question.key() + " " + options(question.example()),
              "",
              "Temperatures have their scale (38F, 3.5 C), amounts their unit (2in, 20L, 12lb).");
      options(question).forEach(parameter -> spec.addOption(option(parameter)));
      asking.spec = spec;
      ahead.addSubcommand(question.key(), spec);
    }
    return ahead;
  }

  /** No kitchen is opened to answer, so none of its foods can be named. */
  private static List<Parameter> options(Question question) {
    return question.parameters().stream()
        .filter(parameter -> !parameter.label().equals(Parameter.OWN_FOOD))
        .toList();
  }

  /** "food=chili depth=2in" as options. */
  static String options(String example) {
    return List.of(example.split(" ", -1)).stream()
        .map(pair -> "--" + pair.replaceFirst("=", " "))
        .collect(Collectors.joining(" "));
  }

  private static OptionSpec option(Parameter parameter) {
    return OptionSpec.builder("--" + parameter.name())
        .paramLabel(parameter.label())
        .description(parameter.says() + (parameter.isNeeded() ? " Needed." : ""))
        .type(String.class)
        .build();
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  /** One question. */
  @Command(mixinStandardHelpOptions = true)
  static final class Asking implements Callable<Integer> {
    private final Question question;
    private final Clock clock;
    private final Console console;
    private CommandSpec spec;

    @Mixin private RuleOptions ruleOptions;
    @Mixin private Format format;

    Asking(Question question, Clock clock, Console console) {
      this.question = question;
      this.clock = clock;
      this.console = console;
    }

    @Override
    public Integer call() {
      RuleLibrary library = ruleOptions.library();
      RuleBook book = ruleOptions.book(library);
      ZonedDateTime now = clock.instant().atZone(ZoneId.systemDefault());
      Ahead answer = answer(Setting.of(library, book, now));
      console.result(
          format.isJson()
              ? Json.text(AheadAnswers.of(answer, book, Language.ENGLISH))
              : new AheadText(Language.ENGLISH).answer(answer, book.defers()));
      return 0;
    }

    private Ahead answer(Setting setting) {
      try {
        return question.answer(given(), setting);
      } catch (BadQuestion bad) {
        List<Problem> problems = bad.problems().stream().map(Asking::asOption).toList();
        throw new UsageFault("The question cannot be answered as asked.", problems);
      }
    }

    /** A fault stands at the option that was given, or left out. */
    private static Problem asOption(Problem problem) {
      Problem.Where.InField field = (Problem.Where.InField) problem.where();
      return new Problem(
          problem.code(),
          new Problem.Where.InField("", "--" + field.pointer()),
          problem.given(),
          problem.allowed(),
          problem.says());
    }

    private Map<String, String> given() {
      Map<String, String> given = new LinkedHashMap<>();
      for (Parameter parameter : options(question)) {
        Optional<String> value =
            Optional.ofNullable(spec.findOption("--" + parameter.name()).getValue());
        value.ifPresent(text -> given.put(parameter.name(), text));
      }
      return given;
    }
  }
}
