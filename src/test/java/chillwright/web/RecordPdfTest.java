package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands in the printed record, read back from the PDF. */
class RecordPdfTest {
  @TempDir static Path folder;

  private static Served served;

  @BeforeAll
  static void serve() {
    served = Served.in(folder);
    served.at("2026-03-06T17:15:00Z");
    lot("P-GOOD", "Barley and leek soup");
    log("P-GOOD", "{'when':'2026-03-03T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log(
        "P-GOOD",
        "{'id':'g1','when':'2026-03-03T11:30:00-07:00','entry':'reading','temperature':'96F',"
            + "'by':'KV','probe':'P1'}");
    log(
        "P-GOOD",
        "{'when':'2026-03-03T11:40:00-07:00','entry':'correction','corrects':'g1',"
            + "'temperature':'69F','by':'TR','note':'read upside down'}");
    log("P-GOOD", "{'when':'2026-03-03T14:00:00-07:00','entry':'chilled','temperature':'40F'}");
    lot("P-SLOW", "Rice with saffron");
    log("P-SLOW", "{'when':'2026-03-04T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log("P-SLOW", "{'when':'2026-03-04T10:15:00-07:00','entry':'reading','temperature':'130F'}");
    log("P-SLOW", "{'when':'2026-03-04T12:30:00-07:00','entry':'reading','temperature':'99F'}");
    log(
        "P-SLOW",
        "{'when':'2026-03-04T12:45:00-07:00','entry':'discarded','by':'KV',"
            + "'note':'threw it out'}");
    lot("P-EARLIER", "Bean stew");
    log("P-EARLIER", "{'when':'2026-02-02T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    lot("P-GONE", "Bean stew");
    log("P-GONE", "{'when':'2026-02-02T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log("P-GONE", "{'when':'2026-02-02T11:00:00-07:00','entry':'served'}");
    lot("P-ODD", "<script>\u202e\ud83c\udf72 \u9999\u83c7 " + "Soup ".repeat(90).strip());
    log("P-ODD", "{'when':'2026-03-05T10:00:00-07:00','entry':'cooked','temperature':'200F'}");
    for (int i = 0; i < 60; i++) {
      log(
          "P-ODD",
          "{'when':'2026-03-05T10:%02d:00-07:00','entry':'reading','temperature':'%dF'}"
              .formatted(i, 199 - i));
    }
  }

  /** RFC 3339 has years of four digits; a log begins in 2000 at the earliest. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "from=%2B999999999-01-01",
        "to=%2B999999999-12-31",
        "from=0000-01-01",
        "from=-0001-01-01",
        "from=2026-02-30",
        "from=2026-03-06&to=2026-03-01",
        "from=last+year",
        "frm=2026-03-01"
      })
  void days_that_cannot_be_are_refused_in_words(String wrong) {
    Reply reply = served.get("/record.pdf?" + wrong);
    assertThat(reply.status()).as(reply.text()).isEqualTo(400);
    assertThat(reply.text()).contains("This record cannot be printed", "<p lang=\"en\">");
    if (!wrong.startsWith("frm")) {
      assertThat(served.get("/record?" + wrong).text()).contains("class=\"notice\"");
    }
  }

  @Test
  void every_fault_of_a_period_is_told_at_once() {
    assertThat(served.get("/record.pdf?from=x&to=y&paper=z&a=b").text())
        .contains("From: “x”", "To: “y”", "Paper: “z”", "Nothing called “a”");
  }

  /** As page, list and interface do: no date of a lot holds while something is owed to it. */
  @Test
  void a_lot_out_of_compliance_bears_no_last_day() throws IOException {
    served.at("2026-03-06T17:15:00Z");
    lot("P-OUT", "Lentil soup");
    log("P-OUT", "{'when':'2026-03-06T06:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log("P-OUT", "{'when':'2026-03-06T06:15:00-07:00','entry':'reading','temperature':'130F'}");
    log("P-OUT", "{'when':'2026-03-06T08:45:00-07:00','entry':'reading','temperature':'99F'}");
    assertThat(text("/lots/P-OUT/record.pdf")).contains("Lentil").doesNotContain("Last day");
    log("P-OUT", "{'when':'2026-03-06T08:50:00-07:00','entry':'discarded','by':'KV'}");
    served.at("2026-03-06T17:15:00Z");
  }

  @AfterAll
  static void stop() {
    served.close();
  }

  private static void lot(String lot, String food) {
    Reply made =
        served.post(
            "/api/v1/lots",
            "{'lot':'%s','food':'%s','category':'soup_or_stew'}".formatted(lot, food));
    assertThat(made.status()).as(made.text()).isEqualTo(201);
  }

  private static void log(String lot, String entry) {
    Reply logged = served.post("/api/v1/lots/" + lot + "/entries", entry);
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  private static PDDocument pdf(String address, String... headers) throws IOException {
    Reply reply = served.get(address, headers);
    assertThat(reply.status()).as(reply.text()).isEqualTo(200);
    assertThat(reply.header("Content-Type")).startsWith("application/pdf");
    assertThat(reply.header("Content-Disposition")).startsWith("inline;");
    return Loader.loadPDF(reply.response().body());
  }

  private static String text(String address, String... headers) throws IOException {
    try (PDDocument pdf = pdf(address, headers)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setSortByPosition(true);
      return stripper.getText(pdf).replaceAll("\\s+", " ").strip();
    }
  }

  /**
   * FDA Food Code 2022 3-501.14(A)(1): 135 to 70 °F within 2 hours. Below 135 °F at 10:15, still at
   * 99 °F at 12:30.
   */
  @Test
  void what_was_missed_comes_first_with_what_was_done() throws IOException {
    String text = text("/record.pdf?from=2026-03-01&to=2026-03-06");
    assertThat(text)
        .contains(
            "Period: Sun 1 Mar 2026 to Fri 6 Mar 2026 (America/Denver)",
            "us-food-code-2022",
            "Rice with saffron",
            "Out: Still 99 °F at Wed 4 Mar 12:30: 70 °F was due by",
            "3-501.14(A)(1)",
            "threw it out",
            "Looked through by");
    assertThat(text.indexOf("P-SLOW")).isLessThan(text.indexOf("P-GOOD"));
    // Begun in February: one was still there, one was gone.
    assertThat(text).containsSubsequence("P-GOOD", "P-EARLIER").doesNotContain("P-GONE");
  }

  @Test
  void a_correction_shows_both_readings_its_reason_and_who() throws IOException {
    assertThat(text("/lots/P-GOOD/record.pdf"))
        .contains("69 °F", "was 96 °F", "read upside down", "corrected by TR", "KV", "P1");
  }

  @Test
  void every_page_has_its_number_and_the_cautions() throws IOException {
    try (PDDocument pdf = pdf("/record.pdf?from=2026-03-01&to=2026-03-06")) {
      int pages = pdf.getNumberOfPages();
      assertThat(pages).isGreaterThan(2);
      for (int page = 1; page <= pages; page++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        assertThat(stripper.getText(pdf).replaceAll("\\s+", " "))
            .contains(page + " / " + pages, "A verdict is about the record, not about the food.");
      }
    }
  }

  @Test
  void a_name_of_any_kind_does_no_harm() throws IOException {
    assertThat(text("/lots/P-ODD/record.pdf"))
        .contains("<script>", "Soup", "P-ODD")
        .doesNotContain("\u202e");
  }

  @Test
  void it_speaks_the_language_of_the_person() throws IOException {
    assertThat(text("/record.pdf?from=2026-03-01&to=2026-03-06", "Accept-Language", "es"))
        .contains("Registro de temperaturas", "El veredicto trata del registro");
  }

  @Test
  void a_time_without_lots_says_so() throws IOException {
    assertThat(text("/record.pdf?from=2025-01-01&to=2025-01-02")).contains("There is no such lot");
  }

  /** ISO 216: A4 is 210 by 297 mm. US Letter is 8.5 by 11 in (ANSI Y14.1, size A). */
  @Test
  void it_is_printed_on_the_paper_that_is_at_hand() throws IOException {
    try (PDDocument a4 = pdf("/record.pdf?paper=a4");
        PDDocument letter = pdf("/lots/P-GOOD/record.pdf")) {
      assertThat(a4.getPage(0).getMediaBox().getWidth()).isCloseTo(210 / 25.4f * 72, within(0.5f));
      assertThat(a4.getPage(0).getMediaBox().getHeight()).isCloseTo(297 / 25.4f * 72, within(0.5f));
      assertThat(letter.getPage(0).getMediaBox().getWidth()).isEqualTo(8.5f * 72);
      assertThat(new PDFTextStripper().getText(a4)).contains("1 / " + a4.getNumberOfPages());
    }
    assertThat(served.get("/record.pdf?paper=napkin").status()).isEqualTo(400);
    assertThat(served.get("/lots/P-GOOD/record.pdf?paper=napkin").status()).isEqualTo(400);
  }

  @Test
  void readings_of_places_and_what_was_signed_stand_in_the_record_of_a_period() throws IOException {
    served.kitchen().setUp().place(Map.of("name", "Reach-in", "kind", "refrigerator"));
    Reply read =
        served.post(
            "/api/v1/readings",
            "{'when':'2026-03-06T09:00:00-07:00','entry':'reading','place':'Reach-in',"
                + "'temperature':'39F','by':'KV','id':'p1'}");
    assertThat(read.status()).as(read.text()).isEqualTo(201);
    served.post(
        "/api/v1/readings",
        "{'when':'2026-03-06T09:05:00-07:00','entry':'correction','corrects':'p1',"
            + "'temperature':'36F','by':'TR','note':'other unit'}");
    served.post(
        "/api/v1/days/2026-03-06/handovers", "{'lots':['P-ODD'],'by':'TR','note':'chill it'}");
    served.post("/api/v1/days/2026-03-06/signatures", "{'word':'closed','by':'MB'}");
    try (PDDocument record = pdf("/record.pdf?from=2026-03-06&to=2026-03-06")) {
      String text = new PDFTextStripper().getText(record);
      assertThat(text)
          .contains("Readings of places", "Reach-in: 41 °F (5 °C) or below", "36 °F", "was 39 °F")
          .contains("other unit", "Lot P-ODD; chill it", "day closed", "MB");
    }
    try (PDDocument record = pdf("/record.pdf?from=2026-03-05&to=2026-03-05")) {
      String text = new PDFTextStripper().getText(record);
      assertThat(text).doesNotContain("Readings of places", "day closed");
    }
  }

  /** FDA Food Code 2022 3-501.16(A)(2): 41 °F. Above freezing food in a freezer may thaw. */
  @Test
  void places_beyond_their_limit_stand_first_with_what_was_done() throws IOException {
    served.kitchen().setUp().place(Map.of("name", "Cave", "kind", "refrigerator"));
    served.kitchen().setUp().place(Map.of("name", "Locker", "kind", "freezer"));
    place("Cave", "2026-02-20T07:00:00-07:00", "'temperature':'40F'");
    place("Cave", "2026-02-20T09:00:00-07:00", "'temperature':'46F'");
    place("Cave", "2026-02-20T09:10:00-07:00", "'entry':'action','note':'shut the door'");
    place("Cave", "2026-02-20T10:00:00-07:00", "'temperature':'43F'");
    place("Cave", "2026-02-20T11:00:00-07:00", "'temperature':'39F'");
    place("Locker", "2026-02-20T09:00:00-07:00", "'temperature':'5F'");
    place("Locker", "2026-02-20T12:00:00-07:00", "'temperature':'34F'");
    String page = served.get("/record?from=2026-02-20&to=2026-02-20").text();
    assertThat(page)
        .contains("2 readings", "46 °F, 43 °F", "within its limit again", "shut the door")
        .contains("34 °F on", "no reading within its limit after that", "none is logged")
        .doesNotContain(">5 °F");
    assertThat(text("/record.pdf?from=2026-02-20&to=2026-02-20"))
        .containsSubsequence(
            "Places beyond their limit",
            "Cave: 2 readings, Fri 20 Feb 2026 09:00 to Fri 20 Feb 2026 10:00: 46 °F, 43 °F",
            "within its limit again Fri 20 Feb 2026 11:00",
            "41 °F (5 °C) or below",
            "shut the door",
            "Locker: 34 °F on Fri 20 Feb 2026 12:00");
    assertThat(served.get("/record?from=2026-02-19&to=2026-02-19").text()).doesNotContain("Cave");
  }

  private static void place(String name, String when, String cells) {
    Reply read =
        served.post(
            "/api/v1/readings", "{'when':'%s','place':'%s',%s}".formatted(when, name, cells));
    assertThat(read.status()).as(read.text()).isEqualTo(201);
  }

  @Test
  void entries_stand_in_order_of_time_whenever_they_were_written() throws IOException {
    lot("P-LATE", "Bean stew");
    log("P-LATE", "{'when':'2026-03-06T07:00:00-07:00','entry':'cooked','temperature':'200F'}");
    log("P-LATE", "{'when':'2026-03-06T09:00:00-07:00','entry':'reading','temperature':'68F'}");
    log("P-LATE", "{'when':'2026-03-06T08:00:00-07:00','entry':'reading','temperature':'111F'}");
    String text = text("/lots/P-LATE/record.pdf");
    assertThat(text.substring(text.lastIndexOf("200 °F")))
        .containsSubsequence("Fri 6 Mar 2026 08:00", "Fri 6 Mar 2026 09:00");
  }

  @Test
  void it_is_printed_in_spanish() throws IOException {
    try (PDDocument record = pdf("/lots/P-SLOW/record.pdf", "Accept-Language", "es")) {
      assertThat(new PDFTextStripper().getText(record))
          .contains("en 2 h o menos", "Desechar")
          .doesNotContain("within", "Discard");
    }
  }
}
