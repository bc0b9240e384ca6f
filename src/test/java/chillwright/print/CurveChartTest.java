package chillwright.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Elapsed;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Verdict;
import chillwright.logfile.Cells;
import chillwright.logfile.Place;
import chillwright.print.CurveChart.Line;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The picture of a curve, held against proportion alone: a plane has no other source. */
class CurveChartTest {
  private static final ZoneId ZONE = ZoneId.of("America/Denver");
  private static final Instant START = Instant.parse("2026-11-25T17:00:00Z");

  private static LogEntry reading(long minutes, String temperature) {
    Instant at = START.plusSeconds(60 * minutes);
    Row row =
        (Row)
            new Cells(at)
                .read(
                    Map.of(
                        "lot",
                        "A",
                        "entry",
                        "reading",
                        "when",
                        at.toString(),
                        "temperature",
                        temperature),
                    Place.object(""));
    return new LogEntry(
        new EntryId("e" + minutes),
        Word.READING,
        at,
        at,
        row.by(),
        row.note(),
        row.corrects(),
        row.details());
  }

  private static CurveChart chart(LogEntry... readings) {
    return CurveChart.of(
            List.of(readings), List.of(), Times.kept(ZONE, Language.ENGLISH), Scale.FAHRENHEIT)
        .orElseThrow();
  }

  @Test
  void readings_stand_in_proportion_to_their_times_and_degrees() {
    CurveChart chart = chart(reading(0, "140F"), reading(60, "90F"), reading(120, "40F"));
    List<CurveChart.Dot> dots = chart.dots();
    assertThat(dots).hasSize(3);
    assertThat(dots.get(1).x()).isCloseTo((dots.get(0).x() + dots.get(2).x()) / 2, within(0.01));
    assertThat(dots.get(1).y()).isCloseTo((dots.get(0).y() + dots.get(2).y()) / 2, within(0.01));
    assertThat(dots.get(0).y()).isLessThan(dots.get(2).y());
    assertThat(chart.strokes()).filteredOn(s -> s.line() == Line.CURVE).hasSize(2);
  }

  @Test
  void both_scales_draw_the_same_picture() {
    assertThat(chart(reading(0, "140F"), reading(60, "41F")).dots())
        .isEqualTo(chart(reading(0, "60C"), reading(60, "5C")).dots());
  }

  @Test
  void times_are_those_of_the_kitchens_zone() {
    assertThat(chart(reading(0, "140F"), reading(120, "40F")).labels())
        .extracting(CurveChart.Label::text)
        .contains("10:00", "12:00", "Wed 25 Nov 2026");
  }

  @Test
  void a_long_silence_begins_another_picture() {
    CurveChart chart =
        chart(reading(0, "140F"), reading(60, "90F"), reading(2000, "165F"), reading(2060, "70F"));
    assertThat(chart.dots()).hasSize(2);
  }

  @Test
  void one_reading_makes_no_picture_and_two_equal_ones_do() {
    assertThat(
            CurveChart.of(
                List.of(reading(0, "140F")),
                List.of(),
                Times.kept(ZONE, Language.ENGLISH),
                Scale.FAHRENHEIT))
        .isEmpty();
    assertThat(chart(reading(0, "38F"), reading(30, "38F")).dots()).hasSize(2);
  }

  @Test
  void every_point_lies_on_the_plane() {
    CurveChart chart = chart(reading(0, "190F"), reading(1, "-10F"), reading(700, "41F"));
    assertThat(chart.dots())
        .allSatisfy(
            dot -> {
              assertThat(dot.x()).isBetween(0.0, CurveChart.WIDTH);
              assertThat(dot.y()).isBetween(0.0, CurveChart.HEIGHT);
            });
  }

  @Test
  void a_short_picture_has_times_too() {
    assertThat(chart(reading(3, "38F"), reading(12, "38F")).labels())
        .filteredOn(label -> label.anchor() == CurveChart.Anchor.MIDDLE)
        .extracting(CurveChart.Label::text)
        .contains("10:04", "10:12");
  }

  /** FDA Food Code 2022, 3-501.16(A)(2): held at 5 °C (41 °F) or below. */
  @Test
  void what_is_held_stands_against_its_limit() throws BrokenRules {
    Rule rule =
        RuleLibrary.load(Optional.empty())
            .ruleBook("us-food-code-2022")
            .orElseThrow()
            .on(LocalDate.of(2026, 11, 25))
            .rule(Occasion.COLD_HOLDING)
            .orElseThrow();
    List<LogEntry> read = List.of(reading(0, "38F"), reading(30, "39F"), reading(60, "38F"));
    Finding held =
        new Finding(
            rule,
            new LotId("A"),
            START,
            START,
            Verdict.IN,
            Optional.empty(),
            Elapsed.UNKNOWN,
            Optional.empty(),
            List.of(read.get(0).id(), read.get(2).id()),
            List.of());
    CurveChart chart =
        CurveChart.of(read, List.of(held), Times.kept(ZONE, Language.ENGLISH), Scale.FAHRENHEIT)
            .orElseThrow();
    assertThat(chart.labels()).extracting(CurveChart.Label::text).contains("\u2264 41 \u00b0F");
    List<CurveChart.Stroke> limit =
        chart.strokes().stream().filter(s -> s.line() == Line.LIMIT).toList();
    assertThat(limit).hasSize(1);
    assertThat(limit.get(0).x1()).isCloseTo(chart.dots().get(0).x(), within(0.01));
    assertThat(limit.get(0).x2()).isCloseTo(chart.dots().get(2).x(), within(0.01));
    assertThat(limit.get(0).y1()).isLessThan(chart.dots().get(1).y());
  }

  /**
   * Words 15 units high are some 9 units a letter wide; a phone of 360 points shows 328 of them.
   */
  @Test
  void a_narrow_picture_fits_a_phone_and_its_times_do_not_run_into_each_other() {
    CurveChart chart =
        CurveChart.of(
                List.of(reading(0, "140F"), reading(395, "41F")),
                List.of(),
                Times.kept(ZONE, Language.ENGLISH),
                Scale.FAHRENHEIT,
                CurveChart.NARROW)
            .orElseThrow();
    assertThat(chart.width()).isLessThanOrEqualTo(360);
    assertThat(chart.dots()).allSatisfy(dot -> assertThat(dot.x()).isBetween(0.0, 360.0));
    List<CurveChart.Label> ticks =
        chart.labels().stream().filter(l -> l.anchor() == CurveChart.Anchor.MIDDLE).toList();
    assertThat(ticks).hasSizeGreaterThan(1);
    for (int i = 1; i < ticks.size(); i++) {
      assertThat(ticks.get(i).x() - ticks.get(i - 1).x())
          .isGreaterThan(9.0 * ticks.get(i).text().length());
    }
  }
}
