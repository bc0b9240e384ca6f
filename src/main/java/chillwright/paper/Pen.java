package chillwright.paper;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Draws on one page, in points from its upper left corner, y downwards. */
final class Pen implements AutoCloseable {
  private final Fonts fonts;
  private final PDPageContentStream ink;
  private final double height;

  private Pen(Fonts fonts, PDPageContentStream ink, double height) {
    this.fonts = fonts;
    this.ink = ink;
    this.height = height;
  }

  /** On a new page at the end of the document. */
  static Pen onNewPage(PDDocument document, Fonts fonts, Sheet.Size size) throws IOException {
    PDPage page = new PDPage(new PDRectangle((float) size.width(), (float) size.height()));
    document.addPage(page);
    return new Pen(fonts, new PDPageContentStream(document, page), size.height());
  }

  /** On top of what a page holds already. */
  static Pen onPage(PDDocument document, PDPage page, Fonts fonts) throws IOException {
    PDPageContentStream ink =
        new PDPageContentStream(document, page, PDPageContentStream.AppendMode.APPEND, true, true);
    return new Pen(fonts, ink, page.getMediaBox().getHeight());
  }

  Fonts fonts() {
    return fonts;
  }

  /** One line of visible text; its letters stand on y. */
  void text(String line, double x, double y, Style style) throws IOException {
    double at = x;
    for (Run run : fonts.runs(line)) {
      run.draw(ink, at, height - y, style);
      at += run.width() * style.size();
    }
  }

  /**
   * Lines below one another, the first with its upper edge at y.
   *
   * @return where the next line would begin
   */
  double lines(List<String> lines, double x, double y, Style style) throws IOException {
    double at = y;
    for (String line : lines) {
      text(line, x, at + style.size(), style);
      at += style.leading();
    }
    return at;
  }

  void stroke(double x1, double y1, double x2, double y2, double width, double... dashes)
      throws IOException {
    float[] pattern = new float[dashes.length];
    for (int i = 0; i < dashes.length; i++) {
      pattern[i] = (float) dashes[i];
    }
    ink.setLineDashPattern(pattern, 0);
    ink.setLineWidth((float) width);
    ink.moveTo((float) x1, (float) (height - y1));
    ink.lineTo((float) x2, (float) (height - y2));
    ink.stroke();
    ink.setLineDashPattern(new float[0], 0);
  }

  /** The ink for what follows: 0 is black, 1 is white. */
  void grey(double share) throws IOException {
    ink.setStrokingColor((float) share);
    ink.setNonStrokingColor((float) share);
  }

  /** A filled square that stands for a point: it prints sharper than a small circle. */
  void dot(double x, double y, double radius) throws IOException {
    box(x - radius, y - radius, 2 * radius, 2 * radius);
  }

  void box(double x, double y, double width, double tall) throws IOException {
    ink.addRect((float) x, (float) (height - y - tall), (float) width, (float) tall);
    ink.fill();
  }

  @Override
  public void close() throws IOException {
    ink.close();
  }
}
