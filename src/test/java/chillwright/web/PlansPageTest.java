package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages of make-ahead plans; the calendar is read by a library of its own (RFC 5545). */
class PlansPageTest {
  private static final String SUPPER =
      """
      serving: 2026-03-20T18:00:00Z
      zone: UTC
      kitchen: {has: {hob: 1}}
      dishes:
        - dish: "Leek <b> soup"
          category: soup_or_stew
          portions: 30
          route: chilled
          make: [{step: simmer, minutes: 60, uses: {hob: 1}}]
          finish: [{step: reheat, minutes: 120, uses: {hob: 1}}]
      """;

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

  private Reply make(String code, String input) {
    visit.open("/plans");
    return visit.submit("/plans", "plan", code, "input", input);
  }

  @Test
  void the_example_on_the_page_makes_a_plan() {
    String page = visit.open("/plans").text();
    Matcher example = Pattern.compile("<textarea[^>]*>([^<]*)</textarea>").matcher(page);
    assertThat(example.find()).isTrue();
    Reply made = make("example", example.group(1));
    assertThat(made.status()).as(made.text()).isEqualTo(303);
    assertThat(visit.open("/plans/example").text()).contains("There is a plan.");
  }

  @Test
  void a_plan_shows_its_days_and_leads_to_a_batch() {
    assertThat(make("supper-12", SUPPER).status()).isEqualTo(303);
    String page = visit.open("/plans/supper-12").text();
    assertThat(page)
        .contains("There is a plan.")
        .contains("16:00 - 18:00")
        .contains("Leek &lt;b&gt; soup")
        .doesNotContain("Leek <b>")
        .contains("/plans/supper-12/batches");
    String batch =
        visit.open("/new-batch?food=Leek+%3Cb%3E+soup&category=soup_or_stew&portions=30").text();
    assertThat(batch).contains("soup_or_stew").contains("value=\"30\"");
  }

  /** FDA Food Code 2022 3-501.14(A), 3-403.11(A), (D) and 3-501.16(A): 57, 21, 5 and 74 °C. */
  @Test
  void limits_are_told_with_their_figures_in_the_scale_of_who_reads() {
    make("supper-12", SUPPER);
    assertThat(visit.open("/plans/supper-12").text())
        .contains("135 °F to 70 °F within 2 h; 135 °F to 41 °F within 6 h")
        .contains("reheat: 165 °F within 2 h (hob 1)")
        .contains("165 °F within 2 h. [3-403.11(A), (D)]");
    visit.submit("/ways", "scale", "C", "back", "/");
    assertThat(visit.open("/plans/supper-12").text())
        .contains("57 °C to 21 °C within 2 h; 57 °C to 5 °C within 6 h")
        .contains("reheat: 74 °C within 2 h (hob 1)")
        .doesNotContain("165 °F within");
  }

  /** FDA Food Code 2022 3-501.14(A): 2 and 6 hours; of an evening of three only the first fits. */
  @Test
  void a_reading_that_falls_while_the_kitchen_is_closed_stands_on_its_step() {
    String hours = "open: [{days: [mon, tue, wed, thu, fri], from: '17:00', to: '20:00'}]";
    make(
        "supper-12",
        SUPPER
            .replace("has: {hob: 1}", "has: {hob: 1}, " + hours)
            .replace("minutes: 120", "minutes: 30"));
    assertThat(visit.open("/plans/supper-12").text())
        .containsPattern(
            "<li><bdi>[^<]*within 6 h[^<]*The kitchen is closed then: have it read at");
  }

  @Test
  void a_half_typed_dish_goes_on_in_another_language_and_is_not_saved() {
    make("supper-12", SUPPER);
    visit.open("/plans/supper-12");
    Reply read =
        visit.submit(
            "/plans/supper-12/dishes",
            "dish",
            "Bean pie",
            "make/0/minutes",
            "x7",
            "language",
            "es");
    assertThat(read.status()).isEqualTo(200);
    assertThat(read.text())
        .contains("Aún no guardado", "value=\"Bean pie\"", "value=\"x7\"", "<html lang=\"es\"");
    assertThat(visit.open("/plans/supper-12").text())
        .contains("<html lang=\"es\"")
        .doesNotContain("Bean pie");
  }

  /** The titles of the two shipped sets; a page says by which of them it plans. */
  @Test
  void the_rules_that_plan_are_named() {
    make("supper-12", SUPPER);
    for (String address : List.of("/plans", "/plans/supper-12")) {
      assertThat(visit.open(address).text())
          .contains("planned by: FDA Food Code", "href=\"/kitchen#limits\"")
          .contains("serve --rule-set us-home");
    }
  }

  @Test
  void at_home_the_advice_for_homes_plans() {
    try (Served home = Served.atHome(folder.resolve("home"))) {
      assertThat(home.get("/plans").text())
          .contains("planned by: Home kitchen, advice of US federal agencies")
          .doesNotContain("those who sell or serve");
    }
  }

  @Test
  void faults_are_told_and_the_text_stays() {
    Reply reply = make("supper-12", SUPPER.replace("soup_or_stew", "soop"));
    assertThat(reply.status()).isEqualTo(422);
    assertThat(reply.text()).contains("not in the keeping list").contains("category: soop");
    assertThat(visit.open("/plans/supper-12").status()).isEqualTo(404);
    assertThat(make("a b", SUPPER).status()).isEqualTo(422);
  }

  @Test
  void the_tasks_are_a_calendar() throws Exception {
    make("supper-12", SUPPER);
    String text = visit.open("/plans/supper-12/tasks.ics").text();
    Calendar calendar = new CalendarBuilder().build(new StringReader(text));
    assertThat(calendar.getComponents("VEVENT")).hasSize(3);
    assertThat(calendar.toString()).contains("DTSTART:20260320T160000Z");
  }

  @Test
  void in_spanish_too() {
    make("supper-12", SUPPER);
    visit.submit("/ways", "language", "es", "back", "/");
    assertThat(visit.open("/plans/supper-12").text())
        .contains("Hay un plan.")
        .contains("vie 20 mar");
  }

  @Test
  void a_dish_becomes_a_lot_that_the_plan_follows() {
    begin("40");
    visit.submit("/plans/harvest-supper/kitchen", "has/hob", "2", "has/oven", "1");
    dish();
    Reply begun = visit.submit("/plans/harvest-supper/batches", "dish", "Leek soup");
    assertThat(begun.status()).as(begun.text()).isEqualTo(303);
    String lot = Visit.target(begun);
    assertThat(visit.open(lot).text()).contains("Leek soup");
    assertThat(visit.open("/plans/harvest-supper").text()).contains("href=\"" + lot);
  }

  @Test
  void a_dish_that_two_begin_at_once_becomes_one_lot() {
    begin("40");
    visit.submit("/plans/harvest-supper/kitchen", "has/hob", "2", "has/oven", "1");
    dish();
    Set<String> lots =
        IntStream.range(0, 8)
            .parallel()
            .mapToObj(
                one ->
                    visit.submit(
                        "/plans/harvest-supper/batches", "dish", "Leek soup", "once", "k" + one))
            .map(Visit::target)
            .collect(Collectors.toSet());
    assertThat(lots).hasSize(1);
  }

  private Reply begin(String guests) {
    visit.open("/plans");
    return visit.submit(
        "/plans", "name", "Harvest súpper", "serving", "2026-03-20T18:00", "guests", guests);
  }

  private Reply dish(String... more) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("token", visit.token());
    form.put("dish", "Leek soup");
    form.put("category", "soup_or_stew");
    form.put("route", "chilled");
    form.put("make/0/step", "simmer");
    form.put("make/0/minutes", "60");
    form.put("make/0/uses/hob", "1");
    form.put("finish/1/step", "reheat");
    form.put("finish/1/minutes", "120");
    for (int i = 0; i < more.length; i += 2) {
      form.put(more[i], more[i + 1]);
    }
    return visit.submit("/plans/harvest-supper/dishes", form);
  }

  /** FDA Food Code 2022 3-403.11(D): reheated within two hours, so from 16:00 on. */
  @Test
  void a_plan_is_made_by_filling_in_fields_and_moves_with_its_hour() {
    Reply begun = begin("40");
    assertThat(Visit.target(begun)).isEqualTo("/plans/harvest-supper");
    assertThat(visit.open("/plans/harvest-supper").text()).contains("No dish yet");
    Reply has = visit.submit("/plans/harvest-supper/kitchen", "has/hob", "2", "has/oven", "1,5");
    assertThat(has.status()).as(has.text()).isEqualTo(303);
    Reply made = dish();
    assertThat(Visit.target(made)).isEqualTo("/plans/harvest-supper");
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("There is a plan.", "16:00 - 18:00", "hob 1");
    visit.submit("/plans/harvest-supper/event", "name", "Supper", "serving", "2026-03-20T19:00");
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("17:00 - 19:00", "Fri 20 Mar 17:00 instead of Fri 20 Mar 16:00")
        .contains("It is served at another hour.");
    assertThat(visit.open("/plans").text()).contains("Supper").contains("Fri 20 Mar 19:00");
    dish("was", "Leek soup", "remove", "yes");
    assertThat(visit.open("/plans/harvest-supper").text()).contains("No dish yet");
  }

  @ParameterizedTest
  @ValueSource(strings = {"120", "120 min", "2 h", "2:00", "2h"})
  void how_long_a_step_takes_is_written_as_people_say_it(String length) {
    begin("40");
    visit.submit("/plans/harvest-supper/kitchen", "has/hob", "2");
    Reply made = dish("finish/1/minutes", length);
    assertThat(made.status()).as(made.text()).isEqualTo(303);
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("16:00 - 18:00", "name=\"finish/0/minutes\" type=\"text\"");
  }

  @Test
  void every_fault_stands_beside_its_field_and_nothing_is_changed() {
    assertThat(begin("many").text()).contains("A whole number of guests");
    begin("40");
    Reply refused =
        dish("route", "frozen", "make/0/minutes", "soon", "portions", "0", "category", "");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("Not saved: mend what is marked below")
        .contains("From 1 minute to 7 days (10080 minutes)", "A whole number of portions")
        .contains("value=\"soon\"");
    Reply nameless = dish("dish", "", "make/0/step", "", "make/0/minutes", "");
    assertThat(nameless.text()).contains("What the dish is called.", "At least one step");
    Reply unthawed = dish("route", "frozen", "make/0/uses/hob", "");
    assertThat(unthawed.text()).contains("a frozen dish needs that");
    assertThat(visit.open("/plans/harvest-supper").text()).contains("No dish yet");
  }

  /** WCAG 2.2, technique G139: a way from the list of faults to each field. */
  @Test
  void every_fault_on_top_leads_to_its_field_which_is_unfolded() {
    assertLeads(begin("many").text(), "event-guests");
    begin("40");
    visit.open("/plans/harvest-supper");
    String[] wrong = {"has/hob", "x", "open/0/from", "9", "open/0/to", ""};
    String kitchen = visit.submit("/plans/harvest-supper/kitchen", wrong).text();
    assertLeads(kitchen, "kitchen-has-hob", "kitchen-open-0-days");
    dish("make/0/uses/hob", "");
    String page =
        dish("was", "Leek soup", "make/0/uses/hob", "", "make/0/minutes", "soon", "portions", "0")
            .text();
    assertLeads(page, "d0-make-0-minutes", "d0-portions");
    assertThat(page).contains("Leek soup, Step 1: From 1 minute");
  }

  private static void assertLeads(String page, String... ids) {
    for (String id : ids) {
      assertThat(page).contains("<a href=\"#" + id + "\">");
      Matcher field = Pattern.compile("id=\"" + id + "\"").matcher(page);
      assertThat(field.find()).as(id).isTrue();
      String before = page.substring(0, field.start());
      int folded = before.lastIndexOf("<details");
      boolean isFree = folded <= before.lastIndexOf("</details>");
      assertThat(isFree || page.startsWith("<details open", folded)).as(id).isTrue();
    }
  }

  /** FDA Food Code 2022 3-403.11(D): two hours of reheating end as it is handed over at noon. */
  @Test
  void a_dish_may_be_due_by_itself_and_a_step_may_fill_the_refrigerator() {
    begin("40");
    visit.open("/plans/harvest-supper");
    visit.submit("/plans/harvest-supper/kitchen", "has/hob", "7", "has/refrigerator", "90");
    String[] more = {"due", "2026-03-20T12:00", "make/0/uses/refrigerator", "20"};
    assertThat(dish(more).status()).isEqualTo(303);
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("10:00 - 12:00", "refrigerator 21.1 qt")
        .containsPattern("name=\"due\"[^>]*value=\"2026-03-20T12:00\"")
        .containsPattern("name=\"make/0/uses/refrigerator\"[^>]*value=\"21.1\"");
    assertThat(dish("was", "Leek soup", "due", "2026-03-20T19:00").text())
        .contains("not after all is on the table");
    assertThat(dish("was", "Leek soup").status()).isEqualTo(303);
    assertThat(visit.open("/plans/harvest-supper").text()).contains("16:00 - 18:00");
  }

  /** What was written as text is not lost where the form is saved; 5 L are 5.3 US quarts. */
  @Test
  void a_step_that_fills_the_freezer_keeps_its_field() {
    make("supper-12", SUPPER.replace("{hob: 1}", "{hob: 1, freezer: 5}"));
    assertThat(visit.open("/plans/supper-12").text())
        .containsPattern("name=\"make/0/uses/freezer\"[^>]*value=\"5.3\"");
  }

  @Test
  void the_next_plan_begins_with_the_same_kitchen() {
    begin("40");
    visit.open("/plans/harvest-supper");
    visit.submit("/plans/harvest-supper/kitchen", "has/hob", "7");
    assertThat(Visit.target(begin("30"))).isEqualTo("/plans/harvest-supper-2");
    assertThat(visit.open("/plans/harvest-supper-2").text())
        .contains("name=\"has/hob\"")
        .contains("value=\"7\"");
  }

  @Test
  void a_plan_after_one_without_a_kitchen_begins_with_the_last_that_has_one() {
    begin("40");
    assertThat(Visit.target(begin("30"))).isEqualTo("/plans/harvest-supper-2");
    visit.submit("/plans/harvest-supper/kitchen", "has/hob", "7");
    served.at("2026-03-04T08:00:00Z");
    make("bare", SUPPER.replace("kitchen: {has: {hob: 1}}", "").replace(", uses: {hob: 1}", ""));
    assertThat(Visit.target(begin("30"))).isEqualTo("/plans/harvest-supper-3");
    assertThat(visit.open("/plans/harvest-supper-3").text()).contains("value=\"7\"");
  }

  @Test
  void a_new_step_takes_one_person_and_the_kitchen_is_open_when_it_says() {
    begin("40");
    visit.submit(
        "/plans/harvest-supper/kitchen",
        "has/hands",
        "2",
        "has/hob",
        "1",
        "open/0/days",
        "fri",
        "open/0/from",
        "07:00",
        "open/0/to",
        "20:00");
    String page = visit.open("/plans/harvest-supper").text();
    assertThat(page)
        .containsPattern("name=\"make/0/uses/hands\"[^>]*value=\"1\"")
        .containsPattern("name=\"make/0/uses/hob\"[^>]*value=\"\"");
    dish("make/0/uses/hands", "");
    assertThat(visit.open("/plans/harvest-supper").text())
        .containsPattern("name=\"make/0/uses/hands\"[^>]*value=\"\"")
        .containsPattern("name=\"make/1/uses/hands\"[^>]*value=\"1\"")
        .contains("Open: Fri 07:00 - 20:00");
  }

  /** 2.5 kg for 40 are 3.75 kg for 60, however often the guests change: our own arithmetic. */
  @Test
  void amounts_written_for_all_go_with_the_guests_and_own_litres_are_told() {
    begin("40");
    visit.submit("/plans/harvest-supper/kitchen", "has/refrigerator", "100");
    dish("make/0/uses/hob", "", "ingredients", "2.5 kg leeks");
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("2.5 kg leeks (Leek soup)")
        .containsPattern("name=\"ingredientsFor\"[^>]*value=\"40\"");
    String[] event = {"name", "Harvest supper", "serving", "2026-03-20T19:00", "guests", "60"};
    visit.submit("/plans/harvest-supper/event", event);
    assertThat(visit.open("/plans/harvest-supper").text()).contains("3.75 kg leeks (Leek soup)");
    String[] own = {
      "was",
      "Leek soup",
      "make/0/uses/hob",
      "",
      "portionMillilitres",
      "300",
      "keeps/refrigerator",
      "12"
    };
    dish(own);
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("The plan reckons with the 12.7 quarts that you wrote instead (refrigerator)");
  }

  /**
   * NIST SP 811, appendix B.8: a US liquid quart is 0.946 352 9 L, a gallon 3.785 412 L, a cubic
   * foot 28.316 85 L.
   */
  @Test
  void who_reads_fahrenheit_reads_and_writes_quarts_and_litres_are_kept() {
    begin("40");
    String kitchen = "/plans/harvest-supper/kitchen";
    String[] typed = {
      "volumes",
      "quarts",
      "has/hob",
      "7",
      "has/refrigerator",
      "100",
      "has/freezer",
      "2 cu ft",
      "has/warm",
      "10 gal"
    };
    visit.submit(kitchen, typed);
    String page = visit.open("/plans/harvest-supper").text();
    assertThat(page)
        .contains("Refrigerator, quarts", "name=\"volumes\" value=\"quarts\"")
        .containsPattern("name=\"has/refrigerator\"[^>]*value=\"100\"")
        .containsPattern("name=\"has/freezer\"[^>]*value=\"59.8\"")
        .containsPattern("name=\"has/warm\"[^>]*value=\"40\"")
        .containsPattern("name=\"has/hob\"[^>]*value=\"7\"")
        .contains("\"refrigerator\" : 94.6", "\"freezer\" : 56.6", "\"warm\" : 37.9");
    visit.submit("/ways", "scale", "C", "back", "/");
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("Refrigerator, litres", "name=\"volumes\" value=\"\"")
        .containsPattern("name=\"has/refrigerator\"[^>]*value=\"94.6\"");
    visit.submit(kitchen, "volumes", "", "has/refrigerator", "60", "has/warm", "40 qt");
    assertThat(visit.open("/plans/harvest-supper").text())
        .contains("\"refrigerator\" : 60,", "\"warm\" : 37.9");
    Reply wrong = visit.submit(kitchen, "volumes", "quarts", "has/refrigerator", "60 lb");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).containsPattern("name=\"has/refrigerator\"[^>]*value=\"60 lb\"");
  }

  /** 20 March 2026 is of the week from Monday 16: ISO 8601 2026-W12, as POSIX date %G-W%V. */
  @Test
  void ingredients_are_typed_a_line_each_and_bought_by_week() {
    begin("40");
    String lines = "2,5 kg leeks\r\n\r\n1 1/2 l stock\n6 onions\nsalt";
    String page =
        visit
            .open(
                Visit.target(
                    dish("make/0/uses/hob", "", "ingredients", lines, "ingredientsFor", "20")))
            .text();
    assertThat(page)
        .contains("Shopping by week", "To buy for the week of Mon 16 Mar (2026-W12)")
        .contains("5 kg leeks (Leek soup)", "3 l stock (", "12 onions (", ">salt (Leek soup)")
        .contains(">2.5 kg leeks\n1.5 l stock\n6 onions\nsalt</textarea>");
    Reply refused = dish("was", "Leek soup", "make/0/uses/hob", "", "ingredients", "3\n1 kg rice");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("Each line: how much,", ">3\n1 kg rice</textarea>");
    String without =
        visit.open(Visit.target(dish("was", "Leek soup", "make/0/uses/hob", ""))).text();
    assertThat(without).doesNotContain("Shopping by week");
  }
}
