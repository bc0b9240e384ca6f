package chillwright.service;

import chillwright.core.log.Problem;
import chillwright.logfile.Cells;
import chillwright.logfile.LogFile;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Takes in log files, together and whole: all of them or, with any fault, nothing. */
public final class Imports {
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
   * Reads the files twice: checks them as a whole against what is stored, beside any other writes,
   * and then stores them a block at a time, so that nobody else waits long. Each lot is stored
   * whole. If the program is stopped meanwhile, the rest is stored by importing the files again.
   *
   * @param goodLotsOnly stores the lots without a fault, whatever the others have
   */
  public Imported files(List<LogFile> files, boolean goodLotsOnly, Progress progress)
      throws IOException {
    try (ImportFiles read =
        ImportFiles.of(kitchen, files, new Cells(kitchen.now(), kitchen.zone()))) {
      ImportRun run = new ImportRun(kitchen, read, progress);
      ImportTally checked = run.check();
      if (!goodLotsOnly && !checked.problems().isEmpty()) {
        return imported(read, checked, false);
      }
      return imported(read, run.store(), true);
    }
  }

  private static Imported imported(ImportFiles files, ImportTally tally, boolean isStored) {
    List<Problem> problems = new ArrayList<>(tally.problems());
    problems.sort(files.inOrder());
    return new Imported(
        files.rows(),
        isStored ? tally.entries() : 0,
        isStored ? tally.readings() : 0,
        tally.repeats(),
        isStored ? tally.lots() : 0,
        problems,
        isStored);
  }
}
