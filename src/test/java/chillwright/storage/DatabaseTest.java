package chillwright.storage;

import static chillwright.storage.schema.Tables.ACCESS_KEY;
import static chillwright.storage.schema.Tables.KITCHEN;
import static chillwright.storage.schema.Tables.LOG_ENTRY;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.measure.Temperature.Scale;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Opening, sharing, failing and closing, on real files. What SQLite promises of transactions and of
 * its write-ahead log is described at sqlite.org/atomiccommit.html and sqlite.org/wal.html.
 */
class DatabaseTest {
  private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name_the_file() {
    file = folder.resolve("kitchen.db");
  }

  @Test
  void what_was_written_is_there_when_it_is_opened_again() {
    KitchenStore.Settings settings =
        new KitchenStore.Settings(
            Optional.of("North kitchen"),
            ZoneId.of("America/Chicago"),
            "us-food-code-2022",
            "2022-1",
            Scale.FAHRENHEIT,
            NOON,
            Optional.of("http://kitchen-pc:8080"));
    try (Database database = Database.open(file)) {
      assertThat(settings(database)).isEmpty();
      write(database, session -> session.kitchen().create(settings));
    }
    try (Database database = Database.open(file)) {
      assertThat(settings(database)).contains(settings);
    }
  }

  @Test
  void a_clean_end_leaves_the_database_in_one_file() throws IOException {
    try (Database database = Database.open(file)) {
      write(database, session -> session.keys().addAccessKey("hash", NOON));
    }
    assertThat(names()).containsExactly("kitchen.db", "kitchen.db.lock");
  }

  @Test
  void a_second_opening_is_refused_with_a_plain_word() {
    Database first = Database.open(file);
    assertThatThrownBy(() -> Database.open(file))
        .isInstanceOf(CannotOpenException.class)
        .hasMessageContaining("Another program is using")
        .hasMessageContaining("kitchen.db");
    first.close();
    Database.open(file).close();
  }

  @Test
  void the_same_file_by_another_name_is_refused_as_well() throws IOException {
    Database first = Database.open(file);
    Path other = Files.createSymbolicLink(folder.resolve("other.db"), file);
    assertThatThrownBy(() -> Database.open(other)).isInstanceOf(CannotOpenException.class);
    first.close();
  }

  @Test
  void a_second_process_is_refused_with_a_plain_word() throws Exception {
    try (Database first = Database.open(file)) {
      write(first, session -> session.keys().addAccessKey("hash", NOON));
      Process second = start(Opener.class, file);
      String said = said(second);
      assertThat(second.waitFor()).isZero();
      assertThat(said).startsWith("refused: Another program is using");
    }
    Process alone = start(Opener.class, file);
    assertThat(said(alone)).startsWith("opened");
  }

  /** Another process that opens the database, if it may. */
  static final class Opener {
    public static void main(String[] args) {
      try (Database database = Database.open(Path.of(args[0]))) {
        System.out.println("opened " + database.commits());
      } catch (CannotOpenException e) {
        System.out.println("refused: " + e.getMessage());
      }
    }
  }

  private static String said(Process process) throws IOException {
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  private static Process start(Class<?> main, Path file) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-cp",
            System.getProperty("java.class.path"),
            main.getName(),
            file.toString())
        .redirectError(ProcessBuilder.Redirect.INHERIT)
        .start();
  }

  @Test
  void a_newer_database_is_refused_and_stays_as_it_was() throws Exception {
    Database.open(file).close();
    int newer = Migrations.carried().newest() + 1;
    change("PRAGMA user_version = " + newer);
    assertThatThrownBy(() -> Database.open(file))
        .isInstanceOf(CannotOpenException.class)
        .hasMessageContaining("newer version");
    change("PRAGMA user_version = " + (newer - 1));
    Database.open(file).close();
  }

  @Test
  void an_older_database_is_copied_and_then_brought_up_to_date() throws Exception {
    try (Database database = Database.open(file)) {
      write(database, session -> session.keys().addAccessKey("hash", NOON));
    }
    Migrations newer = withOneMoreScript("CREATE TABLE more (id INTEGER PRIMARY KEY) STRICT;");
    Database.open(file, newer).close();
    Path copy = folder.resolve(copyName(""));
    assertThat(copy).exists();
    // The copy is whole and still opens with the older program; the original does not.
    try (Database database = Database.open(copy)) {
      assertThat(hasKey(database, "hash")).isTrue();
    }
    assertThatThrownBy(() -> Database.open(file)).hasMessageContaining("newer version");
    try (Database database = Database.open(file, newer)) {
      assertThat(hasKey(database, "hash")).isTrue();
    }
    assertThat(names()).filteredOn(name -> name.contains("schema-")).hasSize(2); // with its lock
  }

  @Test
  void a_copy_never_takes_the_place_of_another() throws Exception {
    Database.open(file).close();
    Files.writeString(folder.resolve(copyName("")), "kept");
    Database.open(file, withOneMoreScript("CREATE TABLE more (id INTEGER) STRICT;")).close();
    assertThat(folder.resolve(copyName(""))).hasContent("kept");
    assertThat(folder.resolve(copyName("-2"))).exists();
  }

  private static String copyName(String more) {
    return "kitchen.db.schema-" + Migrations.carried().newest() + more + ".copy";
  }

  private Migrations withOneMoreScript(String sql) throws IOException {
    Path scripts = Files.createDirectory(folder.resolve("scripts"));
    Path schema = Path.of(System.getProperty("basedir", ""), "schema");
    for (String name : Migrations.NAMES) {
      Files.copy(schema.resolve(name), scripts.resolve(name));
    }
    Files.writeString(scripts.resolve("%04d_more.sql".formatted(Migrations.NAMES.size() + 1)), sql);
    return Migrations.in(scripts);
  }

  @Test
  void another_programs_database_is_refused_and_stays_as_it_was() throws Exception {
    change("CREATE TABLE song (title TEXT)");
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> Database.open(file))
        .isInstanceOf(CannotOpenException.class)
        .hasMessageContaining("another program's database");
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void a_file_that_is_no_database_is_refused_and_stays_as_it_was() throws Exception {
    Files.writeString(file, "lot,food,category\n".repeat(400));
    assertThatThrownBy(() -> Database.open(file))
        .isInstanceOf(CannotOpenException.class)
        .hasMessageContaining("cannot be opened");
    assertThat(Files.readString(file)).startsWith("lot,food");
  }

  @Test
  void an_empty_file_becomes_a_database() throws Exception {
    Files.createFile(file);
    Database.open(file).close();
    Database.open(file).close();
  }

  @Test
  void versions_are_compared_by_number() throws Exception {
    assertThat(Connections.numbers("3.51.3")).containsExactly(3, 51, 3);
    try (Connection connection = Connections.writer(file)) {
      Connections.requireSoundVersion(connection);
    }
  }

  @Test
  void the_settings_that_the_promises_rest_on_are_set() throws Exception {
    try (Connection writer = Connections.writer(file);
        Connection reader = Connections.reader(file)) {
      assertThat(Connections.text(writer, "PRAGMA journal_mode")).isEqualTo("wal");
      assertThat(Connections.number(writer, "PRAGMA synchronous")).isEqualTo(2); // FULL
      assertThat(Connections.number(writer, "PRAGMA foreign_keys")).isOne();
      assertThat(Connections.number(writer, "PRAGMA journal_size_limit")).isEqualTo(64 << 20);
      assertThat(Connections.number(writer, "PRAGMA busy_timeout")).isEqualTo(5000);
      assertThatThrownBy(() -> Connections.execute(reader, "CREATE TABLE t (a INTEGER)"))
          .hasMessageContaining("READONLY");
    }
  }

  @Test
  void refused_work_leaves_nothing_and_its_neighbours_stay() {
    try (Database database = Database.open(file)) {
      write(database, session -> session.keys().addAccessKey("first", NOON));
      assertThatThrownBy(
              () ->
                  write(
                      database,
                      session -> {
                        session.keys().addAccessKey("second", NOON);
                        throw new IllegalArgumentException("refused");
                      }))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("refused");
      write(database, session -> session.keys().addAccessKey("third", NOON));
      assertThat(keys(database)).containsExactly("first", "third");
    }
  }

  @Test
  void a_row_that_breaks_a_rule_of_the_schema_fails_alone() {
    try (Database database = Database.open(file)) {
      write(database, session -> session.keys().addAccessKey("first", NOON));
      long before = database.commits();
      assertThatThrownBy(
              () -> write(database, session -> session.keys().addAccessKey("first", NOON)))
          .isNotInstanceOf(StorageException.class);
      assertThat(database.commits()).isEqualTo(before + 1); // empty, but the file is sound
    }
  }

  /** Sixteen phones: every acknowledged write is there after reopening, and commits were shared. */
  @Test
  void writes_that_wait_together_share_a_commit_and_all_are_kept() throws Exception {
    int phones = 16;
    int each = 50;
    int all = phones * each;
    long commits;
    try (Database database = Database.open(file)) {
      ExecutorService kitchen = Executors.newFixedThreadPool(phones);
      CountDownLatch start = new CountDownLatch(1);
      List<Future<?>> done = new ArrayList<>();
      for (int phone = 0; phone < phones; phone++) {
        int number = phone;
        done.add(kitchen.submit(() -> writeMany(database, number, each, start)));
      }
      start.countDown();
      for (Future<?> phone : done) {
        phone.get();
      }
      kitchen.shutdown();
      commits = database.commits();
    }
    assertThat(commits).isLessThan(all);
    try (Database database = Database.open(file)) {
      assertThat(keys(database)).hasSize(all);
    }
  }

  private static Void writeMany(Database database, int phone, int times, CountDownLatch start)
      throws InterruptedException {
    start.await();
    for (int i = 0; i < times; i++) {
      String key = phone + "-" + i;
      write(database, session -> session.keys().addAccessKey(key, NOON));
      // Acknowledged means visible to any reader from now on.
      assertThat(hasKey(database, key)).isTrue();
    }
    return null;
  }

  /**
   * A commit that fails is told to all that shared it; then the file is checked and works again.
   */
  @Test
  void after_a_failed_commit_nothing_is_acknowledged_until_the_file_was_checked() {
    try (Database database = Database.open(file)) {
      write(database, session -> session.keys().addAccessKey("first", NOON));
      assertThatThrownBy(() -> write(database, DatabaseTest::failAtCommit))
          .isInstanceOf(StorageException.class)
          .hasMessageContaining("opened and checked again");
      write(database, session -> session.keys().addAccessKey("third", NOON));
      assertThat(keys(database)).containsExactly("first", "third");
    }
    try (Database database = Database.open(file)) {
      assertThat(keys(database)).containsExactly("first", "third");
    }
  }

  /** An entry without its lot, looked at only when the transaction ends. */
  private static void failAtCommit(Session session) {
    session.keys().addAccessKey("second", NOON);
    session.sql().execute("PRAGMA defer_foreign_keys = ON");
    session
        .sql()
        .insertInto(LOG_ENTRY)
        .set(LOG_ENTRY.LOT_ID, 99L)
        .set(LOG_ENTRY.SEQ, 1L)
        .set(LOG_ENTRY.ENTRY, "e1")
        .set(LOG_ENTRY.WORD, 0)
        .set(LOG_ENTRY.HAPPENED_AT, NOON)
        .set(LOG_ENTRY.WRITTEN_AT, NOON)
        .execute();
  }

  /** Pages have 4096 bytes unless something else is asked for (SQLite, "PRAGMA page_size"). */
  private static void breakPagesWith(String text, byte[] file) {
    int page = 4096;
    for (int start = 0; start < file.length; start += page) {
      String content = new String(file, start, page, StandardCharsets.ISO_8859_1);
      if (content.contains(text)) {
        Arrays.fill(file, start, start + page, (byte) 0x5a);
      }
    }
  }

  @Test
  void a_damaged_file_takes_no_more_writes() throws Exception {
    try (Database database = Database.open(file)) {
      for (int i = 0; i < 200; i++) {
        int number = i;
        write(database, session -> session.keys().addAccessKey("key" + number, NOON));
      }
    }
    byte[] bytes = Files.readAllBytes(file);
    Database database = Database.open(file);
    assertThatThrownBy(() -> write(database, DatabaseTest::failAtCommit))
        .isInstanceOf(StorageException.class);
    breakPagesWith("key99", bytes);
    Files.write(file, bytes);
    assertThatThrownBy(() -> write(database, session -> session.keys().addAccessKey("x", NOON)))
        .isInstanceOf(StorageException.class)
        .hasRootCauseMessage("The database is damaged: " + damage(file));
    database.close();
  }

  private static String damage(Path file) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      return Connections.text(connection, "PRAGMA quick_check(1)");
    }
  }

  @Test
  void a_reader_sees_one_state_while_others_write() {
    try (Database database = Database.open(file)) {
      write(database, session -> session.keys().addAccessKey("first", NOON));
      List<Integer> counts =
          database.read(
              session -> {
                int before = session.sql().fetchCount(ACCESS_KEY);
                write(database, other -> other.keys().addAccessKey("second", NOON));
                int after = session.sql().fetchCount(ACCESS_KEY);
                return List.of(before, after);
              });
      assertThat(counts).containsExactly(1, 1);
      assertThat(keys(database)).hasSize(2);
    }
  }

  @Test
  void a_write_inside_a_write_is_a_bug_and_does_not_hang() {
    try (Database database = Database.open(file)) {
      assertThatThrownBy(() -> database.write(outer -> database.write(inner -> 1)))
          .isInstanceOf(IllegalStateException.class);
    }
  }

  @Test
  void a_closed_database_answers_nobody() {
    Database database = Database.open(file);
    database.close();
    assertThatThrownBy(() -> database.write(session -> 1))
        .isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> database.read(session -> 1)).isInstanceOf(IllegalStateException.class);
  }

  @Test
  void only_one_kitchen_fits() {
    KitchenStore.Settings settings =
        new KitchenStore.Settings(
            Optional.empty(),
            ZoneId.of("UTC"),
            "us-home",
            "1",
            Scale.CELSIUS,
            NOON,
            Optional.empty());
    try (Database database = Database.open(file)) {
      write(database, session -> session.kitchen().create(settings));
      assertThatThrownBy(() -> write(database, session -> session.kitchen().create(settings)))
          .isInstanceOf(RuntimeException.class);
      assertThat(database.<Integer>read(session -> session.sql().fetchCount(KITCHEN))).isOne();
    }
  }

  private static Optional<KitchenStore.Settings> settings(Database database) {
    return database.read(session -> session.kitchen().find());
  }

  private static boolean hasKey(Database database, String key) {
    return database.read(session -> session.keys().isAccessKey(key));
  }

  private static List<String> keys(Database database) {
    return database.read(
        session ->
            session
                .sql()
                .select(ACCESS_KEY.KEY_HASH)
                .from(ACCESS_KEY)
                .orderBy(1)
                .fetch(row -> row.value1()));
  }

  private static void write(Database database, Consumer<Session> work) {
    database.write(
        session -> {
          work.accept(session);
          return session;
        });
  }

  private void change(String sql) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  /** POSIX: an open file that was unlinked takes writes that nobody finds again. */
  @Test
  void nothing_is_acknowledged_once_the_file_is_gone() throws IOException {
    try (Database database = Database.open(file)) {
      database.write(session -> null);
      Files.move(file, folder.resolve("elsewhere.db"));
      assertThatThrownBy(() -> database.write(session -> null))
          .isInstanceOf(StorageException.class)
          .hasMessageContaining("moved, replaced or deleted");
      Files.move(folder.resolve("elsewhere.db"), file);
      assertThatCode(() -> database.write(session -> null)).doesNotThrowAnyException();
      Files.delete(folder.resolve(file.getFileName() + ".lock"));
      assertThatThrownBy(() -> database.write(session -> null))
          .isInstanceOf(StorageException.class);
    }
  }
}
