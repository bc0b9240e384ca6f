package chillwright.paper;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The fonts of one document: one that comes with the program (Latin, Greek, Cyrillic, Hebrew), then
 * those of the machine. A character that none of them has is drawn as a box.
 */
final class Fonts implements AutoCloseable {
  private static final String OWN = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
  private static final int BOX = 0x25a1;

  private final PDDocument document;
  private final List<Face> faces = new ArrayList<>();
  private final Map<Integer, Run> glyphs = new HashMap<>();
  private boolean hasDrawnBoxes;

  /** A font that is open. */
  private record Face(TrueTypeFont file, CmapLookup characters, Drawing drawing) {
    boolean has(int character) throws IOException {
      return characters.getGlyphId(character) > 0;
    }
  }

  /** How a font draws one character. */
  private interface Drawing {
    Run of(int character) throws IOException;
  }

  Fonts(PDDocument document) throws IOException {
    this.document = document;
    try (InputStream in = PDDocument.class.getResourceAsStream(OWN)) {
      add(new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes())));
    }
  }

  private Face add(TrueTypeFont file) throws IOException {
    // Ligatures are left alone: a text that is read back shall be the text that was written.
    file.disableGsubFeature("liga");
    Face face = new Face(file, file.getUnicodeCmapLookup(), drawing(file));
    faces.add(face);
    return face;
  }

  private Drawing drawing(TrueTypeFont file) throws IOException {
    if (file instanceof OpenTypeFont open && Outlines.isIn(file)) {
      return new Outlines(open)::of;
    }
    PDFont font = PDType0Font.load(document, file, true);
    return character -> {
      String text = Character.toString(character);
      return new Run.Written(font, text, font.getStringWidth(text) / 1000);
    };
  }

  private Run glyph(int character) throws IOException {
    Run known = glyphs.get(character);
    if (known != null) {
      return known;
    }
    Optional<Face> face = face(character);
    hasDrawnBoxes |= face.isEmpty();
    Run glyph =
        face.isPresent() ? face.get().drawing().of(character) : faces.get(0).drawing().of(BOX);
    glyphs.put(character, glyph);
    return glyph;
  }

  /** Whether a character was asked for that none of the fonts has. */
  boolean hasDrawnBoxes() {
    return hasDrawnBoxes;
  }

  /** Whether every character of a text can be drawn. */
  boolean canDraw(String text) {
    return undrawable(text).isEmpty();
  }

  /** The characters of a text that cannot be drawn, each once. */
  List<String> undrawable(String text) {
    return Glyphs.visible(text)
        .codePoints()
        .filter(character -> !has(character))
        .distinct()
        .mapToObj(Character::toString)
        .toList();
  }

  private boolean has(int character) {
    try {
      return face(character).isPresent();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Optional<Face> face(int character) throws IOException {
    for (Face face : faces) {
      if (face.has(character)) {
        return Optional.of(face);
      }
    }
    Optional<TrueTypeFont> file = MachineFonts.having(character);
    return file.isPresent() ? Optional.of(add(file.get())) : Optional.empty();
  }

  /** A line of visible text as runs, drawn one after the other. */
  List<Run> runs(String line) throws IOException {
    List<Run> runs = new ArrayList<>();
    for (int character : Glyphs.leftToRight(line).codePoints().toArray()) {
      Run next = glyph(character);
      int last = runs.size() - 1;
      if (last >= 0
          && runs.get(last) instanceof Run.Written before
          && next instanceof Run.Written after
          && before.font().equals(after.font())) {
        runs.set(last, before.and(after));
      } else {
        runs.add(next);
      }
    }
    return runs;
  }

  /** How wide a visible text is at one point of size. */
  double width(String text) throws IOException {
    double width = 0;
    for (int character : text.codePoints().toArray()) {
      width += glyph(character).width();
    }
    return width;
  }

  /** The lines of a text, broken at blanks; the last ends in "…" where there would be more. */
  List<String> lines(String text, double size, double width, int most) throws IOException {
    List<String> lines = new ArrayList<>();
    String left = Joined.of(Glyphs.visible(text), this::has);
    while (!left.isEmpty() && lines.size() < most - 1 && width(left) * size > width) {
      int fits = fitting(left, size, width);
      int blank = left.lastIndexOf(' ', fits);
      int end = blank > 0 ? blank : fits;
      lines.add(left.substring(0, end).strip());
      left = left.substring(end).strip();
    }
    if (!left.isEmpty()) {
      lines.add(shortened(left, size, width));
    }
    return lines;
  }

  private String shortened(String text, double size, double width) throws IOException {
    if (width(text) * size <= width) {
      return text;
    }
    return text.substring(0, fitting(text, size, width - width("…") * size)).strip() + "…";
  }

  /** How much of the text is no wider than that; at least one character. */
  private int fitting(String text, double size, double width) throws IOException {
    double used = 0;
    int at = 0;
    while (at < text.length()) {
      int character = text.codePointAt(at);
      used += glyph(character).width() * size;
      if (used > width && at > 0) {
        return at;
      }
      at += Character.charCount(character);
    }
    return at;
  }

  @Override
  public void close() throws IOException {
    for (Face face : faces) {
      face.file().close();
    }
  }
}
