package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvWriterTest {
  private static String exact(String... cells) throws IOException {
    StringBuilder out = new StringBuilder();
    CsvWriter.exact(out).write(List.of(cells));
    return out.toString();
  }

  private static String forSpreadsheets(String cell) throws IOException {
    StringBuilder out = new StringBuilder();
    CsvWriter.forSpreadsheets(out).write(List.of("x", cell));
    return out.toString();
  }

  /** RFC 4180 section 2, rules 1, 5, 6 and 7. */
  @Test
  void rows_are_written_as_rfc_4180_has_it() throws IOException {
    assertThat(exact("aaa", "bbb", "ccc")).isEqualTo("aaa,bbb,ccc\r\n");
    assertThat(exact("aaa", "b\r\nbb", "ccc")).isEqualTo("aaa,\"b\r\nbb\",ccc\r\n");
    assertThat(exact("aaa", "b\"bb", "ccc")).isEqualTo("aaa,\"b\"\"bb\",ccc\r\n");
    assertThat(exact("a,b", " c", "d ")).isEqualTo("\"a,b\",\" c\",\"d \"\r\n");
    assertThat(exact("", "", "")).isEqualTo(",,\r\n");
  }

  @Test
  void a_row_of_one_blank_cell_is_no_blank_line() throws IOException {
    assertThat(exact("")).isEqualTo("\"\"\r\n");
    assertThatThrownBy(() -> exact()).isInstanceOf(IllegalArgumentException.class);
  }

  /** Unicode Standard, section 5.8: what a reader may take for the end of a line. */
  @ParameterizedTest
  @ValueSource(ints = {0x0B, 0x0C, 0x85, 0x2028, 0x2029})
  void nothing_but_a_row_ends_a_line(int breaker) throws IOException {
    String cell = "Ana" + (char) breaker + "=1+1";
    assertThat(forSpreadsheets(cell)).isEqualTo("x,Ana =1+1\r\n");
    assertThat(forSpreadsheets((char) breaker + "=1")).isEqualTo("x,' =1\r\n");
    assertThat(exact(cell)).isEqualTo(cell + "\r\n");
  }

  /** OWASP, "CSV Injection": cells that begin with =, +, -, @, tab, carriage return, line feed. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "\t=1",
        "\r=1",
        "\n=1",
        "＝1",
        "＋1",
        "－1",
        "＠A",
        "-4 °F+A1",
        "'=1",
        "''+1"
      })
  void a_formula_becomes_text(String cell) throws IOException {
    assertThat(forSpreadsheets(cell)).matches("(?s)x,\"?'.*").contains("'" + cell);
  }

  @ParameterizedTest
  @ValueSource(strings = {"soup", "41 °F", "-4 °F", "-18.5 °C", "'tis", "'-4 °F", "a=b", "a-b", ""})
  void other_cells_stay_as_they_are(String cell) throws IOException {
    assertThat(forSpreadsheets(cell)).isEqualTo("x," + cell + "\r\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "=1+1",
        "-20 freezer",
        "@SUM(A1)",
        "soup",
        "'tis",
        "-4 °F",
        "'=1",
        "''=1",
        "'",
        "''",
        "'-4 °F",
        "'＝1"
      })
  void what_was_made_text_for_a_spreadsheet_is_read_as_it_was(String cell) throws IOException {
    String shown = forSpreadsheets(cell);
    String written = shown.substring(2, shown.length() - 2);
    assertThat(CsvWriter.unguarded(written)).isEqualTo(cell);
    String readBack = exact("x", cell);
    assertThat(CsvWriter.unguarded(readBack.substring(2, readBack.length() - 2))).isEqualTo(cell);
  }

  @Test
  void a_file_that_is_read_back_keeps_its_cells() throws IOException {
    assertThat(exact("-4 °C", "=x")).isEqualTo("-4 °C,=x\r\n");
  }

  @Test
  void a_formula_with_quotes_is_still_one_cell() throws IOException {
    assertThat(forSpreadsheets("=HYPERLINK(\"http://example.org\",\"x\")"))
        .isEqualTo("x,\"'=HYPERLINK(\"\"http://example.org\"\",\"\"x\"\")\"\r\n");
  }
}
