package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Problem.Where.InField;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Files in which a cell was changed after they were stored; the rules are this project's own. */
class IntakeChangedTest {
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,portions,place,by,note,id,corrects\n";
  private static final String COOKED = "A,Soup,soup_or_stew,10:00,cooked,185F,20,,,,,\n";
  private static final String READING = "A,,,12:00,reading,80F,,,MB,,,\n";
  private final IntakeBench bench = new IntakeBench();

  @BeforeEach
  void a_soup_and_a_cold_room_are_stored() {
    bench.keep(HEADER + COOKED + READING + ",,,12:00,reading,38F,,walk-in,,,,\n");
  }

  private List<Problem> problems(String rows) {
    return bench.admit(HEADER + rows).problems();
  }

  @Test
  void a_changed_cell_is_refused_with_both_values_and_what_to_do() {
    assertThat(problems(COOKED + "A,,,12:00,reading,68F,,,MB,,,\n"))
        .containsExactly(
            new Problem(
                "differs-from-stored",
                at(3, "temperature"),
                "68 °F",
                "80 °F, as stored",
                "The entry A.2 of this moment is stored with temperature 80 °F, not 68 °F. What is"
                    + " stored stays: put the row back as it was, and write a \"correction\" with"
                    + " corrects A.2, the right cells and the reason in the note. If this is a"
                    + " second entry of the same moment, give the row an id of its own."));
  }

  @Test
  void every_changed_cell_is_told_at_the_first_of_them() {
    Problem problem = problems("A,,,12:00,reading,80F,,cellar,,look,,\n").get(0);
    assertThat(problem.where()).isEqualTo(at(2, "place"));
    assertThat(problem.says())
        .contains("place blank, not cellar; by MB, not blank; note blank, not look.");
  }

  @Test
  void a_row_with_an_id_of_its_own_is_a_second_reading() {
    Admission second = bench.keep(HEADER + "A,,,12:00,reading,82F,,,MB,second probe,p2,\n");
    assertThat(second.lots().get(0).added()).hasSize(1);
  }

  @Test
  void two_readings_of_one_moment_in_one_file_are_two() {
    String both = "A,,,13:00,reading,60F,,,MB,,,\nA,,,13:00,reading,61F,,,MB,,,\n";
    assertThat(bench.keep(HEADER + both).repeats()).isZero();
    assertThat(bench.keep(HEADER + both).repeats()).isEqualTo(2);
  }

  @Test
  void a_file_that_grew_by_a_second_reading_of_a_moment_still_tells_the_first() {
    Admission grown = bench.keep(HEADER + COOKED + READING + "A,,,12:00,reading,81F,,,MB,,,\n");
    assertThat(grown.repeats()).isEqualTo(2);
    assertThat(grown.lots().get(0).added()).hasSize(1);
  }

  @Test
  void a_voided_entry_may_be_written_again() {
    bench.keep(HEADER + "A,,,12:05,correction,,,,MB,another pot,,A.2\n");
    assertThat(problems("A,,,12:00,reading,68F,,,MB,,,\n")).isEmpty();
  }

  @Test
  void voiding_and_writing_again_may_come_together() {
    assertThat(
            problems(
                "A,,,12:05,correction,,,,MB,another pot,,A.2\nA,,,12:00,reading,68F,,,MB,,,\n"))
        .isEmpty();
  }

  @Test
  void what_a_person_sends_in_a_request_is_taken_as_it_is() {
    List<Incoming> rows =
        IntakeBench.rows("log.csv", HEADER + "A,,,12:00,reading,68F,,,MB,,,\n").stream()
            .map(row -> sent((Row) row))
            .toList();
    assertThat(bench.admit(rows).problems()).isEmpty();
  }

  private static Incoming sent(Row row) {
    return new Row(
        new InField("", ""),
        row.lot(),
        row.word(),
        row.when(),
        row.id(),
        row.by(),
        row.note(),
        row.corrects(),
        row.details());
  }

  @Test
  void a_changed_reading_of_a_place_is_refused_and_that_of_another_place_is_not() {
    assertThat(problems(",,,12:00,reading,39F,,walk-in,,,,\n"))
        .extracting(Problem::code)
        .containsExactly("differs-from-stored");
    assertThat(problems(",,,12:00,reading,39F,,cellar,,,,\n")).isEmpty();
  }

  @Test
  void a_changed_row_keeps_its_lot_out_and_no_other() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,,,12:00,reading,68F,,,MB,,,\n"
                + "B,Soup,soup_or_stew,10:00,cooked,185F,,,,,,\n");
    assertThat(IntakeBench.lotsOf(admission)).containsExactly("B");
  }

  /** Portions that were told when the lot was made known stand on its first row. */
  @Test
  void a_first_row_without_its_count_is_the_same_row() {
    Admission again = bench.admit(HEADER + COOKED.replace(",20,", ",,"));
    assertThat(again.problems()).isEmpty();
    assertThat(again.repeats()).isOne();
  }

  @Test
  void a_first_row_with_another_count_is_changed() {
    assertThat(problems(COOKED.replace(",20,", ",24,")))
        .extracting(Problem::where)
        .containsExactly(at(2, "portions"));
  }
}
