package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** One client's writes: into a long log, and beside a bare commit. */
final class WriteRows implements Ground.Group {
  /** To warm up with, and to measure. */
  private static final int WRITES = 300;

  private static final int READINGS = 10_000;
  private static final int LONG_WRITES = 50;

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    Path database = ground.file("writes.db");
    ground.remove(database);
    Path log = ground.file("long.csv");
    KitchenLog.writeLongAndShort(log, READINGS, 2 * LONG_WRITES);
    Run.of(ground.importOf(log, database), ground.folder()).requireCode(0);
    Files.delete(log);
    List<Line> lines = new ArrayList<>();
    try (Serve serve = Serve.start(ground, database);
        HttpLine line = serve.line()) {
      lines.add(againstBare(ground, line));
      lines.add(longLog(line, ground.size().samples(LONG_WRITES)));
    }
    ground.remove(database);
    return lines;
  }

  /** Written in turn, so that both meet the same disk. */
  private static Line againstBare(Ground ground, HttpLine line) throws IOException, SQLException {
    Path file = ground.file("bare.db");
    ground.remove(file);
    Times ours = new Times();
    Times bare = new Times();
    try (BareTable table = new BareTable(file)) {
      Phone phone = new Phone(line, "PH");
      int writes = ground.size().samples(WRITES);
      for (int round = -writes; round < writes; round++) {
        long write = phone.write();
        long commit = table.write();
        if (round >= 0) {
          ours.add(write);
          bare.add(commit);
        }
      }
    }
    ground.remove(file);
    return Line.what("one client's acknowledged write (median)")
        .measured(Times.text(ours.median()))
        .against("bare durable commit " + Times.text(bare.median()))
        .atMost((double) ours.median() / bare.median(), 3);
  }

  private static Line longLog(HttpLine line, int writes) throws IOException {
    Times ofLong = new Times();
    Times ofShort = new Times();
    for (int round = 0; round < writes + writes / 2; round++) {
      long longer = read(line, "LONG", round);
      long shorter = read(line, KitchenLog.shortLot(round), round);
      if (round >= writes / 2) {
        ofLong.add(longer);
        ofShort.add(shorter);
      }
    }
    return Line.what("one entry to a lot of %,d readings (median)".formatted(READINGS))
        .measured(Times.text(ofLong.median()))
        .against("to a lot of 20 " + Times.text(ofShort.median()))
        .atMost((double) ofLong.median() / ofShort.median(), 2);
  }

  private static long read(HttpLine line, String lot, int round) throws IOException {
    String body =
        "{\"when\":\"%s\",\"entry\":\"reading\",\"temperature\":\"38F\"}".formatted(Instant.now());
    long start = System.nanoTime();
    line.post("/api/v1/lots/" + lot + "/entries", body, lot + "-" + round).require(201);
    return System.nanoTime() - start;
  }
}
