package chillwright.service;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.ahead.Told;
import chillwright.print.AheadText;
import chillwright.print.Language;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Quality dates of frozen lots by the readings of their freezer. Months: the FoodSafety.gov cold
 * storage chart, soups and stews 2 to 3 months. Shares of life add up (USDA Western Regional
 * laboratory, 1948 on); the figures here are that rule worked by hand with a factor of three for
 * ten degrees Celsius.
 */
class FrozenQualityTest {
  private static final String LOT =
      """
      lot,food,category,when,entry,temperature,how,place
      FR-1,Leek soup,soup_or_stew,2026-03-02T12:00:00Z,prepared,40F,,
      FR-1,,,2026-03-02T13:00:00Z,frozen,,hard,chest freezer
      """;
  private static final String PLACE = "lot,when,entry,temperature,place\n";

  @TempDir Path folder;
  private TestKitchen kitchen;

  @BeforeEach
  void open() {
    kitchen = new TestKitchen(folder.resolve("kitchen.db"));
    kitchen.at("2026-03-20T18:00:00Z");
    kitchen.log(LOT);
  }

  @AfterEach
  void close() {
    kitchen.close();
  }

  private List<String> says(String code) {
    AheadText text = new AheadText(Language.ENGLISH);
    List<Told> told = kitchen.lot(code).frozenLife();
    return told.stream().map(text::says).toList();
  }

  private void read(int day, String temperature, String place) {
    kitchen.log(
        PLACE + ",2026-03-%02dT14:00:00Z,reading,%s,%s\n".formatted(day, temperature, place));
  }

  /** Seven days at 10 °F (-12.2 °C) use 7 * 3^0.578 = 13.2 days at -18 °C, 6.2 more. */
  @Test
  void a_warm_week_moves_the_dates_by_what_it_cost() {
    for (int day = 3; day <= 10; day++) {
      read(day, "10F", "chest freezer");
    }
    assertThat(says("FR-1"))
        .containsExactly(
            "Warm from Tue 3 Mar 2026 08:00 until Tue 10 Mar 2026 09:00.",
            "At its best until Sat 25 Apr 2026 (it was Sat 2 May 2026): the warm spells cost"
                + " 6.2 days; 22 % of that life is used; days left: 36.",
            "Quality fades from Tue 26 May 2026 (it was Tue 2 Jun 2026): the warm spells cost"
                + " 6.2 days; 14 % of that life is used; days left: 67.");
  }

  /** Its printed months are printed for 0 °F, so steady 0 °F costs nothing. */
  @Test
  void a_steady_freezer_costs_nothing() {
    read(3, "0F", "chest freezer");
    read(4, "0F", "chest freezer");
    assertThat(says("FR-1").get(0))
        .contains("until Sat 2 May 2026, as before: no warm spell cost a day");
  }

  /** Nobody looked for nine days, and the answer must not flatter: 9 * (3^0.578 - 1) = 8.0. */
  @Test
  void a_silence_counts_at_the_warmer_of_its_ends() {
    read(3, "10F", "chest freezer");
    read(12, "10F", "chest freezer");
    assertThat(says("FR-1").get(1)).contains("cost 8 days");
  }

  @Test
  void nothing_is_told_of_other_places_of_few_readings_or_of_food_that_was_thawed() {
    read(3, "10F", "other freezer");
    read(4, "10F", "other freezer");
    read(5, "10F", "chest freezer");
    assertThat(says("FR-1")).isEmpty();
    read(6, "10F", "chest freezer");
    assertThat(says("FR-1")).hasSize(3);
    kitchen.log(
        """
        lot,when,entry,temperature,how,place
        FR-1,2026-03-07T12:00:00Z,thawing,,refrigerator,walk-in
        """);
    assertThat(says("FR-1")).isEmpty();
  }

  @Test
  void a_reading_too_warm_to_be_frozen_gives_no_date() {
    read(3, "50F", "chest freezer");
    read(4, "0F", "chest freezer");
    assertThat(says("FR-1").get(1)).contains("cannot be told");
  }

  /** Days at room temperature are a figure of the kitchen's own (common practice, no source). */
  @Test
  void of_food_that_needs_no_cold_its_days_at_room_temperature_count_from_the_warm_day() {
    kitchen.log(
        """
        lot,food,category,when,entry,temperature,how,place
        BAR-1,Seed bars,bar_cookies_cut_and_wrapped,2026-03-02T12:00:00Z,cooked,200F,,
        BAR-1,,,2026-03-02T13:00:00Z,frozen,,hard,chest freezer
        """);
    read(3, "0F", "chest freezer");
    read(5, "45F", "chest freezer");
    read(6, "45F", "chest freezer");
    read(7, "0F", "chest freezer");
    assertThat(says("BAR-1")).hasSize(3);
    assertThat(says("BAR-1").get(0))
        .isEqualTo("Warm from Thu 5 Mar 2026 08:00 until Sat 7 Mar 2026 08:00.");
    assertThat(says("BAR-1").get(1)).contains("on Thu 5 Mar 2026", "a matter of quality");
    assertThat(says("BAR-1").get(2)).contains("nobody has stated");
    kitchen
        .kitchen()
        .setUp()
        .food(
            Map.of(
                "name", "Seed bars", "category", "bar_cookies_cut_and_wrapped", "roomDays", "6"));
    assertThat(says("BAR-1").get(2)).contains("until Wed 11 Mar 2026; days left: 0");
    kitchen.at("2026-03-08T18:00:00Z");
    assertThat(says("BAR-1").get(2)).contains("until Wed 11 Mar 2026; days left: 3");
  }
}
