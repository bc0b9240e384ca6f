package chillwright.core.portions;

/**
 * Shelves of a refrigerator, on which pans stand side by side and never on each other.
 *
 * @param count of shelves, above 0
 * @param lengthInches of one shelf
 * @param gapInches kept free round each pan, so that air gets there
 */
public record Shelves(int count, double lengthInches, double widthInches, double gapInches) {
  public Shelves {
    if (!(count > 0 && lengthInches > 0 && widthInches > 0 && gapInches >= 0)) {
      throw new IllegalArgumentException(
          "%s shelves of %s x %s in, gap %s"
              .formatted(count, lengthInches, widthInches, gapInches));
    }
  }

  /** How many pans fit, all turned the same way: the better of the two ways. */
  public int fit(Pan pan) {
    int along = grid(pan.lengthInches(), pan.widthInches());
    int across = grid(pan.widthInches(), pan.lengthInches());
    return count * Math.max(along, across);
  }

  private int grid(double length, double width) {
    return inRow(lengthInches, length) * inRow(widthInches, width);
  }

  /** Gaps lie between pans; the shelf's own edge is open. */
  private int inRow(double whole, double each) {
    return Portion.wholeDown((whole + gapInches) / (each + gapInches));
  }
}
