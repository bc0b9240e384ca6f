package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Pages opened without the line, where browsers allow it: 127.0.0.1 counts as secure (W3C Secure
 * Contexts, section 3.1), as HTTPS does.
 */
class WorkerIT extends PhoneStories {
  private Server again;

  @AfterEach
  void stopAgain() {
    phone().script("return caches.delete('chillwright-pages')");
    if (again != null) {
      again.stop();
      again = null;
    }
  }

  private void openHere(int port, String address) {
    phone().openAddress("http://127.0.0.1:" + port + address);
  }

  private void waitUntilKept(String address) {
    phone()
        .waitForScript(
            "return caches.open('chillwright-pages').then(c => c.match('%s')).then(r => !!r)"
                .formatted(address));
  }

  @Test
  void a_page_seen_before_opens_without_the_line_and_takes_a_reading() {
    served().cookSoup("S-1");
    openHere(port(), "/");
    waitUntilKept("/");
    openHere(port(), "/lots/S-1");
    waitUntilKept("/lots/S-1");
    served().server().stop();

    openHere(port(), "/");
    phone().waitFor("is lost");
    assertThat(phone().text()).contains("Barley soup", "1 h 4");
    openHere(port(), "/lots/S-1");
    phone().waitFor("is lost");
    phone().type("#entry input[name=temperature]", "150");
    phone().tap("#entry button.main");
    phone().waitFor("Waiting to be sent: 1");
    Instant taken = served().now();

    again = Server.start(served().kitchen(), Browser.options(port()));
    phone().waitFor("Sent: S-1 150");
    JsonNode entries = served().get("/api/v1/lots/S-1/entries").json().at("/items");
    Instant when = OffsetDateTime.parse(entries.at("/1/when").asText()).toInstant();
    assertThat(Duration.between(taken, when).abs()).isLessThan(Duration.ofMinutes(2));
  }

  @Test
  void what_is_kept_goes_when_the_key_is_asked_for_again(@TempDir Path other) {
    Server.Options guarded = new Server.Options("127.0.0.1", 0, List.of(), true);
    try (Served closed = Served.in(other, guarded)) {
      String key = closed.kitchen().accessKeys().makeFirst().orElseThrow();
      int port = closed.server().port();
      openHere(port, "/enter");
      phone().type("#key", key);
      phone().tapText("Enter");
      phone().waitFor("Falls due next");
      openHere(port, "/");
      waitUntilKept("/");
      phone().forget();
      openHere(port, "/");
      phone().waitForAddress("/enter");
      phone().waitForScript("return caches.has('chillwright-pages').then(has => !has)");
    }
  }
}
