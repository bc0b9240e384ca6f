package chillwright.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;

/**
 * A made-up log of any size for measuring: lots of twenty entries, five hundred of them running at
 * once, so that their rows are interleaved by time. Most lots pass; some are warm too long, some
 * are never read cold, a few are frozen soft.
 */
final class BenchLog {
  static final int ROWS_PER_LOT = 20;
  private static final int AT_ONCE = 500;
  private static final long LOT_EVERY = 720_000;
  private static final long START = Instant.parse("2020-01-06T06:00:00Z").toEpochMilli();
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,place,portions,probe,by,note\n";
  private static final String[] PLACES = {"walk-in", "reach-in", "chest freezer", "line"};
  private static final String[] PEOPLE = {"MK", "JO", "TS"};

  private BenchLog() {}

  /**
   * Writes a log.
   *
   * @param faults how many rows, spread evenly, have a temperature without a scale
   */
  static Path write(Path file, int lots, int faults) throws IOException {
    long rows = (long) lots * ROWS_PER_LOT;
    long faultEvery = faults == 0 ? Long.MAX_VALUE : rows / faults;
    long written = 0;
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      out.write(HEADER);
      for (int first = 0; first < lots; first += AT_ONCE) {
        int last = Math.min(lots, first + AT_ONCE);
        for (int step = 0; step < ROWS_PER_LOT; step++) {
          for (int lot = first; lot < last; lot++) {
            boolean isBroken = ++written % faultEvery == 0;
            out.write(row(lot, step, isBroken));
          }
        }
      }
    }
    return file;
  }

  private static String row(int lot, int step, boolean isBroken) {
    long began = START + (lot / AT_ONCE) * LOT_EVERY * 200 + (lot % AT_ONCE) * 1000L;
    String when = Instant.ofEpochMilli(began + minutes(step) * 60_000L).toString();
    String first = step == 0 ? "Barley and leek soup,soup_or_stew," : ",,";
    String temperature = isBroken ? "145.0" : temperature(lot, step);
    return String.format(
        Locale.ROOT,
        "L%07d,%s%s,%s,%s,%s,%s,P%d,%s,%s%n",
        lot,
        first,
        when,
        word(step),
        temperature.isEmpty() || isBroken ? temperature : temperature + "F",
        step == 0 || step % 5 == 2 ? PLACES[(lot + step) % PLACES.length] : "",
        step == 0 ? "24" : step == 17 ? "6" : "",
        lot % 4,
        PEOPLE[lot % PEOPLE.length],
        step == 12
            ? "stirred, \"lid off\" said the label".replace("\"", "'").replace(",", ";")
            : "");
  }

  private static int minutes(int step) {
    int[] at = {
      0, 20, 45, 70, 95, 110, 150, 190, 230, 270, 300, 320, 340, 1500, 2900, 2960, 4400, 5700, 5760,
      5800
    };
    return at[step];
  }

  private static String word(int step) {
    return switch (step) {
      case 0 -> "cooked";
      case 12 -> "chilled";
      case 17 -> "portions";
      case 14 -> "reheating";
      case 16 -> "hot-holding";
      case 19 -> "served";
      default -> "reading";
    };
  }

  private static String temperature(int lot, int step) {
    boolean isSlow = lot % 20 == 7;
    double degrees =
        switch (step) {
          case 0 -> 190;
          case 1 -> 150;
          case 2 -> 120;
          case 3 -> isSlow ? 110 : 92;
          case 4 -> isSlow ? 99 : 74;
          case 5 -> isSlow ? 90 : 66;
          case 6 -> 60;
          case 7 -> 55;
          case 8 -> 50;
          case 9 -> 46;
          case 10 -> 43;
          case 11 -> 40;
          case 12, 13 -> 39;
          case 14 -> 38;
          case 15 -> 170;
          case 16 -> 150;
          case 17, 19 -> Double.NaN;
          default -> 145;
        };
    return Double.isNaN(degrees)
        ? ""
        : String.format(Locale.ROOT, "%.1f", degrees + (lot % 10) / 10.0);
  }
}
