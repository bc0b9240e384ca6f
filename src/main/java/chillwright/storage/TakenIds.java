package chillwright.storage;

import static chillwright.storage.schema.Tables.LOG_ENTRY;
import static chillwright.storage.schema.Tables.PLACE_READING;
import static org.jooq.impl.DSL.selectOne;

import chillwright.core.log.EntryId;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.jooq.DSLContext;
import org.jooq.exception.DataAccessException;

/** Tells ids in use from free ones, by one statement prepared for the life of a connection. */
final class TakenIds {
  private final PreparedStatement statement;

  TakenIds(Connection connection, DSLContext sql) {
    String text =
        sql.render(
            selectOne()
                .from(LOG_ENTRY)
                .where(LOG_ENTRY.ENTRY.eq(""))
                .unionAll(selectOne().from(PLACE_READING).where(PLACE_READING.ENTRY.eq(""))));
    try {
      this.statement = connection.prepareStatement(text);
    } catch (SQLException e) {
      throw new DataAccessException(text, e);
    }
  }

  boolean has(EntryId id) {
    try {
      statement.setString(1, id.text());
      statement.setString(2, id.text());
      try (ResultSet rows = statement.executeQuery()) {
        return rows.next();
      }
    } catch (SQLException e) {
      throw new DataAccessException("An id could not be looked up.", e);
    }
  }
}
