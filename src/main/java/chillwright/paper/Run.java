package chillwright.paper;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;

/** A stretch of text of one font. */
interface Run {
  /** How thick the outline of bold letters is, of their size. */
  double BOLD = 0.035;

  /** How wide it is at one point of size. */
  double width();

  /** Draws it with its letters on y, in points from the lower left corner of the page. */
  void draw(PDPageContentStream ink, double x, double y, Style style) throws IOException;

  /** Letters of a font that the document carries. */
  record Written(PDFont font, String text, double width) implements Run {
    /** Both, one after the other; of the same font. */
    Written and(Written next) {
      return new Written(font, text + next.text, width + next.width);
    }

    @Override
    public void draw(PDPageContentStream ink, double x, double y, Style style) throws IOException {
      ink.beginText();
      ink.newLineAtOffset((float) x, (float) y);
      ink.setRenderingMode(style.isBold() ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
      ink.setLineWidth((float) (style.size() * BOLD));
      ink.setFont(font, (float) style.size());
      ink.showText(text);
      ink.endText();
    }
  }

  /**
   * One letter as a shape, with the text it stands for beside it, so that a reader can find and
   * copy it (ActualText, ISO 32000-1, section 14.9.4).
   *
   * @param shape in shares of the size, y upwards
   */
  record Outlined(String text, Shape shape, double width) implements Run {
    private static final COSName SPAN = COSName.getPDFName("Span");

    @Override
    public void draw(PDPageContentStream ink, double x, double y, Style style) throws IOException {
      COSDictionary says = new COSDictionary();
      says.setString(COSName.ACTUAL_TEXT, text);
      ink.beginMarkedContent(SPAN, PDPropertyList.create(says));
      AffineTransform place = new AffineTransform(style.size(), 0, 0, style.size(), x, y);
      PathIterator path = shape.getPathIterator(place);
      if (!path.isDone()) {
        trace(path, ink);
        ink.setLineWidth((float) (style.size() * BOLD));
        if (style.isBold()) {
          ink.fillAndStroke();
        } else {
          ink.fill();
        }
      }
      ink.endMarkedContent();
    }

    /** PostScript outlines are made of lines and cubic curves alone. */
    private static void trace(PathIterator path, PDPageContentStream ink) throws IOException {
      float[] to = new float[6];
      for (; !path.isDone(); path.next()) {
        switch (path.currentSegment(to)) {
          case PathIterator.SEG_MOVETO -> ink.moveTo(to[0], to[1]);
          case PathIterator.SEG_LINETO -> ink.lineTo(to[0], to[1]);
          case PathIterator.SEG_CUBICTO -> ink.curveTo(to[0], to[1], to[2], to[3], to[4], to[5]);
          default -> ink.closePath();
        }
      }
    }
  }
}
