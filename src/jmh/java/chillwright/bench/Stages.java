package chillwright.bench;

import chillwright.core.log.Admission;
import chillwright.core.log.Incoming;
import chillwright.core.log.Intake;
import chillwright.core.log.Stored;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.RuleSet;
import chillwright.logfile.Cells;
import chillwright.logfile.LogFile;
import chillwright.logfile.LogIndex;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What each stage of an import costs on one thread, a row and a lot: FILE. */
final class Stages {
  private static final ZoneId ZONE = ZoneId.of("UTC");
  private static final Instant NOW = Instant.parse("2026-11-25T12:00:00Z");
  private static final com.sun.management.ThreadMXBean THREADS =
      (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();

  private Stages() {}

  /** What one stage after the other cost in sum; {@code indexNanos} is that of the first pass. */
  record Costs(long rows, int lots, long indexNanos, List<Long> nanos, List<Long> bytes) {
    long assessNanos() {
      return nanos.get(2);
    }

    long assessBytes() {
      return bytes.get(2);
    }
  }

  public static void main(String[] args) throws Exception {
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 3;
    for (int round = 0; round < rounds; round++) {
      print(measure(Path.of(args[0])));
    }
  }

  static Costs measure(Path file) throws Exception {
    RuleLibrary library = RuleLibrary.load(Optional.empty());
    RuleBook book = library.ruleBook("us-food-code-2022").orElseThrow();
    return measure(file, library, book.on(LocalDate.parse("2026-01-01")));
  }

  private static Costs measure(Path file, RuleLibrary library, RuleSet rules) throws IOException {
    long start = System.nanoTime();
    LogIndex index =
        LogIndex.of(LogFile.of(List.of(file)), new Cells(NOW), lots -> Map.of()).orElseThrow();
    long indexed = System.nanoTime() - start;
    long[] times = new long[3];
    long[] bytes = new long[3];
    int lots = 0;
    try (LogIndex.Reader reader = index.reader()) {
      for (LogIndex.Block block : index.blocks(4000)) {
        long[] mark = mark();
        List<Incoming> rows = reader.rows(block);
        mark = add(times, bytes, 0, mark);
        Intake intake = new Intake(Stored.NOTHING, library.keepingList(), ZONE, NOW);
        Admission admission = intake.admit(rows);
        mark = add(times, bytes, 1, mark);
        List<List<Finding>> found = new ArrayList<>();
        for (Admission.Lot lot : admission.lots()) {
          Timeline timeline =
              Timeline.of(lot.log(), library.keepingList(), ZONE, Instant.MAX).orElseThrow();
          found.add(Assessment.of(timeline, rules));
        }
        add(times, bytes, 2, mark);
        lots += found.size();
      }
    }
    return new Costs(index.rows(), lots, indexed, listed(times), listed(bytes));
  }

  private static List<Long> listed(long[] sums) {
    return Arrays.stream(sums).boxed().toList();
  }

  private static void print(Costs costs) {
    double n = costs.rows();
    System.out.printf(
        Locale.ROOT,
        "a row: index %.2f us, read %.2f us %.0f B, admit %.2f us %.0f B, assess %.2f us; a lot:"
            + " assess %.1f us %.0f B%n",
        costs.indexNanos() / n / 1e3,
        costs.nanos().get(0) / n / 1e3,
        costs.bytes().get(0) / n,
        costs.nanos().get(1) / n / 1e3,
        costs.bytes().get(1) / n,
        costs.assessNanos() / n / 1e3,
        costs.assessNanos() / 1e3 / costs.lots(),
        (double) costs.assessBytes() / costs.lots());
  }

  private static long[] mark() {
    return new long[] {System.nanoTime(), THREADS.getCurrentThreadAllocatedBytes()};
  }

  private static long[] add(long[] times, long[] bytes, int stage, long[] since) {
    long[] now = mark();
    times[stage] += now[0] - since[0];
    bytes[stage] += now[1] - since[1];
    return now;
  }
}
