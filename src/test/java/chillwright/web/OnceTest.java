package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A request with a key counts once; many at the same time all count. */
class OnceTest {
  private static final String ENTRIES = "/api/v1/lots/S-1/entries";
  private static final String READING =
      "{'when':'2026-03-03T10:10:00-07:00','entry':'reading','temperature':'150F'}";

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply log(String body, String key) {
    return served.post(ENTRIES, body, "Idempotency-Key", key);
  }

  private int written() {
    return served.get(ENTRIES + "?limit=200").json().at("/items").size();
  }

  @Test
  void a_repetition_answers_with_the_same_ids_and_writes_nothing() {
    Reply first = log(READING, "k-1");
    served.at("2026-03-03T19:30:00Z");
    Reply second = log(READING, "k-1");
    assertThat(second.status()).isEqualTo(201);
    assertThat(second.json().at("/entries")).isEqualTo(first.json().at("/entries"));
    assertThat(first.json().at("/replayed").asBoolean()).isFalse();
    assertThat(second.json().at("/replayed").asBoolean()).isTrue();
    assertThat(written()).isEqualTo(2);
    // Today's findings: meanwhile the reading at two hours is overdue.
    assertThat(second.json().at("/verdict").asText()).isEqualTo("not-shown");
  }

  @Test
  void the_same_key_with_another_body_is_refused() {
    log(READING, "k-1");
    Reply other = log(READING.replace("150F", "151F"), "k-1");
    assertThat(other.status()).isEqualTo(422);
    assertThat(other.code()).isEqualTo("idempotency-key-reused");
    assertThat(other.json().at("/problems/0/where/header").asText()).isEqualTo("Idempotency-Key");
    assertThat(written()).isEqualTo(2);
  }

  @Test
  void the_same_key_at_another_address_is_refused() {
    served.cookSoup("S-2");
    log(READING, "k-1");
    assertThat(served.post("/api/v1/lots/S-2/entries", READING, "Idempotency-Key", "k-1").status())
        .isEqualTo(422);
  }

  @Test
  void a_refused_request_leaves_its_key_free() {
    assertThat(log(READING.replace("150F", "150"), "k-1").status()).isEqualTo(422);
    assertThat(log(READING, "k-1").status()).isEqualTo(201);
  }

  @Test
  void lots_and_readings_of_places_count_once_too() {
    String lot = "{'food':'Rice','category':'soup_or_stew'}";
    Reply first = served.post("/api/v1/lots", lot, "Idempotency-Key", "k-2");
    Reply second = served.post("/api/v1/lots", lot, "Idempotency-Key", "k-2");
    assertThat(second.json().at("/lot")).isEqualTo(first.json().at("/lot"));
    assertThat(second.header("Location")).isEqualTo(first.header("Location"));
    String reading = "{'when':'2026-03-03T10:00:00-07:00','place':'Walk-in','temperature':'39F'}";
    Reply one = served.post("/api/v1/readings", reading, "Idempotency-Key", "k-3");
    Reply two = served.post("/api/v1/readings", reading, "Idempotency-Key", "k-3");
    assertThat(two.json().at("/entries")).isEqualTo(one.json().at("/entries"));
    assertThat(served.get("/api/v1/readings").json().at("/items")).hasSize(1);
  }

  @Test
  void a_key_has_at_most_200_characters() {
    assertThat(log(READING, "k".repeat(200)).status()).isEqualTo(201);
    Reply tooLong = log(READING, "k".repeat(201));
    assertThat(tooLong.status()).isEqualTo(422);
    assertThat(tooLong.code()).isEqualTo("bad-idempotency-key");
    Reply two = served.post(ENTRIES, READING, "Idempotency-Key", "a", "Idempotency-Key", "b");
    assertThat(two.status()).isEqualTo(422);
  }

  /** Sixteen phones, each sending everything twice as if the first answer had been lost. */
  @Test
  void sixteen_clients_write_at_once_and_everything_is_there_once() throws Exception {
    int clients = 16;
    int each = 10;
    for (int client = 0; client < clients; client++) {
      served.cookSoup("P-" + client);
    }
    ExecutorService phones = Executors.newFixedThreadPool(clients);
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int client = 0; client < clients; client++) {
        int number = client;
        all.add(phones.submit(() -> writeTwice(number, each)));
      }
      for (Future<?> one : all) {
        one.get();
      }
    } catch (ExecutionException e) {
      throw new AssertionError(e.getCause());
    } finally {
      phones.shutdownNow();
    }
    for (int client = 0; client < clients; client++) {
      JsonNode entries = served.get("/api/v1/lots/P-" + client + "/entries").json().at("/items");
      assertThat(entries).hasSize(1 + each);
      assertThat(entries.findValuesAsText("id")).doesNotHaveDuplicates();
    }
  }

  private void writeTwice(int client, int each) {
    for (int i = 0; i < each; i++) {
      String body =
          "{'when':'2026-03-03T10:%02d:00-07:00','entry':'reading','temperature':'%dF'}"
              .formatted(i, 175 - i);
      String lot = "/api/v1/lots/P-" + client + "/entries";
      String key = "phone-" + client + "-" + i;
      Reply first = served.post(lot, body, "Idempotency-Key", key);
      Reply second = served.post(lot, body, "Idempotency-Key", key);
      assertThat(first.status()).as(first.text()).isEqualTo(201);
      assertThat(second.json().at("/entries")).isEqualTo(first.json().at("/entries"));
    }
  }
}
