package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import org.junit.jupiter.api.Test;

/** An event on a phone: a dish is begun from its plan, logged, and the plan says what moved. */
class PlanStoryIT extends PhoneStories {
  private static final String SUPPER =
      """
      {"serving": "2026-03-10T18:00:00-06:00", "zone": "America/Denver", "name": "Late supper",
       "from": "2026-03-02T08:00:00-07:00", "guests": 20,
       "dishes": [{"dish": "Leek soup", "category": "soup_or_stew", "route": "frozen",
         "thawHours": 24, "make": [{"step": "simmer", "minutes": 60}],
         "finish": [{"step": "reheat", "minutes": 60}]}]}
      """;

  /** Six hours of cooling at most are FDA Food Code 2022 3-501.14(A): made 10:15, cold by 16:15. */
  @Test
  void a_dish_is_begun_from_its_plan_which_then_follows_it() {
    served()
        .send(
            served()
                .request("/api/v1/plans/late-supper", "Content-Type", "application/json")
                .PUT(BodyPublishers.ofString(SUPPER)));
    open("/plans");
    phone().tapText("Late supper");
    phone().waitFor("There is a plan.");
    assertThat(phone().text()).doesNotContain("What moved, and why");
    phone().tap("button[name=dish]");
    phone().waitFor("Log an entry");
    String lot = phone().address().replaceAll(".*/lots/([^?#]+).*", "$1");
    phone().tapText("cooked");
    phone().type("#entry input[name=temperature]", "180");
    phone().tap("#entry button.main");
    phone().waitFor("Saved: cooked, 180 °F");

    open("/plans/late-supper");
    phone().waitFor("What moved, and why");
    assertThat(phone().text())
        .contains("Leek soup, into the freezer: Tue 3 Mar 16:15 instead of Sun 8 Mar")
        .contains("It was made at Tue 3 Mar 10:15.", lot);
    open("/");
    assertThat(phone().text()).contains("From plans, within a day", "16:15 Leek soup");
    phone().tapText("Pull list: out of the freezer, and to use");
    phone().waitFor("Nothing is to come out");
  }

  /** Another language brings the page anew: own design, no source. */
  @Test
  void what_is_half_typed_is_not_lost_with_the_language_without_a_word() {
    open("/plans");
    phone().type("form.entry input:not([type=hidden])", "Half a name");
    phone().tapText("Español");
    assertThat(phone().refuse()).contains("not saved is lost");
    assertThat(phone().find("form.entry input:not([type=hidden])").getDomProperty("value"))
        .isEqualTo("Half a name");
    phone().reload();
    phone().tapText("Español");
    phone().waitFor("Planificar");
  }
}
