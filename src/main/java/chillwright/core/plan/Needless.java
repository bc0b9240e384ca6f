package chillwright.core.plan;

import chillwright.core.plan.Plan.Kept;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;

/** Dishes that a plan freezes although they would keep without it until they are served. */
final class Needless {
  private Needless() {}

  static List<Kept> of(List<Placed> plan, Grid grid, Menu menu, RuleSet rules) {
    return plan.stream()
        .filter(placed -> placed.job().isFrozen() && placed.job().makeLength() > 0)
        .map(
            placed ->
                new Kept(
                    placed.job().dish(), grid.moment(placed.made()), menu.due(placed.job().dish())))
        .filter(kept -> keeps(kept, menu, rules))
        .toList();
  }

  private static boolean keeps(Kept kept, Menu menu, RuleSet rules) {
    return new KeepingDays(kept.dish().category(), rules, menu.zone())
        .keepsChilled(day(kept.made(), menu), day(kept.served(), menu));
  }

  private static LocalDate day(Instant moment, Menu menu) {
    return moment.atZone(menu.zone()).toLocalDate();
  }
}
