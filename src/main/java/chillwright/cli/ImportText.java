package chillwright.cli;

import chillwright.core.log.Problem;
import chillwright.service.Imports.Imported;

/** What came of an import, in words; the same for a file of one's own and one sent elsewhere. */
final class ImportText {
  /** The fault that stands for all that an answer had no room for. */
  static final String MORE = "more-faults";

  private ImportText() {}

  /**
   * One line.
   *
   * @param place where it was stored, such as "in kitchen.db"
   */
  static String told(Imported imported, String place) {
    String faults = count(faults(imported), "fault");
    if (!imported.isStored()) {
      return "Nothing was stored: the files have "
          + faults
          + ". Mend them and import again, or store the good lots with --good-lots-only.";
    }
    String leftOut =
        imported.problems().isEmpty()
            ? ""
            : " Left out for their faults: rows of other lots, " + faults + ".";
    return "Stored "
        + place
        + ": "
        + count(imported.entries(), "entry", "entries")
        + " of "
        + count(imported.lots(), "lot")
        + ", "
        + count(imported.readings(), "reading of places", "readings of places")
        + "; "
        + count(imported.repeats(), "row was", "rows were")
        + " known already."
        + leftOut;
  }

  private static long faults(Imported imported) {
    return imported.problems().stream().mapToLong(ImportText::faults).sum();
  }

  private static long faults(Problem problem) {
    boolean isMany = problem.code().equals(MORE) && problem.given().matches("[0-9]{1,10}");
    return isMany ? Long.parseLong(problem.given()) : 1;
  }

  private static String count(long number, String one) {
    return count(number, one, one + "s");
  }

  private static String count(long number, String one, String many) {
    return number + " " + (number == 1 ? one : many);
  }
}
