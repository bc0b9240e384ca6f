package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.rulebook.RuleLibrary;
import chillwright.service.Kitchen;
import chillwright.service.Opening;
import chillwright.web.Server;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files sent from the command line to a kitchen that is served on a free port. */
class ImportToTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-05T12:00:00Z"), ZoneOffset.UTC);

  private static final String COOLED =
      """
      lot,food,category,when,entry,temperature
      A,Barley soup,soup_or_stew,2026-03-02T12:00:00Z,cooked,135F
      A,,,2026-03-02T13:45:00Z,reading,70F
      A,,,2026-03-02T17:45:00Z,reading,41F
      """;

  private static final String BROKEN =
      COOLED.replace("A,", "B,") + "C,Rice,soup_or_stew,2026-03-02T12:00:00Z,cooked,135\n";

  static {
    // A server that stops waits a second for connections that idle; a test need not.
    System.setProperty("jdk.httpclient.keepalive.timeout", "0");
  }

  @TempDir private Path folder;

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private Kitchen kitchen;
  private Server server;

  @BeforeEach
  void serve() throws Exception {
    kitchen =
        Kitchen.open(
            new Opening(
                folder.resolve("kitchen.db"),
                Optional.of(ZoneOffset.UTC),
                Optional.empty(),
                ZoneId.of("UTC"),
                RuleLibrary.load(Optional.empty()),
                CLOCK));
    server = Server.start(kitchen, Server.Options.local());
  }

  @AfterEach
  void close() {
    server.stop();
    kitchen.close();
  }

  private String address() {
    return "http://127.0.0.1:" + server.port();
  }

  private int run(boolean isWatched, String... args) {
    out.getBuffer().setLength(0);
    err.getBuffer().setLength(0);
    Console console = new Console(new PrintWriter(out), new PrintWriter(err), isWatched);
    return Main.commandLine(CLOCK, console).execute(args);
  }

  private int run(String... args) {
    return run(false, args);
  }

  private String file(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text).toString();
  }

  @Test
  void a_file_is_stored_there_and_told_in_the_words_of_a_local_import() throws IOException {
    String log = file("a.csv", COOLED);
    assertThat(run("import", log, "--to", address() + "/")).isZero();
    assertThat(out.toString())
        .isEqualToNormalizingNewlines(
            "Stored at %s: 3 entries of 1 lot, 0 readings of places; 0 rows were known already.\n"
                .formatted(address()));
    assertThat(err.toString()).isEmpty();
    assertThat(run("import", log, "--to", address())).isZero();
    assertThat(out.toString()).contains("0 entries of 0 lots", "3 rows were known already");
  }

  @Test
  void faults_are_told_with_the_file_as_it_was_given() throws IOException {
    String log = file("b.csv", BROKEN);
    assertThat(run("import", log, "--to", address())).isEqualTo(2);
    assertThat(err.toString()).startsWith(log + ", line 5, temperature: ");
    assertThat(out.toString()).contains("Nothing was stored: the files have 1 fault.");
    assertThat(run("import", log, "--to", address(), "--good-lots-only")).isEqualTo(2);
    assertThat(out.toString()).contains("3 entries of 1 lot", "rows of other lots, 1 fault.");
  }

  @Test
  void faults_beyond_what_an_answer_lists_are_counted() throws IOException {
    String row = "C,Rice,soup_or_stew,2026-03-02T12:00:00Z,cooked,135\n";
    String log = file("b.csv", COOLED + row.repeat(1200));
    assertThat(run("import", log, "--to", address())).isEqualTo(2);
    assertThat(out.toString()).contains("the files have 1200 faults");
    assertThat(err.toString()).contains(log + ": There are 200 more faults.");
  }

  @Test
  void several_files_go_one_after_another_until_one_has_a_fault() throws IOException {
    String first = file("a.csv", COOLED);
    String second = file("b.csv", BROKEN);
    String third = file("c.csv", COOLED.replace("A,", "D,"));
    assertThat(run("import", first, second, third, "--to", address())).isEqualTo(2);
    assertThat(out.toString())
        .contains(first + ": Stored at", second + ": Nothing was stored")
        .doesNotContain(third);
    assertThat(err.toString()).contains("Not sent, since they come after it: " + third + ".");
  }

  /** RFC 4180: the first row is the header; a file without one has none to send. */
  @Test
  void an_empty_file_is_told_as_one() throws IOException {
    String log = file("a.csv", "");
    assertThat(run("import", log, "--to", address())).isEqualTo(2);
    assertThat(err.toString()).contains(log + ", line 1: This file is empty.");
  }

  @Test
  void whoever_watches_sees_the_bytes_go() throws IOException {
    String row = "A,,,2026-03-02T17:45:00Z,reading,41F\n";
    String text = COOLED + row.repeat(60_000);
    assertThat(run(true, "import", file("a.csv", text), "--to", address())).isZero();
    assertThat(out.toString())
        .contains("bytes sent: 1", "now being checked and stored: %,d".formatted(text.length()))
        .containsPattern("\\r {50,}\\rStored at ");
    assertThat(err.toString()).isEmpty();
  }

  @Test
  void a_kitchen_with_a_key_is_told_it() throws IOException {
    server.stop();
    server = Server.start(kitchen, new Server.Options("127.0.0.1", 0, List.of(), true));
    String key = kitchen.accessKeys().makeFirst().orElseThrow();
    String log = file("a.csv", COOLED);
    assertThat(run("import", log, "--to", address())).isEqualTo(2);
    assertThat(err.toString()).contains("Give it with --key");
    assertThat(run("import", log, "--to", address(), "--key", key + "x")).isEqualTo(2);
    assertThat(err.toString()).contains("does not know this access key").doesNotContain(key);
    assertThat(run("import", log, "--to", address(), "--key", "a\nb")).isEqualTo(2);
    assertThat(err.toString()).contains("--key has characters");
    assertThat(run("import", log, "--to", address(), "--key", key)).isZero();
  }

  @Test
  @Timeout(60)
  void a_kitchen_that_takes_in_another_file_says_so() throws IOException {
    String head =
        "POST /api/v1/imports HTTP/1.1\r\nHost: localhost:%d\r\nContent-Type: text/csv\r\n"
                .formatted(server.port())
            + "Expect: 100-continue\r\nContent-Length: 100\r\n\r\n";
    List<Socket> others = new ArrayList<>();
    try {
      // So many may send at once.
      while (others.size() < 8) {
        Socket other = new Socket(InetAddress.getLoopbackAddress(), server.port());
        others.add(other);
        OutputStream request = other.getOutputStream();
        request.write(head.getBytes(StandardCharsets.UTF_8));
        request.flush();
        assertThat(other.getInputStream().read()).as("100 (Continue)").isEqualTo('H');
      }
      assertThat(run("import", file("a.csv", COOLED), "--to", address())).isEqualTo(2);
      assertThat(err.toString()).contains("Another file is being taken in at " + address());
    } finally {
      for (Socket other : others) {
        other.close();
      }
    }
  }

  @Test
  void where_nobody_answers_that_is_said() throws IOException {
    int free;
    try (ServerSocket socket = new ServerSocket(0)) {
      free = socket.getLocalPort();
    }
    String address = "http://127.0.0.1:" + free;
    assertThat(run("import", file("a.csv", COOLED), "--to", address)).isEqualTo(2);
    assertThat(err.toString()).contains("No kitchen answers at " + address);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"hello", "{}", "{\"problems\":[]}"})
  void another_service_is_not_taken_for_a_kitchen(String says) throws IOException {
    HttpServer other =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    byte[] answer = says.getBytes(StandardCharsets.UTF_8);
    other.createContext(
        "/",
        exchange -> {
          exchange.sendResponseHeaders(200, answer.length);
          exchange.getResponseBody().write(answer);
          exchange.close();
        });
    other.start();
    String address = "http://127.0.0.1:" + other.getAddress().getPort();
    assertThat(run("import", file("a.csv", COOLED), "--to", address)).isEqualTo(2);
    assertThat(err.toString()).contains("What answers at " + address + " is no Chillwright");
    other.stop(0);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {"localhost:8421", "ftp://localhost", "http://", "http://a b", "http://u:p@h"})
  void what_is_no_address_is_refused(String address) throws IOException {
    assertThat(run("import", file("a.csv", COOLED), "--to", address)).isEqualTo(2);
    assertThat(err.toString()).contains("Write one such as http://127.0.0.1:8421");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"--db", "--zone", "--rule-set", "--rules"})
  void what_a_served_kitchen_has_is_not_given_to_it(String option) throws IOException {
    assertThat(run("import", file("a.csv", COOLED), "--to", address(), option, "x")).isEqualTo(2);
    assertThat(err.toString()).contains("Leave out " + option + ".");
  }

  @Test
  void a_key_without_an_address_is_refused() throws IOException {
    assertThat(run("import", file("a.csv", COOLED), "--key", "x")).isEqualTo(2);
    assertThat(err.toString()).contains("--key goes with --to");
  }
}
