package chillwright.core.plan;

import chillwright.core.plan.Dish.Route;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether a dish keeps until it is served, made, frozen and taken out on other days. */
final class MovedDays {
  private final Window window;
  private final Menu menu;
  private final KeepingDays days;
  private final Optional<OwnDays> own;
  private final Map<List<LocalDate>, Boolean> known = new HashMap<>();

  /** Makes those of a dish by its window. */
  record Of(Menu menu, RuleSet rules) {
    MovedDays of(Window window) {
      return new MovedDays(window, menu, rules);
    }
  }

  private MovedDays(Window window, Menu menu, RuleSet rules) {
    this.window = window;
    this.menu = menu;
    this.days = new KeepingDays(window.dish().category(), rules, menu.zone());
    this.own =
        window
            .progress()
            .map(done -> new OwnDays(done, rules.settings(), menu.zone()))
            .filter(OwnDays::isKnown);
  }

  boolean keeps(LocalDate made, LocalDate frozen, LocalDate out) {
    return known.computeIfAbsent(List.of(made, frozen, out), asked -> isKept(made, frozen, out));
  }

  private boolean isKept(LocalDate made, LocalDate frozen, LocalDate out) {
    LocalDate served = day(menu.due(window.dish()));
    Optional<Progress> done = window.progress();
    boolean isFrozen = window.dish().route() == Route.FROZEN;
    if (done.isPresent() && (!isFrozen || done.get().takenOut().isPresent())) {
      return true; // What sets its days is done.
    }
    LocalDate begun = done.map(Progress::made).map(this::day).orElse(made);
    if (!isFrozen) {
      return days.keepsChilled(begun, served);
    }
    if (own.isPresent()) {
      return keepsOwn(own.get(), frozen, out, served);
    }
    LocalDate froze = done.flatMap(Progress::frozen).map(this::day).orElse(frozen);
    return days.keepsFrozen(begun, froze, out, served);
  }

  private static boolean keepsOwn(OwnDays own, LocalDate frozen, LocalDate out, LocalDate served) {
    Optional<LocalDate> last =
        own.progress().isInFreezer() ? own.lastDayThawed(out) : own.lastDay(frozen, out);
    return last.filter(served::isAfter).isEmpty() && own.bestBy().filter(out::isAfter).isEmpty();
  }

  private LocalDate day(Instant moment) {
    return moment.atZone(menu.zone()).toLocalDate();
  }
}
