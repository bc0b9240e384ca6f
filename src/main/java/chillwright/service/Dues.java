package chillwright.service;

import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What must be done next. */
final class Dues {
  private Dues() {}

  /** Of a lot on hand, the first finding that settles badly after now unless something is done. */
  static Optional<Finding> first(List<Finding> findings, Instant now) {
    return findings.stream()
        .filter(finding -> finding.deadline().isPresent())
        .filter(finding -> finding.at(now) == Verdict.PENDING)
        .filter(finding -> finding.settled().compareTo(Verdict.NOT_SHOWN) <= 0)
        .min(Comparator.comparing(Finding::settlesAt));
  }
}
