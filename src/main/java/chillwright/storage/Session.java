package chillwright.storage;

import chillwright.core.log.EntryId;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jooq.DSLContext;
import org.jooq.Log;
import org.jooq.SQLDialect;
import org.jooq.Table;
import org.jooq.conf.Settings;
import org.jooq.impl.DSL;
import org.jooq.tools.JooqLogger;

/** One transaction's view of the database: a store for each thing that is kept. */
public final class Session {
  static {
    // Without this jOOQ greets whoever starts the program, before its first statement.
    System.setProperty("org.jooq.no-logo", "true");
    System.setProperty("org.jooq.no-tips", "true");
    JooqLogger.globalThreshold(Log.Level.WARN);
  }

  private final Connection connection;
  private final DSLContext sql;
  private final Map<Table<?>, BulkInsert> inserts = new HashMap<>();
  private final Map<String, KeyedSelect> selects = new HashMap<>();
  private TakenIds ids;

  Session(Connection connection) {
    this(connection, DSL.using(connection, SQLDialect.SQLITE, settings()));
  }

  /** With statements watched or changed on their way, as tests do. */
  Session(Connection connection, DSLContext sql) {
    this.connection = connection;
    this.sql = sql;
  }

  static Settings settings() {
    return new Settings().withRenderSchema(false).withExecuteLogging(false);
  }

  public KitchenStore kitchen() {
    return new KitchenStore(sql);
  }

  public LotStore lots() {
    return new LotStore(this);
  }

  public LogStore log() {
    return new LogStore(this);
  }

  public FindingStore findings() {
    return new FindingStore(this);
  }

  public PlaceStore places() {
    return new PlaceStore(sql);
  }

  public KeyStore keys() {
    return new KeyStore(sql);
  }

  /** Whether an entry of a lot or of a place has that id; quick, since an import asks it often. */
  public boolean isTaken(EntryId id) {
    return ids().has(id);
  }

  /** Whether any entry of a lot or of a place has an id that begins so. */
  public boolean isAnyTaken(String start) {
    return ids().hasBeginning(start);
  }

  private TakenIds ids() {
    if (ids == null) {
      ids = new TakenIds(connection, sql);
    }
    return ids;
  }

  DSLContext sql() {
    return sql;
  }

  /** The insert statement of a table, prepared once for the life of the connection. */
  BulkInsert insertInto(Table<?> table) {
    return inserts.computeIfAbsent(table, t -> new BulkInsert(connection, sql, t));
  }

  /**
   * A select by keys, prepared once for the life of the connection.
   *
   * @param name of the select; two that differ have two names
   */
  KeyedSelect select(String name, KeyedSelect.Query query) {
    return selects.computeIfAbsent(name, n -> new KeyedSelect(connection, sql, query));
  }

  /** The statements that were prepared for selects by keys. */
  List<String> selects() {
    return selects.values().stream().flatMap(select -> select.texts().stream()).toList();
  }

  void execute(String statement) throws SQLException {
    Connections.execute(connection, statement);
  }

  /** Copies the write-ahead file into the database and empties it, unless readers take long. */
  boolean emptyWriteAhead() throws SQLException {
    return Connections.emptyWriteAhead(connection);
  }

  void close() {
    try {
      // Closes its statements too.
      connection.close();
    } catch (SQLException e) {
      throw new StorageException("The database could not be closed.", e);
    }
  }
}
