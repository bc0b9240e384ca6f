package chillwright.paper;

import java.util.List;
import java.util.Optional;

/**
 * A sheet of labels, or one label of a roll. Sizes are in points of 1/72 inch; the printed sizes
 * are those that stationers sell, common practice, no source.
 *
 * @param key as it is asked for, such as "letter-30"
 * @param page the whole sheet
 * @param label one label
 * @param margin to the left of the first label and above it
 * @param gap between labels, across and down
 * @param inset how far ink stays inside a label; where labels reach the edge of the sheet it is as
 *     wide as the strip that most printers leave blank
 */
public record Sheet(
    String key, Size page, Size label, int columns, int rows, Size margin, Size gap, double inset) {
  /** A width and a height. */
  public record Size(double width, double height) {}

  private static final Size LETTER = new Size(inches(8.5), inches(11));
  private static final Size A4 = new Size(millimetres(210), millimetres(297));
  private static final Size NOTHING = new Size(0, 0);

  /** Every sheet, the one that is taken where none is named first. */
  public static final List<Sheet> ALL =
      List.of(
          new Sheet(
              "letter-30",
              LETTER,
              new Size(inches(2.625), inches(1)),
              3,
              10,
              new Size(inches(0.1875), inches(0.5)),
              new Size(inches(0.125), 0),
              5),
          new Sheet(
              "letter-10",
              LETTER,
              new Size(inches(4), inches(2)),
              2,
              5,
              new Size(inches(0.15625), inches(0.5)),
              new Size(inches(0.1875), 0),
              9),
          new Sheet(
              "a4-24",
              A4,
              new Size(millimetres(70), millimetres(37)),
              3,
              8,
              new Size(0, millimetres(0.5)),
              NOTHING,
              12),
          new Sheet(
              "a4-8",
              A4,
              new Size(millimetres(105), millimetres(74)),
              2,
              4,
              new Size(0, millimetres(0.5)),
              NOTHING,
              14),
          roll("roll-4x6", inches(4), inches(6), 12),
          roll("roll-62x40", millimetres(62), millimetres(40), 5),
          roll("roll-50x30", millimetres(50), millimetres(30), 4));

  private static Sheet roll(String key, double width, double height, double inset) {
    Size size = new Size(width, height);
    return new Sheet(key, size, size, 1, 1, NOTHING, NOTHING, inset);
  }

  private static double inches(double count) {
    return count * 72;
  }

  private static double millimetres(double count) {
    return count * 72 / 25.4;
  }

  public static Optional<Sheet> ofKey(String key) {
    return ALL.stream().filter(sheet -> sheet.key.equals(key)).findFirst();
  }

  /** The whole sheet that documents are printed on: "letter" or "a4". */
  public static Optional<Size> page(String key) {
    return switch (key) {
      case "letter" -> Optional.of(LETTER);
      case "a4" -> Optional.of(A4);
      default -> Optional.empty();
    };
  }

  /** How many labels are on it. */
  public int labels() {
    return columns * rows;
  }

  /** From the left edge of the sheet to the label of that place, counted from 0 along the rows. */
  double left(int place) {
    return margin.width() + (place % columns) * (label.width() + gap.width());
  }

  /** From the upper edge of the sheet to the label of that place. */
  double top(int place) {
    int row = place / columns;
    return margin.height() + row * (label.height() + gap.height());
  }
}
