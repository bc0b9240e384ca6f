package chillwright.paper;

import chillwright.paper.Flow.Column;
import java.io.IOException;
import java.util.List;

/**
 * The record as a document that is handed over: each lot with its curve, what was found, what was
 * done about it, and every entry with who signed it. What was corrected stays readable, struck.
 */
public final class RecordPaper {
  private static final Style HEADING = Style.bold(12.5);
  private static final Style SMALL_HEADING = Style.bold(9);
  private static final Style TEXT = Style.plain(9);
  private static final Style STRONG = Style.bold(9);
  private static final Style SMALL = Style.plain(7.5);

  /** Parts of the width, for the columns of the table. */
  private static final double[] COLUMNS = {0.19, 0.17, 0.52, 0.12};

  private static final double CURVE_SHARE = 0.8;

  private final Words words;
  private final Flow flow;

  private RecordPaper(Words words, Flow flow) {
    this.words = words;
    this.flow = flow;
  }

  /** The document as PDF. */
  public static byte[] of(RecordDocument record, Words words) {
    RecordHead head = record.head();
    return Pages.of(
        head,
        record.size(),
        words,
        flow -> {
          RecordPaper paper = new RecordPaper(words, flow);
          Pages.head(head, flow);
          paper.findings("record.places", record.troubles());
          for (LotSheet lot : record.lots()) {
            paper.lot(lot);
          }
          paper.days(record);
          paper.signature();
        });
  }

  private void lot(LotSheet lot) throws IOException {
    flow.space(14);
    flow.need(80);
    flow.rule();
    flow.text(lot.food(), HEADING);
    flow.text(words.say("label.lot", lot.code()) + " \u00b7 " + lot.verdict(), STRONG);
    for (String fact : lot.facts()) {
      flow.text(fact, TEXT);
    }
    if (lot.curve().isPresent()) {
      CurveDrawing curve = new CurveDrawing(lot.curve().get(), flow.width() * CURVE_SHARE);
      flow.space(6);
      flow.drawing(curve.height(), curve::draw);
    }
    findings("lot.findings", lot.findings());
    rows(lot.rows());
  }

  private void findings(String heading, List<LotSheet.Found> findings) throws IOException {
    if (findings.isEmpty()) {
      return;
    }
    heading(heading);
    for (LotSheet.Found finding : findings) {
      flow.need(30);
      flow.text(finding.verdict() + ": " + finding.says(), TEXT);
      flow.text(finding.source(), 12, SMALL);
      if (!finding.done().isEmpty()) {
        flow.text(words.say("record.action") + " " + finding.done(), 12, STRONG);
      }
      flow.space(3);
    }
  }

  private void heading(String key) throws IOException {
    flow.space(8);
    flow.need(40);
    flow.text(words.say(key), SMALL_HEADING);
    flow.space(2);
  }

  private void rows(List<LotSheet.Row> rows) throws IOException {
    if (rows.isEmpty()) {
      return;
    }
    heading("lot.entries");
    table(rows, "paper.what");
  }

  /** Readings of places, and what was handed over and signed. */
  private void days(RecordDocument record) throws IOException {
    if (!record.placeRows().isEmpty()) {
      part("paper.places");
      for (String limit : record.places()) {
        flow.text(limit, TEXT);
      }
      flow.space(4);
      table(record.placeRows(), "entry.place");
    }
    if (!record.dayRows().isEmpty()) {
      part("paper.days");
      table(record.dayRows(), "paper.what");
    }
  }

  private void part(String key) throws IOException {
    flow.space(14);
    flow.need(80);
    flow.rule();
    flow.text(words.say(key), HEADING);
    flow.space(2);
  }

  private void table(List<LotSheet.Row> rows, String second) throws IOException {
    row(
        words.say("paper.when"),
        words.say(second),
        words.say("paper.entry"),
        words.say("entry.by"),
        SMALL_HEADING,
        false);
    flow.rule();
    for (LotSheet.Row row : rows) {
      row(row.clock(), row.word(), row.text(), row.by(), TEXT, false);
      if (!row.was().isEmpty()) {
        row("", words.say("paper.was"), row.was(), "", TEXT, true);
        row("", "", row.why(), "", SMALL, false);
      }
    }
  }

  private void row(String clock, String word, String text, String by, Style style, boolean isStruck)
      throws IOException {
    double width = flow.width();
    flow.row(
        List.of(
            new Column(width * COLUMNS[0], clock, style, false),
            new Column(width * COLUMNS[1], word, style, false),
            new Column(width * COLUMNS[2], text, style, isStruck),
            new Column(width * COLUMNS[3], by, style, false)));
  }

  /** Where whoever looks it through signs. */
  private void signature() throws IOException {
    flow.space(26);
    flow.need(30);
    flow.text(words.say("paper.sign", "______________________", "________________"), TEXT);
  }
}
