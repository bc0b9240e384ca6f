package chillwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Where everything of one label stands, from its upper left corner: the food first, the QR code at
 * the lower right, all text above it or beside it.
 *
 * @param label with the extras that are printed
 * @param side of the QR code; 0 where it is left out
 * @param isWhole whether nothing reaches beyond the label and no text is shortened
 * @param isNameCut whether the name of the food is shortened
 */
record LabelLayout(
    Label label,
    double size,
    double side,
    List<Block> blocks,
    boolean isWhole,
    boolean isNameCut,
    Sheet.Size room) {
  private static final double FOOD = 1.3;
  private static final double GOVERNS = 1.1;
  private static final double SMALL = 0.9;

  private static final double CODE_SHARE = 0.36;

  /** More than this no phone needs to read the code. */
  static final double CODE_MOST = 110;

  /** 14 mm: modules of a third of a millimetre or more; common practice, no source. */
  static final double CODE_LEAST = 40;

  /** Between the code, which has a white border of its own, and the text beside it. */
  private static final double GAP = 2;

  /** On a label as high as this each line has one thing to say. */
  private static final double SPACIOUS = 170;

  private static final String BETWEEN = " \u00b7 ";

  /** More lines of one text stand on no label. */
  private static final int MOST_LINES = 40;

  /** A text that is set as a block. */
  record Block(List<String> lines, Style style) {
    double height() {
      return lines.size() * style.leading();
    }
  }

  /**
   * How a label is to be set.
   *
   * @param size of its type, in points
   * @param least no letter is smaller
   * @param code how large the QR code is at most; 0 leaves it out
   * @param mayCut whether a name that needs more lines than it has is shortened
   */
  record Wish(double size, double least, double code, boolean mayCut) {
    double atLeast(double wanted) {
      return Math.max(wanted, least);
    }
  }

  static LabelLayout of(Label label, Sheet.Size room, Fonts fonts, Wish wish) throws IOException {
    return new Setting(room, fonts, wish).of(label);
  }

  /** How wide lines beside the code are. */
  double column() {
    return side == 0 ? room.width() : room.width() - side - GAP;
  }

  /** Sets the texts one below the other. */
  private static final class Setting {
    private final Sheet.Size room;
    private final Fonts fonts;
    private final Wish wish;
    private final boolean isRoomy;
    private final List<Block> blocks = new ArrayList<>();
    private double side;
    private double used;
    private boolean isCut;

    Setting(Sheet.Size room, Fonts fonts, Wish wish) {
      this.room = room;
      this.fonts = fonts;
      this.wish = wish;
      this.isRoomy = room.height() > CODE_MOST;
    }

    LabelLayout of(Label label) throws IOException {
      Style name = name(label.food());
      double most = Math.min(room.width() * CODE_SHARE, wish.code());
      side = Math.min(most, room.height() - name.leading());
      add(label.food(), name, isRoomy ? 4 : wish.mayCut() ? 2 : 3);
      boolean isNameCut = isCut;
      isCut = isCut && !wish.mayCut();
      double size = wish.size();
      for (String line : label.governs()) {
        add(line, Style.bold(isRoomy ? size * GOVERNS : size), MOST_LINES);
      }
      add(label.allergens(), Style.bold(size), MOST_LINES);
      for (String line : lines(label)) {
        add(line, Style.plain(size), MOST_LINES);
      }
      add(label.statement(), Style.plain(wish.atLeast(size * SMALL)), MOST_LINES);
      boolean fits = used + (isRoomy ? size * 1.6 : 0) <= room.height();
      return new LabelLayout(label, size, side, blocks, fits && !isCut, isNameCut, room);
    }

    /** A line for each fact and extra; on a small label short ones share one. */
    private List<String> lines(Label label) throws IOException {
      List<String> texts = new ArrayList<>(label.facts());
      label.extras().forEach(extra -> texts.add(extra.text()));
      if (room.height() > SPACIOUS) {
        return texts;
      }
      double width = room.width() - side - GAP;
      List<String> lines = new ArrayList<>();
      String line = texts.get(0);
      for (String text : texts.subList(1, texts.size())) {
        String both = line + BETWEEN + text;
        boolean fits = fonts.width(Glyphs.visible(both)) * wish.size() <= width;
        if (!fits) {
          lines.add(line);
        }
        line = fits ? both : text;
      }
      lines.add(line);
      return lines;
    }

    /** A long name is set smaller, then over more lines, before it is shortened. */
    private Style name(String food) throws IOException {
      double wide = fonts.width(Glyphs.visible(food));
      double large = wish.size() * FOOD;
      double fitting = wide == 0 ? large : (isRoomy ? 1.8 : 1) * room.width() / wide;
      double least = wish.atLeast(wish.size() * SMALL);
      return Style.bold(Math.max(least, Math.min(large, fitting)));
    }

    /** Over the whole width while it stays above the code. */
    private void add(String text, Style style, int most) throws IOException {
      Block wide = new Block(fonts.lines(text, style.size(), room.width(), most), style);
      boolean isAbove = side == 0 || used + wide.height() <= room.height() - side;
      double column = room.width() - side - GAP;
      Block block =
          isAbove ? wide : new Block(fonts.lines(text, style.size(), column, most), style);
      isCut |= isShortened(block, text);
      blocks.add(block);
      used += block.height();
    }

    private static boolean isShortened(Block block, String text) {
      int last = block.lines().size() - 1;
      return last >= 0 && block.lines().get(last).endsWith("…") && !text.strip().endsWith("…");
    }
  }
}
