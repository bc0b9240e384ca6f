package chillwright.paper;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;

/** Labels on sheets, as PDF. */
public final class LabelSheets {
  /** The most labels of one document. */
  public static final int MOST = 300;

  private LabelSheets() {}

  /**
   * Places labels one after the other, along the rows.
   *
   * @param first the place of the first sheet to begin at, from 1, so that a begun sheet can be
   *     used up
   * @throws IllegalArgumentException if there are none or too many, or the sheet has no such place
   */
  public static byte[] of(List<Label> labels, Sheet sheet, int first) {
    if (labels.isEmpty() || labels.size() > MOST) {
      throw new IllegalArgumentException("1 to " + MOST + " labels, not " + labels.size());
    }
    if (first < 1 || first > sheet.labels()) {
      throw new IllegalArgumentException("1 to " + sheet.labels() + ", not " + first);
    }
    try (PDDocument document = new PDDocument();
        Fonts fonts = new Fonts(document)) {
      int place = first - 1;
      int next = 0;
      while (next < labels.size()) {
        try (Pen pen = Pen.onNewPage(document, fonts, sheet.page())) {
          for (; place < sheet.labels() && next < labels.size(); place++, next++) {
            LabelDrawing.draw(labels.get(next), pen, sheet, place);
          }
        }
        place = 0;
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException("memory does not fail to be written", e);
    }
  }
}
