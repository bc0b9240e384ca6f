package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static chillwright.core.log.IntakeBench.idsOf;
import static chillwright.core.log.IntakeBench.lotsOf;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Corrections; the rules are those this project states. */
class IntakeCorrectionsTest {
  private static final String HEADER =
      "lot,food,category,when,entry,temperature,how,portions,from,id,corrects\n";
  private final IntakeBench bench = new IntakeBench();

  @BeforeEach
  void a_soup_and_a_ham_are_stored() {
    bench.keep(
        HEADER
            + "A,Soup,soup_or_stew,10:00,cooked,185F,,20,,a1,\n"
            + "A,,,12:00,reading,170F,,,,a2,\n"
            + "B,Ham,cooked_meat,10:00,cooked,160F,,,,b1,\n");
  }

  private Problem problem(String rows) {
    Admission admission = bench.admit(HEADER + rows);
    assertThat(admission.problems()).hasSize(1);
    assertThat(admission.lots()).isEmpty();
    return admission.problems().get(0);
  }

  private Timeline timeline(String lot) {
    return Timeline.of(
            bench.lot(new LotId(lot)).orElseThrow(),
            IntakeBench.KEEPING,
            IntakeBench.ZONE,
            IntakeBench.WRITTEN)
        .orElseThrow();
  }

  @Test
  void a_correction_replaces_cells_or_voids_an_entry() {
    bench.keep(HEADER + "A,,,13:00,correction,70F,,,,a3,a2\n");
    assertThat(timeline("A").own().get(1).temperature().orElseThrow().text()).isEqualTo("70 °F");
    bench.keep(HEADER + "A,,,13:00,correction,,,,,a4,a2\n");
    assertThat(idsOf(timeline("A").own())).containsExactly("a1");
  }

  @Test
  void a_correction_may_stand_before_what_it_corrects() {
    Admission admission =
        bench.keep(
            HEADER
                + "C,,,12:30,correction,70F,,,,c3,c2\n"
                + "C,,,12:00,reading,170F,,,,c2,\n"
                + "C,Soup,soup_or_stew,10:00,cooked,185F,,,,c1,\n");
    assertThat(idsOf(admission.lots().get(0).log().entries())).containsExactly("c1", "c3", "c2");
    assertThat(timeline("C").own().get(1).temperature().orElseThrow().text()).isEqualTo("70 °F");
  }

  @Test
  void a_correction_that_happened_before_its_entry_is_only_odd() {
    assertThat(bench.keep(HEADER + "A,,,09:00,correction,70F,,,,,a2\n").lots()).hasSize(1);
  }

  @Test
  void a_correction_names_an_entry_that_is_there() {
    assertThat(problem("A,,,13:00,correction,70F,,,,,a9\n"))
        .isEqualTo(
            new Problem(
                "unknown-entry-corrected",
                at(2, "corrects"),
                "a9",
                "the id of an entry",
                "There is no entry with the id a9."));
    assertThat(problem("Z,,,13:00,correction,70F,,,,,z1\n").code())
        .isEqualTo("unknown-entry-corrected");
  }

  @Test
  void a_correction_names_an_entry_of_its_own_lot() {
    assertThat(problem("A,,,13:00,correction,70F,,,,,b1\n"))
        .isEqualTo(
            new Problem(
                "other-lot-corrected",
                at(2, "corrects"),
                "b1",
                "an entry of the same lot",
                "The entry b1 is one of lot B. Write the correction there."));
    assertThat(
            bench
                .admit(
                    HEADER
                        + "A,,,13:00,correction,70F,,,,,c1\n"
                        + "C,Soup,soup_or_stew,10:00,cooked,185F,,,,c1,\n")
                .problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("other-lot-corrected", at(2, "corrects")));
  }

  @Test
  void a_correction_of_an_unreadable_row_is_no_fault_of_its_own() {
    Admission admission =
        bench.admit(HEADER + "A,,,12:30,reading,70,,,,a5,\nA,,,13:00,correction,71F,,,,,a5\n");
    assertThat(admission.problems()).extracting(Problem::code).containsExactly("no-scale");
    assertThat(admission.lots()).isEmpty();
  }

  @Test
  void the_first_row_of_a_lot_is_not_voided() {
    assertThat(problem("A,,,13:00,correction,,,,,,a1\n"))
        .isEqualTo(
            new Problem(
                "first-row-voided",
                at(2, "corrects"),
                "a1",
                "a correction with at least one cell filled in",
                "This would void the first row of lot A. Correct its cells, or discard the lot and"
                    + " write a new one."));
    bench.keep(HEADER + "A,,,13:00,correction,180F,,,,a3,a1\n");
    assertThat(bench.keep(HEADER + "A,,,14:00,correction,,,,,,a3\n").lots())
        .as("a correction of the first row may be voided")
        .hasSize(1);
    assertThat(timeline("A").own().get(0).temperature().orElseThrow().text()).isEqualTo("185 °F");
  }

  @Test
  void food_category_and_sources_are_corrected_on_the_first_row() {
    assertThat(bench.admit(HEADER + "A,Stew,gravy_or_broth,13:00,correction,,,,B,,a2\n").problems())
        .containsExactly(
            new Problem(
                "not-the-first-row",
                at(2, "food"),
                "Stew",
                "blank, or a correction of the lot's first row",
                "The food of lot A stands on its first row, a1. Correct that one."),
            new Problem(
                "not-the-first-row",
                at(2, "category"),
                "gravy_or_broth",
                "blank, or a correction of the lot's first row",
                "The category of lot A stands on its first row, a1. Correct that one."),
            new Problem(
                "not-the-first-row",
                at(2, "from"),
                "B",
                "blank, or a correction of the lot's first row",
                "The origin of lot A stands on its first row, a1. Correct that one."));
    bench.keep(HEADER + "A,Stew,gravy_or_broth,13:00,correction,,,,B,,a1\n");
    assertThat(timeline("A").food().name()).isEqualTo("Stew");
    assertThat(bench.lot(new LotId("A")).orElseThrow().sources())
        .extracting(LotLog::lot)
        .containsExactly(new LotId("B"));
  }

  @Test
  void after_a_correction_of_the_food_both_names_may_be_filled_down() {
    bench.keep(HEADER + "A,Stew,,13:00,correction,,,,,,a1\n");
    bench.keep(HEADER + "A,Stew,,14:00,reading,60F,,,,,\nA,Soup,,15:00,reading,50F,,,,,\n");
    assertThat(problem("A,Broth,,16:00,reading,41F,,,,,\n").code())
        .isEqualTo("differs-from-first-row");
  }

  @Test
  void a_corrected_category_must_be_in_the_keeping_list() {
    assertThat(problem("A,,souup,13:00,correction,,,,,,a1\n").code()).isEqualTo("unknown-category");
  }

  @Test
  void a_corrected_how_must_go_with_the_entry() {
    assertThat(problem("A,,,13:00,correction,,4h,,,,a2\n"))
        .isEqualTo(
            new Problem(
                "how-not-for-entry",
                at(2, "how"),
                "4h",
                "hard, crystals, soft, or blank",
                "The entry that is corrected is \"reading\"; \"4h\" does not go with it."));
    assertThat(bench.keep(HEADER + "A,,,13:00,correction,,soft,,,,a2\n").lots()).hasSize(1);
  }

  @Test
  void a_correction_may_be_corrected_in_the_sense_of_the_entry_it_corrects() {
    bench.keep(HEADER + "A,,,13:00,correction,70F,,,,a3,a2\n");
    bench.keep(HEADER + "A,,,13:10,correction,71F,hard,,,a4,a3\n");
    assertThat(timeline("A").own().get(1).temperature().orElseThrow().text()).isEqualTo("71 °F");
    assertThat(problem("A,Stew,,13:20,correction,,,,,,a4\n").code()).isEqualTo("not-the-first-row");
  }

  @Test
  void corrections_that_correct_each_other_are_refused() {
    List<Problem> problems =
        bench
            .admit(
                HEADER
                    + "A,,,13:00,correction,70F,,,,x1,x2\n"
                    + "A,,,13:00,correction,71F,,,,x2,x1\n"
                    + "A,,,13:00,correction,72F,,,,x3,x3\n")
            .problems();
    assertThat(problems)
        .extracting(Problem::code, Problem::where)
        .containsExactly(
            tuple("endless-correction", at(2, "corrects")),
            tuple("endless-correction", at(3, "corrects")),
            tuple("endless-correction", at(4, "corrects")));
  }

  @Test
  void a_faulty_correction_does_not_spoil_another_lot() {
    Admission admission =
        bench.admit(HEADER + "A,,,13:00,correction,70F,,,,,b1\n" + "B,,,13:00,reading,70F,,,,,\n");
    assertThat(admission.problems()).hasSize(1);
    assertThat(lotsOf(admission)).containsExactly("B");
  }
}
