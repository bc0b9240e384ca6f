package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import chillwright.service.Kitchen;
import chillwright.service.Opening;
import chillwright.web.answers.Json;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
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
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** A kitchen in a folder, served on a free port, with a clock that a test can put forward. */
final class Served implements AutoCloseable {
  static final ZoneId ZONE = ZoneId.of("America/Denver");

  /** A quarter past ten in the morning of a Tuesday. */
  static final Instant START = Instant.parse("2026-03-03T17:15:00Z");

  static {
    // A server that stops waits a second for connections that idle; a test need not.
    System.setProperty("jdk.httpclient.keepalive.timeout", "0");
  }

  private static final RuleLibrary LIBRARY = library(Optional.empty());

  private final AtomicReference<Instant> now = new AtomicReference<>(START);
  private final HttpClient client =
      HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
  private final Kitchen kitchen;
  private final Server server;
  private final int port;

  /** What came back. */
  record Reply(int status, HttpResponse<byte[]> response) {
    String text() {
      return new String(response.body(), StandardCharsets.UTF_8);
    }

    JsonNode json() {
      try {
        return Json.MAPPER.readTree(response.body());
      } catch (IOException e) {
        throw new AssertionError("no JSON: " + text(), e);
      }
    }

    String header(String name) {
      return response.headers().firstValue(name).orElse("");
    }

    /** The problem document (RFC 9457) that it must be. */
    JsonNode problem(int expected) {
      assertThat(status).as(text()).isEqualTo(expected);
      assertThat(header("Content-Type")).startsWith("application/problem+json");
      return checked(json(), expected);
    }

    private static JsonNode checked(JsonNode problem, int expected) {
      assertThat(problem.at("/status").asInt()).isEqualTo(expected);
      assertThat(problem.at("/title").asText()).isNotEmpty();
      assertThat(problem.at("/detail").asText()).isNotEmpty();
      assertThat(problem.at("/problems")).isNotEmpty();
      return problem;
    }

    /** The code of the first fault of a problem document. */
    String code() {
      return json().at("/problems/0/code").asText();
    }
  }

  private Served(Kitchen kitchen, Server.Options options) {
    this.kitchen = kitchen;
    this.server = Server.start(kitchen, options);
    this.port = server.port();
  }

  static Served in(Path folder) {
    return in(folder, Server.Options.local());
  }

  static Served in(Path folder, Server.Options options) {
    return in(folder, options, LIBRARY);
  }

  static Served in(Path folder, Server.Options options, RuleLibrary library) {
    return by(Optional.empty(), folder, options, library);
  }

  /** By the advice for homes. */
  static Served atHome(Path folder) {
    return by(Optional.of("us-home"), folder, Server.Options.local(), LIBRARY);
  }

  private static Served by(
      Optional<String> ruleSet, Path folder, Server.Options options, RuleLibrary library) {
    AtomicReference<Served> made = new AtomicReference<>();
    InstantSource clock =
        () -> Optional.ofNullable(made.get()).map(served -> served.now.get()).orElse(START);
    Kitchen kitchen =
        Kitchen.open(
            new Opening(
                folder.resolve("kitchen.db"), Optional.of(ZONE), ruleSet, ZONE, library, clock));
    made.set(new Served(kitchen, options));
    return made.get();
  }

  static RuleLibrary library(Optional<Path> outside) {
    try {
      return RuleLibrary.load(outside);
    } catch (BrokenRules e) {
      throw new AssertionError(e);
    }
  }

  Kitchen kitchen() {
    return kitchen;
  }

  Server server() {
    return server;
  }

  Instant now() {
    return now.get();
  }

  void at(String time) {
    now.set(Instant.parse(time));
  }

  URI address(String path) {
    return URI.create("http://127.0.0.1:" + port + path);
  }

  Reply get(String path, String... headers) {
    return send(request(path, headers).GET());
  }

  /** Sends JSON, with single quotes for double ones. */
  Reply post(String path, String json, String... headers) {
    return postBytes(path, json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), headers);
  }

  Reply postBytes(String path, byte[] body, String... headers) {
    return send(
        request(path, headers)
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofByteArray(body)));
  }

  Reply postCsv(String path, String rows, String... headers) {
    return send(
        request(path, headers)
            .header("Content-Type", "text/csv")
            .POST(BodyPublishers.ofString(rows)));
  }

  HttpRequest.Builder request(String path, String... headers) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(address(path)).timeout(Duration.ofSeconds(30));
    return headers.length == 0 ? request : request.headers(headers);
  }

  Reply send(HttpRequest.Builder request) {
    try {
      HttpResponse<byte[]> response = client.send(request.build(), BodyHandlers.ofByteArray());
      return new Reply(response.statusCode(), response);
    } catch (IOException e) {
      throw new AssertionError(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  /** What the service answers to bytes no client library would send, until it hangs up. */
  String raw(String request) throws IOException {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(InetAddress.getLoopbackAddress(), server.port()), 5000);
      socket.setSoTimeout(20_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** A request under the right name that ends the connection, with further header lines. */
  String rawRequest(String method, String target, String... headers) throws IOException {
    return raw(head(method, target, headers) + "\r\n");
  }

  /** The head of such a request, without the line that ends it. */
  String head(String method, String target, String... headers) {
    StringBuilder head = new StringBuilder();
    head.append("%s %s HTTP/1.1\r\n".formatted(method, target));
    head.append("Host: localhost:%d\r\nConnection: close\r\n".formatted(server.port()));
    for (String header : headers) {
      head.append(header).append("\r\n");
    }
    return head.toString();
  }

  /** A lot of soup that was cooked at ten. */
  void cookSoup(String lot) {
    post(
        "/api/v1/lots",
        "{'lot':'%s','food':'Barley soup','category':'soup_or_stew'}".formatted(lot));
    post(
        "/api/v1/lots/" + lot + "/entries",
        "{'when':'2026-03-03T10:00:00-07:00','entry':'cooked','temperature':'180F'}");
  }

  /** The problem document that an answer off the wire must be, with nothing of the code in it. */
  static JsonNode problem(String raw, int expected) throws IOException {
    assertThat(raw)
        .startsWith("HTTP/1.1 " + expected + " ")
        .contains("application/problem+json")
        .doesNotContain("Exception", "at org.", "etty");
    String body = raw.substring(raw.indexOf("\r\n\r\n")).strip();
    return Reply.checked(Json.MAPPER.readTree(body), expected);
  }

  static JsonNode json(String text) {
    try {
      return Json.MAPPER.readTree(text.replace('\'', '"'));
    } catch (JsonProcessingException e) {
      throw new AssertionError(e);
    }
  }

  @Override
  public void close() {
    server.stop();
    kitchen.close();
  }
}
