package chillwright.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.InsertValuesStepN;
import org.jooq.Record;
import org.jooq.Table;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;

/**
 * Inserts many rows into one table, which is what an import spends its time on. Rows with the same
 * columns filled in go into one statement, many at a time, and only those columns are bound: an
 * entry has twice as many blank cells as filled ones. Statements are rendered once from the typed
 * columns, and kept for the life of the connection.
 */
final class BulkInsert {
  /** Rows in one statement, the most first. */
  private static final int[] TOGETHER = {64, 8, 1};

  /** Sets of columns whose statements are kept; a log has about ten. */
  private static final int MOST_SHAPES = 40;

  private final Connection connection;
  private final DSLContext sql;
  private final Table<?> table;
  private final Field<?>[] fields;
  private final Map<BitSet, Shape> shapes =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<BitSet, Shape> eldest) {
          boolean isTooMany = size() > MOST_SHAPES;
          if (isTooMany) {
            eldest.getValue().close();
          }
          return isTooMany;
        }
      };

  BulkInsert(Connection connection, DSLContext sql, Table<?> table) {
    this.connection = connection;
    this.sql = sql;
    this.table = table;
    this.fields = table.fields();
  }

  /** Inserts records of the table, as they are: what is not set is NULL. */
  void add(List<? extends Record> records) {
    List<Object[]> rows = new ArrayList<>(records.size());
    for (Record each : records) {
      Object[] row = new Object[fields.length];
      for (int i = 0; i < row.length; i++) {
        row[i] = kept(fields[i], each);
      }
      rows.add(row);
    }
    addKept(rows);
  }

  /** The value as SQLite keeps it: a moment as milliseconds, for one. */
  static <T> Object kept(Field<T> field, Record row) {
    return field.getConverter().to(row.get(field));
  }

  /** Inserts rows whose cells stand in the order of the columns, as SQLite keeps them. */
  void addKept(List<Object[]> rows) {
    Map<BitSet, List<Object[]>> alike = new LinkedHashMap<>();
    for (Object[] row : rows) {
      BitSet filled = new BitSet(fields.length);
      for (int i = 0; i < row.length; i++) {
        if (row[i] != null) {
          filled.set(i);
        }
      }
      alike.computeIfAbsent(filled, f -> new ArrayList<>()).add(row);
    }
    try {
      for (Map.Entry<BitSet, List<Object[]>> some : alike.entrySet()) {
        shapes.computeIfAbsent(some.getKey(), Shape::new).insert(some.getValue());
      }
    } catch (SQLException e) {
      throw new DataAccessException("The rows could not be inserted.", e);
    }
  }

  /** Statements for rows in which the same columns are filled. */
  private final class Shape {
    private final int[] columns;
    private final PreparedStatement[] statements = new PreparedStatement[TOGETHER.length];

    Shape(BitSet filled) {
      this.columns = filled.stream().toArray();
    }

    void insert(List<Object[]> rows) throws SQLException {
      int done = 0;
      for (int size = 0; size < TOGETHER.length; size++) {
        while (rows.size() - done >= TOGETHER[size]) {
          insert(size, rows.subList(done, done + TOGETHER[size]));
          done += TOGETHER[size];
        }
      }
    }

    private void insert(int size, List<Object[]> rows) throws SQLException {
      if (statements[size] == null) {
        statements[size] = connection.prepareStatement(text(TOGETHER[size]));
      }
      PreparedStatement statement = statements[size];
      int at = 0;
      for (Object[] row : rows) {
        for (int column : columns) {
          statement.setObject(++at, row[column]);
        }
      }
      statement.executeUpdate();
    }

    private String text(int rows) {
      List<Field<?>> filled = new ArrayList<>();
      for (int column : columns) {
        filled.add(fields[column]);
      }
      InsertValuesStepN<?> insert = DSL.insertInto(table).columns(filled);
      Object[] blanks = new Object[columns.length];
      for (int row = 0; row < rows; row++) {
        insert = insert.values(blanks);
      }
      return sql.render(insert);
    }

    void close() {
      for (PreparedStatement statement : statements) {
        if (statement != null) {
          try {
            statement.close();
          } catch (SQLException e) {
            throw new DataAccessException("A statement could not be closed.", e);
          }
        }
      }
    }
  }
}
