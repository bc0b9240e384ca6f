package chillwright.storage;

import chillwright.core.log.EntryId;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jooq.DSLContext;
import org.jooq.Log;
import org.jooq.Query;
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

  /** Statements that change rows and stay prepared; a write uses about ten. */
  private static final int MOST_CHANGES = 60;

  private final Connection connection;
  private final DSLContext sql;
  private final Map<Table<?>, BulkInsert> inserts = new HashMap<>();
  private final Map<String, KeyedSelect> selects = new HashMap<>();
  private final Map<String, PreparedStatement> plain = new HashMap<>();
  private final Map<String, Change> changes =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Change> eldest) {
          boolean isTooMany = size() > MOST_CHANGES;
          if (isTooMany) {
            eldest.getValue().close();
          }
          return isTooMany;
        }
      };
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

  public PlanStore plans() {
    return new PlanStore(sql);
  }

  public SetUpStore setUp() {
    return new SetUpStore(sql);
  }

  public LabelStore labels() {
    return new LabelStore(this);
  }

  public ProbeStore probes() {
    return new ProbeStore(sql);
  }

  public DayStore days() {
    return new DayStore(sql);
  }

  public KeyStore keys() {
    return new KeyStore(this);
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

  /**
   * A statement that changes rows, prepared once for the life of the connection.
   *
   * @param name of the change; two that differ have two names
   */
  Change change(String name, Supplier<Query> blank) {
    return changes.computeIfAbsent(name, n -> new Change(connection, sql, blank.get()));
  }

  /** The statements that were prepared for selects by keys and for changes. */
  List<String> prepared() {
    return Stream.concat(
            selects.values().stream().flatMap(select -> select.texts().stream()),
            changes.values().stream().map(Change::text))
        .toList();
  }

  /** Runs one of the few statements without values that go round every transaction. */
  void execute(String text) throws SQLException {
    PreparedStatement statement = plain.get(text);
    if (statement == null) {
      statement = connection.prepareStatement(text);
      plain.put(text, statement);
    }
    statement.execute();
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
