package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Raw food that thaws in a plan. */
class PlanThawingTest {
  private static final String BIRD = "/plans/feast";

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/plans");
    visit.submit("/plans", "name", "Feast", "serving", "2026-03-20T18:00", "guests", "12");
    visit.open(BIRD);
    visit.submit(BIRD + "/kitchen", "has/oven", "1", "has/hands", "1", "has/refrigerator", "90");
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply bird(String... more) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("token", visit.token());
    form.put("dish", "Whole bird");
    form.put("category", "raw_poultry_whole");
    form.put("route", "fresh");
    form.put("make/0/step", "thaw in the larder");
    form.put("make/0/minutes", "900");
    form.put("make/1/step", "roast");
    form.put("make/1/minutes", "240");
    form.put("make/1/uses/oven", "1");
    for (int i = 0; i < more.length; i += 2) {
      form.put(more[i], more[i + 1]);
    }
    return visit.submit(BIRD + "/dishes", form);
  }

  /** The shortest printed times of a bird of 14 lb in a refrigerator are beyond 24 hours. */
  @Test
  void a_length_with_its_unit_comes_back_as_typed_and_no_other_unit_is_guessed() {
    Reply asked =
        bird(
            "dish", "14 lb bird",
            "make/0/step", "thaw in the refrigerator",
            "make/0/minutes", "24 h",
            "make/1/minutes", "4 h");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("Only 24 h to thaw?", "value=\"24 h\"", "value=\"4 h\"")
        .doesNotContain("1440 h", "value=\"1440\"", "value=\"240\"");
    Reply refused = bird("category", "", "make/0/minutes", "72 h", "make/1/minutes", "4 h");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("value=\"72 h\"", "value=\"4 h\"");
  }

  /** USDA FSIS, The Big Thaw: never on a counter; cold water changed every 30 minutes. */
  @Test
  void raw_food_that_thaws_bears_its_caution_on_page_form_and_sheet() throws IOException {
    assertThat(bird().status()).isEqualTo(303);
    String page = visit.open(BIRD).text();
    assertThat(page.split("Thawing: never at room temperature", -1)).hasSize(3);
    assertThat(page)
        .contains(
            "24 hours for each 4 to 5 lb",
            "take it out a day sooner",
            "within 1 to 2 days",
            "every 30 minutes")
        .contains("Whole bird, thaw in the larder: is this in the refrigerator?")
        .contains(">Is this in the refrigerator?<");
    byte[] sheet = served.get(BIRD + "/sheet.pdf").response().body();
    try (PDDocument pdf = Loader.loadPDF(sheet)) {
      assertThat(new PDFTextStripper().getText(pdf).replaceAll("\\s+", " "))
          .contains("Thawing: never at room temperature", "thaw in the larder: is this in the");
    }
  }

  /**
   * USDA FSIS, The Big Thaw: 24 hours for each 5 lb in a refrigerator, 30 minutes a pound in cold
   * water; four hours a pound is the shortest advice of shops.
   */
  @Test
  void a_thaw_that_can_hardly_be_is_asked_about_at_its_field() {
    Reply asked = bird("make/0/step", "thaw in the refrigerator", "make/0/minutes", "72");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .contains("<a href=\"#d0-make-0-minutes\">", "Only 1 h 12 min to thaw?", "less than 4 h")
        .contains("If 72 hours are meant, write 72 h", "name=\"sure\"");
    assertThat(visit.open(BIRD).text()).contains("No dish yet");
    String[] meant = {"make/0/step", "thaw in the refrigerator", "make/0/minutes", "72 h"};
    assertThat(bird(meant).status()).isEqualTo(303);
    String[] weighed = {"make/0/step", "thaw 20 lb in the refrigerator", "make/0/minutes", "95 h"};
    assertThat(bird(with(weighed, "was", "Whole bird")).text()).contains("less than 96 h");
    String[] water = {"make/0/step", "thaw 20 lb in cold water", "make/0/minutes", "10 h"};
    assertThat(bird(with(water, "was", "Whole bird")).status()).isEqualTo(303);
  }

  /**
   * USDA FSIS, The Big Thaw: 24 hours for each 5 lb, which the ingredients may tell; a federal meat
   * hotline: from frozen about 1.5 times as long. Minutes for hours: common practice, no source.
   */
  @Test
  void a_bird_that_is_hardly_thawed_or_cooked_is_asked_about() {
    String[] cold = {"make/0/step", "thaw in fridge", "make/0/minutes", "12 h"};
    assertThat(bird(with(cold, "ingredients", "1 frozen turkey 12 lb")).text())
        .contains("Only 12 h to thaw?", "hardly thaws in less than 57 h");
    Reply hurried = bird("make/1/minutes", "4");
    assertThat(hurried.text())
        .contains("<a href=\"#d0-make-1-minutes\">", "Only 4 minutes for “roast”?", "write 4 h");
    String tick = hurried.text().replaceFirst("(?s).*name=\"sure\" value=\"([^\"]*)\".*", "$1");
    assertThat(bird("make/1/minutes", "9", "sure", tick).status()).isEqualTo(422);
    assertThat(bird("make/1/minutes", "4", "sure", tick).status()).isEqualTo(303);
    String[] alone = {"dish", "Frozen turkey", "make/0/step", "roast", "make/1/step", ""};
    String[] only = with(alone, "make/1/minutes", "", "make/1/uses/oven", "");
    assertThat(bird(only).text()).contains("It is frozen, and no step thaws it");
    assertThat(bird(with(only, "dish", "Turkey")).status()).isEqualTo(303);
  }

  @Test
  void a_tick_answers_the_question_and_the_kept_dish_is_not_asked_about_again() {
    String[] frozen = {"route", "frozen", "category", "soup_or_stew", "make/0/step", "simmer"};
    Reply asked = bird(with(frozen, "thawHours", "1.2"));
    assertThat(asked.text()).contains("Only 1 h 12 min to thaw? In a refrigerator");
    String tick = asked.text().replaceFirst("(?s).*name=\"sure\" value=\"([^\"]*)\".*", "$1");
    assertThat(bird(with(frozen, "thawHours", "1.3", "sure", tick)).status()).isEqualTo(422);
    assertThat(bird(with(frozen, "thawHours", "1.2", "sure", tick)).status()).isEqualTo(303);
    assertThat(bird(with(frozen, "thawHours", "1.2", "was", "Whole bird")).status()).isEqualTo(303);
  }

  /** FoodSafety.gov, Cold Food Storage Chart: raw poultry 1 to 2 days, raw steaks 3 to 5. */
  @Test
  void raw_food_that_thaws_is_told_the_day_by_which_it_is_cooked() {
    String[] cold = {"make/0/step", "thaw in the refrigerator", "make/0/minutes", "72 h"};
    assertThat(bird(cold).status()).isEqualTo(303);
    assertThat(visit.open(BIRD).text())
        .contains("Whole bird: thawed by Thu 19 Mar", "cooked by Sat 21 Mar at the latest, 2 days");
    String[] steak = with(cold, "category", "raw_meat_whole", "was", "Whole bird");
    assertThat(bird(steak).status()).isEqualTo(303);
    assertThat(visit.open(BIRD).text()).contains("cooked by Tue 24 Mar at the latest, 5 days");
    String[] soup = with(cold, "category", "soup_or_stew", "was", "Whole bird");
    assertThat(bird(soup).status()).isEqualTo(303);
    assertThat(visit.open(BIRD).text()).doesNotContain("at the latest, ");
  }

  private static String[] with(String[] some, String... more) {
    return Stream.concat(Stream.of(some), Stream.of(more)).toArray(String[]::new);
  }

  @Test
  void a_thaw_that_holds_the_refrigerator_is_not_asked_about() {
    bird("make/0/step", "descongelar", "make/0/uses/refrigerator", "20");
    assertThat(visit.open(BIRD).text())
        .contains("Thawing: never at room temperature")
        .doesNotContain("is this in the refrigerator?", "Is this in the refrigerator?");
    bird("was", "Whole bird", "make/0/step", "thaw in the fridge");
    assertThat(visit.open(BIRD).text()).doesNotContain("Is this in the refrigerator?");
  }

  @Test
  void nothing_raw_and_nothing_thawed_bears_no_caution() {
    bird("category", "soup_or_stew", "make/0/step", "soak");
    assertThat(visit.open(BIRD).text()).doesNotContain("Thawing: never");
  }

  /** 96 hours for a bird of 16 to 20 lb, at 24 hours for each 4 to 5 lb; four in the oven. */
  @Test
  void a_bird_thaws_for_days_and_leaves_the_only_person_free() {
    served.at("2026-03-10T08:00:00Z");
    Reply saved =
        bird(
            "make/0/step", "thaw in the refrigerator",
            "make/0/minutes", "5760",
            "make/0/uses/refrigerator", "20",
            "make/0/uses/hands", "1",
            "make/1/uses/hands", "1");
    assertThat(saved.status()).as(saved.text()).isEqualTo(303);
    String page = visit.open(BIRD).text();
    assertThat(page)
        .contains("There is a plan.")
        .containsPattern("name=\"make/0/uses/hands\"[^>]*value=\"\"")
        .containsPattern("name=\"make/1/uses/hands\"[^>]*value=\"1\"");
  }

  /** Served at 18:00 after 4 hours of roasting and 12 of thawing it comes out at 2:00: closed. */
  @Test
  void what_thaws_is_taken_out_before_the_kitchen_closes() {
    served
        .kitchen()
        .plans()
        .save(
            "night",
            """
            serving: 2026-03-20T18:00:00Z
            zone: UTC
            kitchen:
              has: {oven: 1, hands: 1}
              open: [{days: [mon, tue, wed, thu, fri, sat, sun], from: "08:00", to: "20:00"}]
            dishes:
              - dish: Whole bird
                category: raw_poultry_whole
                route: fresh
                make:
                  - {step: thaw in the refrigerator, minutes: 720}
                  - {step: roast, minutes: 240, uses: {oven: 1}}
            """);
    assertThat(visit.open("/plans/night").text())
        .contains("There is a plan.", "08:00 - Fri 20 Mar 14:00")
        .contains("begin to make it between Thu 19 Mar 08:00 and Thu 19 Mar 19:55");
  }

  /**
   * Three days for 12 lb at 4 lb a day (USDA FSIS, The Big Thaw: 4 to 5 lb a day) end at 14:30 and
   * begin on a Wednesday while all are at work, so it comes out on Tuesday evening. A day more than
   * it needs: common practice, no source; at most two (FoodSafety.gov, Cold Food Storage Chart).
   */
  @Test
  void a_thaw_of_days_begins_on_the_evening_before_whatever_else_is_made() {
    served
        .kitchen()
        .plans()
        .save(
            "feast",
            """
            serving: 2026-12-05T18:00:00Z
            zone: UTC
            kitchen:
              has: {oven: 1, hands: 1}
              open:
                - {days: [mon, tue, wed, thu, fri], from: "18:00", to: "22:00"}
                - {days: [sat, sun], from: "08:00", to: "22:00"}
            dishes:
              - dish: Turkey
                category: raw_poultry_whole
                route: fresh
                make:
                  - {step: thaw in the refrigerator, minutes: 4320}
                  - {step: roast, minutes: 210, uses: {oven: 1}}
              - dish: Pie
                category: pie_pumpkin_or_pecan
                route: chilled
                make:
                  - {step: bake, minutes: 60, uses: {oven: 1, hands: 1}}
            """);
    assertThat(visit.open("/plans/feast").text())
        .contains("There is a plan.", "18:00 - Sat 5 Dec 14:30")
        .contains("begin to make it between Tue 1 Dec 18:00 and Tue 1 Dec 21:55");
  }

  /**
   * 72 hours before 14:15 on a Saturday is Wednesday 14:15; a day more: common practice, no source.
   * Cooked within 2 days once thawed (FoodSafety.gov, Cold Food Storage Chart): thawed on Thursday
   * at the earliest, so out on Monday; a pan that fills the refrigerator leaves no room for more.
   */
  @Test
  void a_bird_comes_out_a_day_sooner_than_it_must_within_its_days_and_the_room() {
    String menu =
        """
        serving: 2026-12-05T18:00:00Z
        zone: UTC
        kitchen: {has: {oven: 1, refrigerator: 40}}
        dishes:
          - dish: Turkey
            category: raw_poultry_whole
            route: fresh
            make:
              - {step: thaw in the refrigerator, minutes: 4320, uses: {refrigerator: 30}}
              - {step: roast, minutes: 225, uses: {oven: 1}}
        """;
    served.kitchen().plans().save("slack", menu);
    assertThat(visit.open("/plans/slack").text())
        .contains("14:15 - Sat 5 Dec 14:15", "Turkey: thawed by Fri 4 Dec")
        .contains("begin to make it between Mon 30 Nov 00:00 and Wed 2 Dec 14:15");
    String pan =
        """
          - dish: Soup
            category: soup_or_stew
            route: chilled
            keeps: {refrigerator: 20}
            due: 2026-12-02T00:00:00Z
            make: [{step: simmer, minutes: 60}]
        """;
    served.kitchen().plans().save("full", menu + pan);
    assertThat(visit.open("/plans/full").text())
        .contains("00:00 - Sat 5 Dec 14:15")
        .contains("begin to make it between Wed 2 Dec 00:00 and Wed 2 Dec 14:15");
  }

  /** Eight hours before 18:00 is 10:00, two hours before it opens: worked out by hand. */
  @Test
  void a_plan_that_fails_by_the_open_hours_names_the_dish_the_step_and_the_hour() {
    String menu =
        """
        serving: 2026-12-05T18:00:00Z
        zone: UTC
        kitchen:
          has: {hob: 1}
          open: [{days: [sat], from: "12:00", to: "21:00"}]
        dishes:
          - dish: Soup
            category: soup_or_stew
            route: fresh
            make: [{step: simmer, minutes: 480, uses: {hob: 1}}]
          - dish: Sauce
            category: gravy
            route: fresh
            make: [{step: boil, minutes: 20}]
        """;
    served.kitchen().plans().save("shut", menu);
    String page = visit.open("/plans/shut").text();
    assertThat(page)
        .contains("Soup, simmer, Sat 5 Dec 10:00 to Sat 5 Dec 18:00. Open then")
        .doesNotContain("Sauce, boil");
    visit.submit("/ways", "language", "es", "back", "/plans/shut");
    assertThat(visit.open("/plans/shut").text()).contains("con la cocina cerrada: Soup, simmer");
  }

  /** Cold water, wrapped and changed every 30 minutes, then cooked at once (USDA FSIS). */
  @Test
  void what_thaws_in_water_never_begins_sooner() {
    String menu =
        """
        serving: 2026-12-05T18:00:00Z
        zone: UTC
        kitchen: {has: {oven: 1}}
        dishes:
          - dish: Turkey
            category: raw_poultry_whole
            route: fresh
            make:
              - {step: thaw in cold water, minutes: 360}
              - {step: roast, minutes: 240, uses: {oven: 1}}
        """;
    served.kitchen().plans().save("water", menu);
    assertThat(visit.open("/plans/water").text()).contains("begin to make it Sat 5 Dec 08:00;");
  }

  @Test
  void two_steps_that_need_the_only_person_are_named() {
    bird(
        "make/0/uses/hands",
        "1",
        "make/1/uses/hands",
        "1",
        "make/0/minutes",
        "60",
        "make/0/step",
        "stuff");
    bird(
        "dish",
        "Gravy",
        "category",
        "gravy",
        "make/0/minutes",
        "60",
        "make/0/step",
        "stir",
        "make/0/uses/hands",
        "1",
        "make/1/step",
        "",
        "make/1/minutes",
        "",
        "make/1/uses/oven",
        "");
    assertThat(visit.open(BIRD).text())
        .contains(
            "this: people at work. With 2 there would be a plan. A step nobody stands by",
            "at the same time: ")
        .contains("Gravy, stir, from Fri 20 Mar 17:00 to Fri 20 Mar 18:00");
  }

  /** USDA FSIS: never thaw on a counter; refrigerate within 2 hours. */
  @Test
  void a_step_that_leaves_food_out_is_asked_about() {
    String[] thaw = {"make/0/step", "thaw on the counter", "make/0/minutes", "70 h"};
    assertThat(bird(thaw).text())
        .contains("“thaw on the counter”, 70 h", "2 h at most, and never to thaw", "name=\"sure\"");
    String[] left = {"make/0/step", "Leave it out overnight", "make/0/minutes", "10 h"};
    assertThat(bird(left).status()).isEqualTo(422);
    String[] soup = {
      "dish", "Soup", "category", "soup_or_stew", "make/0/step", "cool on the counter",
      "make/0/minutes", "121", "make/1/step", "simmer", "make/1/minutes", "60"
    };
    assertThat(bird(soup).text()).contains("“cool on the counter”, 2 h 1 min");
    soup[7] = "120";
    assertThat(bird(soup).status()).isEqualTo(303);
    String[] dough = {
      "dish",
      "Rolls",
      "category",
      "yeast_bread_baked",
      "make/0/step",
      "rise on the counter",
      "make/0/minutes",
      "10 h"
    };
    assertThat(bird(dough).status()).isEqualTo(303);
  }

  /** USDA FSIS, The Big Thaw: 24 hours for each 5 lb, so a larger piece takes longer. */
  @Test
  void a_piece_that_grows_with_the_guests_asks_for_other_hours() {
    String[] cold = {
      "make/0/step", "thaw in fridge", "make/0/minutes", "84 h", "ingredients", "14 lb turkey"
    };
    assertThat(bird(cold).status()).isEqualTo(303);
    assertThat(visit.open(BIRD).text()).doesNotContain("A larger piece takes longer");
    visit.submit(BIRD + "/event", "name", "F", "serving", "2026-03-20T18:00", "guests", "16");
    assertThat(visit.open(BIRD).text())
        .contains("18.67 lb turkey", "Whole bird: more is bought than its steps were written for");
  }
}
