package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.rulebook.Handbook;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The home cook's questions. */
class KeepsPageTest {
  private static final String SOUP = "/keeps?category=soup_or_stew&made=2026-03-02";

  @TempDir private Path folder;
  private Served served;

  @BeforeEach
  void open() {
    served = Served.in(folder);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private String page(String address) {
    return served.get(address).text();
  }

  /**
   * FoodSafety.gov, Cold Food Storage Chart: soup 3 to 4 days, counted here from the day after the
   * making; FDA Food Code 2022 3-501.17(A): 7 days, the making day the first.
   */
  @Test
  void it_is_at_home_where_no_kitchen_is_set_up() {
    assertThat(page("/keeps")).containsPattern("value=\"yes\" checked");
    assertThat(page(SOUP)).contains("Fri 6 Mar").doesNotContain("Sun 8 Mar");
    assertThat(page(SOUP + "&home=no")).contains("Sun 8 Mar");
    served.kitchen().setUp().place(Map.of("name", "Walk-in", "kind", "refrigerator"));
    assertThat(page("/keeps")).containsPattern("value=\"no\" checked");
    assertThat(page(SOUP)).contains("Sun 8 Mar");
    assertThat(page(SOUP + "&home=yes")).contains("Fri 6 Mar");
  }

  /**
   * FDA, food safety in an emergency: a closed refrigerator 4 hours, a full freezer 48, one half
   * full 24. FoodSafety.gov and USDA, charts for a power outage: ice crystals.
   */
  @Test
  void each_question_stands_there_with_its_answer() {
    assertThat(page("/keeps"))
        .containsSubsequence(
            "How long does it keep?",
            "I left it out",
            "Can it be frozen again?",
            "ice crystals",
            "The power was out",
            "for about 4 h, a full freezer for about 48 h, one half full for about 24 h",
            "above 40 °F for more than 2 hours",
            "food safety during a power outage]",
            "never taste it");
    assertThat(served.get("/keeps", "Accept-Language", "es").text()).contains("Se fue la luz");
  }

  /**
   * USDA, leftovers and food safety: 2 hours outside, 1 above 90 °F. The kitchen's clock shows
   * 10:00.
   */
  @ParameterizedTest
  @CsvSource({
    "hours=2, Outside for 2 h. Within",
    "hours=2:01, Outside for 2 h 1 min. Discard",
    "hours=1:01&hot=yes, Discard",
    "since=08:00, Outside for 2 h. Within",
    "since=07:59, Outside for 2 h 1 min. Discard",
    "since=18:00&till=21:30, Outside for 3 h 30 min. Discard",
    "since=23:00&till=00:30, Outside for 1 h 30 min. Within",
    "since=23:00, Outside for 11 h. Discard",
    "hours=3%20h, Outside for 3 h. Discard",
    "hours=90%20min, Outside for 1 h 30 min. Within",
    "since=6%20pm&till=21:30, Outside for 3 h 30 min. Discard",
    "since=yesterday%2023:00, Outside for 11 h. Discard",
    "since=ayer%2023:00, Outside for 11 h. Discard",
    "since=hoy%208:30, Outside for 1 h 30 min. Within",
    "since=2026-03-03%2009:15, Outside for 45 min. Within",
    "since=last%20night, Counted from Mon 2 Mar 18:00 to Tue 3 Mar 10:00",
    "since=anoche, Outside for 16 h. Discard",
    "since=last+night&till=yesterday+22:00, Outside for 4 h. Discard",
    "since=this%20morning, Outside for 10 h. Discard",
    "since=this%20morning, '“this morning” was taken as since Tue 3 Mar 00:00, to be careful'",
    "since=yesterday, Counted from Mon 2 Mar 00:00",
    "since=midnight, Outside for 10 h. Discard",
    "since=noon&till=13:00, Outside for 1 h. Within",
    "since=9:00&till=11:00, Counted from Mon 2 Mar 09:00 to Mon 2 Mar 11:00",
    "since=yesterday+18:00&till=yesterday+19:00, Outside for 1 h. Within",
    "since=last+night+1:30+am&till=this+morning, Counted from Tue 3 Mar 01:30 to Tue 3 Mar 10:00",
    "since=since+6pm&till=until+7+pm, Outside for 1 h. Within",
    "since=an+hour+ago, Outside for 1 h. Within",
    "since=desde+ayer, Counted from Mon 2 Mar 00:00",
    "since=desde+las+6+de+la+tarde, Outside for 16 h. Discard",
    "since=yesterday&till=last+night, '“last night” was taken as until Tue 3 Mar 06:00'"
  })
  void time_outside_is_told_in_hours_or_by_the_clock(String asked, String says) {
    served.at("2026-03-03T17:00:20Z");
    assertThat(page("/keeps?left=yes&" + asked)).contains(says);
  }

  /**
   * FDA Food Code 2022 1-201.10 and FoodSafety.gov, food safety during a power outage: bread and
   * plain cakes need no cold. Iowa State University Extension: fruit pie 2 days at room
   * temperature.
   */
  @Test
  void bread_is_answered_for_the_counter_too() {
    String bread = page("/keeps?category=yeast_bread_baked&home=yes");
    assertThat(bread)
        .contains("At room temperature: it needs no cold for safety", "once it shows mold")
        .contains("[FoodSafety.gov, food safety during a power outage]", "best quality for 2-3");
    assertThat(page("/keeps?dish=bread&home=yes"))
        .contains("<h2 id=\"answer\"><bdi>Yeast bread or rolls, baked</bdi></h2>")
        .contains("At room temperature: it needs no cold for safety", "cheese, meat or vegetable");
    assertThat(page("/keeps?category=yeast_bread_baked&frozen=2026-03-01"))
        .doesNotContain("At room temperature");
    assertThat(page("/keeps?category=soup_or_stew")).doesNotContain("At room temperature");
    assertThat(page("/keeps?category=pie_fruit_baked"))
        .contains("at room temperature up to 2 days");
    assertThat(served.get("/keeps?category=pie_fruit_baked", "Accept-Language", "es").text())
        .contains("a temperatura ambiente hasta 2 días", "A temperatura ambiente: no necesita");
  }

  /** The titles are those of the chart of soups in storage-life figures; they stay as published. */
  @Test
  void a_source_is_named_by_its_title_and_the_others_are_folded() {
    String asked = "/keeps?category=soup_or_stew&frozen=2026-03-02&made=2026-03-02";
    String english = page(asked);
    assertThat(english)
        .contains(
            "Source: <bdi lang=\"en\">FoodSafety.gov, Cold Food Storage Chart</bdi> and 1 more")
        .contains("<li><bdi lang=\"en\">DuPage County (Illinois) Health Department, cold storage")
        .doesNotContain("figures:", "Cold Food Storage Chart;");
    String spanish = served.get(asked, "Accept-Language", "es").text();
    assertThat(spanish)
        .contains("Fuente (con su título original): <bdi lang=\"en\">FoodSafety.gov", "y 1 más")
        .doesNotContain("cifras:");
  }

  /** A date ahead may be a plan, or a slip in the year: common practice, no source. */
  @Test
  void a_date_that_is_still_to_come_is_remarked_on() {
    assertThat(page("/keeps?category=soup_or_stew&made=2026-03-03"))
        .doesNotContain("still to come");
    assertThat(page("/keeps?category=soup_or_stew&made=2027-03-02"))
        .contains("Tue 2 Mar 2027 is still to come: look at the year");
  }

  /**
   * University of Illinois Extension, thawing: poultry, ground meat and seafood 1 to 2 days after a
   * refrigerator thaw, cuts of red meat 3 to 5; FoodSafety.gov, Cold Food Storage Chart: soup 3 to
   * 4. The thawing day is counted, as North Carolina's date-marking sheet does.
   */
  @ParameterizedTest
  @CsvSource({
    "raw_poultry_whole, Fri 27 Feb",
    "raw_meat_ground, Fri 27 Feb",
    "raw_fish_lean, Fri 27 Feb",
    "raw_meat_whole, Mon 2 Mar",
    "soup_or_stew, Sun 1 Mar"
  })
  void food_of_unknown_age_has_its_days_from_the_thawing(String kind, String last) {
    String asked = "/keeps?home=yes&category=" + kind + "&frozen=2025-11-01";
    assertThat(page(asked + "&thawed=2026-02-26"))
        .contains(last, "Counted from the thawing", "cook it at once")
        .doesNotContain("--made");
    assertThat(page(asked)).contains("Once thawed: use within", "Counted from the thawing");
  }

  /**
   * USDA FSIS, as University of Illinois Extension tells it: poultry 1 to 2 days after it thawed,
   * and a refrigerator thaws 4 to 5 lb in 24 hours, so that a bird of 12 lb taken out on Thursday
   * is frozen inside on Saturday. The kitchen's clock shows 3 March.
   */
  @Test
  void a_large_bird_that_was_taken_out_is_not_told_off_before_it_has_thawed() {
    String bird = "/keeps?home=yes&category=raw_poultry_whole&frozen=2025-11-01";
    assertThat(page("/keeps")).contains("Thawed through on");
    assertThat(page(bird + "&thawed=2026-02-26"))
        .contains("If it was thawed through on Thu 26 Feb: its last day passed on Fri 27 Feb")
        .contains("not from when it was taken out", "24 hours for each 4 to 5 lb (1.8 to 2.3 kg)")
        .doesNotContain("Its last day passed");
    assertThat(page(bird)).contains("3 days for 12 lb");
    assertThat(page(bird.replace("poultry_whole", "meat_ground") + "&thawed=2026-02-26"))
        .contains("Its last day passed on Fri 27 Feb: discard")
        .doesNotContain("large piece");
    assertThat(served.get(bird + "&thawed=2026-02-26", "Accept-Language", "es").text())
        .contains("Descongelado del todo el", "por cada 4 a 5 lb", "3 días para 12 lb");
    Handbook handbook = Handbook.shipped();
    assertThat(handbook.figure("thaw-refrigerator").low()).isEqualTo(4);
    assertThat(handbook.figure("thaw-refrigerator").high()).isEqualTo(5);
  }

  /**
   * The chart for homes prints 40 °F and 4 °C, the advice on food left out 90 °F; the Spanish is
   * our own, no source.
   */
  @Test
  void notes_are_told_in_spanish_and_figures_in_the_scale_of_the_person() {
    String spanish = "language=es; scale=C";
    String page = served.get("/keeps?home=yes&category=gravy", "Cookie", spanish).text();
    assertThat(page)
        .contains("ediciones más antiguas de la tabla", "va por el tipo de la carne")
        .doesNotContain("older printings", "no chart row")
        .contains("a más de 4 °C (40 °F) durante más de 2 horas")
        .containsPattern("Hacía más de 32([.]2)? °C \\(90 °F\\)");
    assertThat(served.get("/keeps?category=sauce_salsa_or_dip", "Cookie", spanish).text())
        .contains("son las de cualquier sobra refrigerada", "el ajo o las hierbas en aceite")
        .doesNotContain("no chart row", "casserole_meat<");
    assertThat(served.get("/keeps?category=soup_or_stew", "Cookie", spanish).text())
        .contains("tome «Sopa con crema o espesada con harina»");
    assertThat(page("/keeps?category=soup_or_stew"))
        .contains("take “Soup with cream, or thickened with flour”", "above 40 °F for more than")
        .containsPattern("It was above 90 °F \\(32([.]2)? °C\\) there");
  }

  /** FDA Food Code 2022 3-501.17 marks ready-to-eat food only; nobody may count an unknown age. */
  @Test
  void the_rules_of_a_kitchen_count_no_unknown_age() {
    assertThat(page("/keeps?home=no&category=soup_or_stew&frozen=2025-11-01&thawed=2026-02-26"))
        .contains("Without the day it was made no last day can be told")
        .doesNotContain("Counted from the thawing");
    assertThat(page("/keeps?home=no&category=raw_poultry_whole&made=2026-02-26"))
        .contains("set no last day here");
  }

  /** What contradicts itself is no question: common practice, no source. */
  @ParameterizedTest
  @CsvSource({
    "left=yes&hours=six, hours, Give the hours",
    "left=yes&since=, hours, Give the hours",
    "left=yes&hours=-1, hours, Give the hours",
    "left=yes&hours=2&since=08:00, hours, leave one of them blank",
    "left=yes&since=soon, since, is no time such as",
    "left=yes&till=18:00, since, Say since when it stood outside",
    "left=yes&since=today%2018:00, since, is still to come",
    "left=yes&since=tomorrow%206%20pm, since, is still to come",
    "left=yes&since=6, since, may be 2026-03-02 18:00 or 2026-03-03 06:00",
    "left=yes&since=8:00&till=9+at+some+time, till, is no time such as",
    "left=yes&since=10:00, since, is not before the end",
    "left=yes&since=today%209:00&till=yesterday%209:00, since, is not before the end",
    "category=soup_or_stew&made=2026-03-02&frozen=2026-03-01, frozen, 'is before “Made on”'",
    "category=quiche&frozen=2026-03-02&thawed=2026-03-01, thawed, 'is before “Frozen on”'",
    "category=soup_or_stew&frozen=2026-03-05&thawed=2026-03-02, thawed, 'is before “Frozen on”'",
    "category=soup_or_stew&thawed=2026-03-02, thawed, only with “Frozen on”",
    "category=soup_or_stew&made=2062-03-02, made, at most a year ahead",
    "category=soup_or_stew&made=02.03.2026, made, is no day",
    "home=yes&category=&dish=&made=2026-03-02, category, No food is named: choose it",
    "category=no_such_food, category, no such food"
  })
  void what_cannot_be_is_refused_at_its_field(String asked, String field, String says) {
    served.at("2026-03-03T17:00:00Z");
    Served.Reply reply = served.get("/keeps?" + asked);
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text())
        .containsPattern(
            "name=\"" + field + "\"[^!]*?<strong class=\"wrong\"[^>]*><bdi>[^<]*" + says)
        .doesNotContain("Outside for", "id=\"answer\"");
    assertThat(served.get("/keeps?" + asked, "Accept-Language", "es").text())
        .contains("<strong class=\"wrong\"", "vea lo marcado")
        .doesNotContain(says);
  }

  /**
   * IANA tz database, America/Denver: on 8 March 2026 03:00 follows 01:59; on 1 November 2026 the
   * hour from 01:00 comes twice.
   */
  @Test
  void an_hour_that_the_clock_skips_or_doubles_is_counted_as_it_was() {
    served.at("2026-03-08T10:00:00Z");
    Served.Reply skipped = served.get("/keeps?left=yes&since=2:30");
    assertThat(skipped.status()).isEqualTo(422);
    assertThat(skipped.text()).contains("put forward from 01:59 to 03:00");
    assertThat(page("/keeps?left=yes&since=1:30")).contains("Outside for 1 h 30 min. Within");
    served.at("2026-11-01T10:00:00Z");
    assertThat(page("/keeps?left=yes&since=1:30"))
        .contains("Outside for 2 h 30 min. Discard", "showed 01:30 twice");
    assertThat(page("/keeps?left=yes&since=2026-10-31+23:45&till=2026-11-01+01:30"))
        .contains("Outside for 2 h 45 min. Discard");
  }

  /**
   * FoodSafety.gov, food safety during a power outage: ice crystals or 40 °F or below may be
   * refrozen, above 40 °F for more than 2 h is discarded, ice cream always; North Carolina State
   * Extension, when to refreeze frozen food: bread and plain cakes may be refrozen.
   */
  @ParameterizedTest
  @CsvSource({
    "soup_or_stew&read=40F, It may be frozen again",
    "soup_or_stew&read=4C, It may be frozen again",
    "soup_or_stew&read=41, Do not refreeze it",
    "soup_or_stew&read=41F&warm=2 h, freeze it now",
    "soup_or_stew&read=41F&warm=121 min, Do not refreeze it",
    "soup_or_stew&ice=soft&read=38F&warm=5 h, Do not refreeze it",
    "raw_poultry_whole&ice=crystals, It may be frozen again",
    "raw_poultry_whole&ice=crystals&read=50F, Do not refreeze it",
    "casserole_meat&ice=soft, Read its temperature",
    "ice_cream&ice=crystals, once it softened it is discarded",
    "yeast_bread_baked&read=70F, It may be, at whatever temperature",
    "cookies_baked&ice=soft, It may be, at whatever temperature",
    "bar_cookies_brownies&ice=soft, It may be, at whatever temperature"
  })
  void whether_food_may_be_frozen_again_follows_the_food(String asked, String says) {
    String page = page("/keeps?again=yes&category=" + asked.replace(" ", "%20"));
    assertThat(page).contains(says);
    boolean isHeld = asked.startsWith("soup") || asked.startsWith("raw") || asked.contains("meat");
    if (isHeld) {
      assertThat(page).contains("It may be refrozen while it has ice crystals or reads 40 °F");
    } else {
      assertThat(page).doesNotContain("It may be refrozen while", "It may be frozen again");
    }
  }

  /**
   * Water freezes at 0 °C, 32 °F, at the pressure of the air (its ice point, as the International
   * Temperature Scale of 1990 has it to a hundredth of a degree; from memory).
   */
  @ParameterizedTest
  @CsvSource({"4, F", "31, F", "31.9F, C", "-1, C", "-0.1 C, F"})
  void a_reading_below_freezing_of_soft_food_is_asked_about(String read, String scale) {
    String asked = "/keeps?again=yes&category=soup_or_stew&ice=soft&read=";
    String cookie = "scale=" + scale;
    Served.Reply refused = served.get(asked + read.replace(" ", "%20"), "Cookie", cookie);
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .containsPattern("id=\"read-wrong\"><bdi>[^<]*Was it read in the other scale")
        .doesNotContain("It may be frozen again.");
    String atFreezing = scale.equals("F") ? "32" : "0";
    assertThat(served.get(asked + atFreezing, "Cookie", cookie).text())
        .contains("It may be frozen again.");
    assertThat(page("/keeps?again=yes&category=soup_or_stew&ice=crystals&read=31"))
        .contains("It may be frozen again.");
  }

  /** The bounds are our own: no food is read hotter than 250 °F or colder than -76 °F. */
  @ParameterizedTest
  @CsvSource({"read=400F, read", "read=-90F, read", "read=warm, read", "warm=ages, warm"})
  void a_temperature_that_no_food_has_is_refused(String asked, String field) {
    Served.Reply reply = served.get("/keeps?again=yes&category=soup_or_stew&" + asked);
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text())
        .contains("id=\"" + field + "-wrong\"")
        .doesNotContain("Do not refreeze it:", "It may be frozen again");
  }

  /**
   * Words for foods are common practice, no source. FDA, Refrigerator & Freezer Storage Chart, and
   * DuPage County (Illinois) Health Department: casseroles 3 to 4 days, counted from the day after.
   */
  @ParameterizedTest
  @CsvSource({
    "pesto, 'Sauce, salsa, pesto or dip'",
    "shepherds pie, Casserole or cooked dish with meat",
    "minestrone, Soup or stew",
    "mac and cheese, Casserole of vegetables or pasta",
    "Shepherd’s pie, Casserole or cooked dish with meat",
    "helado, Ice cream",
    "Quiche, 'Quiche, baked'"
  })
  void a_food_is_found_by_the_word_that_people_use(String dish, String title) {
    String asked = "/keeps?made=2026-03-02&dish=" + dish.replace(" ", "%20");
    assertThat(page(asked)).contains("<h2 id=\"answer\"><bdi>" + title + "</bdi></h2>");
  }

  /** What is wrong stands before anything else, with a way to its field: common practice. */
  @ParameterizedTest
  @CsvSource({
    "dish=zzzzxq, dish, No kind is known for “zzzzxq”.",
    "category=&dish=, category, No food is named",
    "category=soup_or_stew&made=soon, made, soon"
  })
  void what_is_wrong_is_told_at_the_top(String asked, String field, String says) {
    String text = served.get("/keeps?" + asked).text();
    String top = text.substring(0, text.indexOf("id=\"keeps\""));
    assertThat(top).contains("role=\"alert\"", "<a href=\"#" + field + "\"><bdi>", says);
    assertThat(text).contains(" id=\"" + field + "\"");
  }

  /** FDA Food Code 2022 1-201.10, TCS food: filled baked goods, animal food. */
  @ParameterizedTest
  @ValueSource(strings = {"beef minestrone", "ham bread", "cheese dip"})
  void a_food_that_only_shares_a_word_with_a_kind_is_asked_about(String dish) {
    Served.Reply asked = served.get("/keeps?dish=" + dish.replace(" ", "%20"));
    assertThat(asked.status()).isEqualTo(200);
    String question = dish.contains("minestrone") ? "Is it this?" : "which?";
    assertThat(asked.text()).contains(question).doesNotContain("id=\"answer\"");
    boolean isWithoutCold = !dish.contains("minestrone");
    assertThat(asked.text().contains("as needing no cold: only plain")).isEqualTo(isWithoutCold);
  }

  @Test
  void a_word_for_several_kinds_is_asked_about_and_an_unknown_one_is_told_what_to_choose() {
    assertThat(page("/keeps?made=2026-03-02&dish=Curry"))
        .contains("which?", "Casserole or cooked dish with meat")
        .contains(
            "/keeps?category=casserole_poultry&amp;made=2026-03-02" + "&amp;dish=Curry#answer")
        .doesNotContain("id=\"answer\"");
    assertThat(page("/keeps?dish=chicken").indexOf("Raw chicken"))
        .isBetween(0, page("/keeps?dish=chicken").indexOf("Cooked poultry, plain</a>"));
    Served.Reply unknown = served.get("/keeps?dish=zzzzxq");
    assertThat(unknown.status()).isEqualTo(422);
    assertThat(unknown.text()).contains("Choose the nearest from the list");
    assertThat(
            served.get("/keeps?dish=lasa%C3%B1a&made=2026-03-02", "Accept-Language", "es").text())
        .contains("<h2 id=\"answer\">");
  }

  /** DuPage County (Illinois) Health Department, cold storage chart: soup 2 to 3 months. */
  @Test
  void food_that_is_not_frozen_is_told_how_long_it_would_keep_frozen() {
    assertThat(page(SOUP))
        .contains("kept at 0 °F (-18 °C) or below: best quality for 2-3 months (quality, not");
    assertThat(served.get(SOUP, "Accept-Language", "es").text())
        .contains("mejor calidad durante 2-3 meses (calidad, no seguridad)");
    assertThat(page(SOUP + "&frozen=2026-03-02")).doesNotContain("If frozen and kept");
    assertThat(page("/keeps?category=soup_or_stew&made=2026-01-02"))
        .doesNotContain("If frozen and kept");
    assertThat(page("/keeps?category=salad_protein_or_macaroni_mayo&made=2026-03-02"))
        .contains("id=\"answer\"")
        .doesNotContain("If frozen and kept");
  }

  /** Common practice, no source: what was taken for granted is said. */
  @Test
  void a_blank_day_of_making_is_said_to_be_counted_as_today() {
    assertThat(page("/keeps?category=soup_or_stew&made="))
        .containsSubsequence(
            "id=\"answer\"", "Counted as made today", "until the end of Sat 7 Mar");
    assertThat(served.get("/keeps?category=soup_or_stew", "Accept-Language", "es").text())
        .contains("Contado como hecho hoy");
    assertThat(page(SOUP)).doesNotContain("Counted as made today");
    assertThat(page("/keeps?category=soup_or_stew&frozen=2026-03-01"))
        .doesNotContain("Counted as made today");
    assertThat(page("/keeps?category=cookies_baked")).doesNotContain("Counted as made today");
  }

  /** FoodSafety.gov, Cold Food Storage Chart: whole turkey 12 months frozen; thawed 1 to 2 days. */
  @ParameterizedTest
  @ValueSource(strings = {"frozen+turkey", "12+lb+frozen+turkey", "pavo+congelado"})
  void food_said_to_be_frozen_without_a_day_has_no_last_day_in_the_refrigerator(String dish) {
    String page = page("/keeps?category=raw_poultry_whole&home=yes&dish=" + dish);
    assertThat(page)
        .containsSubsequence(
            "give the day under “Frozen on”",
            "best quality for 12 months",
            "Once thawed: use within 2 days")
        .doesNotContain("Counted as made today", "In the refrigerator until");
    assertThat(page("/keeps?category=raw_poultry_whole&home=yes&dish=thawed+turkey"))
        .contains("Counted as made today");
  }

  /** FoodSafety.gov, power outage: at 40 °F (4 °C) or below it may be refrozen; 38 °C is not. */
  @ParameterizedTest
  @CsvSource({
    "38, en; scale=F, The reading is taken as 38 °F. Was it 38 °C?",
    "3.5, es; scale=C, La lectura se toma como 3.5 °C.",
    "38F, en; scale=F, The reading is taken as 38 °F.<",
    "38, es; scale=C, La lectura se toma como 38 °C. ¿Eran 38 °F?"
  })
  void how_a_reading_was_understood_is_said(String read, String person, String says) {
    String asked = "/keeps?again=yes&category=soup_or_stew&read=" + read;
    assertThat(served.get(asked, "Cookie", "language=" + person).text()).contains(says);
  }

  @Test
  void how_it_was_found_is_asked_at_its_field() {
    Served.Reply blank = served.get("/keeps?again=yes&category=soup_or_stew");
    assertThat(blank.status()).isEqualTo(422);
    assertThat(blank.text()).contains("id=\"ice-wrong\"><bdi>Say how it was found");
    assertThat(page("/keeps?category=soup_or_stew")).doesNotContain("ice-wrong");
    assertThat(page("/keeps?again=yes&category=cookies_baked")).doesNotContain("ice-wrong");
  }

  /**
   * Oregon State University Extension, Foods That Do Not Freeze Well: cooked egg white, mayonnaise,
   * potato salad, custard and rice alone; FoodSafety.gov's chart: these salads do not freeze well.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "hard boiled eggs",
        "chicken salad",
        "egg salad",
        "potato salad",
        "rice pudding",
        "hard boiled eggs&frozen=2026-03-01"
      })
  void of_food_that_freezes_badly_it_is_said_with_the_source(String dish) {
    String page = page("/keeps?dish=" + dish.replace(" ", "%20"));
    assertThat(page).contains("It does not freeze well", "Foods That Do Not Freeze Well");
    assertThat(page("/keeps?dish=soup")).doesNotContain("does not freeze well");
  }

  /** That freezing pauses days and gives none back is common practice, no source. */
  @ParameterizedTest
  @CsvSource({"read=38F, true", "read=41F&warm=1 h, true", "ice=crystals, true", "read=60F, false"})
  void food_that_may_be_frozen_again_keeps_the_days_it_has_spent(String found, boolean isSaid) {
    String asked = "/keeps?again=yes&category=soup_or_stew&" + found.replace(" ", "%20");
    assertThat(page(asked).contains("That starts no new days")).isEqualTo(isSaid);
    String spanish = served.get(asked, "Accept-Language", "es").text();
    assertThat(spanish.contains("no empiezan días nuevos")).isEqualTo(isSaid);
  }

  /**
   * That no chart row for these was found stands in the notes of the keeping list; any refrigerated
   * leftover: 3 to 4 days, University of Illinois Extension, Leftovers. Garlic in oil needs the
   * cold: FDA Food Code 2022, 1-201.10.
   */
  @Test
  void a_kind_that_stands_in_for_a_food_is_said_to_before_all_else() {
    String first =
        "id=\"answer\"><bdi>Sauce, salsa, pesto or dip</bdi></h2>\n"
            + "<p class=\"says\"><bdi>No figure for “";
    String pesto = page("/keeps?dish=pesto&made=2026-03-02");
    assertThat(pesto)
        .contains(first + "pesto” itself is on record", "Leftovers (any refrigerated leftover)")
        .contains("garlic or herbs in oil never stand at room temperature")
        .doesNotContain("<bdi>Gravy");
    assertThat(page("/keeps?dish=Tomato%20sauce")).contains(first + "Tomato sauce” itself");
    assertThat(page("/keeps?dish=gravy")).contains("Gravy</bdi>").doesNotContain("No figure for");
    assertThat(served.get("/keeps?dish=pesto", "Accept-Language", "es").text())
        .contains("No hay registrada una cifra para «pesto»");
  }

  /** The titles are those of the rule sets' own files. */
  @Test
  void the_foot_names_the_rules_that_answered() {
    assertThat(page(SOUP)).contains("Judged by Home kitchen").doesNotContain("Judged by FDA");
    assertThat(page(SOUP + "&home=no")).contains("Judged by FDA").doesNotContain("Judged by Home");
    assertThat(page("/keeps?home=no&left=yes&hours=1")).contains("Judged by Home kitchen");
  }

  /**
   * National Center for Home Food Preservation and Penn State Extension: garlic in oil at most 7
   * days in the refrigerator, never on the counter; our charts have no row for it.
   */
  @Test
  void food_that_no_kind_may_stand_for_gets_no_days_but_its_caution() {
    assertThat(page("/keeps?dish=garlic+in+oil"))
        .contains("no kind of the list may stand for it", "botulism", "never on the counter")
        .doesNotContain("may be one of these", "category=soup_or_stew", "role=\"alert\"");
    assertThat(page("/keeps?dish=cottage+cheese"))
        .contains("No days are told for “cottage cheese”")
        .doesNotContain("Source: <");
    assertThat(page("/keeps?dish=garlic+butter")).doesNotContain("category=butter");
    assertThat(page("/keeps?dish=caesar+dressing")).contains("“Stuffing, cooked”");
    assertThat(served.get("/keeps?dish=ajo+en+aceite", "Accept-Language", "es").text())
        .contains("ningún tipo de la lista vale para eso", "botulismo");
  }

  @Test
  void a_question_back_with_one_choice_is_put_as_such() {
    assertThat(page("/keeps?dish=lasange")).contains("Is it this?");
    assertThat(page("/keeps?dish=ribs")).contains("may be one of these: which?");
  }

  /** USDA: refrigerate within 2 hours; days in the refrigerator say nothing of food left out. */
  @ParameterizedTest
  @ValueSource(strings = {"", "&category=soup_or_stew"})
  void what_was_left_out_gets_no_days_in_the_refrigerator(String more) {
    assertThat(page("/keeps?dish=chili+left+out+since+last+night" + more))
        .contains("no question of days in the refrigerator", "I left it out")
        .doesNotContain("In the refrigerator until", "href=\"/keeps?category=");
    assertThat(page("/keeps?dish=may+I+refreeze+soup" + more))
        .contains("Can it be frozen again?")
        .doesNotContain("In the refrigerator until", "href=\"/keeps?category=");
  }
}
