package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lists as tables and deadlines as a calendar, read back by libraries that are not ours. */
class TakeAwayTest {
  private static final String FORMULA = "=1+1, \"soup\"";

  @TempDir static Path folder;

  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.in(folder);
    served.at("2026-03-03T17:15:00Z");
    String odd = "Crème; soup, \\\\ or 香菇 " + "and more ".repeat(12).strip();
    served.post("/api/v1/lots", "{'lot':'T-1','food':'" + odd + "','category':'soup_or_stew'}");
    log("T-1", "{'when':'2026-03-03T10:05:00-07:00','entry':'cooked','temperature':'200F'}");
    served.post(
        "/api/v1/lots",
        "{'lot':'T-2','food':'" + FORMULA.replace("\"", "\\\"") + "','category':'soup_or_stew'}");
    log(
        "T-2",
        "{'when':'2026-03-03T10:00:00-07:00','entry':'frozen','temperature':'0F',"
            + "'place':'Cold room'}");
    for (int i = 0; i < 230; i++) {
      served.post(
          "/api/v1/lots", "{'lot':'M-%d','food':'Rice','category':'soup_or_stew'}".formatted(i));
    }
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  private static void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", entry);
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private static List<NamedCsvRecord> rows(Reply reply) throws IOException {
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    assertThat(reply.header("Content-Type")).startsWith("text/csv");
    try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(reply.text())) {
      return reader.stream().toList();
    }
  }

  @Test
  void every_lot_can_be_taken_away_as_a_table() throws IOException {
    List<NamedCsvRecord> rows = rows(served.get("/lots.csv"));
    assertThat(rows).hasSize(232);
    assertThat(rows).extracting(row -> row.getField("lot")).doesNotHaveDuplicates();
  }

  /** What a spreadsheet would run gets an apostrophe in front. Common practice, no source. */
  @Test
  void what_is_on_hand_in_a_place_can_be_taken_away_and_runs_nothing() throws IOException {
    List<NamedCsvRecord> rows = rows(served.get("/on-hand.csv?place=Cold%20room"));
    assertThat(rows).hasSize(1);
    assertThat(rows.get(0).getField("food")).isEqualTo("'" + FORMULA);
    assertThat(rows.get(0).getField("phase")).isEqualTo("frozen");
    assertThat(rows(served.get("/on-hand.csv?place=Nowhere"))).isEmpty();
  }

  /**
   * FDA Food Code 2022 3-501.14(A)(1): 135 to 70 °F within 2 hours. Cooked at 10:05 in Denver,
   * which was 7 hours behind UTC on 3 March 2026, so by 12:05 there and 19:05 UTC.
   */
  @Test
  void what_falls_due_is_a_calendar() throws IOException, ParserException {
    Reply reply = served.get("/deadlines.ics");
    assertThat(reply.header("Content-Type")).isEqualTo("text/calendar; charset=utf-8");
    Calendar calendar = new CalendarBuilder().build(new StringReader(reply.text()));
    calendar.validate();
    List<VEvent> events = calendar.getComponents(Component.VEVENT);
    VEvent event =
        events.stream()
            .filter(each -> each.getSummary().getValue().contains("(T-1)"))
            .findFirst()
            .orElseThrow();
    assertThat(event.getSummary().getValue())
        .startsWith("70 °F by 12:05: Crème; soup, \\ or 香菇 and more");
    assertThat(event.getDateTimeStart().getValue()).isEqualTo("20260303T190500Z");
    assertThat(event.getDateTimeStamp().getValue()).isEqualTo("20260303T171500Z");
    assertThat(event.getDescription().getValue()).contains("3-501.14(A)(1)");
    String uid = event.getUid().orElseThrow().getValue();
    assertThat(served.get("/deadlines.ics").text()).contains(uid);
  }

  /** RFC 5545, 3.1: lines end in CR LF and are at most 75 octets long without it. */
  @Test
  void its_lines_are_folded() {
    String text = served.get("/deadlines.ics").text();
    assertThat(text).endsWith("END:VCALENDAR\r\n");
    assertThat(text.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
    for (String line : text.split("\r\n", -1)) {
      assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
    }
  }
}
