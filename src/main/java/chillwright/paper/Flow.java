package chillwright.paper;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Text that runs from page to page. */
final class Flow implements AutoCloseable {
  static final double MARGIN = 46;

  /** Kept free below the text for the cautions and the number of the page. */
  private static final double FOOT = 62;

  /** More of one text is no record any more. */
  private static final int MOST_LINES = 60;

  private final PDDocument document;
  private final Fonts fonts;
  private final Sheet.Size size;
  private Pen pen;
  private double y;

  Flow(PDDocument document, Fonts fonts, Sheet.Size size) throws IOException {
    this.document = document;
    this.fonts = fonts;
    this.size = size;
    this.pen = Pen.onNewPage(document, fonts, size);
    this.y = MARGIN;
  }

  double width() {
    return size.width() - 2 * MARGIN;
  }

  /** Begins a new page unless so much fits on this one. */
  void need(double tall) throws IOException {
    if (y + tall > size.height() - MARGIN - FOOT + MARGIN / 2 && y > MARGIN) {
      pen.close();
      pen = Pen.onNewPage(document, fonts, size);
      y = MARGIN;
    }
  }

  void space(double tall) {
    y += tall;
  }

  void text(String text, Style style) throws IOException {
    text(text, 0, style);
  }

  void text(String text, double indent, Style style) throws IOException {
    for (String line : fonts.lines(text, style.size(), width() - indent, MOST_LINES)) {
      need(style.leading());
      y = pen.lines(List.of(line), MARGIN + indent, y, style);
    }
  }

  void rule() throws IOException {
    need(6);
    pen.stroke(MARGIN, y + 2, MARGIN + width(), y + 2, 0.5);
    y += 6;
  }

  /** A part of a row of a table. */
  record Column(double width, String text, Style style, boolean isStruck) {}

  /** Texts beside one another; a row never begins on one page and ends on the next. */
  void row(List<Column> columns) throws IOException {
    double tall = 0;
    for (Column column : columns) {
      tall = Math.max(tall, lines(column).size() * column.style().leading());
    }
    need(tall);
    double x = MARGIN;
    for (Column column : columns) {
      List<String> lines = lines(column);
      pen.lines(lines, x, y, column.style());
      if (column.isStruck()) {
        strike(lines, x, column.style());
      }
      x += column.width();
    }
    y += tall;
  }

  private List<String> lines(Column column) throws IOException {
    return fonts.lines(column.text(), column.style().size(), column.width() - 6, MOST_LINES / 2);
  }

  private void strike(List<String> lines, double x, Style style) throws IOException {
    double at = y + style.size() * 0.68;
    for (String line : lines) {
      pen.stroke(x, at, x + fonts.width(line) * style.size(), at, 0.6);
      at += style.leading();
    }
  }

  /** A drawing of that height over the whole width. */
  void drawing(double tall, Drawing drawing) throws IOException {
    need(tall);
    drawing.draw(pen, MARGIN, y);
    y += tall;
  }

  /** Draws with its upper left corner at a point. */
  interface Drawing {
    void draw(Pen pen, double x, double y) throws IOException;
  }

  @Override
  public void close() throws IOException {
    pen.close();
  }
}
