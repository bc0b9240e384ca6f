package chillwright.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.jooq.DSLContext;
import org.jooq.Query;
import org.jooq.exception.DataAccessException;

/**
 * A statement that changes rows, rendered from the typed columns and prepared once for the life of
 * the connection; only its values are bound anew.
 */
final class Change {
  private final String text;
  private final PreparedStatement statement;

  /**
   * @param blank the statement with any values in the places of those that will be bound
   */
  Change(Connection connection, DSLContext sql, Query blank) {
    this.text = sql.render(blank);
    try {
      this.statement = connection.prepareStatement(text);
    } catch (SQLException e) {
      throw new DataAccessException(text, e);
    }
  }

  String text() {
    return text;
  }

  /**
   * Runs it.
   *
   * @param values as SQLite keeps them, in the order of the statement; null for NULL
   * @return how many rows changed
   */
  int run(Object... values) {
    try {
      for (int i = 0; i < values.length; i++) {
        statement.setObject(i + 1, values[i]);
      }
      return statement.executeUpdate();
    } catch (SQLException e) {
      throw new DataAccessException(text, e);
    }
  }

  void close() {
    try {
      statement.close();
    } catch (SQLException e) {
      throw new DataAccessException("A statement could not be closed.", e);
    }
  }
}
