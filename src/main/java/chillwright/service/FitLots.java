package chillwright.service;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.LotId;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.service.FoundFindings.Found;
import chillwright.storage.FindingRow;
import chillwright.storage.Session;
import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Lots on hand to which nothing is owed and that are for use as their records stand: only of those
 * do dates hold, in every list, page and answer.
 */
public final class FitLots {
  private final Kitchen kitchen;

  FitLots(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Those of them. Of a lot that is out or not shown its record is asked; few are. */
  public Set<LotId> of(Collection<LotState> lots) {
    Instant now = kitchen.now();
    List<LotState> held = lots.stream().filter(lot -> lot.isOnHand() && !isOwed(lot, now)).toList();
    List<LotId> doubtful =
        held.stream().filter(lot -> mayBeUnfit(lot, now)).map(LotState::lot).toList();
    Set<LotId> fit = held.stream().map(LotState::lot).collect(Collectors.toSet());
    if (!doubtful.isEmpty()) {
      fit.removeAll(kitchen.database().read(session -> unfit(session, doubtful, now)));
    }
    return fit;
  }

  /** A lot as it is told of: without its dates where none holds. */
  public LotState told(LotState lot) {
    return told(List.of(lot)).get(0);
  }

  /** The same of each, in the same order. */
  public List<LotState> told(List<LotState> lots) {
    Set<LotId> fit = of(lots);
    return lots.stream().map(lot -> fit.contains(lot.lot()) ? lot : lot.withoutDates()).toList();
  }

  /** The same of a part of a list. */
  public Page<LotState> told(Page<LotState> lots) {
    return new Page<>(told(lots.items()), lots.next());
  }

  private static boolean isOwed(LotState lot, Instant now) {
    return lot.standing()
        .flatMap(Standing::owedFrom)
        .filter(from -> !now.isBefore(from))
        .isPresent();
  }

  private static boolean mayBeUnfit(LotState lot, Instant now) {
    return lot.standing()
        .flatMap(standing -> standing.verdicts().at(now))
        .filter(verdict -> verdict.compareTo(Verdict.NOT_SHOWN) <= 0)
        .isPresent();
  }

  private Set<LotId> unfit(Session session, List<LotId> lots, Instant now) {
    FoundFindings found = FoundFindings.of(session, kitchen.judge(), lots);
    Map<LotId, List<FindingRow>> rows = session.findings().of(lots);
    Set<LotId> unfit = new HashSet<>();
    for (LotId lot : lots) {
      found
          .of(lot)
          .filter(of -> !against(of, rows.getOrDefault(lot, List.of()), now).isEmpty())
          .ifPresent(of -> unfit.add(lot));
    }
    return unfit;
  }

  private static List<Finding> against(Found lot, List<FindingRow> rows, Instant now) {
    List<Finding> findings = rows.stream().map(lot::finding).toList();
    return Acts.against(lot.timeline(), findings, lot.ruleSet(), now);
  }
}
