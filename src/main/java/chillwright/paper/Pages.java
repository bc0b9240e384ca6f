package chillwright.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;

/** What documents of several pages have in common: how they begin, and what stands below each. */
final class Pages {
  private static final Style TITLE = Style.bold(17);
  private static final Style HEADING = Style.bold(12.5);
  private static final Style TEXT = Style.plain(9);
  private static final Style FOOT = Style.plain(6.5);

  private Pages() {}

  /** Writes what runs from page to page. */
  interface Body {
    void write(Flow flow) throws IOException;
  }

  /** A document as PDF. */
  static byte[] of(RecordHead head, Sheet.Size size, Words words, Body body) {
    try (PDDocument document = new PDDocument();
        Fonts fonts = new Fonts(document)) {
      document.getDocumentInformation().setTitle(Glyphs.visible(head.title()));
      document.getDocumentCatalog().setLanguage(words.locale().toLanguageTag());
      try (Flow flow = new Flow(document, fonts, size)) {
        body.write(flow);
      }
      feet(document, fonts, cautions(fonts, head, words), head.kitchen());
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("memory does not fail to be written", e);
    }
  }

  static void head(RecordHead head, Flow flow) throws IOException {
    flow.text(head.title(), TITLE);
    flow.text(head.kitchen(), HEADING);
    flow.space(4);
    for (String fact : head.facts()) {
      flow.text(fact, TEXT);
    }
  }

  /** What stands below each page; that some letters are boxes is told where there are such. */
  private static List<String> cautions(Fonts fonts, RecordHead head, Words words) {
    List<String> cautions = new ArrayList<>(head.cautions());
    if (fonts.hasDrawnBoxes()) {
      cautions.add(words.say("paper.boxes"));
    }
    return cautions;
  }

  /** The cautions and "3 / 7" on each page, once it is known how many there are. */
  private static void feet(PDDocument document, Fonts fonts, List<String> cautions, String kitchen)
      throws IOException {
    int pages = document.getNumberOfPages();
    for (int i = 0; i < pages; i++) {
      PDPage page = document.getPage(i);
      try (Pen pen = Pen.onPage(document, page, fonts)) {
        double bottom = page.getMediaBox().getHeight();
        double right = page.getMediaBox().getWidth() - Flow.MARGIN;
        double width = right - Flow.MARGIN;
        List<String> lines = new ArrayList<>();
        for (String caution : cautions) {
          lines.addAll(fonts.lines(caution, FOOT.size(), width, 3));
        }
        double y = bottom - 24 - lines.size() * FOOT.leading();
        pen.stroke(Flow.MARGIN, y - 3, right, y - 3, 0.4);
        pen.lines(lines, Flow.MARGIN, y, FOOT);
        String number = (i + 1) + " / " + pages;
        double wide = fonts.width(number) * TEXT.size();
        pen.text(number, right - wide, bottom - 14, TEXT);
        String name =
            fonts.lines(kitchen, FOOT.size(), width / 2, 1).stream().findFirst().orElse("");
        pen.text(name, Flow.MARGIN, 30, FOOT);
      }
    }
  }
}
