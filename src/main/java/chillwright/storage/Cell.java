package chillwright.storage;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.jooq.Converter;
import org.jooq.Table;
import org.jooq.TableField;

/** A typed column and its place in a row that is to be inserted. */
final class Cell<T> {
  private final int index;
  private final Converter<?, T> converter;

  private <S> Cell(int index, Converter<S, T> converter) {
    this.index = index;
    this.converter = converter;
  }

  static <T> Cell<T> of(Table<?> table, TableField<?, T> column) {
    return new Cell<>(table.indexOf(column), column.getConverter());
  }

  /**
   * The cell of a row that was read, null where it is NULL.
   *
   * @param before how many columns stand before those of the table
   */
  T get(ResultSet row, int before) throws SQLException {
    return read(converter, row, before + index + 1);
  }

  private static <S, T> T read(Converter<S, T> converter, ResultSet row, int at)
      throws SQLException {
    Object value = null;
    if (converter.fromType() == String.class) {
      value = row.getString(at);
    } else {
      long number = row.getLong(at);
      if (!row.wasNull()) {
        value = converter.fromType() == Integer.class ? (Object) (int) number : (Object) number;
      }
    }
    return converter.from(converter.fromType().cast(value));
  }

  /** Sets the cell in a row, as SQLite keeps it; null leaves it NULL. */
  void set(Object[] row, T value) {
    if (value != null) {
      row[index] = converter.to(value);
    }
  }
}
