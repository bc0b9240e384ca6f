package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What goes into a lot counts for its dates: the date of a combined food is that of its earliest
 * ingredient, 12VAC5-421-830 (3-501.17(C)). So a lot takes nothing of a lot that it does not name.
 */
class TopUpsTest {
  private static final String HEADER =
      "lot,food,category,when,entry,portions,from,to,note,id,corrects\n";
  private static final String OLD = "A,Soup,soup_or_stew,08:00,cooked,20,,,,a1,\n";
  private static final String OTHER = "B,Soup,soup_or_stew,09:00,cooked,10,,,,b1,\n";
  private static final String TOP_UP = "A,,,10:00,portions,5,,B,,a2,\n";
  private static final String BOTH = "C,Soup,soup_or_stew,10:00,prepared,15,A B,,,c1,\n";

  private final IntakeBench bench = new IntakeBench();

  private List<Problem> problems(String rows) {
    Admission admission = bench.admit(HEADER + rows);
    if (admission.problems().isEmpty()) {
      bench.store(admission);
    }
    return admission.problems();
  }

  @Test
  void portions_into_a_lot_that_was_there_without_them_are_refused() {
    assertThat(problems(OLD + OTHER + TOP_UP))
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("not-made-of", at(4, "to")));
  }

  @Test
  void so_they_are_where_that_lot_is_stored() {
    assertThat(problems(OLD + OTHER)).isEmpty();
    assertThat(problems(TOP_UP)).extracting(Problem::code).containsExactly("not-made-of");
  }

  @Test
  void a_correction_of_who_got_them_brings_no_other_lot_in() {
    String given = TOP_UP.replace(",B,", ",Fair,");
    assertThat(problems(OLD + OTHER + given)).isEmpty();
    assertThat(problems("A,,,11:00,correction,,,B,slip,a3,a2\n"))
        .extracting(Problem::code)
        .containsExactly("not-made-of");
  }

  @Test
  void a_lot_of_both_and_a_lot_not_begun_take_them() {
    String into = TOP_UP.replace(",B,", ",C,");
    assertThat(problems(OLD + OTHER + into)).as("not begun").isEmpty();
    assertThat(problems(BOTH)).isEmpty();
    assertThat(problems("B,,,10:00,portions,10,,C,,b2,\n")).as("named there").isEmpty();
  }
}
