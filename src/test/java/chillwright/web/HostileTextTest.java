package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names that try to break out of the table or the JSON they are shown in. */
class HostileTextTest {
  private static Served served;

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
    for (int i = 0; i < names().size(); i++) {
      log("H-" + i, names().get(i));
      log("R-" + i, names().get(i));
    }
    served.at("2026-03-03T19:15:00Z");
    for (int i = 0; i < names().size(); i++) {
      missTheLimit("H-" + i, names().get(i));
    }
  }

  @AfterAll
  static void close() {
    served.close();
  }

  static List<String> names() {
    return List.of(
        "<script>alert(1)</script>",
        "</title><img src=x onerror=alert(1)>",
        "\"'><b>&amp;&#60;",
        "a%n%s{{7*7}}${jndi:x}",
        "soup\u202egnp.exe",
        "\u05de\u05e8\u05e7 \u0634\u0648\u0631\u0628\u0629",
        "=HYPERLINK(\"http://elsewhere.example\")",
        "@SUM(A1:A9)",
        "+1-1",
        "'; DROP TABLE lot; --",
        "../../etc/passwd",
        "\ud83c\udf72".repeat(250),
        "x".repeat(500));
  }

  private static Reply send(String address, ObjectNode body) {
    return served.postBytes(address, body.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static void log(String lot, String name) {
    ObjectNode made = JsonNodeFactory.instance.objectNode();
    made.put("lot", lot).put("food", name).put("category", "soup_or_stew").put("note", name);
    assertThat(send("/api/v1/lots", made).status()).isEqualTo(201);
    served.post(
        "/api/v1/lots/" + lot + "/entries",
        "{'when':'2026-03-03T10:00:00-07:00','entry':'cooked','temperature':'134F'}");
  }

  private static void missTheLimit(String lot, String name) {
    ObjectNode reading = JsonNodeFactory.instance.objectNode();
    reading.put("when", "2026-03-03T12:10:00-07:00").put("entry", "reading");
    reading.put("temperature", "90F").put("note", name).put("place", name).put("by", name);
    assertThat(send("/api/v1/lots/" + lot + "/entries", reading).status()).isEqualTo(201);
  }

  private static String lotOf(String name) {
    return "H-" + names().indexOf(name);
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_name_comes_back_as_it_was_given(String name) {
    assertThat(served.get("/api/v1/lots/" + lotOf(name)).json().at("/food").asText())
        .isEqualTo(name);
    assertThat(served.get("/api/v1/lots").json().at("/items").findValuesAsText("food"))
        .contains(name);
    assertThat(
            served
                .get("/api/v1/lots/" + lotOf(name) + "/entries")
                .json()
                .at("/items/1/note")
                .asText())
        .isEqualTo(name);
  }

  /** RFC 4180: the table read back has the cells that were written, a formula made text. */
  @ParameterizedTest
  @MethodSource("names")
  void a_name_is_one_cell_of_the_table(String name) {
    String text = served.get("/api/v1/reports/out-of-compliance", "Accept", "text/csv").text();
    List<CsvRecord> rows = CsvReader.builder().ofCsvRecord(text).stream().toList();
    assertThat(rows).hasSizeGreaterThan(1);
    assertThat(rows).allMatch(row -> row.getFieldCount() == rows.get(0).getFieldCount());
    boolean isFormula = "=+-@".indexOf(name.charAt(0)) >= 0;
    assertThat(rows)
        .filteredOn(row -> row.getField(1).equals(lotOf(name)))
        .isNotEmpty()
        .allMatch(row -> row.getField(2).equals(isFormula ? "'" + name : name));
  }

  @ParameterizedTest
  @ValueSource(strings = {"so\u0000up", "so\nup", "so\u001bup", "so\u0085up"})
  void a_name_that_cannot_be_shown_is_refused(String name) {
    ObjectNode made = JsonNodeFactory.instance.objectNode();
    made.put("food", name).put("category", "soup_or_stew");
    Reply reply = send("/api/v1/lots", made);
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.code()).isEqualTo("control-character");
    assertThat(reply.text()).doesNotContain(name);
  }

  @ParameterizedTest
  @ValueSource(ints = {501, 5000})
  void a_name_too_long_is_refused(int length) {
    ObjectNode made = JsonNodeFactory.instance.objectNode();
    made.put("food", "x".repeat(length)).put("category", "soup_or_stew");
    assertThat(send("/api/v1/lots", made).code()).isEqualTo("too-long");
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_name_is_harmless_as_a_question_too(String name) {
    String encoded = URLEncoder.encode(name, StandardCharsets.UTF_8);
    assertThat(served.get("/api/v1/lots?place=" + encoded).json().at("/items/0/lot").asText())
        .isEqualTo(lotOf(name));
    Reply wrong = served.get("/api/v1/lots?phase=" + encoded);
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.json().at("/problems/0/given").asText()).isNotEmpty();
    ObjectNode question = JsonNodeFactory.instance.objectNode();
    assertThat(send("/api/v1/keeping", question.put("category", name)).status()).isEqualTo(422);
  }
}
