package chillwright.rulebook;

import chillwright.core.rules.Rule;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A rule with all its figures.
 *
 * @param byDay the rule by the day from which its figures are in force; empty where it ends. At
 *     least one; the earliest serves all days before it too
 */
record DatedRule(String id, NavigableMap<LocalDate, Optional<Rule>> byDay) {
  DatedRule {
    byDay = Collections.unmodifiableNavigableMap(new TreeMap<>(byDay));
    if (byDay.isEmpty()) {
      throw new IllegalArgumentException("a rule needs a value: " + id);
    }
  }

  /** The rule as in force on that day; empty if it had ended. */
  Optional<Rule> on(LocalDate day) {
    Map.Entry<LocalDate, Optional<Rule>> inForce = byDay.floorEntry(day);
    return inForce == null ? byDay.firstEntry().getValue() : inForce.getValue();
  }
}
