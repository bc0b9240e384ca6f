package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.service.ahead.Question;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The questions before cooking on a page; their answers are checked where they are worked out. */
class AheadPageTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  @ParameterizedTest
  @EnumSource
  void the_example_of_each_question_is_answered(Question question) {
    String asked = question.example().replace(" ", "&");
    for (String language : new String[] {"en", "es"}) {
      visit.open("/ahead");
      visit.submit("/ways", "language", language, "back", "/");
      Served.Reply reply = visit.open("/ahead?question=" + question.key() + "&" + asked);
      assertThat(reply.status()).as(reply.text()).isEqualTo(200);
      assertThat(reply.text()).contains("id=\"answer\"");
    }
  }

  /** Days in words, the same in every field of the page; common practice, no source. */
  @Test
  void a_day_is_taken_as_people_say_it() {
    String spell = "category=bar_cookies_cut_and_wrapped&steps=10F:1d";
    assertThat(served.get("/ahead?question=frozen-life&" + spell + "&frozen=10+Nov+2025").text())
        .contains("Quality fades from");
    assertThat(served.get("/ahead?question=frozen-life&" + spell + "&frozen=3+days+ago").status())
        .isEqualTo(200);
    Served.Reply slip = served.get("/ahead?question=frozen-life&" + spell + "&frozen=10/11");
    assertThat(slip.status()).isEqualTo(422);
    assertThat(slip.text()).contains("is no day such as 2026-11-22, 22 Nov 2026 or yesterday");
    String orders = "category=bar_cookies_cut_and_wrapped&portions=300&batch=48";
    assertThat(served.get("/ahead?question=batches&" + orders + "&last-day=18+December").status())
        .isEqualTo(200);
    assertThat(served.get("/on-hand?good-on=18+December").text()).contains("value=\"2026-12-18\"");
    assertThat(served.get("/record?from=yesterday&to=3+Mar").text())
        .contains("value=\"2026-03-02\"", "value=\"2026-03-03\"");
  }

  /** Cold water, 30 minutes a pound: USDA FSIS, The Big Thaw; 12 lb are six hours. */
  @Test
  void a_bird_still_frozen_in_the_morning_is_answered_without_set_up() {
    String page = visit.open("/ahead?question=thawing&weight=12lb&cooking=4h&serve-in=9h").text();
    assertThat(page).contains("6 h");
  }

  /** Our own: who changes the language or the scale keeps the answer. */
  @Test
  void another_language_leads_back_to_the_answer() {
    String here = "/ahead?question=thawing&weight=12lb&cooking=4h&serve-in=9h";
    assertThat(visit.open(here).text())
        .contains("name=\"back\" value=\"" + here.replace("&", "&amp;") + "\"");
    Served.Reply chosen = visit.submit("/ways", "language", "es", "back", here);
    assertThat(Visit.target(chosen)).isEqualTo(here);
    for (String other : new String[] {"/ahead?x=\"y", "//ahead?x=y", "/ahead?x\r\ny", "/a?b c"}) {
      Served.Reply refused = visit.submit("/ways", "language", "es", "back", other);
      assertThat(Visit.target(refused)).as(other).isEqualTo("/");
    }
  }

  @Test
  void what_is_wrong_is_told_and_stays_in_the_form() {
    Served.Reply reply = visit.open("/ahead?question=thawing&weight=%3Cb%3E&serve-in=soon");
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text())
        .contains("role=\"alert\"")
        .contains("value=\"soon\"")
        .doesNotContain("<b>");
    assertThat(visit.open("/ahead?question=nothing").status()).isEqualTo(200);
  }

  /** RFC 3986, 3.5: the part after # is kept by the browser and names the place to show. */
  @Test
  void an_answer_is_in_sight_where_one_asked() {
    assertThat(visit.open("/ahead").text()).contains("action=\"/ahead#answer\"");
    String keeps = visit.open("/keeps?left=yes&hours=3").text();
    assertThat(keeps)
        .contains("action=\"/keeps#answer\"", "action=\"/keeps#left-out\"", "id=\"left-out\"");
    assertThat(visit.open("/ahead?question=pans&volume=20L&depth=5cm").text())
        .contains("surroundings=38F&amp;depth=5cm#answer");
  }

  @Test
  void lists_and_faults_are_told_in_words_and_the_scale_asked_for_comes_first() {
    String spanish = "language=es; scale=C";
    String page = served.get("/ahead", "Cookie", spanish).text();
    assertThat(page).contains(">Caldo de pollo casero<", ">congelador lleno<", ">carne o pescado<");
    Served.Reply bad =
        served.get("/ahead?question=outage&appliance=van&without-power=soon", "Cookie", spanish);
    assertThat(bad.text())
        .contains("«soon» no es ni un momento ya pasado", "no hay «van»")
        .doesNotContain("cannot be");
    assertThat(served.get("/ahead?question=ice&volume=5+litros&start=90C&to=4C", "Cookie", spanish))
        .extracting(Served.Reply::text)
        .asString()
        .contains("de 90 °C (194 °F) a 4 °C (39 °F)", "Guiso de res");
    assertThat(served.get("/keeps", "Cookie", spanish).text()).contains("4 °C (40 °F)");
  }

  /**
   * FDA Food Code 2022, 3-501.14(A): cooked food from 135 to 70 °F within 2 hours. USDA, advice for
   * homes: into the refrigerator within 2 hours, within 1 above 90 °F, and no clock for cooling, so
   * that the limits of food businesses are told as advice.
   */
  @Test
  void which_limits_count_is_chosen_and_the_foot_names_those_that_did() {
    String asked =
        "/ahead?question=cooling&food=chili&surface=moving_air&surroundings=38F&depth=2in";
    String home = visit.open(asked).text();
    assertThat(home)
        .contains("into the refrigerator within 2 h", "within 1 h in air above 90 °F")
        .contains("Judged by Home kitchen, advice of US federal agencies")
        .contains("The measure of a food business is 70 °F (21 °C) within 2 h and 41 °F (5 °C)")
        .contains("Reaches 40 °F (4 °C)");
    assertThat(home).containsPattern("home=no&amp;question=cooling&amp;[^\"]*depth=2in#answer");
    String kitchen = visit.open(asked + "&home=no").text();
    assertThat(kitchen).contains("70 °F", "Judged by FDA Food Code").doesNotContain("advice of US");
    String thawing = visit.open("/ahead?question=thawing&weight=12lb").text();
    assertThat(thawing).contains("figures named in each answer").doesNotContain("Judged by");
  }

  /** USDA FSIS, The Big Thaw: never on a counter; what can hurt is said before what it rests on. */
  @Test
  void cautions_stand_before_the_sources() {
    assertThat(visit.open("/ahead?question=thawing&weight=12lb").text())
        .containsSubsequence("In the refrigerator", "Never thaw on a counter", "pull guide");
  }

  @Test
  void a_figure_without_a_unit_is_asked_about_in_both_languages() {
    String asked = "/ahead?question=thawing&weight=12";
    assertThat(visit.open(asked).text()).contains("12 lb or 12 kg?");
    assertThat(served.get(asked, "Cookie", "language=es; scale=C").text())
        .contains("¿12 kg o 12 libras?");
  }

  /** 38 °F is 3.3 °C: one refrigerator, asked about by two people. */
  @Test
  void a_bare_temperature_is_in_the_scale_of_the_person() {
    String asked = "/ahead?question=cooling&depth=2in&surroundings=";
    assertThat(visit.open(asked + "38").text()).contains("Reaches 70 °F", "value=\"38F\"");
    assertThat(served.get(asked + "3,3", "Cookie", "language=es; scale=C").text())
        .contains("Llega a 21 °C", "value=\"3.3C\"");
    assertThat(visit.open(asked + "cold").text())
        .contains("is no temperature", "aria-invalid=\"true\"");
  }

  /**
   * The days at room temperature are a figure of the kitchen's own (common practice, no source):
   * both pages must read the same one. It is 3 March 2026.
   */
  @Test
  void batches_for_the_post_go_by_the_days_that_the_list_on_hand_goes_by() {
    String kind = "bar_cookies_cut_and_wrapped";
    visit.open("/kitchen");
    visit.submit("/kitchen/foods", "name", "Seed bars", "category", kind, "roomDays", "6");
    served.post(
        "/api/v1/lots",
        "{'lot':'B-1','food':'Seed bars','category':'%s','portions':40}".formatted(kind));
    served.post(
        "/api/v1/lots/B-1/entries",
        "{'entry':'cooked','when':'2026-03-01T09:00-07:00','temperature':'200F'}");
    served.post("/api/v1/lots/B-1/entries", "{'entry':'frozen','when':'2026-03-01T12:00-07:00'}");
    for (int days : new int[] {6, 7}) {
      String page =
          visit
              .open(
                  "/ahead?question=batches&food-name=seed+bars&portions=90&batch=48&category="
                      + kind
                      + "&last-day=2026-04-20&then-days="
                      + days)
              .text();
      String onHand = served.get("/on-hand?good-on=2026-04-20&days=" + days).text();
      boolean isGood = days == 6;
      assertThat(onHand.contains("class=\"h3\"><a href=\"/lots/B-1")).isEqualTo(isGood);
      assertThat(page)
          .contains(
              isGood ? "days by your own figure 6, days asked for 6" : "Not out of the freezer")
          .contains("the freezer has 40 portions of Seed bars", "were left blank")
          .contains("<option value=\"Seed bars\">");
    }
    // Her own food brings its kind along, in the warm freezer too.
    String own = "/ahead?question=batches&food-name=seed+bars&portions=90&batch=48";
    assertThat(visit.open(own + "&last-day=2026-04-20&category=").text())
        .contains("the freezer has 40 portions of Seed bars");
    assertThat(visit.open(own.replace("seed", "other") + "&last-day=2026-04-20").text())
        .contains("aria-invalid=\"true\"");
    String warm = "/ahead?question=frozen-life&frozen=2026-03-01&steps=25F:1d&food-name=Seed+bars";
    assertThat(visit.open(warm).text()).contains("what the freezer added has ended");
    String past = "/ahead?question=batches&portions=9&batch=4&last-day=2026-03-02&category=" + kind;
    assertThat(visit.open(past).text()).contains("2026-03-02 has passed");
  }

  /** The titles are those of our own tables; where they are printed keeps its name. */
  @Test
  void figures_and_limits_are_named_in_the_language_and_scale_of_the_person() {
    String cooling = "/ahead?question=cooling&home=no&depth=10cm&food=caldo";
    assertThat(served.get(cooling, "Cookie", "language=es; scale=C").text())
        .contains("De 57 °C (135 °F) a 21 °C (70 °F)", "capa para enfriar: ", "calor de fusión")
        .doesNotContain("cooling layer", "ice bowl steel", "Chicken stock, home-made");
    String pans = "/ahead?question=pans&portions=40&portion=8floz";
    assertThat(served.get(pans, "Cookie", "language=es; scale=C").text())
        .contains("cucharón 8: ", "Recipiente entero, 2 1/2 in de fondo: ")
        .doesNotContain("ladle 8", "Full pan");
  }

  /** USDA FSIS: from frozen it takes about half as long again, so 6 h of 9 where it takes 4. */
  @Test
  void hours_until_it_is_served_tell_the_hour_for_the_oven_too() {
    String asked = "/ahead?question=thawing&weight=12lb&cooking=4h&serve-in=9h";
    assertThat(visit.open(asked).text())
        .containsPattern("it goes into the oven by [^<]*\\d\\d:\\d\\d");
  }

  /** Which food is like another is our own, no source. */
  @Test
  void a_food_is_written_in_the_words_of_the_person() {
    String asked = "/ahead?question=ice&volume=2gal&food=";
    assertThat(visit.open(asked + "stock").text())
        .contains("these figures are for Chicken stock, home-made", "value=\"stock\"");
    assertThat(served.get(asked + "Caldo+de+pollo+casero", "Cookie", "language=es").text())
        .contains("Hielo: al menos", "value=\"Caldo de pollo casero\"")
        .doesNotContain("Las tablas no tienen", "chicken_stock");
    assertThat(served.get(asked + "curry", "Cookie", "language=es").text())
        .contains("«curry» puede parecerse a Guiso de res o a Lasaña con salsa de carne");
  }

  @Test
  void a_moment_is_taken_as_people_say_it() {
    String asked = "/ahead?question=thawing&weight=1lb&cooking=1h&serve-at=";
    assertThat(visit.open(asked + "tomorrow+6+pm").status()).isEqualTo(200);
    assertThat(visit.open(asked + "18:00").status()).isEqualTo(200);
    assertThat(visit.open(asked + "soon").status()).isEqualTo(422);
    assertThat(visit.open(asked + "tomorrow+6").text())
        .containsPattern("may be \\S+ 06:00 or \\S+ 18:00");
  }

  @Test
  void the_first_page_leads_here() {
    assertThat(visit.open("/").text()).contains("<a href=\"/ahead\">");
  }
}
