package chillwright.cli;

import chillwright.core.forecast.Forecast;
import chillwright.core.log.Incoming;
import chillwright.core.log.Problem;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.logfile.LogFile;
import chillwright.print.CheckText;
import chillwright.print.FaultText;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Judge;
import chillwright.service.Judge.Judged;
import chillwright.service.LogCheck;
import chillwright.service.LogCheck.Checked;
import chillwright.web.answers.AnswerMaker;
import chillwright.web.answers.Json;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks log files without storing anything. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Checks log files by the rules and says what the record shows, worst lot first.",
      "Several files are one log. Nothing is stored."
    },
    footer = {
      "",
      "Columns of a log file: lot,food,category,when,entry,temperature,how,place,air,portions,",
      "from,to,until,probe,by,note,id,corrects - in any order; lot, when and entry are needed.",
      "",
      "Examples:",
      "  chillwright check sample-logs/*.csv --at 2026-11-24T14:00:00-07:00 --zone America/Denver",
      "  chillwright check soup.csv --format json",
      "",
      "Exit codes: 0 nothing is out of compliance, 1 something is, 2 the input is at fault."
    })
final class CheckCommand implements Callable<Integer> {
  /** Something is out of compliance. */
  private static final int OUT = 1;

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Log files, CSV in UTF-8.")
  private List<Path> files = List.of();

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "Judge as of this moment, such as 2026-11-24T14:00:00-07:00 (default: now).")
  private Optional<String> at = Optional.empty();

  @Mixin private ZoneOption zoneOption;
  @Mixin private RuleOptions ruleOptions;
  @Mixin private Format format;

  private final Clock clock;
  private final Console console;

  CheckCommand(Clock clock, Console console) {
    this.clock = clock;
    this.console = console;
  }

  @Override
  public Integer call() {
    RuleLibrary library = ruleOptions.library();
    RuleBook book = ruleOptions.book(library);
    ZoneId zone = zoneOption.zone();
    Instant now = clock.instant();
    Instant moment = at.map(text -> ZoneOption.moment(text, zone)).orElse(now);
    LogCheck check = new LogCheck(new Judge(book, library.keepingList(), zone), now);
    Checked checked = check.check(rows(files, now, zone), moment);
    if (format.isJson()) {
      console.result(Json.text(new AnswerMaker(zone, moment).check(book, checked)));
    } else {
      print(checked, book, zone);
    }
    if (!checked.problems().isEmpty()) {
      return Faults.WRONG;
    }
    return checked.isAnyOut() ? OUT : 0;
  }

  private static List<Incoming> rows(List<Path> files, Instant now, ZoneId zone) {
    requireReadable(files);
    try {
      return new CsvLog(new Cells(now, zone)).readAll(LogFile.of(files));
    } catch (IOException broken) {
      throw new UsageFault("A file could not be read: " + broken.getMessage(), List.of());
    }
  }

  static void requireReadable(List<Path> files) {
    String missing =
        files.stream()
            .filter(file -> !Files.isReadable(file) || Files.isDirectory(file))
            .map(Path::toString)
            .collect(Collectors.joining(", "));
    if (!missing.isEmpty()) {
      throw new UsageFault("There is no file to read at " + missing + ".", List.of());
    }
  }

  private void print(Checked checked, RuleBook book, ZoneId zone) {
    CheckText text = new CheckText(zone, checked.at());
    for (Judged lot : checked.lots()) {
      List<Forecast> forecasts = checked.forecasts(lot);
      console.result(
          text.paragraph(lot.timeline(), lot.ruleSet(), lot.findings(), forecasts, lot.keeping()));
      console.result("");
    }
    console.result(CheckText.closing(book.id(), book.title(), book.version(), book.defers()));
    for (Problem problem : checked.problems()) {
      console.word(FaultText.line(problem));
    }
    if (!checked.problems().isEmpty()) {
      console.word("Faults: " + checked.problems().size() + ". Lots with faults were not judged.");
    }
  }
}
