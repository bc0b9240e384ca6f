package chillwright.paper;

import chillwright.paper.Flow.Column;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/**
 * The record as a document that is handed over: each lot with its curve, what was found, what was
 * done about it, and every entry with who signed it. What was corrected stays readable, struck.
 */
public final class RecordPaper {
  private static final Sheet.Size LETTER = new Sheet.Size(612, 792);
  private static final Style TITLE = Style.bold(17);
  private static final Style HEADING = Style.bold(12.5);
  private static final Style SMALL_HEADING = Style.bold(9);
  private static final Style TEXT = Style.plain(9);
  private static final Style STRONG = Style.bold(9);
  private static final Style SMALL = Style.plain(7.5);
  private static final Style FOOT = Style.plain(6.5);

  /** Parts of the width, for the columns of the table. */
  private static final double[] COLUMNS = {0.19, 0.17, 0.52, 0.12};

  private static final double CURVE_SHARE = 0.8;

  private final Words words;
  private final Flow flow;

  private RecordPaper(Words words, Flow flow) {
    this.words = words;
    this.flow = flow;
  }

  /** The document, on sheets of letter size. */
  public static byte[] of(RecordHead head, List<LotSheet> lots, Words words) {
    try (PDDocument document = new PDDocument();
        Fonts fonts = new Fonts(document)) {
      document.getDocumentInformation().setTitle(Glyphs.visible(head.title()));
      document.getDocumentCatalog().setLanguage(words.locale().toLanguageTag());
      try (Flow flow = new Flow(document, fonts, LETTER)) {
        RecordPaper paper = new RecordPaper(words, flow);
        paper.head(head);
        for (LotSheet lot : lots) {
          paper.lot(lot);
        }
        paper.signature();
      }
      feet(document, fonts, head);
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("memory does not fail to be written", e);
    }
  }

  private void head(RecordHead head) throws IOException {
    flow.text(head.title(), TITLE);
    flow.text(head.kitchen(), HEADING);
    flow.space(4);
    for (String fact : head.facts()) {
      flow.text(fact, TEXT);
    }
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
    findings(lot.findings());
    rows(lot.rows());
  }

  private void findings(List<LotSheet.Found> findings) throws IOException {
    if (findings.isEmpty()) {
      return;
    }
    heading("lot.findings");
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
    row(
        words.say("paper.when"),
        words.say("paper.what"),
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

  /** The cautions and "3 / 7" on each page, once it is known how many there are. */
  private static void feet(PDDocument document, Fonts fonts, RecordHead head) throws IOException {
    int pages = document.getNumberOfPages();
    double width = LETTER.width() - 2 * Flow.MARGIN;
    List<String> lines = new ArrayList<>();
    for (String caution : head.cautions()) {
      lines.addAll(fonts.lines(caution, FOOT.size(), width, 3));
    }
    for (int i = 0; i < pages; i++) {
      PDPage page = document.getPage(i);
      try (Pen pen = Pen.onPage(document, page, fonts)) {
        double y = LETTER.height() - 24 - lines.size() * FOOT.leading();
        pen.stroke(Flow.MARGIN, y - 3, Flow.MARGIN + width, y - 3, 0.4);
        pen.lines(lines, Flow.MARGIN, y, FOOT);
        String number = (i + 1) + " / " + pages;
        double wide = fonts.width(number) * TEXT.size();
        pen.text(number, LETTER.width() - Flow.MARGIN - wide, LETTER.height() - 14, TEXT);
        String kitchen =
            fonts.lines(head.kitchen(), FOOT.size(), width / 2, 1).stream().findFirst().orElse("");
        pen.text(kitchen, Flow.MARGIN, 30, FOOT);
      }
    }
  }
}
