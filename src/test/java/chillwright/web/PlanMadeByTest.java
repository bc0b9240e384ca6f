package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A dish that is wanted by a day, long before it need be made; by definition, no source. */
class PlanMadeByTest {
  private static final String FEAST = "/plans/feast";

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void serve() {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/plans");
    visit.submit("/plans", "name", "Feast", "serving", "2026-03-20T18:00", "guests", "12");
    visit.open(FEAST);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private Reply pie(String... more) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("token", visit.token());
    form.put("dish", "Pumpkin pie");
    form.put("category", "pie_pumpkin_or_pecan");
    form.put("route", "frozen");
    form.put("make/0/step", "bake");
    form.put("make/0/minutes", "90");
    form.put("thawHours", "24");
    for (int i = 0; i < more.length; i += 2) {
      form.put(more[i], more[i + 1]);
    }
    return visit.submit(FEAST + "/dishes", form);
  }

  @Test
  void it_is_made_by_the_end_of_that_day_and_the_form_holds_it() {
    assertThat(pie("madeBy", "2026-03-12").status()).isEqualTo(303);
    String page = visit.open(FEAST).text();
    assertThat(page).contains("There is a plan.", "value=\"2026-03-12\"");
    assertThat(page).containsPattern("begin to make it .{0,80}Thu 12 Mar");
    assertThat(page).contains("16:30 - 18:00  Pumpkin pie: bake");
  }

  @Test
  void a_fresh_dish_and_what_is_no_day_are_told_so_at_the_field() {
    for (String[] wrong : new String[][] {{"fresh", "2026-03-12"}, {"frozen", "Saturday"}}) {
      Reply refused = pie("route", wrong[0], "madeBy", wrong[1]);
      assertThat(refused.status()).isEqualTo(422);
      assertThat(refused.text())
          .contains("madeBy-fault", "Give a day, such as 2026-12-06", wrong[1]);
    }
    assertThat(visit.open(FEAST).text()).doesNotContain("Pumpkin pie");
  }

  @Test
  void another_language_or_scale_stays_on_the_page_of_the_plan() {
    pie();
    assertThat(visit.open(FEAST).text()).contains("name=\"back\" value=\"/plans/feast\"");
    Reply chosen = visit.submit("/ways", "language", "es", "back", FEAST);
    assertThat(Visit.target(chosen)).isEqualTo(FEAST);
  }
}
