package chillwright.core.log;

import java.util.List;
import java.util.Optional;

/**
 * A row that could not be read, with all its faults. What lot it belongs to matters all the same: a
 * lot with an unreadable row is not taken in.
 *
 * @param where the whole row
 * @param lot the lot it names; empty where that cell could not be read either
 * @param id the id it gives itself; empty where it has none or that could not be read
 * @param wholeFile the fault bears on its whole file (a bad header, a quote never closed), so no
 *     row of that file can be trusted
 * @param problems at least one
 */
public record Misread(
    Problem.Where where,
    Optional<LotId> lot,
    Optional<EntryId> id,
    boolean wholeFile,
    List<Problem> problems)
    implements Incoming {
  public Misread {
    problems = List.copyOf(problems);
    if (problems.isEmpty()) {
      throw new IllegalArgumentException("a misread row has at least one problem");
    }
  }
}
