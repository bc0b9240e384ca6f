package chillwright.web;

import chillwright.logfile.CsvWriter;
import chillwright.service.Reports.Trouble;
import chillwright.web.answers.Answers.Entry;
import chillwright.web.answers.Answers.TroubleLine;
import chillwright.web.answers.LotAnswers;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The report of what went out of compliance as a table that a spreadsheet opens. */
final class TroubleCsv {
  private static final List<String> HEADER =
      List.of(
          "out_since",
          "lot",
          "food",
          "category",
          "on_hand",
          "verdict",
          "rule",
          "limit",
          "citation",
          "status",
          "shortest",
          "longest",
          "deadline",
          "says",
          "evidence",
          "corrective_action",
          "owed",
          "offered",
          "rule_set",
          "rule_set_version",
          "who_decides");

  private final LotAnswers answers;
  private final CsvWriter csv;

  /** Begins with the header row. */
  TroubleCsv(LotAnswers answers, Appendable out) throws IOException {
    this.answers = answers;
    this.csv = CsvWriter.forSpreadsheets(out);
    csv.write(HEADER);
  }

  void write(List<Trouble> troubles) throws IOException {
    for (Trouble trouble : troubles) {
      csv.write(cells(answers.trouble(trouble)));
    }
  }

  private List<String> cells(TroubleLine line) {
    return List.of(
        line.outSince().toString(),
        line.lot(),
        line.food(),
        line.category(),
        yesOrNo(line.onHand()),
        line.verdict(),
        line.rule(),
        line.limit(),
        line.citation(),
        line.status(),
        duration(line.shortest()),
        duration(line.longest()),
        line.deadline().map(Object::toString).orElse(""),
        line.says(),
        entries(line.evidence()),
        entries(line.taken()),
        yesOrNo(line.owed()),
        String.join("; ", line.offered()),
        line.ruleSet().id(),
        line.ruleSet().version(),
        answers.defers());
  }

  private static String yesOrNo(boolean yes) {
    return yes ? "yes" : "no";
  }

  private static String duration(Optional<Duration> time) {
    return time.map(Duration::toString).orElse("");
  }

  private static String entries(List<Entry> entries) {
    return entries.stream().map(TroubleCsv::entry).collect(Collectors.joining("; "));
  }

  private static String entry(Entry entry) {
    return Stream.of(
            Optional.of(entry.when().toString()),
            Optional.of(entry.entry()),
            entry.written().temperature(),
            entry.written().how(),
            entry.note())
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" "));
  }
}
