package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Portions are counted once: those of a part are those that left the whole. A rule of this project,
 * no source; that a count is kept of what goes from lot to lot is common practice, no source.
 */
class DividedLotsTest {
  private static final String HEADER =
      "lot,food,category,when,entry,portions,from,to,note,id,corrects\n";
  private static final String WHOLE = "B,Soup,soup_or_stew,08:00,cooked,96,,,,b1,\n";
  private static final String TAKEN = "B,,,10:00,portions,24,,P-1,,b2,\n";
  private static final String PART = "P-1,,,10:00,cooling,24,B,,,p1,\n";
  private static final String VOID = "B,,,12:00,correction,,,,slip,b3,b2\n";
  private static final String BACK = "P-1,,,12:00,portions,24,,B,,p2,\n";

  private final IntakeBench bench = new IntakeBench();

  private List<Problem> problems(String rows) {
    return bench.admit(HEADER + rows).problems();
  }

  private int left(String lot) {
    List<LogEntry> entries = bench.lot(new LotId(lot)).orElseThrow().entries();
    return Portions.of(Corrections.applied(entries)).left().orElseThrow();
  }

  @Test
  void a_file_in_which_they_differ_names_both_rows() {
    assertThat(problems(WHOLE + TAKEN + PART)).isEmpty();
    assertThat(problems(WHOLE + TAKEN + PART.replace("24", "42")))
        .containsExactly(
            new Problem(
                "parts-do-not-add-up",
                at(4, "portions"),
                "42",
                "the same count in both lots",
                "Lot P-1 has 42 portions of lot B (line 4 of log.csv), but 24 left that lot for it"
                    + " (line 3 of log.csv). Make the counts the same. If it was divided by"
                    + " mistake, put it back first: in lot P-1 log \"portions\" with its count, to"
                    + " B; its page has a button for that."));
    assertThat(problems(PART.replace("24", "12") + WHOLE + TAKEN))
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("parts-do-not-add-up", at(2, "portions")));
  }

  @Test
  void a_lot_may_hand_a_part_on_in_two_rows() {
    String half = TAKEN.replace("24", "12");
    assertThat(problems(WHOLE + half + half.replace("b2", "b4").replace("10:00", "10:01") + PART))
        .isEmpty();
  }

  @Test
  void what_names_no_part_or_a_stranger_is_not_compared() {
    assertThat(problems(WHOLE + TAKEN.replace("P-1", "") + PART.replace("24", "42"))).isEmpty();
    assertThat(problems(WHOLE + TAKEN.replace("P-1", "Fair"))).isEmpty();
    assertThat(problems(WHOLE + TAKEN + PART.replace("24", ""))).isEmpty();
    String mixed = "P-1,Soup,soup_or_stew,10:00,cooked,40,B,,,p1,\n";
    assertThat(problems(WHOLE + TAKEN + mixed)).as("made of it, with more").isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "B,,,12:00,correction,,,,slip,b3,b2\n",
        "B,,,12:00,correction,4,,,slip,b3,b2\n",
        "B,,,12:00,correction,,,Fair,slip,b3,b2\n",
        "P-1,,,12:00,correction,42,,,slip,p3,p1\n",
      })
  void a_correction_that_would_count_portions_twice_is_refused(String correction) {
    bench.keep(HEADER + WHOLE + TAKEN + PART);
    assertThat(problems(correction))
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("parts-do-not-add-up", at(2, "corrects")));
    assertThat(problems(correction).get(0).says()).contains("entry p1", "entry b2");
  }

  @Test
  void both_counts_may_be_corrected_together() {
    bench.keep(HEADER + WHOLE + TAKEN + PART);
    bench.keep(
        HEADER
            + "B,,,12:00,correction,20,,,slip,b3,b2\n"
            + "P-1,,,12:00,correction,20,,,slip,p3,p1\n");
    assertThat(left("B")).isEqualTo(76);
    assertThat(left("P-1")).isEqualTo(20);
  }

  @Test
  void a_part_is_put_back_in_one_request_or_in_two() {
    bench.keep(HEADER + WHOLE + TAKEN + PART);
    assertThat(problems(VOID + BACK)).isEmpty();
    assertThat(problems(VOID + BACK.replace("24", "23"))).hasSize(1);
    bench.keep(HEADER + BACK);
    bench.keep(HEADER + VOID);
    assertThat(left("B")).isEqualTo(96);
    assertThat(left("P-1")).isZero();
    assertThat(problems("P-1,,,13:00,correction,,,,slip,p4,p2\n"))
        .extracting(Problem::code)
        .containsExactly("parts-do-not-add-up");
  }
}
