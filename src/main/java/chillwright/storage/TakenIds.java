package chillwright.storage;

import static chillwright.storage.schema.Tables.LOG_ENTRY;
import static chillwright.storage.schema.Tables.PLACE_READING;
import static org.jooq.impl.DSL.selectOne;

import chillwright.core.log.EntryId;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.function.Function;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.exception.DataAccessException;

/** Tells ids in use from free ones, by statements prepared for the life of a connection. */
final class TakenIds {
  private final PreparedStatement one;
  private final PreparedStatement beginning;

  TakenIds(Connection connection, DSLContext sql) {
    this.one = prepared(connection, sql, entry -> entry.eq(""));
    this.beginning = prepared(connection, sql, entry -> entry.ge("").and(entry.lt("")));
  }

  /** Asks both tables that hold ids; the places of the condition are filled once for each. */
  private static PreparedStatement prepared(
      Connection connection, DSLContext sql, Function<Field<String>, Condition> of) {
    String text =
        sql.render(
            selectOne()
                .from(LOG_ENTRY)
                .where(of.apply(LOG_ENTRY.ENTRY))
                .unionAll(selectOne().from(PLACE_READING).where(of.apply(PLACE_READING.ENTRY))));
    try {
      return connection.prepareStatement(text);
    } catch (SQLException e) {
      throw new DataAccessException(text, e);
    }
  }

  boolean has(EntryId id) {
    return hasRow(one, id.text(), id.text());
  }

  /** Whether an id begins so: it sorts from that start on, and before the start's successor. */
  boolean hasBeginning(String start) {
    int last = start.length() - 1;
    String next = start.substring(0, last) + (char) (start.charAt(last) + 1);
    return hasRow(beginning, start, next, start, next);
  }

  private static boolean hasRow(PreparedStatement statement, String... texts) {
    try {
      for (int i = 0; i < texts.length; i++) {
        statement.setString(i + 1, texts[i]);
      }
      try (ResultSet rows = statement.executeQuery()) {
        return rows.next();
      }
    } catch (SQLException e) {
      throw new DataAccessException("An id could not be looked up.", e);
    }
  }
}
