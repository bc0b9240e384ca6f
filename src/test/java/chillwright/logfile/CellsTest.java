package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.How;
import chillwright.core.log.LotId;
import chillwright.core.log.Mark;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Problem.Where.InFile;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules are those that the format of this project's log files states. */
class CellsTest {
  private static final Instant NOW = Instant.parse("2026-03-02T20:00:00Z");
  private static final Place PLACE = Place.line("log.csv", 7);
  private final Cells cells = new Cells(NOW);

  /** A good row, with the cells given as "column=text" put in; an empty text takes one out. */
  private static Map<String, String> row(String... changes) {
    Map<String, String> row = new HashMap<>();
    row.put("lot", "A-1");
    row.put("when", "2026-03-02T14:05:00Z");
    row.put("entry", "reading");
    row.put("temperature", "40F");
    for (String change : changes) {
      int equals = change.indexOf('=');
      row.put(change.substring(0, equals), change.substring(equals + 1));
    }
    return row;
  }

  private Row read(String... changes) {
    return (Row) cells.read(row(changes), PLACE);
  }

  private List<Problem> problems(String... changes) {
    return ((Misread) cells.read(row(changes), PLACE)).problems();
  }

  private Problem problem(String... changes) {
    List<Problem> problems = problems(changes);
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  private void assertRefused(String column, String code, String... changes) {
    Problem problem = problem(changes);
    assertThat(problem.where()).isEqualTo(new InFile("log.csv", 7, column));
    assertThat(problem.code()).isEqualTo(code);
  }

  @Test
  void every_cell_of_a_full_row_is_kept() {
    Row row =
        read(
            "entry=cooked",
            "food=Barley soup",
            "category=soup_or_stew",
            "temperature=185F",
            "how=roast",
            "place=stove 2",
            "air=22 C",
            "portions=40",
            "from=S-1 S-2",
            "to=the hall",
            "until=2026-03-08",
            "probe=T3",
            "container=full pan",
            "depth=2.50 in",
            "by=mk",
            "note=two pots\nput together",
            "id=e1");
    assertThat(row)
        .isEqualTo(
            new Row(
                new InFile("log.csv", 7, ""),
                Optional.of(new LotId("A-1")),
                Word.COOKED,
                Instant.parse("2026-03-02T14:05:00Z"),
                Optional.of(new EntryId("e1")),
                Optional.of("mk"),
                Optional.of("two pots\nput together"),
                Optional.empty(),
                new Details(
                    Optional.of("Barley soup"),
                    Optional.of("soup_or_stew"),
                    Optional.of(Temperature.fahrenheit(185)),
                    Optional.of(How.ROAST),
                    Optional.of("stove 2"),
                    Optional.of(Temperature.celsius(22)),
                    OptionalInt.of(40),
                    List.of(new LotId("S-1"), new LotId("S-2")),
                    Optional.of("the hall"),
                    Optional.of(new Mark.Day(LocalDate.of(2026, 3, 8))),
                    Optional.of("T3"),
                    Optional.of("full pan"),
                    Depth.read("2.5in"))));
  }

  @Test
  void blank_cells_are_the_same_as_cells_left_out() {
    String chilled = "entry=chilled";
    assertThat(read(chilled, "food= ", "temperature=", "from=\t", "note=\u00a0", "id="))
        .isEqualTo(read(chilled, "temperature="));
    assertThat(read(chilled, "temperature=").details()).isEqualTo(Details.NONE);
  }

  @Test
  void texts_are_trimmed_and_brought_into_normal_form_c() {
    assertThat(read("note=\u00a0 creme bru\u0302le\u0301e ").note())
        .contains("creme br\u00fbl\u00e9e");
  }

  @Test
  void all_faults_of_a_row_are_told_at_once_in_the_order_they_are_looked_at() {
    assertThat(
            problems(
                "lot=A 1",
                "when=yesterday",
                "entry=boiled",
                "temperature=41",
                "air=-300F",
                "portions=none",
                "until=soon",
                "colour=red"))
        .extracting(Problem::code)
        .containsExactly(
            "unknown-column",
            "bad-code",
            "unknown-entry",
            "bad-time",
            "no-scale",
            "out-of-range",
            "bad-portions",
            "bad-time");
  }

  @Test
  void a_misread_row_still_tells_its_lot_and_id() {
    Misread misread = (Misread) cells.read(row("id=e9", "temperature=41"), PLACE);
    assertThat(misread.lot()).contains(new LotId("A-1"));
    assertThat(misread.id()).contains(new EntryId("e9"));
    assertThat(misread.where()).isEqualTo(new InFile("log.csv", 7, ""));
  }

  @Test
  void faults_of_a_request_stand_at_a_json_pointer() {
    Misread misread = (Misread) cells.read(row("temperature=128.5"), Place.object("/entries/0"));
    assertThat(misread.problems())
        .containsExactly(
            new Problem(
                "no-scale",
                new InField("", "/entries/0/temperature"),
                "128.5",
                "a number with at most two decimals and F or C, -100 to 600 °F",
                "The scale is missing. Write 128.5F or 128.5C."));
  }

  @Test
  void an_unknown_column_brings_up_the_one_that_was_meant() {
    assertThat(problem("temprature=41F"))
        .isEqualTo(
            new Problem(
                "unknown-column",
                new InFile("log.csv", 7, "temprature"),
                "temprature",
                "lot, food, category, when, entry, temperature, how, place, air, portions, from,"
                    + " to, until, probe, container, depth, by, note, id, corrects",
                "\"temprature\" is no column of a log. Did you mean temperature?"));
  }

  @ParameterizedTest
  @EnumSource(Word.class)
  void every_entry_word_is_known(Word word) {
    String corrects = word == Word.CORRECTION ? "corrects=e1" : "corrects=";
    String place = word == Word.MOVED ? "place=Walk-in" : "place=";
    assertThat(read("entry=" + word.text(), corrects, place, "note=why").word()).isEqualTo(word);
  }

  @Test
  void an_unknown_entry_word_brings_up_the_one_that_was_meant() {
    assertThat(problem("entry=Chiled").says())
        .isEqualTo("\"Chiled\" is no word for an entry. Did you mean chilled?");
    assertRefused("entry", "unknown-entry", "entry=boiled");
    assertRefused("entry", "missing", "entry=");
  }

  @Test
  void a_time_is_needed_and_bounded_on_both_sides() {
    assertRefused("when", "missing", "when=");
    assertThat(read("when=2000-01-01T00:00:00Z").when())
        .isEqualTo(Instant.parse("2000-01-01T00:00:00Z"));
    assertRefused("when", "too-early", "when=1999-12-31T23:59:59.999Z");
    assertThat(read("when=2026-03-02T20:05:00Z").when()).isAfter(NOW);
    assertRefused("when", "in-the-future", "when=2026-03-02T20:05:00.001Z");
  }

  @Test
  void a_time_without_offset_is_refused_with_the_way_to_put_it_right() {
    assertThat(problem("when=2026-03-02T14:05:00"))
        .isEqualTo(
            new Problem(
                "no-offset",
                new InFile("log.csv", 7, "when"),
                "2026-03-02T14:05:00",
                "date, time and offset from UTC, such as 2026-03-02T14:05:00-05:00 or"
                    + " 2026-03-02T19:05:00Z",
                "The offset from UTC is missing. Add it at the end, such as"
                    + " 2026-03-02T14:05:00-05:00, or Z for UTC."));
    assertRefused("when", "no-such-time", "when=2026-02-30T14:05:00Z");
    assertRefused("when", "bad-time", "when=3/2/2026 14:05");
  }

  /** Offsets of zones in winter and summer: the IANA time zone data, as this Java has it. */
  @ParameterizedTest(name = "{0}: {1} is {2}")
  @CsvSource({
    "America/Denver, 2026-01-15T14:05, 2026-01-15T14:05-07:00, 14:05:00-07:00 or 2026-03-02T21:05",
    "America/Denver, 2026-07-15T14:05, 2026-07-15T14:05-06:00, 14:05:00-07:00 or 2026-03-02T21:05",
    "Asia/Kolkata, 2026-01-15 14:05, 2026-01-15 14:05+05:30, 14:05:00+05:30 or 2026-03-02T08:35",
    "UTC, 2026-01-15T14:05:09, 2026-01-15T14:05:09+00:00, 14:05:00+00:00 or 2026-03-02T14:05"
  })
  void a_fault_shows_a_time_as_the_kitchens_clocks_had_it(
      String zone, String given, String whole, String allowed) {
    Cells own = new Cells(NOW, ZoneId.of(zone));
    Misread read = (Misread) own.read(Map.of("lot", "A", "entry", "reading", "when", given), PLACE);
    Problem problem = read.problems().get(0);
    assertThat(problem.says()).contains("such as " + whole + ", or Z");
    assertThat(problem.allowed()).contains(allowed + ":00Z");
  }

  @ParameterizedTest(name = "{0} with {1}: {2}")
  @CsvSource({
    "reheating, serve-now, true",
    "reheating, microwave, true",
    "reheating, commercial, true",
    "cooked, roast, true",
    "hot-holding, roast, true",
    "thawing, refrigerator, true",
    "thawing, running-water, true",
    "thawing, while-cooking, true",
    "time-control, 4h, true",
    "time-control, 6h, true",
    "received, law-allows, true",
    "action, allowed, true",
    "reheating, allowed, false",
    "frozen, hard, true",
    "reading, crystals, true",
    "reading, soft, true",
    "cooling, roast, false",
    "chilled, hard, false",
    "reading, microwave, false",
    "thawing, 4h, false",
  })
  void how_goes_with_certain_entries_only(String entry, String how, boolean allowed) {
    if (allowed) {
      assertThat(read("entry=" + entry, "how=" + how).details().how())
          .contains(How.ofText(how).orElseThrow());
    } else {
      assertRefused("how", "how-not-for-entry", "entry=" + entry, "how=" + how);
    }
  }

  @Test
  void a_how_that_does_not_fit_is_refused_with_those_that_do() {
    assertThat(problem("entry=time-control", "how=5h"))
        .isEqualTo(
            new Problem(
                "how-not-for-entry",
                new InFile("log.csv", 7, "how"),
                "5h",
                "4h, 6h, or blank",
                "With \"time-control\" goes one of: 4h, 6h; or leave it blank for the ordinary"
                    + " case."));
    assertThat(problem("entry=chilled", "how=fast"))
        .isEqualTo(
            new Problem(
                "how-not-for-entry",
                new InFile("log.csv", 7, "how"),
                "fast",
                "blank",
                "Leave this cell blank for \"chilled\"; put more words in the note."));
    assertRefused("how", "unknown-how", "entry=correction", "note=typo", "corrects=e1", "how=fast");
    assertThat(read("entry=correction", "note=typo", "corrects=e1", "how=4h").details().how())
        .contains(How.FOUR_HOURS);
  }

  @ParameterizedTest
  @ValueSource(strings = {"1", "1000000", "007"})
  void portions_are_a_whole_number_from_1_to_1000000(String text) {
    assertThat(read("entry=served", "portions=" + text).details().portions())
        .hasValue(Integer.parseInt(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "1000001", "-1", "+1", "1.0", "1,000", "many", "00000001", "１"})
  void other_portions_are_refused(String text) {
    assertRefused("portions", "bad-portions", "entry=served", "portions=" + text);
  }

  @Test
  void until_is_a_time_or_a_date() {
    assertThat(read("until=2026-03-08").details().until())
        .contains(new Mark.Day(LocalDate.of(2026, 3, 8)));
    assertThat(read("until=2026-03-08T12:00:00-06:00").details().until())
        .contains(new Mark.Time(Instant.parse("2026-03-08T18:00:00Z")));
    assertThat(read("until=2030-01-01").details().until()).isPresent();
    assertThat(read("until=2000-01-01").details().until()).isPresent();
    assertRefused("until", "too-early", "until=1999-12-31");
    assertRefused("until", "no-offset", "until=2026-03-08T12:00");
    assertRefused("until", "bad-time", "until=March 8");
    assertRefused("until", "bad-time", "until=2026-02-30");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"a", "Z9._-", "1234567890123456789012345678901234567890123456789012345678901234"})
  void codes_are_up_to_64_plain_characters(String code) {
    assertThat(read("lot=" + code, "id=" + code).lot()).contains(new LotId(code));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a b",
        "é",
        "a/b",
        "12345678901234567890123456789012345678901234567890123456789012345"
      })
  void other_codes_are_refused(String code) {
    assertRefused("lot", "bad-code", "lot=" + code);
    assertRefused("id", "bad-code", "id=" + code);
    assertRefused("corrects", "bad-code", "entry=correction", "note=typo", "corrects=" + code);
  }

  @Test
  void a_code_that_can_be_repaired_is_shown_repaired() {
    assertThat(problem("lot=Soup 12").says())
        .isEqualTo(
            "\"Soup 12\" cannot be a code: use letters A-Z, digits, '.', '_' and '-', at most 64."
                + " Perhaps Soup-12?");
  }

  @ParameterizedTest
  @CsvSource({"2in,2in", "2.50 in,2.5in", "5cm,5cm", "10 CM,10cm", "0.2in,0.2in", "24in,24in"})
  void depth_is_kept_as_read(String written, String kept) {
    assertThat(read("depth=" + written).details().depth().map(Depth::cell)).contains(kept);
  }

  @ParameterizedTest
  @ValueSource(strings = {"2", "in", "two in", "0in", "0.1in", "24.1in", "61cm", "2.125in", "5mm"})
  void what_is_no_depth_of_food_is_refused(String written) {
    assertRefused("depth", "bad-depth", "depth=" + written);
  }

  @Test
  void sources_are_codes_separated_by_blanks_each_once() {
    assertThat(read("from=S-1  S-2").details().from())
        .containsExactly(new LotId("S-1"), new LotId("S-2"));
    assertRefused("from", "bad-code", "from=S-1,S-2");
    assertRefused("from", "named-twice", "from=S-1 S-1");
  }

  @ParameterizedTest
  @CsvSource({
    "food,500",
    "category,500",
    "place,500",
    "to,500",
    "probe,500",
    "container,60",
    "by,500",
    "note,2000"
  })
  void texts_have_a_longest_length(String column, int longest) {
    String fits = column + "=" + "x".repeat(longest - 1) + "\ud83c\udf72";
    assertThat(cells.read(row(fits), PLACE)).isInstanceOf(Row.class);
    assertRefused(column, "too-long", fits + "x");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a\u0000b",
        "a\u001b[31mb",
        "a\tb",
        "a\u0085b",
        "a\u007fb",
        "a\u2028b",
        "a\u2029b"
      })
  void control_characters_are_refused_in_every_text(String text) {
    assertRefused("food", "control-character", "food=" + text);
    assertRefused("note", "control-character", "note=" + text);
  }

  @Test
  void a_line_break_may_stand_in_a_note_only() {
    assertThat(read("note=a\r\nb").note()).contains("a\r\nb");
    assertRefused("by", "control-character", "by=a\nb");
  }

  @Test
  void what_is_shown_again_holds_nothing_a_terminal_obeys() {
    assertThat(problem("by=a\u001b[31mb\u0000").given()).isEqualTo("a\\u001b[31mb\\u0000");
    assertThat(problem("entry=" + "x".repeat(300)).given()).isEqualTo("x".repeat(80) + "…");
  }

  @Test
  void half_a_surrogate_pair_is_no_text() {
    assertRefused("by", "not-utf-8", "by=a\ud800b");
    assertRefused("temperature", "not-utf-8", "temperature=41\ud800F");
  }

  @Test
  void a_correction_names_an_entry_and_nothing_else_does() {
    assertThat(read("entry=correction", "note=typo", "corrects=e1").corrects())
        .contains(new EntryId("e1"));
    assertRefused("corrects", "missing", "entry=correction", "note=typo");
    assertRefused("note", "missing", "entry=correction", "corrects=e1");
    assertRefused("note", "missing", "entry=correction", "corrects=e1", "note= ");
    assertRefused("corrects", "only-in-correction", "corrects=e1");
  }

  /** Own rule: a reading that shows nothing would count as a look at the food. */
  @Test
  void a_reading_tells_something() {
    assertRefused("temperature", "reading-empty", "temperature=");
    assertRefused("temperature", "reading-empty", "temperature=", "probe=P2", "note=looked at it");
    assertThat(read("temperature=", "how=hard").details().how()).contains(How.HARD);
    assertThat(read("temperature=", "air=38F").details().air()).isPresent();
  }

  @Test
  void only_a_reading_of_a_place_and_its_correction_need_no_lot() {
    assertThat(read("lot=", "place=walk-in", "temperature=39F").lot()).isEmpty();
    assertThat(read("lot=", "entry=correction", "note=typo", "corrects=e1").lot()).isEmpty();
    assertRefused("place", "missing", "lot=", "temperature=39F");
    assertRefused("temperature", "missing", "lot=", "place=walk-in", "temperature=");
    assertRefused("lot", "missing", "lot=", "entry=chilled", "place=walk-in");
    assertRefused("lot", "missing", "lot=", "food=Soup", "place=walk-in", "temperature=39F");
    assertThat(problems("lot=", "entry=boiled"))
        .extracting(Problem::code)
        .containsExactly("unknown-entry", "missing");
  }
}
