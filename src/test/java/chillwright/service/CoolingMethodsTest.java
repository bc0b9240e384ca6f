package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.learning.Likewise;
import chillwright.core.learning.MethodRecord;
import chillwright.core.learning.MethodRecord.StageRecord;
import chillwright.core.learning.MethodRecord.Standing;
import chillwright.core.log.LotId;
import chillwright.core.measure.Temperature.Scale;
import chillwright.print.CoolingMethodText;
import chillwright.print.Language;
import chillwright.service.CoolingMethods.Asked;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Ways of cooling, as a log shows them. Margins are worked by hand from the limits of FDA Food Code
 * 2022 3-501.14(A): 70 °F within 2 hours of 135 °F, 41 °F within 6 hours in all.
 */
class CoolingMethodsTest {
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,place,air,container,depth\n";

  @TempDir private Path folder;
  private TestKitchen test;

  @BeforeEach
  void open() {
    test = new TestKitchen(folder.resolve("kitchen.db"));
    test.at("2026-03-09T00:00:00Z");
  }

  @AfterEach
  void close() {
    test.close();
  }

  /** Soup at 135 °F at noon in a pan, read at 70 °F and at 41 °F. */
  private static String soup(int day, String food, String depth, String seventy, String fortyOne) {
    String lot = "S" + day + "-" + depth;
    String date = "2026-03-0" + day + "T";
    return lot
        + ","
        + food
        + ",soup_or_stew,"
        + date
        + "12:00:00Z,cooked,135F,stove,,,\n"
        + lot
        + ",,,"
        + date
        + "12:00:00Z,cooling,135F,ice bath,,full pan,"
        + depth
        + "\n"
        + lot
        + ",,,"
        + date
        + seventy
        + ":00Z,reading,70F,Walk-in,38F,,\n"
        + lot
        + ",,,"
        + date
        + fortyOne
        + ":00Z,chilled,41F,walk-in,,,\n";
  }

  private List<MethodRecord> methods() {
    return test.kitchen().coolingMethods().find(Asked.ALL).methods();
  }

  private static Duration minutes(long count) {
    return Duration.ofMinutes(count);
  }

  /** 70 °F after 90, 100 and 110 minutes leaves 30, 20 and 10; 41 °F after 5 h, 5 h 30, 5 h 50. */
  @Test
  void three_coolings_in_time_show_a_way_with_its_worst_margin() {
    test.log(
        HEADER
            + soup(2, "Leek soup", "2in", "13:30", "17:00")
            + soup(3, "leek soup", "2in", "13:40", "17:30")
            + soup(4, "Leek soup", "2in", "13:50", "17:50"));
    MethodRecord way = methods().get(0);
    assertThat(methods()).hasSize(1);
    assertThat(way.standing()).isEqualTo(Standing.SHOWN);
    assertThat(way.made()).isEqualTo(3);
    assertThat(way.method().container()).contains("full pan");
    assertThat(way.method().places()).containsExactly("ice bath", "Walk-in");
    assertThat(way.air()).hasSize(2);
    assertThat(way.stages())
        .extracting(StageRecord::worstMargin)
        .containsExactly(Optional.of(minutes(10)), Optional.of(minutes(10)));
    assertThat(way.stages())
        .extracting(StageRecord::median)
        .containsExactly(Optional.of(minutes(100)), Optional.of(minutes(330)));
  }

  /** 90 °F when the two hours are over misses the first limit; 41 °F after 5 h keeps the second. */
  @Test
  void a_way_that_missed_is_told_with_the_limit_and_apart_from_other_depths() {
    String late =
        soup(5, "Leek soup", "4in", "14:30", "17:00")
            .replace(
                "S5-4in,,,2026-03-05T14:30:00Z",
                "S5-4in,,,2026-03-05T14:00:00Z,reading,90F,"
                    + "Walk-in,38F,,\nS5-4in,,,2026-03-05T14:30:00Z");
    test.log(HEADER + soup(2, "Leek soup", "2in", "13:30", "17:00") + late);
    List<MethodRecord> found = methods();
    assertThat(found)
        .extracting(MethodRecord::standing)
        .containsExactly(Standing.TOO_FEW, Standing.MISSED);
    assertThat(found.get(1).stages()).extracting(StageRecord::missed).containsExactly(1, 0);
    assertThat(found.get(1).stages().get(0).worstMargin()).contains(minutes(-30));
  }

  /** Nobody looked between 12:00 and 15:00: neither in nor out can be shown, so it counts apart. */
  @Test
  void a_cooling_that_is_not_shown_counts_neither_way() {
    test.log(HEADER + soup(2, "Leek soup", "2in", "15:00", "17:00"));
    MethodRecord way = methods().get(0);
    assertThat(way.runs()).isZero();
    assertThat(way.notShown()).isEqualTo(1);
    assertThat(way.standing()).isEqualTo(Standing.TOO_FEW);
    assertThat(way.stages()).isEmpty();
  }

  /**
   * James and James, Meat Refrigeration (2002), table 16.7, a 3.75 kg packed roast: in water 70,
   * 50, 12, 8 and 5 °C at 0, 1.5, 5.7, 6.9 and 8.5 h; in air of 1 m/s at 0, 1.5, 5.7, 8.1 and 10.3
   * h. Held against 57 °C to 5 °C within 6 h (3-501.14(A)): read at 57 °C or more at 0 h and below
   * it at 1.5 h, the roast in air was still at 8 °C 6.6 h after the latest start, so it missed;
   * that in water at 5.4 h was not, and its 8.5 h are not within 6 either, so nothing is shown.
   */
  @Test
  void a_published_series_put_in_as_a_log_is_told_as_it_was() {
    test.log(
        HEADER
            + roast("W", "water", "1C", "07:30", "11:42", "12:54", "14:30")
            + roast("A", "chill air", "1C", "07:30", "11:42", "14:06", "16:18"));
    List<MethodRecord> found = methods();
    assertThat(found)
        .extracting(record -> record.method().places().get(0))
        .containsExactly("chill air", "water");
    assertThat(found.get(0).missed()).isEqualTo(1);
    assertThat(found.get(0).stages()).extracting(StageRecord::missed).containsExactly(0, 1);
    assertThat(found.get(0).stages().get(1).worstMargin()).contains(minutes(-258));
    assertThat(found.get(1).notShown()).isEqualTo(1);
  }

  private static String roast(
      String lot, String place, String air, String at50, String at12, String at8, String at5) {
    String date = "2026-03-02T";
    return lot
        + ",Beef roast,cooked_meat_plain,"
        + date
        + "06:00:00Z,cooked,70C,oven,,,\n"
        + lot
        + ",,,"
        + date
        + "06:00:00Z,cooling,70C,"
        + place
        + ","
        + air
        + ",bag,\n"
        + lot
        + ",,,"
        + date
        + at50
        + ":00Z,reading,50C,,,,\n"
        + lot
        + ",,,"
        + date
        + at12
        + ":00Z,reading,12C,,,,\n"
        + lot
        + ",,,"
        + date
        + at8
        + ":00Z,reading,8C,,,,\n"
        + lot
        + ",,,"
        + date
        + at5
        + ":00Z,chilled,5C,,,,\n";
  }

  @Test
  void coolings_of_another_period_and_food_are_left_out() {
    test.log(HEADER + soup(2, "Leek soup", "2in", "13:30", "17:00"));
    Instant later = Instant.parse("2026-03-02T18:00:00Z");
    CoolingMethods asked = test.kitchen().coolingMethods();
    assertThat(asked.find(of(Optional.empty(), Optional.of(later))).methods()).isEmpty();
    assertThat(asked.find(of(Optional.of("chili"), Optional.empty())).methods()).isEmpty();
    assertThat(asked.find(of(Optional.of("LEEK SOUP"), Optional.empty())).methods()).hasSize(1);
  }

  private static Asked of(Optional<String> food, Optional<Instant> from) {
    return new Asked(food, Optional.empty(), from, Optional.empty());
  }

  /**
   * A fourth soup stands in the same pan and place. The three before it left 30, 10 and, missed, no
   * time; another depth tells nothing of it. 41 °F after 5 h and 5 h 50 leaves 60 and 10 minutes.
   */
  @Test
  void a_cooling_is_told_how_those_went_that_began_as_it_did() {
    String late =
        soup(5, "Leek soup", "2in", "14:30", "17:00")
            .replace(
                "S5-2in,,,2026-03-05T14:30:00Z",
                "S5-2in,,,2026-03-05T14:00:00Z,reading,90F,"
                    + "ice bath,38F,,\nS5-2in,,,2026-03-05T14:30:00Z");
    String begun =
        """
        NOW,leek soup,soup_or_stew,2026-03-08T23:00:00Z,cooked,135F,stove,,,
        NOW,,,2026-03-08T23:00:00Z,cooling,135F,Ice bath,,Full pan,2in
        NOW,,,2026-03-08T23:30:00Z,reading,110F,,,,
        """;
    test.log(
        HEADER
            + soup(2, "Leek soup", "2in", "13:30", "17:00")
            + soup(3, "Leek soup", "2in", "13:50", "17:50")
            + soup(4, "Leek soup", "4in", "13:30", "17:00")
            + late
            + begun);
    LotView view = test.kitchen().lots().lot(new LotId("NOW")).orElseThrow();
    assertThat(test.kitchen().coolingMethods().like(view))
        .contains(new Likewise(2, 1, 0, Optional.of(minutes(10))));
    LotView over = test.kitchen().lots().lot(new LotId("S2-2in")).orElseThrow();
    assertThat(test.kitchen().coolingMethods().like(over)).isEmpty();
    Likewise found = new Likewise(2, 1, 0, Optional.of(minutes(10)));
    assertThat(new CoolingMethodText(Scale.FAHRENHEIT, Language.ENGLISH).says(found))
        .contains("that began this way: 3. In time: 2 (at the least 10 min to spare)")
        .contains("missed a limit: 1");
  }
}
