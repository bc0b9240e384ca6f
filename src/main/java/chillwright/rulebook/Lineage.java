package chillwright.rulebook;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which rule set extends which. */
final class Lineage {
  private final Map<String, RuleSetFiles> sets;

  Lineage(Map<String, RuleSetFiles> sets) {
    this.sets = new LinkedHashMap<>(sets);
  }

  /** All sets, each after the one it extends. */
  List<RuleSetFiles> basesFirst() {
    return sets.values().stream()
        .sorted(Comparator.comparingInt((RuleSetFiles set) -> chain(set).size()))
        .toList();
  }

  void check(Faults faults) {
    for (RuleSetFiles set : sets.values()) {
      set.extendsAt().ifPresent(place -> check(set, place, faults));
    }
  }

  private void check(RuleSetFiles set, Spot place, Faults faults) {
    String known = String.join(", ", others(set.id()));
    if (!sets.containsKey(place.text())) {
      String says =
          "there is no rule set %s. Name one of these: %s.".formatted(place.text(), known);
      faults.add(place.fault("unknown-rule-set", known, says));
      return;
    }
    List<String> chain = chain(set);
    if (chain.get(chain.size() - 1).equals(set.id()) && chain.size() > 1) {
      String says =
          "these rule sets extend each other in a circle, %s. Take extends out of one, or name"
              + " another there.";
      String circle = String.join(" -> ", chain);
      faults.add(place.fault("extends-in-a-circle", known, says.formatted(circle)));
    }
  }

  private Collection<String> others(String id) {
    return sets.keySet().stream().filter(other -> !other.equals(id)).toList();
  }

  /** The set, the one it extends, and so on; ends at one that was there before. */
  private List<String> chain(RuleSetFiles set) {
    List<String> chain = new ArrayList<>(List.of(set.id()));
    Optional<RuleSetFiles> next = base(set);
    while (next.isPresent()) {
      boolean again = chain.contains(next.get().id());
      chain.add(next.get().id());
      next = again ? Optional.empty() : base(next.get());
    }
    return chain;
  }

  private Optional<RuleSetFiles> base(RuleSetFiles set) {
    return set.extendsAt().map(place -> sets.get(place.text()));
  }
}
