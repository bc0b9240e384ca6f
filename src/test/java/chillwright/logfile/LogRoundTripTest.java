package chillwright.logfile;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.How;
import chillwright.core.log.Incoming;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What was written is what is read, whatever the order of columns and the texts in the cells. */
class LogRoundTripTest {
  private static final Cells CELLS = new Cells(Instant.parse("2026-12-31T00:00:00Z"));
  private static final List<Word> WORDS = List.of(Word.values());
  private static final String LETTERS = "abc XYZ019,;\"'=+-@éß漢\ud83c\udf72\u00a0.#";

  static IntStream seeds() {
    return IntStream.range(0, 300);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void rows_written_as_csv_are_read_back(int seed) throws IOException {
    SplittableRandom random = new SplittableRandom(seed);
    List<Map<String, String>> rows = new ArrayList<>();
    for (int i = random.nextInt(20); i >= 0; i--) {
      rows.add(row(random));
    }
    List<Incoming> wanted =
        rows.stream().map(row -> CELLS.read(row, Place.line("log.csv", 1))).toList();
    assertThat(wanted).allMatch(Row.class::isInstance);
    List<Incoming> read = new ArrayList<>();
    byte[] file = file(rows, seed).getBytes(StandardCharsets.UTF_8);
    new CsvLog(CELLS).read("log.csv", new ByteArrayInputStream(file), read::add);
    assertThat(read)
        .usingRecursiveFieldByFieldElementComparatorIgnoringFields("where")
        .isEqualTo(wanted);
  }

  private static String file(List<Map<String, String>> rows, int seed) throws IOException {
    List<String> titles = new ArrayList<>(Column.titles());
    Collections.shuffle(titles, new Random(seed));
    StringBuilder text = new StringBuilder(seed % 2 == 0 ? "\ufeff" : "");
    CsvWriter writer = CsvWriter.exact(text);
    writer.write(titles);
    for (Map<String, String> row : rows) {
      writer.write(titles.stream().map(title -> row.getOrDefault(title, "")).toList());
    }
    return text.toString();
  }

  private static Map<String, String> row(SplittableRandom random) {
    Map<String, String> row = new LinkedHashMap<>();
    Word word = WORDS.get(random.nextInt(WORDS.size()));
    row.put("lot", "L-" + random.nextInt(9));
    row.put("entry", word.text());
    row.put("when", moment(random));
    if (word == Word.CORRECTION) {
      row.put("corrects", "e" + random.nextInt(99));
    }
    List<How> hows = How.allowedFor(word).stream().filter(How::isOfFood).toList();
    if (!hows.isEmpty() && random.nextBoolean()) {
      row.put("how", hows.get(random.nextInt(hows.size())).text());
    }
    for (String title : List.of("food", "category", "place", "to", "probe", "by", "note")) {
      maybe(random, row, title, text(random));
    }
    maybe(random, row, "note", "a\r\nb\n" + text(random));
    maybe(random, row, "temperature", degrees(random));
    if (word == Word.READING) {
      row.put("temperature", degrees(random));
    }
    if (word == Word.MOVED) {
      row.put("place", "Shelf " + random.nextInt(9));
    }
    if (word == Word.CORRECTION) {
      row.put("note", text(random) + "why");
    }
    maybe(random, row, "air", degrees(random));
    maybe(random, row, "container", "pan " + random.nextInt(9));
    maybe(random, row, "depth", random.nextInt(1, 24) + (random.nextBoolean() ? "in" : " cm"));
    maybe(random, row, "portions", Integer.toString(random.nextInt(1, 1_000_001)));
    maybe(random, row, "from", "S-" + random.nextInt(9) + " T-" + random.nextInt(9));
    maybe(random, row, "until", random.nextBoolean() ? moment(random) : date(random));
    maybe(random, row, "id", "id." + random.nextInt(999));
    return row;
  }

  private static void maybe(
      SplittableRandom random, Map<String, String> row, String title, String text) {
    if (random.nextBoolean()) {
      row.put(title, text);
    }
  }

  private static String text(SplittableRandom random) {
    StringBuilder text = new StringBuilder();
    LETTERS.codePoints().filter(c -> random.nextBoolean()).forEach(text::appendCodePoint);
    return text.toString();
  }

  private static String moment(SplittableRandom random) {
    long millis = random.nextLong(946_684_800_000L, 1_790_000_000_000L);
    int minutes = random.nextInt(-14 * 60, 14 * 60);
    return Instant.ofEpochMilli(millis)
        .atOffset(ZoneOffset.ofTotalSeconds(minutes * 60))
        .toString();
  }

  private static String date(SplittableRandom random) {
    return LocalDate.ofEpochDay(random.nextInt(11_000, 22_000)).toString();
  }

  private static String degrees(SplittableRandom random) {
    String number = BigDecimal.valueOf(random.nextInt(-7333, 31556), 2).toPlainString();
    return number + List.of("F", "C", " °F", "°C").get(random.nextInt(4));
  }
}
