package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Log files sent to the service. What is counted is what the files below hold. */
class ImportRequestsTest {
  private static final String IMPORTS = "/api/v1/imports";
  private static final String HEADER = "lot,food,category,when,entry,temperature,place\n";

  private static final String GOOD =
      HEADER
          + """
          A,Barley soup,soup_or_stew,2026-03-03T08:00:00-07:00,cooked,180F,
          A,,,2026-03-03T09:40:00-07:00,reading,69F,
          ,,,2026-03-03T09:45:00-07:00,reading,38F,Walk-in
          """;

  /** A lot without a fault and one with two. */
  private static final String MIXED =
      GOOD
          + """
          B,Rice,soup_or_stew,2026-03-03T08:00:00-07:00,cooked,180,
          B,,,2026-03-03T09:00:00-07:00,readin,120F,
          """;

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private int lots() {
    return served.get("/api/v1/lots").json().at("/items").size();
  }

  private static void counts(JsonNode answer, int rows, int entries, int readings, int repeats) {
    assertThat(answer.at("/rows").asInt()).isEqualTo(rows);
    assertThat(answer.at("/entries").asInt()).isEqualTo(entries);
    assertThat(answer.at("/readings").asInt()).isEqualTo(readings);
    assertThat(answer.at("/repeats").asInt()).isEqualTo(repeats);
    assertThat(answer.at("/stored").asBoolean()).isTrue();
  }

  @Test
  void a_file_is_stored_once_however_often_it_is_sent() {
    Reply first = served.postCsv(IMPORTS, GOOD);
    assertThat(first.status()).as(first.text()).isEqualTo(200);
    counts(first.json(), 3, 2, 1, 0);
    assertThat(first.json().at("/lots").asInt()).isEqualTo(1);
    assertThat(first.json().at("/problems")).isEmpty();
    assertThat(first.json().at("/at").asText()).isEqualTo("2026-03-03T10:15:00-07:00");
    assertThat(first.json().at("/ruleSet/id").asText()).isEqualTo("us-food-code-2022");
    assertThat(first.json().at("/defers").asText()).isNotEmpty();
    assertThat(served.get("/api/v1/lots/A").json().at("/verdict").asText()).isEqualTo("pending");
    counts(served.postCsv(IMPORTS, GOOD).json(), 3, 0, 0, 3);
  }

  @Test
  void with_any_fault_nothing_is_stored_and_every_fault_is_listed() {
    Reply reply = served.postCsv(IMPORTS + "?name=week%201.csv", MIXED);
    JsonNode problems = reply.problem(422).at("/problems");
    assertThat(problems).hasSize(2);
    assertThat(problems.at("/0/where"))
        .isEqualTo(Served.json("{'file':'week 1.csv','line':5,'column':'temperature'}"));
    assertThat(problems.at("/1/where"))
        .isEqualTo(Served.json("{'file':'week 1.csv','line':6,'column':'entry'}"));
    assertThat(lots()).isZero();
    assertThat(served.postCsv(IMPORTS, MIXED).json().at("/problems/0/where/file").asText())
        .isEqualTo("import.csv");
  }

  @Test
  void the_good_lots_are_stored_where_they_are_asked_for() {
    Reply reply = served.postCsv(IMPORTS + "?goodLotsOnly=true", MIXED);
    assertThat(reply.status()).isEqualTo(200);
    counts(reply.json(), 5, 2, 1, 0);
    assertThat(reply.json().at("/problems")).hasSize(2);
    assertThat(lots()).isEqualTo(1);
  }

  @Test
  void an_answer_lists_a_thousand_faults_and_counts_the_rest() {
    String row = "B,Rice,soup_or_stew,2026-03-03T08:00:00-07:00,cooked,180,\n";
    JsonNode refused = served.postCsv(IMPORTS, HEADER + row.repeat(1300)).problem(422);
    assertThat(refused.at("/detail").asText()).contains("1300", "first 1000");
    assertThat(refused.at("/problems")).hasSize(1001);
    assertThat(refused.at("/problems/1000/code").asText()).isEqualTo("more-faults");
    assertThat(refused.at("/problems/1000/given").asText()).isEqualTo("300");
    String good = IMPORTS + "?goodLotsOnly=true";
    assertThat(served.postCsv(good, HEADER + row.repeat(1300)).json().at("/problems"))
        .hasSize(1001);
  }

  /** RFC 4180 section 2 has no file without a row; the first names the columns. */
  @Test
  void an_empty_file_is_told_as_one() {
    assertThat(served.postCsv(IMPORTS, "").problem(422).at("/problems/0/code").asText())
        .isEqualTo("empty-file");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "?name=, bad-text",
    "?name=a%0Ab, bad-text",
    "?name=%1B[2J, bad-text",
    "?goodLotsOnly=yes, bad-choice",
    "?goodlotsonly=true, unknown-parameter"
  })
  void parameters_are_read_strictly(String query, String code) {
    Reply reply = served.postCsv(IMPORTS + query.replace("[", "%5B"), GOOD);
    assertThat(reply.problem(422).at("/problems/0/code").asText()).isEqualTo(code);
    assertThat(lots()).isZero();
  }

  /**
   * The Fetch standard's "CORS-safelisted request-header": a page elsewhere may send text/plain
   * without asking first, text/csv only after it asked; both are refused here.
   */
  @Test
  void a_page_elsewhere_can_send_no_file() {
    assertThat(served.postCsv(IMPORTS, GOOD, "Origin", "http://elsewhere.example").status())
        .isEqualTo(403);
    Reply asked =
        served.send(
            served
                .request(IMPORTS, "Origin", "http://elsewhere.example")
                .header("Access-Control-Request-Method", "POST")
                .method("OPTIONS", BodyPublishers.noBody()));
    assertThat(asked.status()).isEqualTo(403);
    assertThat(asked.header("Access-Control-Allow-Origin")).isEmpty();
    for (String type : new String[] {"text/plain", "text/csv; charset=utf-16"}) {
      Reply reply =
          served.send(
              served.request(IMPORTS, "Content-Type", type).POST(BodyPublishers.ofString(GOOD)));
      reply.problem(415);
      assertThat(reply.header("Accept-Post")).isEqualTo("text/csv");
    }
    served.postCsv(IMPORTS, GOOD, "Content-Encoding", "gzip").problem(415);
    assertThat(lots()).isZero();
  }

  @Test
  void the_access_key_is_needed_as_for_any_write(@TempDir Path other) {
    Server.Options guarded = new Server.Options("127.0.0.1", 0, List.of(), true);
    try (Served kitchen = Served.in(other, guarded)) {
      String key = kitchen.kitchen().accessKeys().makeFirst().orElseThrow();
      kitchen.postCsv(IMPORTS, GOOD).problem(401);
      assertThat(kitchen.postCsv(IMPORTS, GOOD, "Authorization", "Bearer " + key).status())
          .isEqualTo(200);
    }
  }

  /** RFC 9110 section 10.1.1: a client that expects 100 (Continue) is told before it sends. */
  @Test
  void a_file_beyond_its_bound_is_refused_before_it_is_sent() throws IOException {
    long beyond = 2L * 1024 * 1024 * 1024 + 1;
    String answer =
        served.rawRequest(
            "POST",
            IMPORTS,
            "Content-Type: text/csv",
            "Expect: 100-continue",
            "Content-Length: " + beyond);
    assertThat(Served.problem(answer, 413).at("/problems/0/code").asText()).isEqualTo("too-large");
  }

  /** Whoever sends slowly keeps nobody waiting, unless very many do. */
  @Test
  void slow_senders_leave_room_until_they_are_many() throws IOException {
    List<Socket> slow = new ArrayList<>();
    try {
      slow.add(halfSent());
      assertThat(served.postCsv(IMPORTS, GOOD).status()).isEqualTo(200);
      while (slow.size() < 8) {
        slow.add(halfSent());
      }
      Reply reply = served.postCsv(IMPORTS, GOOD);
      assertThat(reply.problem(409).at("/detail").asText()).contains("send this one again");
      assertThat(reply.header("Retry-After")).isNotEmpty();
    } finally {
      for (Socket one : slow) {
        one.close();
      }
    }
    assertThat(awaitTaken().status()).isEqualTo(200);
  }

  /** A line that is closed, and one that a kill resets. */
  @ParameterizedTest(name = "reset: {0}")
  @ValueSource(booleans = {false, true})
  void nothing_is_left_of_a_file_whose_sender_died_half_way(boolean reset) throws IOException {
    try (Socket sender = halfSent()) {
      if (reset) {
        sender.setSoLinger(true, 0);
      }
    }
    JsonNode whole = awaitTaken().json();
    counts(whole, 3, 2, 1, 0);
    assertThat(lots()).isEqualTo(1);
  }

  /** All rows of the file have come, but not the end of the body. */
  private Socket halfSent() throws IOException {
    String length = "Content-Length: " + 2 * GOOD.length();
    String head =
        served.head("POST", IMPORTS, "Content-Type: text/csv", "Expect: 100-continue", length);
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), served.server().port());
    socket.setSoTimeout(20_000);
    OutputStream out = socket.getOutputStream();
    out.write((head + "\r\n").getBytes(StandardCharsets.UTF_8));
    out.flush();
    byte[] agreed = socket.getInputStream().readNBytes("HTTP/1.1 100".length());
    assertThat(new String(agreed, StandardCharsets.UTF_8)).isEqualTo("HTTP/1.1 100");
    out.write(GOOD.getBytes(StandardCharsets.UTF_8));
    out.flush();
    return socket;
  }

  private Reply awaitTaken() {
    Instant end = Instant.now().plus(Duration.ofSeconds(20));
    Reply reply = served.postCsv(IMPORTS, GOOD);
    while (reply.status() == 409 && Instant.now().isBefore(end)) {
      reply = served.postCsv(IMPORTS, GOOD);
    }
    return reply;
  }

  @Test
  void a_phone_writes_on_while_a_large_file_is_taken_in() {
    served.cookSoup("PHONE");
    String file = twentyThousandRows();
    assertThat(file.length()).as("beyond the bound of other bodies").isGreaterThan(1_000_000);
    CompletableFuture<Reply> sent =
        CompletableFuture.supplyAsync(() -> served.postCsv(IMPORTS, file));
    int written = 0;
    while (!sent.isDone()) {
      Instant when = Served.START.minusSeconds(800).plusMillis(written);
      Reply reply =
          served.post(
              "/api/v1/lots/PHONE/entries",
              "{'when':'%s','entry':'reading','temperature':'170F'}".formatted(when));
      assertThat(reply.status()).as(reply.text()).isEqualTo(201);
      written++;
    }
    Reply reply = sent.join();
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    counts(reply.json(), 20_000, 20_000, 0, 0);
    assertThat(reply.json().at("/lots").asInt()).isEqualTo(1000);
    assertThat(written).as("writes meanwhile").isPositive();
    assertThat(entries("PHONE")).isEqualTo(written + 1);
    assertThat(entries("L-999")).isEqualTo(20);
  }

  /** A thousand lots of twenty entries, one after another in time. */
  private static String twentyThousandRows() {
    StringBuilder rows = new StringBuilder(HEADER);
    Instant start = Instant.parse("2026-03-02T12:00:00Z");
    for (int entry = 0; entry < 20; entry++) {
      for (int lot = 0; lot < 1000; lot++) {
        Instant when = start.plusSeconds(entry * 600L + lot % 500);
        String food = entry == 0 ? "Barley soup,soup_or_stew" : ",";
        String word = entry == 0 ? "cooked" : "reading";
        rows.append(
            "L-%d,%s,%s,%s,%dF,Walk-in 2\n".formatted(lot, food, when, word, 180 - 5 * entry));
      }
    }
    return rows.toString();
  }

  private int entries(String lot) {
    int count = 0;
    String cursor = "";
    do {
      JsonNode page = served.get("/api/v1/lots/" + lot + "/entries?limit=200" + cursor).json();
      count += page.at("/items").size();
      cursor = page.at("/next").isNull() ? "" : "&cursor=" + page.at("/next").asText();
    } while (!cursor.isEmpty());
    return count;
  }
}
