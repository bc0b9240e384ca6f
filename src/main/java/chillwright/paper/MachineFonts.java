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
import org.apache.fontbox.ttf.OpenTypeFont;
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

  private static List<Known> look() {
    List<Known> found = new ArrayList<>();
    BitSet covered = new BitSet();
    List<URI> files = new FontFileFinder().find();
    for (URI address : files.subList(0, Math.min(MOST_FILES, files.size()))) {
      File file = new File(address);
      try {
        look(file, found, covered);
      } catch (IOException | RuntimeException broken) {
        LOG.log(Level.FINE, "a font that cannot be read is as good as none: " + file, broken);
      }
    }
    return List.copyOf(found);
  }

  private static void look(File file, List<Known> found, BitSet covered) throws IOException {
    String name = file.getName().toLowerCase(Locale.ROOT);
    if (name.endsWith(".ttc")) {
      try (TrueTypeCollection fonts = new TrueTypeCollection(file)) {
        fonts.processAllFonts(font -> add(font, file, font.getName(), found, covered));
      }
    } else if (name.endsWith(".ttf")) {
      try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBufferedFile(file))) {
        add(font, file, "", found, covered);
      }
    }
  }

  private static void add(
      TrueTypeFont font, File file, String name, List<Known> found, BitSet covered)
      throws IOException {
    if (!canBeUsed(font)) {
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

  /** Its maker lets it be put into documents, in part, and it is of the kind that can be. */
  private static boolean canBeUsed(TrueTypeFont font) throws IOException {
    boolean hasOutlines = !(font instanceof OpenTypeFont open && open.isPostScript());
    int permission = font.getOS2Windows() == null ? 0 : font.getOS2Windows().getFsType();
    boolean isRestricted = (permission & 0x000f) == 0x0002;
    boolean isWholeOnly = (permission & 0x0100) != 0;
    boolean isBitmapOnly = (permission & 0x0200) != 0;
    return hasOutlines && !isRestricted && !isWholeOnly && !isBitmapOnly;
  }

  private static Optional<TrueTypeFont> open(Known font) {
    try {
      return font.name().isEmpty()
          ? Optional.of(new TTFParser().parse(new RandomAccessReadBufferedFile(font.file())))
          : Optional.ofNullable(new TrueTypeCollection(font.file()).getFontByName(font.name()));
    } catch (IOException gone) {
      return Optional.empty();
    }
  }
}
