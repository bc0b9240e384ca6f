package chillwright.rulebook;

import chillwright.core.log.Problem;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/** The faults of all files, in the order they are found; reading goes on after each. */
final class Faults {
  private final List<Problem> problems = new ArrayList<>();

  void add(Problem problem) {
    problems.add(problem);
  }

  void addAll(Collection<Problem> more) {
    problems.addAll(more);
  }

  boolean isEmpty() {
    return problems.isEmpty();
  }

  int count() {
    return problems.size();
  }

  /** Whether a fault was found at that place or inside it. */
  boolean anyIn(Spot spot) {
    return problems.stream()
        .map(problem -> (Problem.Where.InField) problem.where())
        .anyMatch(
            where ->
                where.file().equals(spot.file()) && Spot.isIn(where.pointer(), spot.pointer()));
  }

  void throwIfAny() throws BrokenRules {
    if (!problems.isEmpty()) {
      throw new BrokenRules(problems);
    }
  }
}
