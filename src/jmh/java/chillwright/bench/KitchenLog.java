package chillwright.bench;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/**
 * A made-up kitchen: any number of lots that were served long ago, and the same few on hand. Its
 * lists of what is out and what is due have the same length whatever its history.
 */
final class KitchenLog {
  /** Cooked a few minutes ago: their limits have yet to pass. */
  private static final int DUE = 300;

  /** On hand, and too warm for too long. */
  private static final int OUT = 100;

  /** One of those on hand. */
  static final String ON_HAND = "D00007";

  private static final Duration SETTLED = Duration.ofDays(30);
  private static final Duration LOT_EVERY = Duration.ofSeconds(150);

  private final BufferedWriter out;

  private KitchenLog(BufferedWriter out) {
    this.out = out;
  }

  static Path write(Path file, int served, Instant now) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      KitchenLog log = new KitchenLog(out);
      out.write("lot,food,category,when,entry,temperature,by\n");
      for (int lot = 0; lot < served; lot++) {
        log.served(code('S', lot), now.minus(SETTLED).minus(LOT_EVERY.multipliedBy(served - lot)));
      }
      for (int lot = 0; lot < OUT; lot++) {
        log.out(code('T', lot), now.minus(Duration.ofHours(10)).plusSeconds(lot));
      }
      for (int lot = 0; lot < DUE; lot++) {
        log.cooked(code('D', lot), now.minus(Duration.ofMinutes(10)).plusSeconds(lot));
      }
    }
    return file;
  }

  /** One lot with many readings, a minute apart, and many with twenty. */
  static Path writeLongAndShort(Path file, int readings, int shortLots) throws IOException {
    Instant now = Instant.now();
    try (BufferedWriter out = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
      KitchenLog log = new KitchenLog(out);
      out.write("lot,food,category,when,entry,temperature,by\n");
      log.chilled("LONG", now.minus(Duration.ofMinutes(readings + 400L)), readings - 4);
      for (int lot = 0; lot < shortLots; lot++) {
        log.chilled(code('C', lot), now.minus(Duration.ofHours(7)), 16);
      }
    }
    return file;
  }

  private static String code(char letter, int lot) {
    return String.format(Locale.ROOT, "%c%05d", letter, lot);
  }

  static String shortLot(int lot) {
    return code('C', lot);
  }

  private void served(String lot, Instant cooked) throws IOException {
    cooled(lot, cooked);
    row(lot, cooked.plus(Duration.ofMinutes(400)), "served", "");
  }

  private void chilled(String lot, Instant cooked, int more) throws IOException {
    cooled(lot, cooked);
    for (int minute = 1; minute <= more; minute++) {
      row(lot, cooked.plus(Duration.ofMinutes(300L + minute)), "reading", "38F");
    }
  }

  private void cooled(String lot, Instant cooked) throws IOException {
    cooked(lot, cooked);
    row(lot, cooked.plus(Duration.ofHours(1)), "reading", "100F");
    row(lot, cooked.plus(Duration.ofMinutes(110)), "reading", "65F");
    row(lot, cooked.plus(Duration.ofHours(5)), "chilled", "39F");
  }

  private void out(String lot, Instant cooked) throws IOException {
    cooked(lot, cooked);
    row(lot, cooked.plus(Duration.ofHours(5)), "reading", "100F");
  }

  private void cooked(String lot, Instant when) throws IOException {
    out.write(lot + ",Barley and leek soup,soup_or_stew," + when + ",cooked,190F,MK\n");
  }

  private void row(String lot, Instant when, String entry, String temperature) throws IOException {
    out.write(lot + ",,," + when + "," + entry + "," + temperature + ",JO\n");
  }
}
