package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static chillwright.core.log.IntakeBench.lotsOf;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Lots that come from other lots; the rules are those this project states. */
class IntakeLineageTest {
  private static final String HEADER = "lot,food,category,when,entry,portions,from,id,corrects\n";
  private static final String STOCK = "S,Stock,gravy_or_broth,08:00,cooked,,,s1,\n";
  private final IntakeBench bench = new IntakeBench();

  private Problem problem(String rows) {
    Admission admission = bench.admit(HEADER + rows);
    assertThat(admission.problems()).hasSize(1);
    return admission.problems().get(0);
  }

  private static List<LotId> sources(LotLog log) {
    return log.sources().stream().map(LotLog::lot).toList();
  }

  @Test
  void food_and_category_are_taken_over_from_one_source() {
    Admission admission = bench.keep(HEADER + STOCK + "A,,,10:00,frozen,8,S,,\n");
    LotLog log = admission.lots().get(1).log();
    assertThat(log.entries().get(0).details().food()).isEmpty();
    assertThat(
            Timeline.of(log, IntakeBench.KEEPING, IntakeBench.ZONE, IntakeBench.WRITTEN)
                .orElseThrow()
                .food()
                .name())
        .isEqualTo("Stock");
    bench.keep(HEADER + "A,Stock,gravy_or_broth,11:00,cooling,,S,,\n");
    assertThat(problem("A,Soup,,11:30,cooling,,,,\n").allowed()).isEqualTo("Stock, or blank");
  }

  @Test
  void food_and_category_are_needed_where_there_are_several_sources() {
    assertThat(
            bench
                .admit(
                    HEADER
                        + STOCK
                        + "T,Stock,gravy_or_broth,08:00,cooked,,,,\n"
                        + "A,,,10:00,cooked,,S T,,\n")
                .problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("missing", at(4, "food")), tuple("missing", at(4, "category")));
  }

  @Test
  void a_source_may_stand_after_the_lot_made_of_it() {
    Admission admission =
        bench.keep(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,,S,,\n"
                + "B,,,11:00,chilled,,A,,\n"
                + STOCK);
    assertThat(lotsOf(admission)).containsExactly("S", "A", "B");
    LotLog last = admission.lots().get(2).log();
    assertThat(sources(last)).containsExactly(new LotId("A"));
    assertThat(sources(last.sources().get(0))).containsExactly(new LotId("S"));
  }

  @Test
  void a_lot_sees_what_is_new_in_its_stored_sources() {
    bench.keep(HEADER + STOCK + "A,,,10:00,chilled,,S,,\n");
    Admission admission =
        bench.keep(HEADER + "B,,,11:00,chilled,,A,,\n" + "S,,,12:00,cooling,,,,\n");
    assertThat(lotsOf(admission)).containsExactly("S", "B");
    LotLog stock = admission.lots().get(1).log().sources().get(0).sources().get(0);
    assertThat(stock.entries()).hasSize(2);
  }

  @Test
  void sources_may_be_filled_down_in_any_order() {
    bench.keep(
        HEADER
            + STOCK
            + "T,Stock,gravy_or_broth,08:00,cooked,,,,\n"
            + "A,Soup,soup_or_stew,10:00,cooked,,S T,,\n"
            + "A,Soup,soup_or_stew,11:00,cooling,,T S,,\n");
    assertThat(problem("A,,,12:00,cooling,,S,,\n"))
        .isEqualTo(
            new Problem(
                "differs-from-first-row",
                at(2, "from"),
                "S",
                "S T, or blank",
                "The first row of lot A says S T. Leave this cell blank; if the first row is wrong,"
                    + " write a correction; if this is other food, give it a lot of its own."));
    assertThat(problem("S,,,12:00,cooling,,T,,\n").says())
        .startsWith("The first row of lot S says nothing here.");
  }

  @Test
  void an_unknown_source_is_refused() {
    assertThat(problem("A,,,10:00,cooked,,S,,\n"))
        .isEqualTo(
            new Problem(
                "unknown-source",
                at(2, "from"),
                "S",
                "lots that are stored or stand in the same input",
                "There is no lot S. If this one came from it, give the log of that one, too. Else"
                    + " check the code; several lots are separated by a space."));
  }

  @Test
  void a_lot_does_not_come_from_itself() {
    assertThat(problem("A,Soup,soup_or_stew,10:00,cooked,,A,,\n"))
        .isEqualTo(
            new Problem(
                "source-itself",
                at(2, "from"),
                "A",
                "other lots",
                "Lot A cannot come from itself."));
  }

  @Test
  void lots_do_not_lead_back_to_themselves() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,,C,,\n"
                + "B,Soup,soup_or_stew,10:00,cooked,,A,,\n"
                + "C,Soup,soup_or_stew,10:00,cooked,,B,,\n"
                + "D,Soup,soup_or_stew,10:00,cooked,,A,,\n"
                + "E,Soup,soup_or_stew,10:00,cooked,,,,\n");
    assertThat(admission.problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(
            tuple("source-circle", at(2, "from")),
            tuple("source-circle", at(3, "from")),
            tuple("source-circle", at(4, "from")));
    assertThat(admission.problems().get(0))
        .isEqualTo(
            new Problem(
                "source-circle",
                at(2, "from"),
                "C",
                "lots that do not come from this one",
                "Lot A leads back to itself through its sources. Check which came from which."));
    assertThat(lotsOf(admission)).containsExactly("E");
  }

  @Test
  void a_correction_may_not_close_a_circle_with_stored_lots() {
    bench.keep(HEADER + STOCK + "A,Soup,soup_or_stew,08:00,cooked,,S,,\n");
    assertThat(problem("S,,,12:00,correction,,A,,s1\n").code()).isEqualTo("source-circle");
    assertThat(problem("S,,,12:00,correction,,S,,s1\n").code()).isEqualTo("source-itself");
    assertThat(problem("S,,,12:00,correction,,Z,,s1\n").code()).isEqualTo("unknown-source");
  }

  @Test
  void a_source_began_before_it_was_used() {
    bench.keep(HEADER + STOCK + "A,,,08:00,chilled,,S,,\n");
    assertThat(problem("B,,,07:59,chilled,,S,,\n"))
        .isEqualTo(
            new Problem(
                "source-later",
                at(2, "from"),
                "S",
                "lots that were there when this one began",
                "Lot B began on 2026-03-02 01:59, but its source S only on 2026-03-02 02:00. Check"
                    + " the times."));
  }

  @Test
  void a_source_thrown_away_cannot_be_used_later() {
    bench.keep(HEADER + STOCK + "S,,,12:00,discarded,,,,\n");
    bench.keep(HEADER + "A,,,11:59,chilled,,S,,\nB,,,12:00,chilled,,S,,\n");
    assertThat(problem("C,,,12:01,chilled,,S,,\n"))
        .isEqualTo(
            new Problem(
                "source-discarded",
                at(2, "from"),
                "S",
                "lots of which something was left when this one began",
                "Lot C began on 2026-03-02 06:01, but all of its source S was discarded on"
                    + " 2026-03-02 06:00. Check the times."));
  }

  @Test
  void what_left_a_source_before_it_was_thrown_away_can_be_used() {
    bench.keep(
        HEADER
            + "S,Stock,gravy_or_broth,08:00,cooked,20,,s1,\n"
            + "S,,,11:00,portions,5,,,\n"
            + "S,,,12:00,discarded,,,,\n");
    assertThat(bench.keep(HEADER + "A,,,13:00,chilled,,S,,\n").lots()).hasSize(1);
  }

  /** Our own: what went into another lot, or to somebody, did not go into this one. */
  @Test
  void what_left_a_source_for_another_lot_does_not_make_the_rest_less_thrown_away() {
    String header = "lot,food,category,when,entry,portions,how,from,to\n";
    String source =
        """
        S,Stock,gravy_or_broth,08:00,cooked,20,,,
        P,,,11:00,chilled,5,,S,
        S,,,11:00,portions,5,,,P
        S,,,11:10,portions,2,,,Canteen
        S,,,11:20,portions,1,counted,,
        S,,,12:00,discarded,,,,
        """;
    assertThat(bench.admit(header + source).problems()).isEmpty();
    bench.keep(header + source);
    Admission late = bench.admit(header + "B,Soup,soup_or_stew,13:00,prepared,,,S,\n");
    assertThat(late.problems()).extracting(Problem::code).containsExactly("source-discarded");
    bench.keep(header + "B,Soup,soup_or_stew,11:30,prepared,,,S,\n");
  }

  @Test
  void a_source_of_which_only_some_was_thrown_away_can_be_used() {
    bench.keep(
        HEADER + "S,Stock,gravy_or_broth,08:00,cooked,20,,,\n" + "S,,,12:00,discarded,5,,,\n");
    bench.keep(HEADER + "A,,,13:00,chilled,,S,,\n");
    bench.keep(HEADER + "S,,,14:00,discarded,15,,,\n");
    assertThat(problem("B,,,15:00,chilled,,S,,\n").code()).isEqualTo("source-discarded");
  }

  @Test
  void a_lot_from_a_faulty_one_is_not_good_either() {
    Admission admission =
        bench.admit(
            HEADER
                + "S,Stock,nothing_such,08:00,cooked,,,,\n"
                + "A,,,10:00,chilled,,S,,\n"
                + "B,,,11:00,chilled,,A,,\n"
                + "C,Soup,soup_or_stew,10:00,cooked,,,,\n");
    assertThat(admission.problems()).hasSize(1);
    assertThat(lotsOf(admission)).containsExactly("C");
  }

  @Test
  void a_lot_from_one_that_could_not_be_read_has_no_fault_of_its_own() {
    Admission admission =
        bench.admit(HEADER + "S,Stock,gravy_or_broth,8,cooked,,,,\nA,,,10:00,chilled,,S,,\n");
    assertThat(admission.problems()).extracting(Problem::code).containsExactly("bad-time");
    assertThat(admission.lots()).isEmpty();
  }

  @Test
  void a_lot_leads_back_through_a_bounded_number_of_lots() {
    StringBuilder rows = new StringBuilder("L0,Stock,gravy_or_broth,08:00,cooked,,,,\n");
    for (int i = 1; i <= Lineage.MOST_GENERATIONS; i++) {
      rows.append("L%d,,,08:00,cooked,,L%d,,\n".formatted(i, i - 1));
    }
    Admission admission = bench.admit(HEADER + rows);
    assertThat(admission.problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("too-many-sources", at(Lineage.MOST_GENERATIONS + 2L, "from")));
    assertThat(admission.lots()).hasSize(Lineage.MOST_GENERATIONS);
    LotLog deepest = admission.lots().get(Lineage.MOST_GENERATIONS - 1).log();
    assertThat(Timeline.of(deepest, IntakeBench.KEEPING, IntakeBench.ZONE, IntakeBench.WRITTEN))
        .isPresent();
  }

  @Test
  void lots_mixed_again_and_again_are_bounded_too() {
    StringBuilder rows = new StringBuilder("L0,Stock,gravy_or_broth,08:00,cooked,,,,\n");
    rows.append("L1,,,08:00,cooked,,L0,,\n");
    for (int i = 2; i <= 40; i++) {
      rows.append("L%d,Stock,gravy_or_broth,08:00,cooked,,L%d L%d,,\n".formatted(i, i - 1, i - 2));
    }
    assertThat(bench.admit(HEADER + rows).problems())
        .isNotEmpty()
        .allMatch(problem -> problem.code().equals("too-many-sources"));
  }

  /** Own rule: what one file would not be allowed to say, several may not say either. */
  @Test
  void a_source_thrown_away_is_refused_also_when_that_is_told_late() {
    String made = "B,Soup,soup_or_stew,12:00,cooked,,S,,\n";
    String thrown = "S,,,11:00,discarded,,,,\n";
    assertThat(bench.admit(HEADER + STOCK + thrown + made).problems())
        .extracting(Problem::code)
        .containsExactly("source-discarded");
    bench.keep(HEADER + STOCK + made);
    assertThat(bench.admit(HEADER + thrown).problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("source-discarded", at(2, "when")));
    assertThat(bench.admit(HEADER + "S,,,12:00,discarded,,,,\n").problems()).isEmpty();
    assertThat(bench.admit(HEADER + "S,,,10:30,portions,4,,,\n" + thrown).problems()).isEmpty();
  }

  @Test
  void the_portions_that_a_lot_was_made_of_are_not_voided_once_the_rest_is_gone() {
    bench.keep(
        HEADER
            + STOCK
            + "S,,,10:30,portions,4,,p1,\n"
            + "S,,,11:00,discarded,,,,\n"
            + "B,Soup,soup_or_stew,12:00,cooked,,S,,\n");
    assertThat(bench.admit(HEADER + "S,,,12:30,correction,,,,p1\n").problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("source-discarded", at(2, "corrects")));
  }

  @Test
  void portions_served_late_may_make_an_earlier_discard_the_end() {
    bench.keep(
        HEADER
            + "S,Stock,gravy_or_broth,08:00,cooked,10,,s1,\n"
            + "S,,,11:00,discarded,4,,,\n"
            + "B,Soup,soup_or_stew,12:00,cooked,,S,,\n");
    assertThat(bench.admit(HEADER + "S,,,10:00,served,6,,,\n").problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("source-discarded", at(2, "when")));
  }
}
