package chillwright.paper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * What of a label has no room on a sheet, told before any is printed. It lays one label out and
 * draws nothing; the fonts that it measures with stay open, since to open them takes longer than
 * all the rest.
 */
public final class LabelRoom {
  private static final Fonts FONTS = open();

  private LabelRoom() {}

  private static Fonts open() {
    try {
      return new Fonts(new PDDocument());
    } catch (IOException e) {
      throw new UncheckedIOException("the font that comes along can be read", e);
    }
  }

  /** The names of what is left out; none where all of it fits. */
  public static List<String> leftOut(Label label, Sheet sheet) {
    synchronized (FONTS) {
      try {
        return new LabelDrawing(FONTS, sheet).leftOut(label);
      } catch (IOException e) {
        throw new UncheckedIOException("memory does not fail to be read", e);
      }
    }
  }

  /** The characters of a label that no font here has, each once. */
  public static List<String> undrawable(Label label) {
    synchronized (FONTS) {
      return FONTS.undrawable(label.written());
    }
  }
}
