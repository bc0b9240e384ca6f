package chillwright.paper;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.io.IOException;
import org.apache.fontbox.cff.CFFFont;
import org.apache.fontbox.ttf.CFFTable;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.fontbox.ttf.TrueTypeFont;

/**
 * The letters of an OpenType font whose outlines are those of PostScript (its table CFF), as most
 * fonts for Chinese, Japanese and Korean have them. The library cannot put such a font into a
 * document, so that its letters are drawn as shapes.
 */
final class Outlines {
  private final TrueTypeFont file;
  private final CFFFont letters;
  private final CmapLookup characters;

  Outlines(OpenTypeFont file) throws IOException {
    this.file = file;
    this.letters = file.getCFF().getFont();
    this.characters = file.getUnicodeCmapLookup();
  }

  /** Whether a font is of that kind. */
  static boolean isIn(TrueTypeFont font) {
    return font instanceof OpenTypeFont && font.getTableMap().containsKey(CFFTable.TAG);
  }

  /** A character that the font has. */
  Run.Outlined of(int character) throws IOException {
    int glyph = characters.getGlyphId(character);
    int name = letters.getCharset().isCIDFont() ? letters.getCharset().getCIDForGID(glyph) : glyph;
    double size = 1.0 / file.getUnitsPerEm();
    Shape shape =
        AffineTransform.getScaleInstance(size, size)
            .createTransformedShape(letters.getType2CharString(name).getPath());
    return new Run.Outlined(
        Character.toString(character), shape, file.getAdvanceWidth(glyph) * size);
  }
}
