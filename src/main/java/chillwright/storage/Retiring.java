package chillwright.storage;

import java.time.Instant;
import java.util.List;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Table;

/** What of one table is offered no more: it stays, and can be taken back into use. */
public final class Retiring {
  private final DSLContext sql;
  private final Table<?> table;
  private final Field<String> name;
  private final Field<Instant> retiredAt;

  Retiring(DSLContext sql, Table<?> table, Field<String> name, Field<Instant> retiredAt) {
    this.sql = sql;
    this.table = table;
    this.name = name;
    this.retiredAt = retiredAt;
  }

  /** Whether there was one of that name in use; it is offered no more. */
  public boolean retire(String which, Instant now) {
    return sql.update(table)
            .set(retiredAt, now)
            .where(name.eq(which))
            .and(retiredAt.isNull())
            .execute()
        > 0;
  }

  /** Whether there was one of that name out of use; it is offered again as it was. */
  public boolean restore(String which) {
    return sql.update(table)
            .setNull(retiredAt)
            .where(name.eq(which))
            .and(retiredAt.isNotNull())
            .execute()
        > 0;
  }

  /** Those out of use, by name. */
  public List<String> names() {
    return sql.select(name).from(table).where(retiredAt.isNotNull()).orderBy(name).fetch(name);
  }
}
