package chillwright.bench;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;

/** A person who writes down one reading after another, a new lot after every twenty. */
final class Phone {
  private static final int ROWS_PER_LOT = 20;

  private final HttpLine line;
  private final String name;
  private final Instant began = Instant.now().minus(Duration.ofHours(3));
  private int sent;

  /**
   * @param name unlike that of any other phone of the kitchen, letters and digits
   */
  Phone(HttpLine line, String name) {
    this.line = line;
    this.name = name;
  }

  /** Sends the next write and returns its length of time; it throws if that was refused. */
  long write() throws IOException {
    int row = sent % (ROWS_PER_LOT + 1);
    String lot = name + "-" + sent / (ROWS_PER_LOT + 1);
    String key = name + "-key-" + sent;
    sent++;
    long start = System.nanoTime();
    HttpLine.Reply reply =
        row == 0
            ? line.post("/api/v1/lots", lotOf(lot), key)
            : line.post("/api/v1/lots/" + lot + "/entries", entry(row), key);
    long nanos = System.nanoTime() - start;
    reply.require(201);
    return nanos;
  }

  private static String lotOf(String lot) {
    return "{\"lot\":\"%s\",\"food\":\"Barley soup\",\"category\":\"soup_or_stew\"}".formatted(lot);
  }

  private String entry(int row) {
    return "{\"when\":\"%s\",\"entry\":\"%s\",\"temperature\":\"%dF\",\"by\":\"MK\"}"
        .formatted(
            began.plusMillis(sent * 100L), row == 1 ? "cooked" : "reading", 191 - Math.min(row, 9));
  }
}
