package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Entries typed with an hour that the clock skipped or showed twice. IANA tz database,
 * America/Denver: on 8 March 2026 the clock goes from 01:59 to 03:00; on 1 November 2026 it shows
 * 01:00 to 01:59 twice, first as UTC-6, then as UTC-7.
 */
class ClockChangeTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply begin(String when) {
    Reply page = visit.open("/new-batch");
    return visit.submit(
        "/new-batch",
        "once",
        Visit.once(page),
        "lot",
        "BS-1",
        "entry",
        "cooked",
        "food",
        "Bean stew",
        "category",
        "soup_or_stew",
        "when",
        when);
  }

  private JsonNode entries() {
    return served.get("/api/v1/lots/BS-1/entries").json().at("/items");
  }

  @Test
  void a_skipped_hour_is_refused_with_what_to_do() {
    served.at("2026-03-08T16:00:00Z");
    Reply refused = begin("2026-03-08T02:30");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("put forward from 01:59 to 03:00", "before or after")
        .doesNotContain("offset");
    assertThat(begin("2026-03-08T03:00").status()).isEqualTo(303);
    assertThat(entries().at("/0/when").asText()).isEqualTo("2026-03-08T03:00:00-06:00");
  }

  @Test
  void a_doubled_hour_is_asked_about_and_told_apart() {
    served.at("2026-11-01T16:00:00Z");
    assertThat(begin("2026-11-01T00:30").status()).isEqualTo(303);
    visit.open("/lots/BS-1");
    Map<String, String> reading = new LinkedHashMap<>();
    reading.put("token", visit.token());
    reading.put("entry", "reading");
    reading.put("temperature", "150");
    reading.put("scale", "F");
    reading.put("when", "2026-11-01T01:30");
    Reply asked = visit.submit("/lots/BS-1/entries", reading);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("showed 01:30 twice", "the earlier one is taken");
    // The clock shows that time twice every year: a tick is for the one that was asked about.
    for (String other : new String[] {"twice:01:30", "twice:2025-11-02T07:30:00Z:BS-1"}) {
      reading.put("sure", other);
      assertThat(visit.submit("/lots/BS-1/entries", reading).status()).as(other).isEqualTo(422);
    }
    assertThat(Visit.ticks(asked)).isEqualTo("twice:2026-11-01T07:30:00Z:BS-1");
    reading.put("sure", Visit.ticks(asked));
    assertThat(visit.submit("/lots/BS-1/entries", reading).status()).isEqualTo(303);
    assertThat(entries().at("/1/when").asText()).isEqualTo("2026-11-01T01:30:00-06:00");
    assertThat(visit.open("/lots/BS-1").text()).contains("01:30 (the first of two)");
  }

  @Test
  void a_time_is_taken_as_people_say_it() {
    served.at("2026-03-03T17:00:00Z");
    Reply asked = begin("yesterday 6");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("may be 2026-03-02 06:00 or 2026-03-02 18:00");
    assertThat(begin("yesterday 6 pm").status()).isEqualTo(303);
    assertThat(entries().at("/0/when").asText()).isEqualTo("2026-03-02T18:00:00-07:00");
  }
}
