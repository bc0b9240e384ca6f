package chillwright.cases;

import chillwright.core.keeping.Keeper;
import chillwright.core.keeping.Keeping;
import chillwright.core.log.Admission;
import chillwright.core.log.Incoming;
import chillwright.core.log.Intake;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Problem;
import chillwright.core.log.Stored;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/** Takes the log of a case the whole way, as the program does: read, admit, judge, date. */
public final class CaseKitchen {
  /** Every case is written down later than anything in it happened. */
  private static final Instant WRITTEN = Instant.parse("2030-01-01T00:00:00Z");

  private static final Map<Optional<Path>, RuleLibrary> LIBRARIES = new ConcurrentHashMap<>();

  private final Case example;
  private final RuleLibrary library;

  private CaseKitchen(Case example, RuleLibrary library) {
    this.example = example;
    this.library = library;
  }

  /**
   * A kitchen that goes by the rule set of that case.
   *
   * @param resources the folder that the case's {@code rules} is seen from
   */
  public static CaseKitchen of(Case example, Path resources) {
    Optional<Path> outside = example.rules().map(resources::resolve);
    return new CaseKitchen(example, LIBRARIES.computeIfAbsent(outside, CaseKitchen::load));
  }

  /** What came out of a log. */
  public record Outcome(Map<LotId, Judged> lots, List<Problem> problems) {}

  /** What was said of one lot, as of the case's moment. */
  public record Judged(Timeline timeline, List<Finding> findings, Keeping keeping) {}

  public Outcome outcome() {
    Admission admission =
        new Intake(Stored.NOTHING, library.keepingList(), example.zone(), WRITTEN).admit(rows());
    Map<LotId, Judged> lots = new TreeMap<>();
    for (Admission.Lot lot : admission.lots()) {
      Timeline.of(lot.log(), library.keepingList(), example.zone(), example.at())
          .ifPresent(timeline -> lots.put(timeline.lot(), judge(timeline)));
    }
    return new Outcome(lots, admission.problems());
  }

  private List<Incoming> rows() {
    List<Incoming> rows = new ArrayList<>();
    byte[] bytes = example.log().getBytes(StandardCharsets.UTF_8);
    try {
      new CsvLog(new Cells(WRITTEN)).read("log", new ByteArrayInputStream(bytes), rows::add);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }

  private Judged judge(Timeline timeline) {
    LogEntry first = timeline.entries().get(0);
    RuleSet rules =
        library
            .ruleBook(example.ruleSet())
            .orElseThrow(() -> new IllegalArgumentException("no rule set " + example.ruleSet()))
            .on(timeline.day(first.happenedAt()));
    List<Finding> findings = Assessment.of(timeline, rules);
    return new Judged(timeline, findings, Keeper.keep(timeline, findings, rules));
  }

  private static RuleLibrary load(Optional<Path> outside) {
    try {
      return RuleLibrary.load(outside);
    } catch (BrokenRules e) {
      throw new IllegalArgumentException(e.problems().toString(), e);
    }
  }
}
