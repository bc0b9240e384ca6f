package chillwright.paper;

import chillwright.paper.Label.Extra;
import chillwright.paper.LabelLayout.Block;
import chillwright.paper.LabelLayout.Wish;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Lays one label out as large as all of it fits. Where not all fits at the least size, the QR code
 * is smaller and the extras give way, then the code, then the end of a very long name, and last the
 * size.
 */
final class LabelDrawing {
  private static final double LARGEST = 14;
  private static final double STEP = 0.25;

  /**
   * The least size of type: common practice, no source. A package that is sold asks for more: 21
   * CFR 101.2(c) wants letters at least 1/16 inch high.
   */
  private static final double LEAST = 6;

  /** Where even what must be printed does not fit, and it is told that the sheet is too small. */
  private static final double SMALLEST = 4.5;

  private final Fonts fonts;
  private final Sheet.Size room;

  LabelDrawing(Fonts fonts, Sheet sheet) {
    this.fonts = fonts;
    this.room =
        new Sheet.Size(
            sheet.label().width() - 2 * sheet.inset(), sheet.label().height() - 2 * sheet.inset());
  }

  /** Draws a label at one place of a sheet. */
  static void draw(Label wanted, Pen pen, Sheet sheet, int place) throws IOException {
    LabelDrawing drawing = new LabelDrawing(pen.fonts(), sheet);
    LabelLayout layout = drawing.largest(drawing.least(wanted));
    drawing.draw(layout, pen, sheet.left(place) + sheet.inset(), sheet.top(place) + sheet.inset());
  }

  /** What of a label is left out on its sheet, by name; none where all of it fits. */
  List<String> leftOut(Label wanted) throws IOException {
    LabelLayout layout = least(wanted);
    List<Extra> printed = layout.label().extras();
    List<String> names = new ArrayList<>();
    if (layout.isNameCut()) {
      names.add(wanted.terms().wholeName());
    }
    wanted.extras().stream()
        .filter(extra -> !printed.contains(extra))
        .map(Extra::name)
        .distinct()
        .forEach(names::add);
    if (layout.side() == 0 && !wanted.address().isBlank()) {
      names.add(wanted.terms().code());
    }
    if (layout.size() < LEAST) {
      names.add(wanted.terms().legible());
    }
    return names;
  }

  /** What fits at the least size. */
  private LabelLayout least(Label wanted) throws IOException {
    Label label = fonts.canDraw(wanted.written()) ? wanted : wanted.withBoxes();
    boolean isCoded = !label.address().isBlank();
    double most = isCoded ? LabelLayout.CODE_MOST : 0;
    LabelLayout all = set(label, new Wish(LEAST, LEAST, most, false));
    if (all.isWhole()) {
      return all;
    }
    double[] smaller = isCoded ? new double[] {LabelLayout.CODE_LEAST, 0} : new double[] {0};
    for (boolean mayCut : new boolean[] {false, true}) {
      for (double code : smaller) {
        LabelLayout extras = withExtras(label, new Wish(LEAST, LEAST, code, mayCut));
        if (extras.isWhole()) {
          return extras;
        }
      }
    }
    double size = LEAST;
    LabelLayout layout;
    do {
      size -= STEP;
      layout = set(label.with(List.of()), new Wish(size, size, 0, true));
    } while (!layout.isWhole() && size > SMALLEST);
    return layout;
  }

  /** All extras that fit, each asked for in turn. */
  private LabelLayout withExtras(Label label, Wish wish) throws IOException {
    LabelLayout all = set(label, wish);
    LabelLayout most = all.isWhole() ? all : set(label.with(List.of()), wish);
    if (all.isWhole() || !most.isWhole()) {
      return most;
    }
    List<Extra> kept = new ArrayList<>();
    for (Extra extra : label.extras()) {
      kept.add(extra);
      LabelLayout more = set(label.with(kept), wish);
      if (more.isWhole()) {
        most = more;
      } else {
        kept.remove(kept.size() - 1);
      }
    }
    return most;
  }

  /** The same in the largest type in which it fits. */
  private LabelLayout largest(LabelLayout least) throws IOException {
    for (double size = LARGEST; size > least.size(); size -= STEP) {
      LabelLayout layout =
          set(least.label(), new Wish(size, LEAST, least.side(), least.isNameCut()));
      if (layout.isWhole() && layout.isNameCut() == least.isNameCut()) {
        return layout;
      }
    }
    return least;
  }

  private LabelLayout set(Label label, Wish wish) throws IOException {
    return LabelLayout.of(label, room, fonts, wish);
  }

  private void draw(LabelLayout layout, Pen pen, double x, double y) throws IOException {
    double side = layout.side();
    if (side > 0) {
      QrCode.of(layout.label().address())
          .draw(pen, x + room.width() - side, y + room.height() - side, side);
    }
    double at = y;
    for (Block block : layout.blocks()) {
      at = pen.lines(block.lines(), x, at, block.style());
    }
    rule(layout, pen, x, at, y + room.height());
  }

  /** Room to write, where there is some. */
  private void rule(LabelLayout layout, Pen pen, double x, double from, double end)
      throws IOException {
    String notes = layout.label().terms().notes();
    if (notes.isBlank()) {
      return;
    }
    double small = Math.max(LEAST, layout.size() * 0.9);
    double gap = Math.max(10, layout.size() * 1.6);
    boolean isFirst = true;
    for (double at = from + gap; at <= end; at += gap) {
      double start = x;
      if (isFirst) {
        pen.text(notes, x, at - 1, Style.plain(small));
        start += fonts.width(notes) * small + 3;
      }
      pen.stroke(start, at, x + layout.column(), at, 0.4);
      isFirst = false;
    }
  }
}
