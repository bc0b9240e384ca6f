package chillwright.service.ahead;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Told;
import chillwright.print.AheadText;
import chillwright.print.Language;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleLibrary;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** FDA, food safety in an emergency: a closed refrigerator 4 h, a full freezer 48. */
class OutageQuestionTest {
  private static final String THURSDAY = "2026-11-26T10:00";

  private static Setting at(String time) {
    try {
      RuleLibrary library = RuleLibrary.load(Optional.empty());
      return Setting.of(
          library,
          library.ruleBook("us-home").orElseThrow(),
          LocalDateTime.parse(time).atZone(ZoneId.of("America/Denver")));
    } catch (BrokenRules broken) {
      throw new AssertionError(broken.getMessage(), broken);
    }
  }

  private static Ahead asked(String appliance, String since, String time) throws BadQuestion {
    return Question.OUTAGE.answer(Map.of("appliance", appliance, "without-power", since), at(time));
  }

  private static List<String> says(Ahead ahead) {
    AheadText text = new AheadText(Language.ENGLISH);
    return ahead.told().stream().map(text::says).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "6h                 | Thu 26 Nov 2026 04:00 | 6 h",
        "90 min             | Thu 26 Nov 2026 08:30 | 1 h 30 min",
        "1 day              | Wed 25 Nov 2026 10:00 | 24 h",
        "5:30 h             | Thu 26 Nov 2026 04:30 | 5 h 30 min",
        "5:30               | Thu 26 Nov 2026 05:30 | 4 h 30 min",
        "18:00              | Wed 25 Nov 2026 18:00 | 16 h",
        "6 pm               | Wed 25 Nov 2026 18:00 | 16 h",
        "yesterday 14:00    | Wed 25 Nov 2026 14:00 | 20 h",
        "ayer 14:00         | Wed 25 Nov 2026 14:00 | 20 h",
        "since 6pm          | Wed 25 Nov 2026 18:00 | 16 h",
        "desde las 6 de la tarde | Wed 25 Nov 2026 18:00 | 16 h",
        "last night 1:30 am | Thu 26 Nov 2026 01:30 | 8 h 30 min",
        "desde anoche       | Wed 25 Nov 2026 18:00 | 16 h",
        "last night         | Wed 25 Nov 2026 18:00 | 16 h",
        "2026-11-25 14:00   | Wed 25 Nov 2026 14:00 | 20 h"
      })
  void it_says_since_when_it_counts_and_how_long_that_is(String given, String since, String gone)
      throws BadQuestion {
    assertThat(says(asked("full-freezer", given, THURSDAY)).get(0))
        .isEqualTo("Counted since " + since + ": " + gone + " without power.");
  }

  @ParameterizedTest
  @CsvSource({"6:01, outage.left", "6:00, outage.over", "22:00, outage.over", "3h, outage.left"})
  void a_refrigerator_is_cold_for_four_hours(String given, String key) throws BadQuestion {
    assertThat(asked("refrigerator", given, THURSDAY).told()).extracting(Told::key).contains(key);
  }

  @ParameterizedTest
  @ValueSource(strings = {"soon", "tomorrow 9:00", "today 18:00", "-3h", "25:00", "2036-01-01"})
  void what_leaves_a_doubt_or_is_still_to_come_is_refused(String given) {
    assertThatThrownBy(() -> asked("refrigerator", given, THURSDAY))
        .isInstanceOfSatisfying(
            BadQuestion.class,
            bad -> assertThat(bad.problems()).extracting("code").containsExactly("bad-since"));
  }

  @Test
  void a_bare_figure_is_asked_about_with_both_its_times() {
    assertThatThrownBy(() -> asked("refrigerator", "6", THURSDAY))
        .isInstanceOfSatisfying(
            BadQuestion.class,
            bad ->
                assertThat(bad.problems())
                    .extracting("code", "allowed")
                    .containsExactly(tuple("two-times", "2026-11-25 18:00 or 2026-11-26 06:00")));
  }

  /** IANA tz database, America/Denver: on 1 November 2026 the hour from 01:00 comes twice. */
  @Test
  void the_hour_that_the_clock_showed_twice_is_counted() throws BadQuestion {
    assertThat(says(asked("full-freezer", "0:30", "2026-11-01T03:30")).get(0))
        .contains("4 h without power");
  }
}
