package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Thermometers, their checks, and what is retired, over HTTP. */
class ProbeTest {
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

  private Reply put(String path, String json) {
    return served.send(
        served
            .request("/api/v1" + path, "Content-Type", "application/json")
            .PUT(BodyPublishers.ofString(json.replace('\'', '"'))));
  }

  private Reply delete(String path) {
    return served.send(served.request("/api/v1" + path).DELETE());
  }

  private JsonNode items(String path) {
    return served.get("/api/v1" + path).json().at("/items");
  }

  private Reply check(String probe, String json) {
    return served.post("/api/v1/probes/" + probe + "/checks", json);
  }

  /**
   * FDA Food Code 4-203.11, as California Health and Safety Code 114159 prints it: food
   * thermometers in Celsius, alone or with Fahrenheit, ±1 °C; in Fahrenheit only, ±2 °F. Ice water
   * is 0 °C, 32 °F.
   */
  @ParameterizedTest
  @CsvSource({
    "celsius, 1.0C, passed",
    "celsius, 1.01C, failed",
    "celsius, -1.0C, passed",
    "both, -1.1C, failed",
    "both, 33.8F, passed",
    "both, 33.9F, failed",
    "both, 30.2F, passed",
    "fahrenheit, 34.0F, passed",
    "fahrenheit, 34.1F, failed",
    "fahrenheit, 30.0F, passed",
    "fahrenheit, 29.9F, failed",
  })
  void ice_water_tells_by_itself_whether_a_probe_is_accurate(
      String scales, String reading, String result) {
    put("/probes/P1", "{'scales':'%s'}".formatted(scales));
    Reply reply = check("P1", "{'method':'ice-point','reading':'%s','by':'RO'}".formatted(reading));
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
    assertThat(reply.json().at("/result").asText()).isEqualTo(result);
    assertThat(items("/probes").get(0).at("/lastCheck/result").asText()).isEqualTo(result);
  }

  @Test
  void a_check_that_tells_nothing_or_too_much_is_refused() {
    assertThat(check("P1", "{'method':'boiling-point','reading':'98C','by':'RO'}").code())
        .isEqualTo("missing");
    assertThat(check("P1", "{'method':'ice-point','by':'RO'}").code()).isEqualTo("missing");
    assertThat(
            check("P1", "{'method':'ice-point','reading':'36F','result':'passed','by':'RO'}")
                .code())
        .isEqualTo("beyond-accuracy");
    assertThat(
            check("P1", "{'method':'frost','reading':'36','result':'good'}")
                .problem(422)
                .at("/problems")
                .findValuesAsText("code"))
        .containsExactlyInAnyOrder("unknown-method", "no-scale", "unknown-result", "missing");
    assertThat(items("/probes/P1/checks")).isEmpty();
    assertThat(
            check("P1", "{'method':'boiling-point','reading':'98C','result':'passed','by':'RO'}")
                .status())
        .isEqualTo(201);
    assertThat(items("/probes/P1/checks")).hasSize(1);
  }

  @Test
  void a_check_sent_twice_counts_once() {
    String body = "{'method':'ice-point','reading':'32.5F','by':'RO'}";
    for (int i = 0; i < 2; i++) {
      Reply sent =
          served.send(
              served
                  .request(
                      "/api/v1/probes/P1/checks",
                      "Content-Type",
                      "application/json",
                      "Idempotency-Key",
                      "k1")
                  .POST(BodyPublishers.ofString(body.replace('\'', '"'))));
      assertThat(sent.status()).as(sent.text()).isEqualTo(201);
    }
    assertThat(items("/probes/P1/checks")).hasSize(1);
  }

  /** Common practice, no source: a probe that is found off throws doubt on what it read before. */
  @Test
  void a_lot_tells_what_vouches_for_its_readings() {
    served.at("2026-03-03T15:00:00Z");
    check("P1", "{'method':'ice-point','reading':'32F','by':'RO'}");
    served.at("2026-03-03T16:30:00Z");
    served.post("/api/v1/lots", "{'lot':'A','food':'Soup','category':'soup_or_stew'}");
    for (String probe : new String[] {"P1", "P2"}) {
      served.post(
          "/api/v1/lots/A/entries",
          ("{'when':'2026-03-03T09:00:00-07:00','entry':'reading','temperature':'180F',"
                  + "'probe':'%s'}")
              .formatted(probe));
    }
    served.at("2026-03-03T17:00:00Z");
    assertThat(served.get("/lots/A").text())
        .contains("Probe P1: passed its check", "Probe P2: no check on file")
        .doesNotContain("failed");
    check("P1", "{'method':'ice-point','reading':'36F','by':'RO'}");
    assertThat(served.get("/lots/A").text()).contains("failed its check", "after these readings");
    assertThat(served.get("/lots/A", "Accept-Language", "es").text()).contains("Sonda P1");
  }

  @Test
  void what_is_retired_is_offered_no_more_and_still_explains_what_was_made_of_it() {
    put("/foods/Soup", "{'category':'soup_or_stew','allergens':['milk']}");
    put("/places/Walk-in", "{'kind':'refrigerator'}");
    put("/people/RO", "{'name':'Rosa O.'}");
    put("/probes/P1", "{}");
    served.post("/api/v1/lots", "{'lot':'A','food':'Soup','category':'soup_or_stew'}");
    for (String path :
        new String[] {"/foods/Soup", "/places/Walk-in", "/people/RO", "/probes/P1"}) {
      assertThat(delete(path).status()).as(path).isEqualTo(204);
      assertThat(delete(path).status()).as(path).isEqualTo(404);
      assertThat(items(path.substring(0, path.lastIndexOf('/')))).as(path).isEmpty();
    }
    assertThat(served.get("/api/v1/lots/A").json().at("/contents/allergens").toString())
        .isEqualTo("[\"milk\"]");
    assertThat(put("/foods/Soup", "{'category':'soup_or_stew'}").status()).isEqualTo(200);
    assertThat(items("/foods")).hasSize(1);
  }

  @Test
  void a_probe_is_described_checked_and_retired_on_the_page() {
    Visit visit = new Visit(served);
    visit.open("/kitchen");
    assertThat(visit.submit("/kitchen/probes", "name", "P1", "scales", "both").status())
        .isEqualTo(303);
    Reply checked =
        visit.submit(
            "/kitchen/checks",
            Map.of(
                "token",
                visit.token(),
                "probe",
                "P1",
                "method",
                "ice-point",
                "reading",
                "32,5",
                "scale",
                "F",
                "by",
                "RO"));
    assertThat(checked.status()).as(checked.text()).isEqualTo(303);
    assertThat(visit.open("/kitchen").text()).contains("P1", "passed", "32.5 °F", "RO");
    Reply wrong = visit.submit("/kitchen/checks", "probe", "P1", "method", "boiling-point");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("role=\"alert\"");
    assertThat(visit.submit("/kitchen/retired", "kind", "probes", "name", "P1").status())
        .isEqualTo(303);
    assertThat(items("/probes")).isEmpty();
    assertThat(visit.open("/kitchen").text()).contains("Offer again: <bdi>P1</bdi>");
    assertThat(
            visit
                .submit("/kitchen/retired", "kind", "probes", "name", "P1", "again", "yes")
                .status())
        .isEqualTo(303);
    assertThat(items("/probes")).hasSize(1);
    assertThat(visit.open("/kitchen").text()).doesNotContain("Offer again");
    assertThat(visit.submit("/kitchen/retired", "kind", "pots", "name", "P1").status())
        .isEqualTo(404);
  }
}
