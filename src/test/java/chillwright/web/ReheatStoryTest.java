package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.web.Served.Reply;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a cook is told while food is being reheated: one thing to do, by when, to what figure. FDA
 * Food Code 2022 3-501.14(A): 70 °F within two hours, 41 °F within six; 3-403.11(A): 165 °F. That a
 * late reheat may be allowed: University of Maine Cooperative Extension, Cooling Record Sheet.
 */
class ReheatStoryTest {
  private static final String LEAVE = "mends it only if your authority allows it";

  @TempDir private Path folder;
  private Served served;
  private Visit visit;

  @BeforeEach
  void open() {
    served = Served.in(folder);
    served.post(
        "/api/v1/lots", "{'lot':'POT','food':'Rice','category':'soup_or_stew','portions':9}");
    visit = new Visit(served);
  }

  @AfterEach
  void close() {
    served.close();
  }

  private void at(String clock) {
    served.at("2026-03-06T" + clock + ":00-07:00");
  }

  private void log(String clock, String entry) {
    String row = "{'when':'2026-03-06T" + clock + ":00-07:00'," + entry + "}";
    Reply logged = served.post("/api/v1/lots/POT/entries", row);
    assertThat(logged.status()).as(logged.text()).isEqualTo(201);
  }

  /** What stands on top of its page. */
  private String told() {
    String page = visit.open("/lots/POT").text();
    return page.substring(page.indexOf("<p class=\"where\">"), page.indexOf("id=\"entry\""));
  }

  @Test
  void a_reheat_in_time_is_told_its_figure_and_by_when() {
    at("08:40");
    log("07:00", "'entry':'cooked','temperature':'200F'");
    log("07:30", "'entry':'reading','temperature':'150F'");
    log("08:30", "'entry':'reheating','temperature':'112F'");
    String says = "Being reheated: 165 °F by 09:30";
    assertThat(told()).contains(says).doesNotContain("70 °F", "Hold it at");
    assertThat(visit.open("/").text()).contains(says);
    assertThat(visit.open("/day").text()).contains(says);
    assertThat(visit.open("/deadlines.ics").text()).contains("165 °F by 09:30: Rice (POT)");
    // Hot enough to be held hot is not yet reheated, and two hours are all that a reheat has.
    log("08:40", "'entry':'reading','temperature':'140F'");
    assertThat(told()).contains("165 °F by 10:30").doesNotContain("Hold it at", "70 °F");
    at("08:50");
    log("08:50", "'entry':'reading','temperature':'166F'");
    assertThat(told()).contains("Hold it at 135 °F or above, or cool it: 70 °F by 10:50");
  }

  @Test
  void a_late_one_is_told_what_was_missed_and_one_thing_to_do() {
    at("12:20");
    log("07:00", "'entry':'cooked','temperature':'200F'");
    log("07:30", "'entry':'reading','temperature':'130F'");
    log("12:00", "'entry':'cooling','temperature':'99F'");
    assertThat(told())
        .contains("70 °F was due by 09:00", "Discard, or reheat to 165 °F", "(until 13:00)");
    log("12:05", "'entry':'reheating','temperature':'99F'");
    assertThat(told())
        .contains("70 °F was due by 09:00", "heat it to 165 °F by 13:00", LEAVE)
        .doesNotContain("Discard, or", "does not mend", "41 °F", "Hold it at");
    log("12:10", "'entry':'action','how':'allowed'");
    assertThat(told())
        .contains("heat it to 165 °F by 13:00", "Your authority allowed it")
        .doesNotContain("Discard", LEAVE, "41 °F");
    log("12:15", "'entry':'reading','temperature':'166F'");
    assertThat(told())
        .contains("Reheated since: 166 °F", "So it is for use")
        .doesNotContain("Discard", LEAVE, "Use it only if");
  }

  /** FDA Food Code 2022 3-403.11(D): within two hours, here from 09:10 on. */
  @Test
  void a_late_one_has_two_hours_and_no_more() {
    at("11:30");
    log("07:00", "'entry':'cooked','temperature':'200F'");
    log("09:05", "'entry':'reading','temperature':'99F'");
    log("09:06", "'entry':'action','how':'allowed'");
    log("09:10", "'entry':'reheating','temperature':'99F'");
    at("09:20");
    assertThat(told()).contains("heat it to 165 °F by 11:10").doesNotContain("by 13:00");
    at("11:20");
    log("11:11", "'entry':'reading','temperature':'166F'");
    assertThat(told()).doesNotContain("Reheated since", "by 11:10");
  }

  @Test
  void a_late_one_done_in_two_hours_is_told() {
    at("11:30");
    log("07:00", "'entry':'cooked','temperature':'200F'");
    log("09:05", "'entry':'reading','temperature':'99F'");
    log("09:06", "'entry':'action','how':'allowed'");
    log("09:10", "'entry':'reheating','temperature':'99F'");
    log("11:10", "'entry':'reading','temperature':'166F'");
    assertThat(told()).contains("Reheated since: 166 °F");
  }

  @Test
  void a_late_one_done_without_leave_asks_for_it_once() {
    at("12:20");
    log("07:00", "'entry':'cooked','temperature':'200F'");
    log("07:30", "'entry':'reading','temperature':'130F'");
    log("12:00", "'entry':'cooling','temperature':'99F'");
    log("12:05", "'entry':'reheating','temperature':'99F'");
    log("12:15", "'entry':'reading','temperature':'166F'");
    assertThat(told())
        .contains("Reheated since: 166 °F", "Use it only if your authority allows")
        .doesNotContain(LEAVE, "Discard, or");
  }
}
