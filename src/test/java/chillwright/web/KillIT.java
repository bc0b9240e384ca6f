package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.answers.Json;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.io.TempDir;

/**
 * The real process, killed while phones write: what was acknowledged is there, once; what was not
 * is sent again with its key, and then is there once too.
 */
class KillIT {
  private static final int PHONES = 8;
  private static final int ACKNOWLEDGED_BEFORE = 120;
  private static final int MOST_EACH = 2000;
  private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+");

  private final HttpClient client =
      HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
  private final Instant began = Instant.now().minus(Duration.ofHours(1));

  /** The ids that the service told, by the key they were sent with. */
  private final Map<String, String> acknowledged = new ConcurrentHashMap<>();

  /** What each phone was about to have written when the line went dead. */
  private final Map<Integer, Integer> cutOff = new ConcurrentHashMap<>();

  private record Running(Process process, String address) {}

  @RepeatedTest(3)
  void a_kill_loses_nothing_that_was_acknowledged_and_doubles_nothing(@TempDir Path folder)
      throws Exception {
    Path file = folder.resolve("kitchen.db");
    Running first = start(file);
    for (int phone = 0; phone < PHONES; phone++) {
      makeLot(first, phone);
    }
    writeUntilKilled(first);
    assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(ACKNOWLEDGED_BEFORE);

    Running second = start(file);
    try {
      everyAcknowledgedEntryIsThere(second);
      sendAgain(second);
      everyEntryIsThereOnce(second);
    } finally {
      end(second.process());
    }
  }

  private static Running start(Path file) throws IOException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin/java").toString(),
                "-jar",
                System.getProperty("chillwright.jar"),
                "serve",
                "--db",
                file.toString(),
                "--port",
                "0")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      Matcher address = ADDRESS.matcher(line);
      if (address.find()) {
        return new Running(process, address.group());
      }
    }
    throw new AssertionError("it ended without telling where it serves");
  }

  private static void end(Process process) throws InterruptedException {
    process.destroyForcibly();
    assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
  }

  private void makeLot(Running running, int phone) throws Exception {
    HttpResponse<String> made =
        send(
            running,
            "/api/v1/lots",
            "{\"lot\":\"%s\",\"food\":\"Barley soup\",\"category\":\"soup_or_stew\"}"
                .formatted(lot(phone)),
            "lot-" + phone);
    assertThat(made.statusCode()).as(made.body()).isEqualTo(201);
  }

  private static String lot(int phone) {
    return "P-" + phone;
  }

  private void writeUntilKilled(Running running) throws Exception {
    CountDownLatch enough = new CountDownLatch(ACKNOWLEDGED_BEFORE);
    ExecutorService phones = Executors.newFixedThreadPool(PHONES);
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int phone = 0; phone < PHONES; phone++) {
        int number = phone;
        all.add(phones.submit(() -> writeUntilCutOff(running, number, enough)));
      }
      assertThat(enough.await(60, TimeUnit.SECONDS)).isTrue();
      end(running.process());
      for (Future<?> one : all) {
        one.get(60, TimeUnit.SECONDS);
      }
    } finally {
      phones.shutdownNow();
    }
    assertThat(cutOff).as("phones that were writing when it was killed").hasSize(PHONES);
  }

  private Void writeUntilCutOff(Running running, int phone, CountDownLatch enough)
      throws InterruptedException {
    for (int i = 0; i < MOST_EACH; i++) {
      try {
        acknowledge(write(running, phone, i), key(phone, i));
        enough.countDown();
      } catch (IOException e) {
        cutOff.put(phone, i);
        return null;
      }
    }
    return null;
  }

  private static String key(int phone, int i) {
    return "phone-" + phone + "-entry-" + i;
  }

  /** The note is the key, so that an entry tells which request it came from. */
  private HttpResponse<String> write(Running running, int phone, int i)
      throws IOException, InterruptedException {
    String body =
        "{\"when\":\"%s\",\"entry\":\"%s\",\"temperature\":\"170F\",\"note\":\"%s\"}"
            .formatted(began.plusSeconds(i), i == 0 ? "cooked" : "reading", key(phone, i));
    return send(running, "/api/v1/lots/" + lot(phone) + "/entries", body, key(phone, i));
  }

  private HttpResponse<String> send(Running running, String path, String body, String key)
      throws IOException, InterruptedException {
    return client.send(
        HttpRequest.newBuilder(URI.create(running.address() + path))
            .timeout(Duration.ofSeconds(30))
            .header("Content-Type", "application/json")
            .header("Idempotency-Key", key)
            .POST(BodyPublishers.ofString(body))
            .build(),
        BodyHandlers.ofString());
  }

  private void acknowledge(HttpResponse<String> reply, String key) throws IOException {
    assertThat(reply.statusCode()).as(reply.body()).isEqualTo(201);
    String id = Json.MAPPER.readTree(reply.body()).at("/entries/0/id").asText();
    Optional<String> before = Optional.ofNullable(acknowledged.putIfAbsent(key, id));
    before.ifPresent(known -> assertThat(id).as(key).isEqualTo(known));
  }

  private void everyAcknowledgedEntryIsThere(Running running) throws Exception {
    Map<String, String> stored = idsByNote(running);
    assertThat(stored).containsAllEntriesOf(acknowledged);
  }

  private void sendAgain(Running running) throws Exception {
    for (Map.Entry<Integer, Integer> cut : cutOff.entrySet()) {
      int phone = cut.getKey();
      // The last one that was acknowledged too, as a phone does that did not hear the answer.
      for (int i = Math.max(0, cut.getValue() - 1); i <= cut.getValue() + 1; i++) {
        acknowledge(write(running, phone, i), key(phone, i));
      }
    }
  }

  private void everyEntryIsThereOnce(Running running) throws Exception {
    assertThat(idsByNote(running)).isEqualTo(acknowledged);
  }

  private Map<String, String> idsByNote(Running running) throws Exception {
    Map<String, String> ids = new ConcurrentHashMap<>();
    for (int phone = 0; phone < PHONES; phone++) {
      for (JsonNode entry : entries(running, phone)) {
        String note = entry.at("/note").asText();
        assertThat(ids.put(note, entry.at("/id").asText())).as("twice: " + note).isNull();
      }
    }
    return ids;
  }

  private List<JsonNode> entries(Running running, int phone) throws Exception {
    List<JsonNode> all = new ArrayList<>();
    String next = "";
    do {
      String path = "/api/v1/lots/" + lot(phone) + "/entries?limit=200" + next;
      HttpResponse<String> reply =
          client.send(
              HttpRequest.newBuilder(URI.create(running.address() + path)).build(),
              BodyHandlers.ofString());
      assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
      JsonNode page = Json.MAPPER.readTree(reply.body());
      page.at("/items").forEach(all::add);
      next = page.at("/next").isNull() ? "" : "&cursor=" + page.at("/next").asText();
    } while (!next.isEmpty());
    return all;
  }
}
