package chillwright.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;

/**
 * Inserts many rows into one table: rendered once from the typed columns, then bound directly,
 * which is what an import spends its time on.
 */
final class BulkInsert {
  /** Rows sent to SQLite together; more gains nothing. */
  private static final int BATCH = 500;

  private final PreparedStatement statement;
  private final Field<?>[] fields;

  BulkInsert(Connection connection, DSLContext sql, Table<?> table) {
    this.fields = table.fields();
    Object[] blanks = new Object[fields.length];
    String text = sql.render(DSL.insertInto(table).columns(fields).values(blanks));
    try {
      this.statement = connection.prepareStatement(text);
    } catch (SQLException e) {
      throw new DataAccessException(text, e);
    }
  }

  /** Inserts records of the table, as they are: what is not set is NULL. */
  void add(List<? extends Record> records) {
    try {
      int waiting = 0;
      for (Record each : records) {
        bind(each);
        if (++waiting == BATCH) {
          statement.executeBatch();
          waiting = 0;
        }
      }
      if (waiting > 0) {
        statement.executeBatch();
      }
    } catch (SQLException e) {
      throw new DataAccessException("The rows could not be inserted.", e);
    }
  }

  private void bind(Record row) throws SQLException {
    for (int i = 0; i < fields.length; i++) {
      statement.setObject(i + 1, kept(fields[i], row, i));
    }
    statement.addBatch();
  }

  /** The value as SQLite keeps it: a moment as milliseconds, for one. */
  private static <T> Object kept(Field<T> field, Record row, int index) {
    return field.getConverter().to(field.getType().cast(row.get(index)));
  }
}
