package chillwright.web;

import chillwright.logfile.CsvWriter;
import chillwright.service.Reports.Trouble;
import chillwright.web.answers.Answers.Cells;
import chillwright.web.answers.Answers.Entry;
import chillwright.web.answers.Answers.TroubleLine;
import chillwright.web.answers.LotAnswers;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
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
          "evidence_ids",
          "by",
          "probe",
          "corrections",
          "corrective_action",
          "corrective_action_ids",
          "corrective_action_by",
          "handed_on_after",
          "handed_on_after_ids",
          "owed",
          "offered",
          "rule_set",
          "rule_set_version",
          "who_decides");

  /** In a list of parts, where an entry does not say. */
  private static final String BLANK = "-";

  private final LotAnswers answers;
  private final CsvWriter csv;

  TroubleCsv(LotAnswers answers, Appendable out) {
    this.answers = answers;
    this.csv = CsvWriter.forSpreadsheets(out);
  }

  /** Writes the header row. */
  TroubleCsv begin() throws IOException {
    csv.write(HEADER);
    return this;
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
        joined(line.evidence(), TroubleCsv::entry),
        joined(line.evidence(), Entry::id),
        joined(line.evidence(), entry -> entry.by().orElse(BLANK)),
        joined(line.evidence(), entry -> holds(entry).probe().orElse(BLANK)),
        CorrectionText.of(line.evidence()),
        joined(line.taken(), TroubleCsv::entry),
        joined(line.taken(), Entry::id),
        joined(line.taken(), entry -> entry.by().orElse(BLANK)),
        joined(line.handedOn(), TroubleCsv::handedOn),
        joined(line.handedOn(), Entry::id),
        yesOrNo(line.owed()),
        String.join("; ", line.offered()),
        line.ruleSet().id(),
        line.ruleSet().version(),
        answers.defers());
  }

  private static String handedOn(Entry entry) {
    Cells cells = holds(entry);
    return Stream.of(
            Optional.of(entry.when().toString()),
            Optional.of(entry.entry()),
            cells.portions().map(portions -> "portions " + portions),
            cells.to().map(to -> "to " + to))
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" "));
  }

  private static String yesOrNo(boolean yes) {
    return yes ? "yes" : "no";
  }

  private static String duration(Optional<Duration> time) {
    return time.map(Duration::toString).orElse("");
  }

  /** One part for each entry, so that the parts of several columns belong together. */
  private static String joined(List<Entry> entries, Function<Entry, String> part) {
    return entries.stream().map(part).collect(Collectors.joining("; "));
  }

  private static Cells holds(Entry entry) {
    return entry.corrected().orElse(entry.written());
  }

  /** What holds of it; what was written before a correction stands in a column of its own. */
  private static String entry(Entry entry) {
    return Stream.of(
            Optional.of(entry.when().toString()),
            Optional.of(entry.entry()),
            holds(entry).temperature(),
            holds(entry).how(),
            entry.note())
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" "));
  }
}
