package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How each job is done, on a page to print. */
class WaysTest {
  private static final Pattern STEPS = Pattern.compile("(?s)<ol class=\"steps\">(.*?)</ol>");

  private static Served served;

  @BeforeAll
  static void open(@TempDir Path folder) {
    served = Served.in(folder);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** Limits and clauses are those of the FDA Food Code 2022 and of FoodSafety.gov. */
  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          cooling      | 70 °F (21 °C) within 2 h | 3-501.14(A)(1) | 70 °F (21 °C) en 2 h
          missed-limit | 41 °F (5 °C) within 6 h  | 3-501.14(A)(2) | 41 °F (5 °C) en 6 h
          reheating    | 165 °F (74 °C) within 2 h | 3-403.11       | 165 °F (74 °C) en 2 h
          freezing     | 7 days                   | 3-501.17(A)    | 7 días
          day-round    | 135 °F (57 °C)           | 3-501.16(A)(1) | 135 °F (57 °C)
          outage       | 41 °F (5 °C)             | 3-501.16(A)(2) | 41 °F (5 °C)
          """)
  void a_job_has_its_steps_and_the_limits_of_the_rule_set(
      String job, String limit, String clause, String spanish) {
    String page = served.get("/ways/" + job).text();
    assertThat(page).contains(limit, clause, "local health authority");
    assertThat(served.get("/ways").text()).contains("href=\"/ways/" + job + "\"");
    assertThat(served.get("/ways/" + job, "Accept-Language", "es").text())
        .contains(spanish, "autoridad sanitaria local");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"cooling", "missed-limit", "reheating", "freezing", "day-round", "outage"})
  void steps_hold_no_figure_of_their_own(String job) {
    for (String language : new String[] {"en", "es"}) {
      String page = served.get("/ways/" + job, "Accept-Language", language).text();
      var steps = STEPS.matcher(page);
      assertThat(steps.find()).as(page).isTrue();
      assertThat(steps.group(1)).doesNotContainPattern("[0-9]").contains("<li>");
    }
  }

  @Test
  void an_unknown_job_is_no_page() {
    assertThat(served.get("/ways/juggling").status()).isEqualTo(404);
  }

  /**
   * FoodSafety.gov, refrigerated food and power outages, and NC State Extension on frozen food:
   * meat, milk, soft cheese and cut fruit go, hard cheese, butter and whole fruit stay; ice cream
   * goes even with ice crystals; vegetables after 6 hours.
   */
  @Test
  void after_an_outage_each_food_has_its_answer_wherever_one_asks() {
    for (String address :
        new String[] {
          "/ways/outage",
          "/keeps",
          "/ahead?question=outage",
          "/ahead?question=outage&appliance=refrigerator&without-power=5h"
        }) {
      assertThat(served.get(address).text())
          .as(address)
          .containsSubsequence(
              "discard what is on this list, unless a thermometer showed 40 °F (4 °C) or below",
              "meat, poultry, fish",
              "soft, shredded and low-fat cheese",
              "cut fruit",
              "if warmer than 50 °F (10 °C) for more than 8 h",
              "this keeps",
              "hard and processed cheese, butter",
              "whole and dried fruit",
              "FoodSafety.gov, refrigerated food and power outages");
    }
    assertThat(served.get("/ahead?question=outage&appliance=half-freezer&without-power=30h").text())
        .containsSubsequence(
            "is over",
            "ice crystals",
            "ice cream and frozen yogurt, even with ice crystals",
            "warmer than 40 °F (4 °C) for more than 6 h",
            "may be frozen again",
            "hard cheese")
        .doesNotContain("Out of the refrigerator");
    assertThat(served.get("/ways/outage").text())
        .contains("href=\"/day\"", "href=\"/on-hand\"", "href=\"/keeps#power\"");
    assertThat(served.get("/ways/outage", "Cookie", "scale=C; language=es").text())
        .contains("4 °C (40 °F) o menos", "queso duro");
  }
}
