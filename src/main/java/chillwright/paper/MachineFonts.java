package chillwright.paper;

import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphTable;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeCollection;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.fontbox.util.autodetect.FontFileFinder;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;

/**
 * The fonts of this machine: whoever writes in a script usually has one for it. They are looked
 * through once, when a text first needs a character that our own font lacks.
 */
final class MachineFonts {
  private static final Logger LOG = Logger.getLogger(MachineFonts.class.getName());

  /** Held here, or its level would be forgotten. A font without names of its letters is usual. */
  private static final Logger QUIET = Logger.getLogger("org.apache.fontbox.ttf.PostScriptTable");

  /** Of a machine with more fonts the rest is not looked at. */
  private static final int MOST_FILES = 800;

  private static final int LAST_CHARACTER = 0x2ffff;

  /** Looked through when first asked for. */
  private static final class All {
    static final List<Known> FONTS = look();
  }

  /** A font, and the characters it has that none before it has. */
  private record Known(File file, String name, BitSet adds) {}

  private MachineFonts() {}

  /** A font that has the character; the caller closes it. */
  static Optional<TrueTypeFont> having(int character) {
    for (Known font : All.FONTS) {
      if (font.adds().get(character)) {
        return open(font);
      }
    }
    return Optional.empty();
  }

  /** All fonts of the machine, each looked at once for either kind. */
  private static List<Known> look() {
    QUIET.setLevel(Level.SEVERE);
    Search search = new Search(new ArrayList<>(), new BitSet());
    List<URI> files = new FontFileFinder().find();
    List<URI> some = files.subList(0, Math.min(MOST_FILES, files.size()));
    some.forEach(file -> search.look(new File(file), Kind.CARRIED));
    some.forEach(file -> search.look(new File(file), Kind.DRAWN));
    return List.copyOf(search.found());
  }

  /** What can be done with a font; the first kind is preferred. */
  private enum Kind {
    CARRIED(".ttf"),
    DRAWN(".otf");

    private final String ending;

    Kind(String ending) {
      this.ending = ending;
    }

    boolean isOf(TrueTypeFont font) {
      return this == DRAWN ? Outlines.isIn(font) : font.getTableMap().containsKey(GlyphTable.TAG);
    }
  }

  private record Search(List<Known> found, BitSet covered) {
    void look(File file, Kind kind) {
      try {
        if (isOf(file, ".ttc")) {
          try (TrueTypeCollection fonts = new TrueTypeCollection(file)) {
            fonts.processAllFonts(font -> add(font, font.getName(), file, kind));
          }
        } else if (isOf(file, kind.ending)) {
          try (TrueTypeFont font = parsed(file)) {
            add(font, "", file, kind);
          }
        }
      } catch (IOException | RuntimeException broken) {
        LOG.log(Level.FINE, "a font that cannot be read is as good as none: " + file, broken);
      }
    }

    private void add(TrueTypeFont font, String name, File file, Kind kind) throws IOException {
      if (!kind.isOf(font) || !mayBeUsed(font)) {
        return;
      }
      CmapLookup characters = font.getUnicodeCmapLookup();
      BitSet adds = new BitSet();
      for (int character = ' '; character <= LAST_CHARACTER; character++) {
        if (!covered.get(character) && characters.getGlyphId(character) > 0) {
          adds.set(character);
        }
      }
      if (!adds.isEmpty()) {
        covered.or(adds);
        found.add(new Known(file, name, adds));
      }
    }
  }

  private static boolean isOf(File file, String ending) {
    return file.getName().toLowerCase(Locale.ROOT).endsWith(ending);
  }

  private static TrueTypeFont parsed(File file) throws IOException {
    TTFParser parser = isOf(file, ".otf") ? new OTFParser() : new TTFParser();
    return parser.parse(new RandomAccessReadBufferedFile(file));
  }

  /** Its maker lets it be put into documents, in part. */
  private static boolean mayBeUsed(TrueTypeFont font) throws IOException {
    int permission = font.getOS2Windows() == null ? 0 : font.getOS2Windows().getFsType();
    boolean isRestricted = (permission & 0x000f) == 0x0002;
    boolean isWholeOnly = (permission & 0x0100) != 0;
    boolean isBitmapOnly = (permission & 0x0200) != 0;
    return !isRestricted && !isWholeOnly && !isBitmapOnly;
  }

  private static Optional<TrueTypeFont> open(Known font) {
    try {
      return font.name().isEmpty()
          ? Optional.of(parsed(font.file()))
          : Optional.ofNullable(new TrueTypeCollection(font.file()).getFontByName(font.name()));
    } catch (IOException gone) {
      return Optional.empty();
    }
  }
}
