package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The round as one form: a figure that was typed is never lost by what another one says. 83 °F is
 * more than a refrigerator reads by failing, which is common practice, no source.
 */
class RoundFormTest {
  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    for (String[] place :
        new String[][] {
          {"Bar fridge", "refrigerator"}, {"Chest", "freezer"}, {"Walk-in", "refrigerator"}
        }) {
      served.kitchen().setUp().place(Map.of("name", place[0], "kind", place[1]));
    }
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  /** As a browser sends the page: the fields of each place in turn. */
  private Reply save(String page, String touched, String sure, String... figures) {
    StringBuilder form = new StringBuilder("entry=reading&scale=F&touched=" + encoded(touched));
    form.append("&token=").append(field(page, "token")).append("&once=").append(once(page));
    int i = 0;
    for (String place : List.of("Bar fridge", "Chest", "Walk-in")) {
      form.append("&place=").append(encoded(place)).append("&temperature=").append(figures[i]);
      form.append("&by=").append(i == 2 ? "RO" : "");
      i++;
    }
    return visit.submitted(
        "/day/readings", form + (sure.isEmpty() ? "" : "&sure=" + encoded(sure)));
  }

  private static String once(String page) {
    String form = page.substring(page.indexOf("id=\"read\""));
    return field(form, "once");
  }

  private static String field(String page, String name) {
    return page.replaceAll("(?s).*?name=\"" + name + "\" value=\"([^\"]+)\".*", "$1");
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private List<String> readings() {
    return served.get("/api/v1/readings").json().at("/items").findValuesAsText("temperature");
  }

  @Test
  void one_save_takes_every_figure_that_was_typed() {
    String page = visit.open("/day").text();
    assertThat(page.split("name=\"temperature\"[^>]*form=\"read\"", -1)).hasSize(4);
    Reply saved = save(page, "Chest", "", "38", "-2", "");
    assertThat(saved.status()).as(saved.text()).isEqualTo(303);
    assertThat(Visit.target(saved)).startsWith("/day?saved=Bar+fridge&saved=Chest#at-");
    assertThat(readings()).containsExactlyInAnyOrder("38 °F", "-2 °F");
    String after = visit.open(Visit.target(saved).replaceFirst("#.*", "")).text();
    assertThat(after.split("Saved\\.", -1)).hasSize(3);
    assertThat(save(page, "Chest", "", "38", "-2", "").status()).as("sent twice").isEqualTo(303);
    assertThat(readings()).hasSize(2);
  }

  @Test
  void a_doubt_about_one_holds_up_none_of_the_others() {
    String page = visit.open("/day").text();
    Reply asked = save(page, "Walk-in", "", "83", "-2", "38");
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text())
        .containsOnlyOnce("name=\"sure\"")
        .containsPattern("name=\"sure\" value=\"[^\"]+\"[^>]*form=\"read\"")
        .contains("Did you mean 38 °F?", "value=\"83\"");
    assertThat(asked.text().split("Saved\\.", -1)).hasSize(3);
    assertThat(readings()).containsExactlyInAnyOrder("-2 °F", "38 °F");
    Reply sure = save(asked.text(), "Bar fridge", Visit.ticks(asked), "83", "", "");
    assertThat(sure.status()).as(sure.text()).isEqualTo(303);
    assertThat(readings()).containsExactlyInAnyOrder("-2 °F", "38 °F", "83 °F");
    assertThat(visit.open("/day").text()).contains("value=\"RO\"");
  }

  @Test
  void a_figure_that_cannot_be_read_stays_in_its_field_and_nothing_at_all_is_told() {
    String page = visit.open("/day").text();
    Reply refused = save(page, "Walk-in", "", "mild", "-2", "");
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text()).contains("Bar fridge: This is not a temperature", "value=\"mild\"");
    assertThat(readings()).containsExactly("-2 °F");
    Reply blank = save(refused.text(), "Walk-in", "", "", "", "");
    assertThat(blank.status()).isEqualTo(422);
    assertThat(blank.text()).contains("No figure was typed");
  }
}
