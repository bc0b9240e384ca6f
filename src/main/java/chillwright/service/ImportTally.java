package chillwright.service;

import chillwright.core.log.Admission;
import chillwright.core.log.Problem;
import java.util.ArrayList;
import java.util.List;

/** What was counted over the blocks of an import. */
final class ImportTally {
  private long entries;
  private long readings;
  private long repeats;
  private long lots;
  private final List<Problem> problems = new ArrayList<>();

  synchronized void add(Admission admission) {
    entries += admission.lots().stream().mapToLong(lot -> lot.added().size()).sum();
    readings += admission.ofPlaces().size();
    repeats += admission.repeats();
    lots += admission.lots().size();
    problems.addAll(admission.problems());
  }

  long entries() {
    return entries;
  }

  long readings() {
    return readings;
  }

  long repeats() {
    return repeats;
  }

  long lots() {
    return lots;
  }

  List<Problem> problems() {
    return List.copyOf(problems);
  }
}
