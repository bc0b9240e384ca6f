package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The day over HTTP: rounds, hand-overs and signatures. */
class DayTest {
  private static final String DAY = "/api/v1/days/2026-03-03";

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.cookSoup("S-1");
    place("Walk-in", "{'kind':'refrigerator'}");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void place(String name, String json) {
    Reply reply =
        served.send(
            served
                .request("/api/v1/places/" + name, "Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(json.replace('\'', '"'))));
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
  }

  private void read(String place, String when, String figure) {
    Reply reply =
        served.post(
            "/api/v1/readings",
            "{'when':'%s','place':'%s','temperature':'%s'}".formatted(when, place, figure));
    assertThat(reply.status()).as(reply.text()).isEqualTo(201);
  }

  private JsonNode walkIn() {
    return served.get(DAY).json().at("/places/0");
  }

  /** Twice a day is common practice, no source. The limit is FDA Food Code 3-501.16(A)(2). */
  @Test
  void a_place_is_due_until_it_was_read_as_often_as_it_should_be() {
    assertThat(walkIn().at("/due").asBoolean()).isTrue();
    assertThat(walkIn().at("/within").isNull()).isTrue();
    read("Walk-in", "2026-03-02T20:00:00-07:00", "39F");
    read("Walk-in", "2026-03-03T07:00:00-07:00", "39F");
    assertThat(walkIn().at("/read").asInt()).isEqualTo(1);
    assertThat(walkIn().at("/due").asBoolean()).isTrue();
    read("Walk-in", "2026-03-03T10:00:00-07:00", "41F");
    assertThat(walkIn().at("/due").asBoolean()).isFalse();
    assertThat(walkIn().at("/within").asBoolean()).isTrue();
    assertThat(walkIn().at("/last/temperature").asText()).isEqualTo("41 °F");
  }

  @Test
  void lots_inside_a_place_that_reads_out_are_listed() {
    served.post(
        "/api/v1/lots/S-1/entries",
        "{'when':'2026-03-03T10:05:00-07:00','entry':'cooling','place':'Walk-in'}");
    read("Walk-in", "2026-03-03T10:06:00-07:00", "41F");
    assertThat(walkIn().at("/lotsInside")).isEmpty();
    read("Walk-in", "2026-03-03T10:10:00-07:00", "46F");
    assertThat(walkIn().at("/within").asBoolean()).isFalse();
    assertThat(walkIn().at("/lotsInside").toString()).isEqualTo("[\"S-1\"]");
  }

  /** A reading that was corrected counts as it stands. */
  @Test
  void a_corrected_reading_counts_as_it_stands() {
    served.post(
        "/api/v1/readings",
        "{'id':'w1','when':'2026-03-03T10:06:00-07:00','place':'Walk-in','temperature':'93F'}");
    assertThat(walkIn().at("/within").asBoolean()).isFalse();
    Reply corrected =
        served.post(
            "/api/v1/readings",
            "{'when':'2026-03-03T10:07:00-07:00','entry':'correction','corrects':'w1',"
                + "'temperature':'39F','note':'read off the oven'}");
    assertThat(corrected.status()).as(corrected.text()).isEqualTo(201);
    assertThat(walkIn().at("/within").asBoolean()).isTrue();
    assertThat(walkIn().at("/read").asInt()).isEqualTo(1);
  }

  @Test
  void what_runs_is_handed_over_and_the_last_word_stands() {
    JsonNode before = served.get(DAY).json();
    assertThat(before.at("/open/0/lot").asText()).isEqualTo("S-1");
    assertThat(before.at("/open/0/owed").asBoolean()).isFalse();
    assertThat(before.at("/open/0/takenOverBy").isNull()).isTrue();
    String body = "{'lots':['S-1'],'by':'RO','note':'read it at noon'}";
    Reply first = served.post(DAY + "/handovers", body, "Idempotency-Key", "h1");
    assertThat(first.status()).as(first.text()).isEqualTo(201);
    served.post(DAY + "/handovers", body, "Idempotency-Key", "h1");
    assertThat(served.get(DAY).json().at("/handovers")).hasSize(1);
    served.post(DAY + "/handovers", "{'lots':['S-1'],'by':'MK'}");
    JsonNode after = served.get(DAY).json();
    assertThat(after.at("/handovers")).hasSize(2);
    assertThat(after.at("/open/0/takenOverBy").asText()).isEqualTo("MK");
    assertThat(served.post(DAY + "/handovers", "{'lots':[],'by':'X'}", "Idempotency-Key", "h1"))
        .returns("idempotency-key-reused", Reply::code);
  }

  @Test
  void every_fault_of_a_hand_over_is_told_and_nothing_is_stored() {
    Reply reply = served.post(DAY + "/handovers", "{'lots':['S-1','NO-1','a/b'],'by':''}");
    assertThat(reply.problem(422).at("/problems").findValuesAsText("code"))
        .containsExactlyInAnyOrder("unknown-lot", "bad-code", "missing");
    served.post(
        "/api/v1/lots/S-1/entries", "{'when':'2026-03-03T10:10:00-07:00','entry':'discarded'}");
    assertThat(served.post(DAY + "/handovers", "{'lots':['S-1'],'by':'RO'}").code())
        .isEqualTo("closed-lot");
    assertThat(served.get(DAY).json().at("/handovers")).isEmpty();
  }

  @Test
  void a_signed_day_stays_signed_and_a_reopening_is_a_new_line() {
    Reply closed = served.post(DAY + "/signatures", "{'word':'closed','by':'MK'}");
    assertThat(closed.status()).as(closed.text()).isEqualTo(201);
    assertThat(closed.json().at("/closed").asBoolean()).isTrue();
    assertThat(closed.json().at("/signatures/0/unfinished").asInt()).isEqualTo(1);
    assertThat(closed.json().at("/signatures/0/unread").asInt()).isEqualTo(1);
    assertThat(served.post(DAY + "/signatures", "{'word':'closed','by':'XX'}").problem(409))
        .isNotNull();
    assertThat(served.post(DAY + "/handovers", "{'lots':['S-1'],'by':'RO'}").problem(409))
        .isNotNull();
    assertThat(served.post(DAY + "/signatures", "{'word':'reopened','by':'MK'}").code())
        .isEqualTo("missing");
    served.post(DAY + "/signatures", "{'word':'reopened','by':'MK','note':'soup was missed'}");
    JsonNode day = served.get(DAY).json();
    assertThat(day.at("/closed").asBoolean()).isFalse();
    assertThat(day.at("/signatures").findValuesAsText("word"))
        .containsExactly("closed", "reopened");
    assertThat(
            served
                .post(DAY + "/signatures", "{'word':'reopened','by':'MK','note':'again'}")
                .problem(409))
        .isNotNull();
  }

  @Test
  void a_signature_sent_twice_counts_once() {
    String body = "{'word':'closed','by':'MK'}";
    served.post(DAY + "/signatures", body, "Idempotency-Key", "s1");
    Reply again = served.post(DAY + "/signatures", body, "Idempotency-Key", "s1");
    assertThat(again.status()).isEqualTo(201);
    assertThat(again.json().at("/signatures")).hasSize(1);
  }

  @Test
  void a_day_that_is_none_or_has_not_come_is_refused() {
    assertThat(served.get("/api/v1/days/2026-02-30").problem(404)).isNotNull();
    assertThat(
            served.post("/api/v1/days/2026-03-04/signatures", "{'word':'closed','by':'M'}").code())
        .isEqualTo("day-ahead");
    JsonNode earlier = served.get("/api/v1/days/2026-03-01").json();
    assertThat(earlier.at("/open")).isEmpty();
    assertThat(earlier.at("/closed").asBoolean()).isFalse();
  }
}
