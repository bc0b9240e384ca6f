package chillwright;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.cases.Case;
import chillwright.cases.CaseKitchen;
import chillwright.cases.CaseKitchen.Judged;
import chillwright.cases.CaseKitchen.Outcome;
import chillwright.core.log.LotId;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Verdict;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sample logs are faultless and show what their description promises. */
class SampleLogsTest {
  private static final Path SAMPLES =
      Path.of(System.getProperty("basedir", System.getProperty("user.dir"))).resolve("sample-logs");
  private static final Instant NOW = Instant.parse("2026-11-24T21:00:00Z");

  private static Outcome weeks;

  @BeforeAll
  static void judge_the_weeks() {
    weeks = judged("us-food-code-2022", Optional.empty(), "week-1.csv", "week-2.csv", "week-3.csv");
  }

  @Test
  void no_row_has_a_fault() {
    assertThat(weeks.problems()).isEmpty();
    assertThat(weeks.lots()).hasSizeGreaterThan(60);
    assertThat(judged("us-food-code-2022", Optional.empty(), "places.csv").problems()).isEmpty();
  }

  /** Minutes, degrees and days are in each lot's rows; the limits are those the finding cites. */
  @ParameterizedTest(name = "{0}: {1}, {2}")
  @CsvSource({
    "BS-1102-F, in, served",
    "GR-1103, out, discarded",
    "LS-1106, out, discarded",
    "RC-1107, not-shown, served",
    "ST-1106, in, used-up",
    "RO-1104, in, used-up",
    "RO-1118, out, discarded",
    "EG-1112, out, discarded",
    "PS-1106, in, discarded",
    "SL-1114, out, discarded",
    "TS-1110-R, out, discarded",
    "GS-1111, in, served",
    "MB-1112, in, served",
    "BT-1111-B, not-shown, served",
    "CK-1108, out, discarded",
    "VB-1108, in, frozen",
    "FB-1105, no-rule, frozen",
    "CP-1119, in, frozen",
    "HM-1116, pending, opened",
    "ST-1123, not-shown, chilled",
    "LS-1122, not-shown, cooked",
    "PS-1124, out, time-control",
    "BS-1124, pending, cooling",
    "TS-1121-R, pending, reheating",
    "SL-1124, pending, time-control",
    "VC-1124, pending, chilled",
    "TU-1124, pending, chilled",
  })
  void each_lot_shows_what_it_is_there_for(String lot, String verdict, String phase) {
    Judged judged = weeks.lots().get(new LotId(lot));
    assertThat(worst(judged)).isEqualTo(verdict);
    assertThat(judged.timeline().phase().word()).isEqualTo(phase);
  }

  /** 16 Del. Admin. Code 3-501.16(A)(2), 41 °F, and the older model code's 45 °F and 4 days. */
  @ParameterizedTest(name = "by {0}: {1}")
  @CsvSource({"us-food-code-2022, out", "example-county, pending"})
  void a_county_that_still_says_45_sees_it_otherwise(String ruleSet, String verdict) {
    Outcome outcome = judged(ruleSet, Optional.of("rules"), "county-45.csv");
    assertThat(worst(outcome.lots().get(new LotId("HS-1121")))).isEqualTo(verdict);
  }

  private static Outcome judged(String ruleSet, Optional<String> rules, String... files) {
    Case example =
        new Case(
            "sample logs",
            "an invented kitchen",
            ruleSet,
            rules,
            ZoneId.of("America/Denver"),
            NOW,
            Duration.ZERO,
            joined(files),
            List.of(),
            List.of());
    return CaseKitchen.of(example, SAMPLES).outcome();
  }

  /** The files as one, with the header of the first; all of them have the same. */
  private static String joined(String... files) {
    String rows =
        Stream.of(files)
            .flatMap(file -> lines(file).stream().skip(1))
            .collect(Collectors.joining("\n"));
    return lines(files[0]).get(0) + "\n" + rows + "\n";
  }

  private static List<String> lines(String file) {
    try {
      return Files.readAllLines(SAMPLES.resolve(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String worst(Judged judged) {
    return Assessment.verdict(judged.findings(), NOW).map(Verdict::text).orElse("none");
  }
}
