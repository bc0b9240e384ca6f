package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.core.log.Row;
import chillwright.core.measure.Temperature;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvLogTest {
  private static final String T = "2026-03-02T14:05:00Z";
  private static final String HEADER = "lot,when,entry,temperature,note\n";
  private final CsvLog csv = new CsvLog(new Cells(Instant.parse("2026-03-02T20:00:00Z")));

  private List<Incoming> read(byte[] bytes) throws IOException {
    List<Incoming> rows = new ArrayList<>();
    csv.read("log.csv", new ByteArrayInputStream(bytes), rows::add);
    return rows;
  }

  private List<Incoming> read(String text) throws IOException {
    return read(text.getBytes(StandardCharsets.UTF_8));
  }

  private static List<Problem> problems(List<Incoming> rows) {
    return rows.stream()
        .filter(Misread.class::isInstance)
        .flatMap(row -> ((Misread) row).problems().stream())
        .toList();
  }

  private List<String> notes(String text) throws IOException {
    return read(text).stream().map(row -> ((Row) row).note().orElse("")).toList();
  }

  private static InFile at(long line, String column) {
    return new InFile("log.csv", line, column);
  }

  /** RFC 4180 section 2, rules 1 and 2: CR LF ends a row, the last one may lack it. */
  @ParameterizedTest
  @ValueSource(strings = {"\r\n", "\n", "\r"})
  void rows_end_with_any_line_break_and_the_last_may_lack_it(String end) throws IOException {
    String file = String.join(end, "lot,when,entry", "A," + T + ",chilled", "B," + T + ",frozen");
    for (String text : List.of(file, file + end, file + end + end)) {
      assertThat(read(text))
          .extracting(row -> ((Row) row).where())
          .containsExactly(at(2, ""), at(3, ""));
    }
  }

  /** RFC 4180 section 2, rule 5: fields may be in double quotes or not. */
  @Test
  void cells_may_be_in_quotes() throws IOException {
    assertThat(read("\"lot\",\"when\",\"entry\"\r\n\"A\",\"" + T + "\",\"chilled\"\r\n"))
        .singleElement()
        .isInstanceOf(Row.class);
  }

  /** RFC 4180 section 2, rule 6: line breaks, double quotes and commas inside quotes. */
  @Test
  void a_quoted_cell_may_hold_commas_and_line_breaks() throws IOException {
    assertThat(notes(HEADER + "A," + T + ",chilled,,\"b\r\nbb, and c\"\n"))
        .containsExactly("b\r\nbb, and c");
  }

  /** RFC 4180 section 2, rule 7: a double quote inside quotes is doubled. */
  @Test
  void a_doubled_quote_is_a_quote() throws IOException {
    assertThat(notes(HEADER + "A," + T + ",chilled,,\"b\"\"bb\"\n")).containsExactly("b\"bb");
  }

  /** RFC 4180 section 2, rule 5 has no quotes in plain cells; they are taken as they stand. */
  @Test
  void a_quote_inside_a_plain_cell_is_kept() throws IOException {
    assertThat(notes(HEADER + "A," + T + ",chilled,,the 12\" pan\n"))
        .containsExactly("the 12\" pan");
  }

  /** RFC 4180 section 2, rule 4: spaces are part of a field; around ours they mean nothing. */
  @Test
  void columns_stand_in_any_order_with_blanks_around() throws IOException {
    Row row = (Row) read("entry , temperature,when,lot\nreading, 41 F ," + T + ", A\n").get(0);
    assertThat(row.lot()).contains(new LotId("A"));
    assertThat(row.details().temperature()).contains(Temperature.fahrenheit(41));
  }

  @Test
  void a_byte_order_mark_is_skipped() throws IOException {
    assertThat(read("\ufeff" + HEADER + "A," + T + ",chilled,,\n"))
        .isEqualTo(read(HEADER + "A," + T + ",chilled,,\n"));
  }

  @Test
  void blank_lines_and_lines_of_blank_cells_are_skipped_but_counted() throws IOException {
    assertThat(read("\n" + HEADER + "\n,,,,\n   \n\"\",,,,\nA," + T + ",chilled,,\n\n"))
        .extracting(row -> ((Row) row).where())
        .containsExactly(at(7, ""));
  }

  @Test
  void lines_are_those_of_the_file_also_after_a_cell_of_several_lines() throws IOException {
    List<Incoming> rows =
        read(
            HEADER
                + ("A," + T + ",reading,135F,\"one\ntwo\r\nthree\"\n")
                + ("A," + T + ",reading,135,\n"));
    assertThat(((Row) rows.get(0)).where()).isEqualTo(at(2, ""));
    assertThat(problems(rows)).extracting(Problem::where).containsExactly(at(5, "temperature"));
  }

  @Test
  void a_header_alone_is_a_log_without_rows() throws IOException {
    assertThat(read(HEADER)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n\n", "\ufeff", "  \n"})
  void an_empty_file_is_refused(String text) throws IOException {
    assertThat(problems(read(text)))
        .containsExactly(
            new Problem(
                "empty-file",
                at(1, ""),
                "",
                "a header row: lot,food,category,when,entry,temperature,how,place,air,portions,"
                    + "from,to,until,probe,container,depth,by,note,id,corrects",
                "This file is empty. Its first row names the columns."));
  }

  @Test
  void all_faults_of_a_header_are_told_at_once() throws IOException {
    List<Incoming> rows = read("lot,when,lot,temp,,entry\nA," + T + ",,,,boiled\n");
    assertThat(problems(rows))
        .extracting(Problem::code, Problem::where)
        .containsExactly(
            tuple("column-twice", at(1, "lot")),
            tuple("unknown-column", at(1, "temp")),
            tuple("unnamed-column", at(1, "")),
            tuple("unknown-entry", at(2, "entry")));
    assertThat(((Misread) rows.get(0)).wholeFile()).isTrue();
  }

  @Test
  void a_column_that_every_row_needs_must_be_there() throws IOException {
    assertThat(problems(read("food,when\nSoup," + T + "\n")))
        .extracting(Problem::code, Problem::where)
        .containsExactly(
            tuple("missing-column", at(1, "lot")), tuple("missing-column", at(1, "entry")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"lot;when;entry\nA;" + T + ";chilled\n", "lot\twhen\tentry\n"})
  void other_separators_are_named(String text) throws IOException {
    assertThat(problems(read(text)))
        .extracting(Problem::code, Problem::says)
        .containsExactly(
            tuple(
                "wrong-separator",
                "The columns of this file are not separated by commas. Save it again with"
                    + " commas."));
  }

  @Test
  void a_row_with_more_or_fewer_cells_than_the_header_is_refused() throws IOException {
    List<Incoming> rows =
        read(HEADER + "A," + T + ",reading,53,6 C,\nB," + T + ",chilled\nC," + T + ",chilled,,\n");
    assertThat(problems(rows))
        .containsExactly(
            new Problem(
                "cell-count",
                at(2, ""),
                "6 cells",
                "5 cells",
                "This row has 6 cells, but the header has 5 columns. A cell that holds a comma"
                    + " goes between double quotes."),
            new Problem(
                "cell-count",
                at(3, ""),
                "3 cells",
                "5 cells",
                "This row has 3 cells, but the header has 5 columns. A blank cell still needs its"
                    + " comma."));
    assertThat(((Misread) rows.get(1)).lot()).contains(new LotId("B"));
    assertThat(rows.get(2)).isInstanceOf(Row.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"never closed\nB,x,y,z,\n", "\"closed\" and more\n", "\"", "\"a\"\"\n"})
  void a_quote_that_is_not_closed_ends_the_reading(String cell) throws IOException {
    List<Incoming> rows = read(HEADER + "A," + T + ",chilled,,\nA," + T + ",reading,41F," + cell);
    assertThat(rows.get(0)).isInstanceOf(Row.class);
    assertThat(problems(rows))
        .containsExactly(
            new Problem(
                "broken-quotes",
                at(3, "note"),
                "",
                "a cell in double quotes, with each double quote inside it doubled",
                "The quotation mark that begins this cell is not closed, or something follows the"
                    + " one that closes it. The rows after this one were not read."));
    assertThat(((Misread) rows.get(1)).wholeFile()).isTrue();
  }

  @Test
  void a_quote_that_is_not_closed_in_a_large_file_does_not_fill_the_memory() throws IOException {
    String many = ("B," + T + ",chilled,,\n").repeat(10_000);
    assertThat(problems(read(HEADER + "A," + T + ",reading,41F,\"open\n" + many)))
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("broken-quotes", at(2, "note")));
  }

  @Test
  void bytes_that_are_no_utf_8_are_refused_where_they_stand() throws IOException {
    String text = HEADER + "A," + T + ",reading,41°F,\nA," + T + ",reading,42°F,crème\n";
    assertThat(problems(read(text.getBytes(Charset.forName("windows-1252")))))
        .extracting(Problem::code, Problem::where, Problem::given)
        .containsExactly(
            tuple("not-utf-8", at(2, "temperature"), "41\ufffdF"),
            tuple("not-utf-8", at(3, "temperature"), "42\ufffdF"),
            tuple("not-utf-8", at(3, "note"), "cr\ufffdme"));
  }

  @Test
  void the_replacement_character_itself_is_text() throws IOException {
    assertThat(notes(HEADER + "A," + T + ",chilled,,\ufffd\n")).containsExactly("\ufffd");
    assertThat(notes(HEADER + "A," + T + ",chilled,,\ud800\udc00\n"))
        .containsExactly("\ud800\udc00");
  }

  @Test
  void a_file_in_utf_16_is_named() throws IOException {
    String text = "\ufeff" + HEADER;
    for (Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
      assertThat(problems(read(text.getBytes(charset))))
          .extracting(Problem::code, Problem::says)
          .containsExactly(tuple("not-utf-8", "This file is in UTF-16. Save it as \"CSV UTF-8\"."));
    }
  }

  @Test
  void several_files_are_one_log(@TempDir Path folder) throws IOException {
    Path one = Files.writeString(folder.resolve("1.csv"), HEADER + "A," + T + ",chilled,,\n");
    Path two = Files.writeString(folder.resolve("2.csv"), "entry,lot,when\nfrozen,A," + T + "\n");
    assertThat(csv.readAll(LogFile.of(List.of(one, two))))
        .extracting(row -> ((Row) row).where())
        .containsExactly(new InFile(one.toString(), 2, ""), new InFile(two.toString(), 2, ""));
    assertThatThrownBy(() -> csv.readAll(LogFile.of(List.of(folder.resolve("3.csv")))))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void a_broken_disk_is_told_as_such() {
    InputStream broken =
        new InputStream() {
          @Override
          public int read() throws IOException {
            throw new IOException("broken");
          }

          @Override
          public int read(byte[] into, int offset, int length) throws IOException {
            throw new IOException("broken");
          }
        };
    assertThatThrownBy(() -> csv.read("log.csv", broken, row -> {}))
        .isInstanceOf(IOException.class)
        .hasMessage("broken");
  }

  /** A header and many rows, made as they are read. */
  private static final class LongFile extends InputStream {
    private final byte[] row = ("A," + T + ",reading,41F,\n").getBytes(StandardCharsets.UTF_8);
    private byte[] line = HEADER.getBytes(StandardCharsets.UTF_8);
    private int at;
    private int rows;
    private final int most;

    LongFile(int most) {
      this.most = most;
    }

    @Override
    public int read() {
      if (at == line.length) {
        if (rows == most) {
          return -1;
        }
        rows++;
        line = row;
        at = 0;
      }
      return line[at++];
    }

    @Override
    public int read(byte[] into, int offset, int length) {
      int count = 0;
      for (int next = read(); next >= 0; next = read()) {
        into[offset + count++] = (byte) next;
        if (count == length) {
          break;
        }
      }
      return count == 0 ? -1 : count;
    }
  }

  /** A log that is larger than what is kept of it: rows are handed on while the file is read. */
  @Test
  void rows_are_handed_on_one_by_one() throws IOException {
    AtomicInteger rows = new AtomicInteger();
    LongFile file = new LongFile(200_000);
    csv.read(
        "log.csv",
        file,
        row -> {
          if (rows.incrementAndGet() == 1) {
            assertThat(file.rows).isLessThan(10_000);
          }
        });
    assertThat(rows).hasValue(200_000);
  }
}
