package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
        .contains("/new-batch?food=Leek+%3Cb%3E+soup&amp;category=soup_or_stew&amp;portions=30");
    String batch =
        visit.open("/new-batch?food=Leek+%3Cb%3E+soup&category=soup_or_stew&portions=30").text();
    assertThat(batch).contains("soup_or_stew").contains("value=\"30\"");
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
        .contains("viernes 2026-03-20");
  }
}
