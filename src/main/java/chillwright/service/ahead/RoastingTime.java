package chillwright.service.ahead;

import chillwright.core.heat.Practice;
import chillwright.rulebook.Handbook;
import java.util.List;
import java.util.Optional;

/** How long a thawed turkey roasts, not stuffed, by a printed chart. */
final class RoastingTime {
  private static final double LEAST = 8;

  /** The heaviest bird of each row of the chart, lb. */
  private static final List<Integer> ROWS = List.of(12, 14, 18, 20, 24);

  private RoastingTime() {}

  /** Hours of the row; where two rows meet, of the one that takes longer. */
  static Optional<Practice> of(double pounds, Handbook handbook) {
    if (pounds < LEAST) {
      return Optional.empty();
    }
    int heaviest = ROWS.get(ROWS.size() - 1);
    return ROWS.stream()
        .filter(row -> pounds < row || (pounds == heaviest && row == heaviest))
        .findFirst()
        .map(row -> handbook.figure("roast-turkey-" + row));
  }
}
