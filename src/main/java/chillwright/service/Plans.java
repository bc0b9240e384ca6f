package chillwright.service;

import chillwright.core.log.LotId;
import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Planner;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.PlanFile;
import chillwright.storage.PlanStore.Said;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Plans that the kitchen keeps: what is to be planned is stored, the plan is made afresh. */
public final class Plans {
  private final Kitchen kitchen;

  Plans(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * A plan as of now.
   *
   * @param saidAt when its input was written
   */
  public record Planned(String code, String input, Instant saidAt, Menu menu, Plan plan) {}

  /** A plan that is kept. */
  public record Kept(String code, Instant saidAt) {}

  /** All plans, by code. */
  public List<Kept> all() {
    return kitchen.database().read(session -> session.plans().all()).stream()
        .map(said -> new Kept(said.code(), said.saidAt()))
        .toList();
  }

  /** A plan made afresh; empty where there is none of that code. */
  public Optional<Planned> plan(String code) {
    return kitchen.database().read(session -> session.plans().find(code)).map(this::planned);
  }

  /**
   * Keeps what is to be planned, in place of what was kept under that code.
   *
   * @param code letters, digits and . _ -, as codes of lots are
   * @param input YAML or JSON
   * @throws Refused with every fault; nothing is changed then
   */
  public Planned save(String code, String input) {
    Said said = new Said(code, input, kitchen.now());
    Planned planned = planned(said);
    kitchen
        .database()
        .write(
            session -> {
              session.plans().save(said);
              return null;
            });
    return planned;
  }

  /** Whether there was one. */
  public boolean delete(String code) {
    return kitchen.database().write(session -> session.plans().delete(code));
  }

  public static boolean isCode(String code) {
    return LotId.isCode(code);
  }

  private Planned planned(Said said) {
    Menu menu = menu(said);
    LocalDate served = menu.serving().atZone(menu.zone()).toLocalDate();
    Plan plan = Planner.plan(menu, kitchen.judge().book().on(served));
    return new Planned(said.code(), said.input(), said.saidAt(), menu, plan);
  }

  private Menu menu(Said said) {
    try {
      return PlanFile.read(
          "", said.input(), kitchen.library().keepingList(), kitchen.zone(), said.saidAt());
    } catch (BrokenRules broken) {
      throw new Refused(Refused.Why.FAULTS, broken.problems());
    }
  }
}
