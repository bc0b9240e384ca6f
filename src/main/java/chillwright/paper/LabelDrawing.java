package chillwright.paper;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws labels at one place of a sheet: the food over the whole width, the QR code at the right,
 * everything else beside it, as large as it fits.
 */
final class LabelDrawing {
  private static final double LARGEST = 14;
  private static final double SMALLEST = 4.5;
  private static final double STEP = 0.25;
  private static final double FOOD = 1.3;
  private static final double GOVERNS = 1.1;

  /** A name is never set smaller than that share of the other text. */
  private static final double NAME_LEAST = 0.9;

  /** The code's share of the width, and the most it needs for a phone to read it. */
  private static final double CODE_SHARE = 0.36;

  private static final double CODE_MOST = 110;

  /** Between the code, which has a white border of its own, and the text beside it. */
  private static final double GAP = 2;

  private final Pen pen;
  private final double x;
  private final double y;
  private final double width;
  private final double height;

  /** A text that is set as a block. */
  private record Block(List<String> lines, Style style) {
    double height() {
      return lines.size() * style.leading();
    }
  }

  private LabelDrawing(Pen pen, double x, double y, double width, double height) {
    this.pen = pen;
    this.x = x;
    this.y = y;
    this.width = width;
    this.height = height;
  }

  static LabelDrawing of(Pen pen, Sheet sheet, int place) {
    return new LabelDrawing(
        pen,
        sheet.left(place) + sheet.inset(),
        sheet.top(place) + sheet.inset(),
        sheet.label().width() - 2 * sheet.inset(),
        sheet.label().height() - 2 * sheet.inset());
  }

  void draw(Label wanted) throws IOException {
    Label label = pen.fonts().canDraw(wanted.written()) ? wanted : wanted.withBoxes();
    for (double size = LARGEST; size > SMALLEST; size -= STEP) {
      if (draw(label, label.facts().size(), size, false)) {
        return;
      }
    }
    for (int facts = label.facts().size(); facts > 1; facts--) {
      if (draw(label, facts, SMALLEST, false)) {
        return;
      }
    }
    draw(label, 1, SMALLEST, true);
  }

  /**
   * Draws it at that size of type if it fits.
   *
   * @param facts how many of them
   * @param anyway even if it reaches beyond the label
   */
  private boolean draw(Label label, int facts, double size, boolean anyway) throws IOException {
    boolean isRoomy = height > CODE_MOST;
    double side = Math.min(Math.min(width * CODE_SHARE, CODE_MOST), height - size * FOOD * 1.2);
    List<Block> blocks = new ArrayList<>();
    double used = add(blocks, 0, label.food(), food(label, size), 0, isRoomy ? 2 : 1);
    for (String line : label.governs()) {
      used = add(blocks, used, line, Style.bold(size * GOVERNS), side, 9);
    }
    used = add(blocks, used, label.allergens(), Style.bold(size), side, 6);
    for (String line : label.facts().subList(0, facts)) {
      used = add(blocks, used, line, Style.plain(size), side, 3);
    }
    used = add(blocks, used, label.ingredients(), Style.plain(size * 0.9), side, 8);
    used = add(blocks, used, label.statement(), Style.plain(size * 0.9), side, 12);
    boolean fits =
        used + (isRoomy ? 2 * size * 1.6 : 0) <= height
            && side + blocks.get(0).height() <= height + size;
    if (!fits && !anyway) {
      return false;
    }
    QrCode.of(label.address()).draw(pen, x + width - side, y + height - side, side);
    double at = y;
    for (Block block : blocks) {
      at = pen.lines(block.lines(), x, at, block.style());
    }
    rule(label.notes(), at, width - side - GAP, size);
    return true;
  }

  /** A long name is set smaller before it is cut. */
  private Style food(Label label, double size) throws IOException {
    double lines = height > CODE_MOST ? 1.8 : 1;
    double wide = pen.fonts().width(Glyphs.visible(label.food()));
    double fitting = wide == 0 ? size * FOOD : lines * width / wide;
    return Style.bold(Math.max(size * NAME_LEAST, Math.min(size * FOOD, fitting)));
  }

  /**
   * Sets a text below the others: over the whole width while it stays above the code.
   *
   * @param used how high the others are
   * @param side of the code; 0 for a text that never stands beside it
   * @return how high all of them are
   */
  private double add(
      List<Block> blocks, double used, String text, Style style, double side, int most)
      throws IOException {
    Block wide = new Block(pen.fonts().lines(text, style.size(), width, most), style);
    boolean isAbove = side == 0 || used + wide.height() <= height - side;
    double column = width - side - GAP;
    Block block =
        isAbove ? wide : new Block(pen.fonts().lines(text, style.size(), column, most), style);
    blocks.add(block);
    return used + block.height();
  }

  /** Room to write, where there is some. */
  private void rule(String notes, double from, double column, double size) throws IOException {
    double gap = Math.max(10, size * 1.6);
    double at = from + gap;
    boolean isFirst = true;
    while (at <= y + height) {
      double start = x;
      if (isFirst) {
        pen.text(notes, x, at - 1, Style.plain(size * 0.9));
        start += pen.fonts().width(notes) * size * 0.9 + 3;
      }
      pen.stroke(start, at, x + column, at, 0.4);
      isFirst = false;
      at += gap;
    }
  }
}
