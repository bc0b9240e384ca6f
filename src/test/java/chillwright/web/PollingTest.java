package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A client that polls is told when its copy is still right (RFC 9110 section 13.1.2). */
class PollingTest {
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

  private Reply again(String address, String tag) {
    return served.get(address, "If-None-Match", tag);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(strings = {"/api/v1/due", "/api/v1/lots?phase=cooked", "/api/v1/lots/S-1"})
  void a_copy_is_right_until_something_is_written_or_a_minute_passes(String address) {
    String tag = served.get(address).header("ETag");
    assertThat(tag).startsWith("W/\"");
    Reply same = again(address, tag);
    assertThat(same.status()).isEqualTo(304);
    assertThat(same.text()).isEmpty();
    assertThat(same.header("ETag")).isEqualTo(tag);
    assertThat(again(address, "\"x\", " + tag).status()).isEqualTo(304);
    assertThat(again(address, "\"x\"").status()).isEqualTo(200);
    served.cookSoup("S-2");
    String next = again(address, tag).header("ETag");
    assertThat(next).isNotEqualTo(tag);
    served.at("2026-03-03T17:16:30Z");
    assertThat(again(address, next).status()).isEqualTo(200);
  }

  @Test
  void a_tag_of_one_list_is_none_of_another() {
    String tag = served.get("/api/v1/lots?phase=cooked").header("ETag");
    assertThat(again("/api/v1/lots?phase=cooling", tag).status()).isEqualTo(200);
  }

  /** The deadline itself still complies; the first millisecond after it does not. */
  @Test
  void a_passing_limit_ends_a_copy_at_once() {
    served.post(
        "/api/v1/lots/S-1/entries",
        "{'when':'2026-03-03T10:00:30-07:00','entry':'reading','temperature':'179F'}");
    served.at("2026-03-03T19:00:30Z");
    Reply before = served.get("/api/v1/lots/S-1");
    assertThat(before.json().at("/verdict").asText()).isEqualTo("pending");
    assertThat(again("/api/v1/lots/S-1", before.header("ETag")).status()).isEqualTo(304);
    served.at("2026-03-03T19:00:30.001Z");
    Reply after = again("/api/v1/lots/S-1", before.header("ETag"));
    assertThat(after.json().at("/verdict").asText()).isEqualTo("not-shown");
  }

  @Test
  void a_lot_that_is_not_there_has_no_tag() {
    Reply reply = again("/api/v1/lots/none", "*");
    assertThat(reply.status()).isEqualTo(404);
    assertThat(reply.header("ETag")).isEmpty();
  }
}
