package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Who may use the service, tried from outside. */
class AccessTest {
  @TempDir private Path folder;

  private static String answer(Served served, String headers) throws IOException {
    return served.raw(
        "GET /api/v1/kitchen HTTP/1.1\r\nConnection: close\r\n"
            + headers.replace("PORT", Integer.toString(served.server().port()))
            + "\r\n\r\n");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "Host: localhost:PORT",
        "Host: LOCALHOST:PORT",
        "Host: 127.0.0.1:PORT",
        "Host: [::1]:PORT",
        "Host: [0:0:0:0:0:0:0:1]:PORT",
        "Host: kitchen-tablet:PORT",
        "Host: soup.example:8443",
        "Host: cold.example",
        "Host: localhost:PORT\r\nOrigin: http://localhost:PORT",
        "Host: 127.0.0.1:PORT\r\nOrigin: http://kitchen-tablet:PORT",
        "Host: cold.example\r\nOrigin: https://cold.example"
      })
  void its_own_names_are_answered(String headers) throws IOException {
    try (Served served = Served.in(folder, named())) {
      assertThat(answer(served, headers)).startsWith("HTTP/1.1 200 ");
    }
  }

  private static Server.Options named() {
    List<String> names = List.of("kitchen-tablet", "soup.example:8443", "cold.example:443");
    return new Server.Options("127.0.0.1", 0, names, false);
  }

  @ParameterizedTest(name = "{1}: {0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Host: elsewhere.example                                        | foreign-host
          Host: elsewhere.example:PORT                                   | foreign-host
          Host: localhost                                                | foreign-host
          Host: localhost:1                                              | foreign-host
          Host: localhost.elsewhere.example:PORT                         | foreign-host
          Host: 127.0.0.2:PORT                                           | foreign-host
          Host: kitchen-tablet                                           | foreign-host
          Host: soup.example                                             | foreign-host
          Host: localhost:PORT&Origin: http://elsewhere.example          | foreign-origin
          Host: localhost:PORT&Origin: http://localhost                  | foreign-origin
          Host: localhost:PORT&Origin: http://localhost:1                | foreign-origin
          Host: localhost:PORT&Origin: null                              | foreign-origin
          Host: localhost:PORT&Origin: file://                           | foreign-origin
          Host: localhost:PORT&Origin: http://localhost:PORT.example     | foreign-origin
          """)
  void other_names_and_other_pages_are_refused(String headers, String code) throws IOException {
    try (Served served = Served.in(folder, named())) {
      String answer = answer(served, headers.replace("&", "\r\n"));
      assertThat(answer).startsWith("HTTP/1.1 403 ").contains("\"" + code + "\"", "problem+json");
    }
  }

  @Test
  void a_page_elsewhere_can_write_nothing() {
    try (Served served = Served.in(folder)) {
      String lot = "{'food':'Soup','category':'soup_or_stew'}";
      assertThat(served.post("/api/v1/lots", lot, "Origin", "http://elsewhere.example").status())
          .isEqualTo(403);
      HttpRequest.Builder form =
          served
              .request("/api/v1/lots", "Content-Type", "text/plain")
              .POST(HttpRequest.BodyPublishers.ofString(lot.replace('\'', '"')));
      assertThat(served.send(form).status()).isEqualTo(415);
      assertThat(served.get("/api/v1/lots").json().at("/items")).isEmpty();
    }
  }

  @Test
  void on_loopback_no_key_is_asked_for() {
    try (Served served = Served.in(folder)) {
      assertThat(served.get("/api/v1/lots").status()).isEqualTo(200);
    }
  }

  @ParameterizedTest(name = "with the key, {0}")
  @ValueSource(strings = {"/api/v1/lots", "/api/v1/openapi.json", "/api/v1/nothing"})
  void with_a_key_needed_nothing_is_told_without_it(String address) {
    Server.Options guarded = new Server.Options("127.0.0.1", 0, List.of(), true);
    try (Served served = Served.in(folder, guarded)) {
      String key = served.kitchen().accessKeys().makeFirst().orElseThrow();
      Reply without = served.get(address);
      assertThat(without.status()).isEqualTo(401);
      assertThat(without.header("WWW-Authenticate")).startsWith("Bearer");
      assertThat(without.code()).isEqualTo("missing-key");
      for (String wrong : List.of("Bearer " + key + "x", "Bearer", "Basic " + key, key)) {
        Reply reply = served.get(address, "Authorization", wrong);
        assertThat(reply.status()).as(wrong).isEqualTo(401);
        assertThat(reply.code()).isEqualTo("unknown-key");
        assertThat(reply.text()).doesNotContain(key);
      }
      assertThat(served.get(address, "Authorization", "Bearer " + key).status()).isNotEqualTo(401);
      assertThat(served.get("/api/v1/health").status()).isEqualTo(200);
    }
  }

  @Test
  void a_write_needs_the_key_too() {
    Server.Options guarded = new Server.Options("127.0.0.1", 0, List.of(), true);
    try (Served served = Served.in(folder, guarded)) {
      served.kitchen().accessKeys().makeFirst();
      assertThat(served.post("/api/v1/lots", "{'food':'x','category':'soup_or_stew'}").status())
          .isEqualTo(401);
    }
  }

  /** The options say that no key is needed; away from loopback that counts for nothing. */
  @Test
  void away_from_loopback_a_key_is_always_needed() throws Exception {
    Optional<InetAddress> other = otherAddress();
    assumeThat(other).as("an address besides loopback").isPresent();
    Server.Options open = new Server.Options("0.0.0.0", 0, List.of(), false);
    try (Served served = Served.in(folder, open)) {
      String key = served.kitchen().accessKeys().makeFirst().orElseThrow();
      String base = "http://" + other.get().getHostAddress() + ":" + served.server().port();
      URI lots = URI.create(base + "/api/v1/lots");
      assertThat(served.send(HttpRequest.newBuilder(lots)).status()).isEqualTo(401);
      assertThat(served.get("/api/v1/lots").status()).isEqualTo(401);
      assertThat(
              served
                  .send(HttpRequest.newBuilder(lots).header("Authorization", "Bearer " + key))
                  .status())
          .isEqualTo(200);
      assertThat(served.send(HttpRequest.newBuilder(URI.create(base + "/api/v1/health"))).status())
          .isEqualTo(200);
      assertThat(answer(served, "Host: elsewhere.example:PORT\r\nAuthorization: Bearer " + key))
          .startsWith("HTTP/1.1 403 ");
    }
  }

  private static Optional<InetAddress> otherAddress() throws SocketException {
    return NetworkInterface.networkInterfaces()
        .flatMap(NetworkInterface::inetAddresses)
        .filter(address -> address instanceof Inet4Address && !address.isLoopbackAddress())
        .findFirst();
  }

  @Test
  void answers_may_not_be_framed_sniffed_or_kept() {
    try (Served served = Served.in(folder)) {
      for (String address : List.of("/", "/api/v1/kitchen", "/api/v1/nothing")) {
        Reply reply = served.get(address);
        assertThat(reply.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(reply.header("X-Frame-Options")).isEqualTo("DENY");
        assertThat(reply.header("Cache-Control")).isEqualTo("no-store");
        assertThat(reply.header("Content-Security-Policy"))
            .contains("default-src 'none'", "frame-ancestors 'none'");
        assertThat(reply.header("Server")).isEmpty();
      }
    }
  }

  @Test
  void a_port_in_use_is_told_in_plain_words(@TempDir Path other) {
    try (Served served = Served.in(folder)) {
      Server.Options same =
          new Server.Options("127.0.0.1", served.server().port(), List.of(), false);
      assertThatThrownBy(() -> Served.in(other, same))
          .isInstanceOf(Server.NotStarted.class)
          .hasMessageContaining("--port");
    }
  }
}
