package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * From a freezer that was read too warm to what that cost. FoodSafety.gov, Cold Food Storage Chart:
 * 0 °F; what stays frozen above it loses quality. That nobody knows how it was between two readings
 * is plain; that the spell is reckoned from the last cold one is our own way, no source.
 */
class WarmFreezerTest {
  private static final Pattern WAY = Pattern.compile("href=\"(/ahead\\?[^\"]*)\">([^<]*)<");

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    visit = new Visit(served);
    visit.open("/kitchen");
    taken("/kitchen/places", "name", "Chest", "kind", "freezer", "rounds", "1");
    Served.Reply stored =
        served.postCsv(
            "/api/v1/imports",
            """
            lot,food,category,when,entry,place
            H,Hazel bars,bar_cookies_cut_and_wrapped,2026-03-01T08:00:00Z,cooked,
            H,,,2026-03-01T12:00:00Z,frozen,Chest
            """);
    assertThat(stored.status()).as(stored.text()).isLessThan(300);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void taken(String address, String... fields) {
    assertThat(visit.submit(address, fields).status()).isEqualTo(303);
  }

  private void read(String time, String figure) {
    served.at(time);
    visit.open("/day");
    taken(
        "/day/readings", "entry", "reading", "place", "Chest", "temperature", figure, "scale", "F");
  }

  private Matcher way() {
    return WAY.matcher(visit.open("/day").text());
  }

  @Test
  void a_freezer_that_reads_too_warm_leads_to_what_it_cost_with_all_that_is_known() {
    read("2026-03-03T18:00:00Z", "-1");
    assertThat(way().find()).isFalse();
    read("2026-03-04T06:00:00Z", "20");
    read("2026-03-04T18:00:00Z", "22");
    read("2026-03-04T20:00:00Z", "15");
    Matcher way = way();
    assertThat(way.find()).isTrue();
    assertThat(way.group(2)).contains("Hazel bars").contains("frozen Sun 1 Mar");
    String address = way.group(1).replace("&amp;", "&");
    assertThat(address)
        .contains("category=bar_cookies_cut_and_wrapped&frozen=2026-03-01&since=2026-03-03+11")
        .contains("steps=22+%C2%B0F%3A26.0h");
    assertThat(way.find()).isFalse();
    Served.Reply answer = visit.open(address);
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    assertThat(answer.text()).contains("Quality fades from", "value=\"22 °F:26.0h\"");
  }

  @Test
  void a_first_reading_leaves_open_for_how_long_it_was_warm() {
    read("2026-03-03T18:00:00Z", "25");
    Matcher way = way();
    assertThat(way.find()).isTrue();
    Served.Reply form = visit.open(way.group(1).replace("&amp;", "&"));
    assertThat(form.status()).isEqualTo(200);
    assertThat(form.text()).contains("value=\"2026-03-01\"").doesNotContain("Quality fades from");
  }

  /** Above 32 °F food in a freezer thaws: its dates wait for a look at it. */
  @Test
  void the_page_of_a_lot_inside_says_so_before_its_dates() {
    assertThat(visit.open("/lots/H").text()).doesNotContain("before you rely on these dates");
    read("2026-03-03T18:00:00Z", "50");
    assertThat(visit.open("/lots/H").text())
        .containsSubsequence(
            "Chest read 50 °F", "before you rely on these dates", "best quality by");
  }
}
