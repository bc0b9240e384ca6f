package chillwright.storage;

import static chillwright.storage.schema.Tables.PLAN;
import static chillwright.storage.schema.Tables.PLAN_LOT;
import static chillwright.storage.schema.Tables.PLAN_LOT_AWAY;

import chillwright.core.log.LotId;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jooq.DSLContext;

/** Plans as they were written: few, and each as it was said last. */
public final class PlanStore {
  private final DSLContext sql;

  PlanStore(DSLContext sql) {
    this.sql = sql;
  }

  /**
   * One plan.
   *
   * @param input YAML or JSON, as it was given
   */
  public record Said(String code, String input, Instant saidAt) {}

  /** By code. */
  public List<Said> all() {
    return sql.selectFrom(PLAN)
        .orderBy(PLAN.CODE)
        .fetch(row -> new Said(row.getCode(), row.getInput(), row.getSaidAt()));
  }

  public Optional<Said> find(String code) {
    return sql.selectFrom(PLAN)
        .where(PLAN.CODE.eq(code))
        .fetchOptional(row -> new Said(row.getCode(), row.getInput(), row.getSaidAt()));
  }

  public void save(Said plan) {
    sql.insertInto(PLAN)
        .set(PLAN.CODE, plan.code())
        .set(PLAN.INPUT, plan.input())
        .set(PLAN.SAID_AT, plan.saidAt())
        .onConflict(PLAN.CODE)
        .doUpdate()
        .set(PLAN.INPUT, plan.input())
        .set(PLAN.SAID_AT, plan.saidAt())
        .execute();
  }

  /** Whether there was one. */
  public boolean delete(String code) {
    sql.deleteFrom(PLAN_LOT).where(PLAN_LOT.PLAN.eq(code)).execute();
    sql.deleteFrom(PLAN_LOT_AWAY).where(PLAN_LOT_AWAY.PLAN.eq(code)).execute();
    return sql.deleteFrom(PLAN).where(PLAN.CODE.eq(code)).execute() > 0;
  }

  /** The lots that dishes of a plan became, by dish. */
  public Map<String, List<LotId>> lots(String code) {
    return sql.select(PLAN_LOT.DISH, PLAN_LOT.LOT)
        .from(PLAN_LOT)
        .where(PLAN_LOT.PLAN.eq(code))
        .orderBy(PLAN_LOT.DISH, PLAN_LOT.LOT)
        .fetchGroups(PLAN_LOT.DISH, row -> new LotId(row.get(PLAN_LOT.LOT)));
  }

  /** Plans of which a dish became a lot, by code. */
  public List<Said> of(LotId lot) {
    return sql.select(PLAN.CODE, PLAN.INPUT, PLAN.SAID_AT)
        .from(PLAN)
        .where(
            PLAN.CODE.in(
                sql.select(PLAN_LOT.PLAN).from(PLAN_LOT).where(PLAN_LOT.LOT.eq(lot.text()))))
        .orderBy(PLAN.CODE)
        .fetch(row -> new Said(row.get(PLAN.CODE), row.get(PLAN.INPUT), row.get(PLAN.SAID_AT)));
  }

  /** The lots that were taken away from a plan, and are none of it by their name either. */
  public Set<LotId> away(String code) {
    return sql.select(PLAN_LOT_AWAY.LOT)
        .from(PLAN_LOT_AWAY)
        .where(PLAN_LOT_AWAY.PLAN.eq(code))
        .fetchSet(row -> new LotId(row.get(PLAN_LOT_AWAY.LOT)));
  }

  /** Says that a dish became a lot, beside those that it became before. */
  public void link(String code, String dish, LotId lot) {
    sql.deleteFrom(PLAN_LOT_AWAY)
        .where(PLAN_LOT_AWAY.PLAN.eq(code), PLAN_LOT_AWAY.LOT.eq(lot.text()))
        .execute();
    sql.insertInto(PLAN_LOT)
        .set(PLAN_LOT.PLAN, code)
        .set(PLAN_LOT.DISH, dish)
        .set(PLAN_LOT.LOT, lot.text())
        .onConflictDoNothing()
        .execute();
  }

  /** Takes back that a dish became a lot, which is no longer one of the plan. */
  public void unlink(String code, String dish, LotId lot) {
    int taken =
        sql.deleteFrom(PLAN_LOT)
            .where(PLAN_LOT.PLAN.eq(code), PLAN_LOT.DISH.eq(dish), PLAN_LOT.LOT.eq(lot.text()))
            .execute();
    if (taken > 0) {
      leave(code, lot);
    }
  }

  /** Says that a lot is none of a plan, whatever it is called. */
  public void leave(String code, LotId lot) {
    sql.insertInto(PLAN_LOT_AWAY)
        .set(PLAN_LOT_AWAY.PLAN, code)
        .set(PLAN_LOT_AWAY.LOT, lot.text())
        .onConflictDoNothing()
        .execute();
  }

  /** Has a dish that is called otherwise now keep its lots. */
  public void rename(String code, String was, String dish) {
    List<LotId> lots = lots(code).getOrDefault(was, List.of());
    sql.deleteFrom(PLAN_LOT).where(PLAN_LOT.PLAN.eq(code), PLAN_LOT.DISH.eq(was)).execute();
    lots.forEach(lot -> link(code, dish, lot));
  }
}
