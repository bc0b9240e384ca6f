package chillwright.storage;

import static chillwright.storage.schema.Tables.PLAN;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
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
    return sql.deleteFrom(PLAN).where(PLAN.CODE.eq(code)).execute() > 0;
  }
}
