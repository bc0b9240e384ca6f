package chillwright.storage;

import org.jooq.Converter;
import org.jooq.Table;
import org.jooq.TableField;

/** A typed column and its place in a row that is to be inserted. */
final class Cell<T> {
  private final int index;
  private final Converter<?, T> converter;

  private Cell(int index, Converter<?, T> converter) {
    this.index = index;
    this.converter = converter;
  }

  static <T> Cell<T> of(Table<?> table, TableField<?, T> column) {
    return new Cell<>(table.indexOf(column), column.getConverter());
  }

  /** Sets the cell in a row, as SQLite keeps it; null leaves it NULL. */
  void set(Object[] row, T value) {
    if (value != null) {
      row[index] = converter.to(value);
    }
  }
}
