package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Portions and the end of a lot; the rules are those this project states. */
class IntakeEndTest {
  private static final String HEADER = "lot,food,category,when,entry,portions,note,id,corrects\n";
  private static final String FIRST = "A,Soup,soup_or_stew,10:00,cooked,20,,a1,\n";
  private final IntakeBench bench = new IntakeBench();

  private List<Problem> problems(String rows) {
    return bench.admit(HEADER + rows).problems();
  }

  private Problem problem(String rows) {
    List<Problem> problems = problems(rows);
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "A,,,12:00,served,20,,,\n",
        "A,,,12:00,served,,,,\n",
        "A,,,12:00,discarded,,,,\n",
        "A,,,12:00,portions,20,,,\n",
        "A,,,11:00,portions,12,,,\nA,,,12:00,served,8,,,\n",
      })
  void nothing_happens_to_a_lot_of_which_nothing_is_left(String end) {
    assertThat(problems(FIRST + end + "A,,,12:00,cooling,,,,\n")).isEmpty();
    assertThat(problems(FIRST + end + "A,,,12:01,action,,washed up,,\n")).isEmpty();
    assertThat(problems(FIRST + end + "A,,,12:01,correction,19,typo,,a1\n"))
        .extracting(Problem::code)
        .doesNotContain("lot-closed");
    assertThat(problems(FIRST + end + "A,,,12:01,cooling,,,,\n"))
        .extracting(Problem::code, Problem::given)
        .containsExactly(tuple("lot-closed", "cooling"));
  }

  @Test
  void a_row_after_the_end_is_told_with_both_times_in_the_kitchens_zone() {
    assertThat(problem(FIRST + "A,,,12:00,served,,,,\nA,,,12:01,chilled,,,,\n"))
        .isEqualTo(
            new Problem(
                "lot-closed",
                at(4, "entry"),
                "chilled",
                "rows up to the end of the lot, and after it actions and corrections",
                "Nothing was left of lot A after \"served\" on 2026-03-02 06:00, but \"chilled\" on"
                    + " 2026-03-02 06:01 is later. If one of them is wrong, correct it; if this is"
                    + " other food, give it a lot of its own."));
  }

  @Test
  void a_lot_counted_out_may_still_be_called_finished_once() {
    String out = FIRST + "A,,,12:00,portions,20,,,\n";
    assertThat(problems(out + "A,,,13:00,served,,,,\n")).isEmpty();
    assertThat(problems(out + "A,,,13:00,discarded,,,,\n")).isEmpty();
    assertThat(problems(out + "A,,,13:00,served,,,,\nA,,,14:00,served,,,,\n"))
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("lot-closed", at(5, "entry")));
    assertThat(problems(FIRST + "A,,,12:00,served,,,,\nA,,,13:00,discarded,,,,\n"))
        .extracting(Problem::code)
        .containsExactly("lot-closed");
  }

  @Test
  void some_portions_served_end_nothing() {
    assertThat(problems(FIRST + "A,,,12:00,served,19,,,\nA,,,13:00,chilled,,,,\n")).isEmpty();
    assertThat(
            problems(
                FIRST.replace(",20,", ",,") + "A,,,12:00,served,500,,,\nA,,,13:00,chilled,,,,\n"))
        .as("how many were made is not known")
        .isEmpty();
  }

  @Test
  void no_more_portions_are_taken_than_are_left() {
    assertThat(problem(FIRST + "A,,,11:00,served,15,,,\nA,,,12:00,portions,6,,,\n"))
        .isEqualTo(
            new Problem(
                "too-many-portions",
                at(4, "portions"),
                "6",
                "at most 5",
                "Lot A had 5 portions left on 2026-03-02 06:00, so 6 cannot be taken. Check the"
                    + " counts."));
    assertThat(problem(FIRST + "A,,,12:00,served,20,,,\nA,,,12:00,portions,1,,,\n").allowed())
        .isEqualTo("none are left");
    assertThat(problems(FIRST + "A,,,11:00,served,15,,,\nA,,,12:00,portions,5,,,\n")).isEmpty();
  }

  @Test
  void the_row_that_takes_all_counts_last_of_one_moment() {
    assertThat(problems(FIRST + "A,,,12:00,discarded,,,,\nA,,,12:00,served,15,,,\n")).isEmpty();
  }

  @Test
  void rows_are_counted_in_the_order_of_time() {
    assertThat(problems(FIRST + "A,,,13:00,served,,,,\nA,,,12:00,served,15,,,\n")).isEmpty();
  }

  @Test
  void the_count_uses_corrected_cells() {
    String log = FIRST + "A,,,11:00,served,15,,a2,\nA,,,12:00,served,6,,,\n";
    assertThat(problems(log + "A,,,13:00,correction,14,typo,,a2\n")).isEmpty();
    assertThat(problems(log + "A,,,13:00,correction,21,typo,,a1\n")).isEmpty();
    assertThat(problems(log + "A,,,13:00,correction,,typo,,a2\n")).isEmpty();
    assertThat(problems(log + "A,,,13:00,correction,16,typo,,a2\n"))
        .extracting(Problem::given, Problem::allowed)
        .containsExactly(tuple("6", "at most 4"));
  }

  @Test
  void a_voided_end_ends_nothing() {
    bench.keep(HEADER + FIRST + "A,,,12:00,served,,,a2,\n");
    assertThat(problem("A,,,13:00,chilled,,,,\n").code()).isEqualTo("lot-closed");
    assertThat(problems("A,,,13:00,correction,,typo,,a2\nA,,,13:00,chilled,,,,\n")).isEmpty();
  }

  @Test
  void a_new_row_that_makes_stored_rows_wrong_is_told_there() {
    bench.keep(HEADER + FIRST + "A,,,12:00,served,15,,a2,\nA,,,13:00,chilled,,,,\n");
    assertThat(problem("A,,,11:00,discarded,,,,\n"))
        .extracting(Problem::code, Problem::where)
        .containsExactly("lot-closed", at(2, ""));
    assertThat(problems("A,,,11:00,cooling,,,,\nA,,,14:00,correction,10,typo,,a1\n"))
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("too-many-portions", at(3, "")));
  }

  @Test
  void a_lot_whose_story_is_not_whole_is_not_counted() {
    assertThat(problems("A,Soup,soup_or_stew,10:00,cooked,2O,,,\nA,,,12:00,served,25,,,\n"))
        .extracting(Problem::code)
        .containsExactly("bad-portions");
  }
}
