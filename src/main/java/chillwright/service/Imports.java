package chillwright.service;

import chillwright.core.log.Admission;
import chillwright.core.log.Incoming;
import chillwright.core.log.Problem;
import chillwright.logfile.Cells;
import chillwright.logfile.CsvLog;
import chillwright.storage.Session;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Takes in log files, together and whole: all of them or, with any fault, nothing. */
public final class Imports {
  private static final int TOLD_EVERY = 10_000;

  private final Kitchen kitchen;

  Imports(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * What came of an import.
   *
   * @param rows how many rows the files have
   * @param entries how many new entries of lots were stored
   * @param readings how many new readings of places, and corrections of such, were stored
   * @param repeats how many rows were known already, and skipped
   * @param lots how many lots grew
   * @param problems every fault
   * @param isStored whether anything may have been stored: there was no fault, or only the good
   *     lots were asked for
   */
  public record Imported(
      long rows,
      long entries,
      long readings,
      long repeats,
      long lots,
      List<Problem> problems,
      boolean isStored) {
    public Imported {
      problems = List.copyOf(problems);
    }
  }

  /**
   * Reads the files, checks them as a whole against what is stored, and stores them in one
   * transaction.
   *
   * @param goodLotsOnly stores the lots without a fault, whatever the others have
   */
  public Imported files(List<Path> files, boolean goodLotsOnly, Progress progress)
      throws IOException {
    Instant now = kitchen.now();
    List<Incoming> rows = new ArrayList<>();
    CsvLog log = new CsvLog(new Cells(now));
    for (Path file : files) {
      log.read(
          file,
          row -> {
            rows.add(row);
            if (rows.size() % TOLD_EVERY == 0) {
              progress.done("rows read", rows.size());
            }
          });
    }
    progress.done("rows read", rows.size());
    return kitchen.database().write(session -> take(session, rows, goodLotsOnly, progress));
  }

  private Imported take(
      Session session, List<Incoming> rows, boolean goodLotsOnly, Progress progress) {
    Instant now = kitchen.now();
    Admission admission = Intaking.of(session, kitchen.judge(), rows, now).admission();
    boolean isStored = goodLotsOnly || admission.isFaultless();
    if (isStored) {
      int[] lots = {0};
      new Recorder(session, kitchen.judge(), now)
          .record(
              admission.lots(),
              admission.ofPlaces(),
              lot -> progress.done("lots stored", ++lots[0]));
    }
    return imported(rows, admission, isStored);
  }

  private static Imported imported(List<Incoming> rows, Admission admission, boolean isStored) {
    return new Imported(
        rows.size(),
        isStored ? admission.lots().stream().mapToLong(lot -> lot.added().size()).sum() : 0,
        isStored ? admission.ofPlaces().size() : 0,
        admission.repeats(),
        isStored ? admission.lots().size() : 0,
        admission.problems(),
        isStored);
  }
}
