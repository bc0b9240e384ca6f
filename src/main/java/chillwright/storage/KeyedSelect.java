package chillwright.storage;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.Select;
import org.jooq.exception.DataAccessException;
import org.jooq.impl.DSL;

/**
 * A select of what belongs to some keys. It is rendered from the typed columns once for each of a
 * few numbers of keys, and stays prepared for the life of the connection: rendering the same few
 * questions anew is what a small write would spend half its time on.
 */
final class KeyedSelect {
  /** Numbers of keys a statement is made for; what is missing is filled up with the last key. */
  private static final int[] SIZES = {1, 8, 64, 500};

  /** The select for as many keys. */
  interface Query {
    Select<?> by(List<Field<String>> keys);
  }

  /** What is done with a row. */
  interface Taker {
    void take(ResultSet row) throws SQLException;
  }

  private final Connection connection;
  private final DSLContext sql;
  private final Query query;
  private final Map<Integer, PreparedStatement> statements = new HashMap<>();

  KeyedSelect(Connection connection, DSLContext sql, Query query) {
    this.connection = connection;
    this.sql = sql;
    this.query = query;
  }

  /** Hands over each row that belongs to one of the keys, in the order of the select. */
  void forEach(List<String> keys, Taker taker) {
    for (List<String> some : Chunks.of(keys)) {
      try (ResultSet rows = asked(some).executeQuery()) {
        while (rows.next()) {
          taker.take(rows);
        }
      } catch (SQLException e) {
        throw new DataAccessException("What is stored could not be read.", e);
      }
    }
  }

  /** The same as typed records of these fields, which the select lists in that order. */
  List<Record> fetch(List<String> keys, Field<?>... fields) {
    List<Record> all = new ArrayList<>();
    for (List<String> some : Chunks.of(keys)) {
      try (ResultSet rows = asked(some).executeQuery()) {
        Result<Record> result = sql.fetch(rows, fields);
        all.addAll(result);
      } catch (SQLException e) {
        throw new DataAccessException("What is stored could not be read.", e);
      }
    }
    return all;
  }

  /** The statements prepared so far. */
  List<String> texts() {
    return statements.keySet().stream().map(size -> sql.render(query.by(blanks(size)))).toList();
  }

  private PreparedStatement asked(List<String> keys) throws SQLException {
    int size = 0;
    while (SIZES[size] < keys.size()) {
      size++;
    }
    PreparedStatement statement = statements.get(SIZES[size]);
    if (statement == null) {
      statement = connection.prepareStatement(sql.render(query.by(blanks(SIZES[size]))));
      statements.put(SIZES[size], statement);
    }
    for (int i = 0; i < SIZES[size]; i++) {
      statement.setString(i + 1, keys.get(Math.min(i, keys.size() - 1)));
    }
    return statement;
  }

  private static List<Field<String>> blanks(int count) {
    List<Field<String>> blanks = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      blanks.add(DSL.val("", String.class));
    }
    return blanks;
  }
}
