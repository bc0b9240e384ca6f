package chillwright.service;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Makes up what a kitchen writes down: lots that are cooked, divided, combined, cooled and served,
 * with late entries, corrections, and now and then a row that does not fit.
 */
final class RandomLog {
  static final String HEADER =
      "lot,food,category,when,entry,temperature,how,air,place,portions,from,id,corrects,note\n";

  private static final List<String> CATEGORIES =
      List.of("soup_or_stew", "stock_or_meat_broth", "yeast_bread_baked", "cooked_beans");
  private static final List<String> FIRST = List.of("cooked", "prepared", "received", "frozen");
  private static final List<String> DIVIDED =
      List.of("hot-holding", "cooling", "chilled", "frozen");
  private static final List<String> LATER =
      List.of(
          "hot-holding",
          "cooling",
          "chilled",
          "frozen",
          "thawing",
          "reheating",
          "time-control",
          "set-out",
          "action");

  private final SplittableRandom random;
  private final List<Lot> lots = new ArrayList<>();
  private final Instant end;
  private Instant now;
  private int ids;
  private int codes;

  RandomLog(int seed, Instant start, Instant end) {
    this.random = new SplittableRandom(seed);
    this.now = start;
    this.end = end;
  }

  private static final class Lot {
    private final String code;
    private final List<String> entries = new ArrayList<>();
    private double fahrenheit;

    Lot(String code, double fahrenheit) {
      this.code = code;
      this.fahrenheit = fahrenheit;
    }
  }

  /** One or two rows under a header, of which some may be refused. */
  String next() {
    StringBuilder csv = new StringBuilder(HEADER);
    int rows = 1 + random.nextInt(2);
    for (int i = 0; i < rows; i++) {
      csv.append(row()).append('\n');
    }
    return csv.toString();
  }

  private String row() {
    now = now.plus(Duration.ofMinutes(random.nextInt(1, 300)));
    if (now.isAfter(end)) {
      now = end;
    }
    int kind = random.nextInt(100);
    if (lots.size() < 2 || kind < 8) {
      return firstRow("", pick(FIRST));
    }
    if (kind < 16) {
      return firstRow(pick(lots).code, pick(DIVIDED));
    }
    if (kind < 22) {
      return firstRow(pick(lots).code + " " + pick(lots).code, pick(List.of("cooked", "prepared")));
    }
    Lot lot = pick(lots);
    if (kind < 36) {
      return correction(lot);
    }
    if (kind < 42) {
      return outgoing(lot);
    }
    return kind < 70 ? reading(lot) : later(lot, pick(LATER));
  }

  private String firstRow(String from, String word) {
    Lot lot = new Lot("L" + ++codes, random.nextInt(30, 190));
    lots.add(lot);
    String portions = random.nextInt(3) == 0 ? Integer.toString(random.nextInt(1, 20)) : "";
    String food = "Food " + lot.code + "," + pick(CATEGORIES);
    return lot.code
        + ","
        + food
        + ","
        + when()
        + ","
        + word
        + ","
        + maybeTemperature(lot)
        + ",,,walk-in,"
        + portions
        + ","
        + from
        + ","
        + id(lot)
        + ",,";
  }

  private String reading(Lot lot) {
    lot.fahrenheit = Math.max(0, lot.fahrenheit + random.nextInt(-60, 15));
    String air = random.nextInt(3) == 0 ? "38F" : "";
    return row(lot, "reading", temperature(lot), "", air, "", "");
  }

  private String later(Lot lot, String word) {
    String how =
        switch (word) {
          case "thawing" -> pick(List.of("", "refrigerator", "running-water"));
          case "reheating" -> pick(List.of("", "microwave", "commercial", "serve-now"));
          case "time-control" -> pick(List.of("", "4h", "6h"));
          case "frozen" -> pick(List.of("", "hard", "soft", "crystals"));
          default -> "";
        };
    if (word.equals("reheating") || word.equals("hot-holding")) {
      lot.fahrenheit = random.nextInt(120, 180);
    }
    return row(lot, word, word.equals("action") ? "" : maybeTemperature(lot), how, "", "", "");
  }

  private String outgoing(Lot lot) {
    String word = pick(List.of("portions", "portions", "served", "discarded"));
    boolean some = word.equals("portions") || random.nextInt(4) > 0;
    if (!some) {
      lots.remove(lot);
    }
    return row(lot, word, "", "", "", some ? Integer.toString(random.nextInt(1, 4)) : "", "");
  }

  private String correction(Lot lot) {
    String target = pick(lot.entries);
    boolean voids = random.nextInt(5) == 0;
    lot.fahrenheit = random.nextInt(20, 180);
    return row(lot, "correction", voids ? "" : temperature(lot), "", "", "", target);
  }

  private String row(
      Lot lot,
      String word,
      String temperature,
      String how,
      String air,
      String portions,
      String corrects) {
    return lot.code
        + ",,,"
        + when()
        + ","
        + word
        + ","
        + temperature
        + ","
        + how
        + ","
        + air
        + ",,"
        + portions
        + ",,"
        + id(lot)
        + ","
        + corrects
        + ",note";
  }

  /** A fifth of the rows are written late. */
  private String when() {
    return (random.nextInt(5) == 0 ? now.minus(Duration.ofMinutes(random.nextInt(600))) : now)
        .toString();
  }

  private String id(Lot lot) {
    String id = "e" + ++ids;
    lot.entries.add(id);
    return id;
  }

  private String maybeTemperature(Lot lot) {
    return random.nextBoolean() ? temperature(lot) : "";
  }

  private String temperature(Lot lot) {
    return random.nextInt(4) == 0
        ? Math.round((lot.fahrenheit - 32) / 1.8) + "C"
        : lot.fahrenheit + "F";
  }

  private <T> T pick(List<T> all) {
    return all.get(random.nextInt(all.size()));
  }
}
