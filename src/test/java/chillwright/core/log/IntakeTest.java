package chillwright.core.log;

import static chillwright.core.log.IntakeBench.at;
import static chillwright.core.log.IntakeBench.idsOf;
import static chillwright.core.log.IntakeBench.lotsOf;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Ids, repeats, first rows and readings of places; the rules are those this project states. */
class IntakeTest {
  private static final String HEADER = "lot,food,category,when,entry,temperature,by,id\n";
  private final IntakeBench bench = new IntakeBench();

  private Problem problem(String text) {
    List<Problem> problems = bench.admit(text).problems();
    assertThat(problems).hasSize(1);
    return problems.get(0);
  }

  @Test
  void rows_of_several_lots_may_be_interleaved() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,a1\n"
                + "B,Ham,cooked_meat,10:05,cooked,160F,,b1\n"
                + "A,,,12:00,reading,70F,,a2\n"
                + "B,,,12:05,reading,70F,,b2\n");
    assertThat(admission.isFaultless()).isTrue();
    assertThat(lotsOf(admission)).containsExactly("A", "B");
    assertThat(idsOf(admission.lots().get(0).log().entries())).containsExactly("a1", "a2");
    assertThat(idsOf(admission.lots().get(1).added())).containsExactly("b1", "b2");
    assertThat(admission.lots().get(0).added().get(0).writtenAt()).isEqualTo(IntakeBench.WRITTEN);
  }

  @Test
  void no_rows_are_no_fault() {
    Admission admission = bench.admit(List.of());
    assertThat(admission.isFaultless()).isTrue();
    assertThat(admission.lots()).isEmpty();
  }

  @Test
  void rows_may_come_in_any_order_of_time() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,,,16:00,reading,41F,,a3\n"
                + "A,,,12:00,reading,70F,,a2\n"
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,a1\n");
    assertThat(admission.problems()).isEmpty();
    assertThat(idsOf(admission.lots().get(0).log().entries())).containsExactly("a1", "a3", "a2");
  }

  @Test
  void the_earliest_row_is_the_first_where_all_rows_name_the_food() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,16:00,reading,41F,,a2\n"
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,a1\n");
    assertThat(idsOf(admission.lots().get(0).log().entries())).containsExactly("a1", "a2");
  }

  @Test
  void a_late_row_may_tell_of_something_before_the_first_row() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,a1\n"
                + "A,,,09:30,reading,120F,,a2\n");
    assertThat(admission.problems()).isEmpty();
    assertThat(idsOf(admission.lots().get(0).log().entries())).containsExactly("a1", "a2");
  }

  @Test
  void a_row_long_before_it_was_written_is_kept_as_it_is() {
    Admission admission =
        bench.admit(HEADER + "A,Soup,soup_or_stew,2001-05-01T10:00:00Z,cooked,185F,,\n");
    assertThat(admission.lots().get(0).added().get(0).happenedAt())
        .isEqualTo(Instant.parse("2001-05-01T10:00:00Z"));
  }

  @Test
  void rows_without_an_id_get_one_that_is_free() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n"
                + "A,,,11:00,reading,120F,,A.3\n"
                + "A,,,12:00,reading,70F,,\n");
    assertThat(admission.ids().stream().map(id -> id.orElseThrow().text()))
        .containsExactly("A.1", "A.3", "A.4");
    bench.store(admission);
    assertThat(bench.keep(HEADER + "A,,,13:00,reading,60F,,\n").ids())
        .containsExactly(Optional.of(new EntryId("A.5")));
  }

  @Test
  void a_made_id_is_never_longer_than_64_characters() {
    String lot = "L".repeat(64);
    Admission admission = bench.admit(HEADER + lot + ",Soup,soup_or_stew,10:00,cooked,185F,,\n");
    assertThat(admission.ids()).containsExactly(Optional.of(new EntryId("L".repeat(62) + ".1")));
  }

  @Test
  void a_made_id_avoids_one_that_another_lot_has() {
    bench.keep(HEADER + "B,Ham,cooked_meat,10:00,cooked,160F,,A.1\n");
    assertThat(bench.keep(HEADER + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n").ids())
        .containsExactly(Optional.of(new EntryId("A.2")));
  }

  @Test
  void an_id_stands_once_in_a_file() {
    assertThat(
            problem(
                HEADER
                    + "A,Soup,soup_or_stew,10:00,cooked,185F,,e1\n"
                    + "A,,,12:00,reading,70F,,e1\n"))
        .isEqualTo(
            new Problem(
                "id-twice",
                at(3, "id"),
                "e1",
                "an id that no other entry has",
                "The id e1 stands in line 2 of log.csv too, and says something else there. Give"
                    + " this row another id; to change an entry, write a correction."));
  }

  @Test
  void an_id_stands_once_in_a_kitchen() {
    bench.keep(HEADER + "A,Soup,soup_or_stew,10:00,cooked,185F,,e1\n");
    assertThat(problem(HEADER + "A,,,12:00,reading,70F,,e1\n"))
        .isEqualTo(
            new Problem(
                "id-taken",
                at(2, "id"),
                "e1",
                "an id that no other entry has",
                "The id e1 belongs to a stored entry of lot A, and says something else there. Give"
                    + " this row another id; to change an entry, write a correction."));
    assertThat(problem(HEADER + "B,Ham,cooked_meat,10:00,cooked,185F,,e1\n").code())
        .isEqualTo("id-taken");
  }

  @Test
  void a_file_that_grew_is_taken_in_again_without_doubles() {
    String file =
        HEADER + "A,Soup,soup_or_stew,10:00,cooked,185F,mk,\n" + "A,,,11:00,reading,120F,mk,a2\n";
    bench.keep(file);
    Admission again = bench.keep(file + "A,,,12:00,reading,70F,mk,\n");
    assertThat(again.repeats()).isEqualTo(2);
    assertThat(idsOf(again.lots().get(0).added())).containsExactly("A.3");
    assertThat(again.ids().stream().map(id -> id.orElseThrow().text()))
        .containsExactly("A.1", "a2", "A.3");
    Admission unchanged = bench.keep(file);
    assertThat(unchanged.repeats()).isEqualTo(2);
    assertThat(unchanged.lots()).isEmpty();
  }

  @Test
  void equal_rows_of_one_file_are_repeats_and_counted() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n"
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n"
                + "A,,,11:00,reading,120F,,e1\n"
                + "A,,,11:00,reading,120F,,e1\n"
                + "A,,,11:00,reading,120F,,\n");
    assertThat(admission.problems()).isEmpty();
    assertThat(admission.repeats()).isEqualTo(3);
    assertThat(idsOf(admission.lots().get(0).added())).containsExactly("A.1", "e1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "A,,,11:00,reading,120F,mk,",
        "A,,,11:00,reading,120.01F,,",
        "A,,,11:01,reading,120F,,",
        "A,,,11:00,cooling,120F,,",
        "A,,,11:00,reading,120F,,e2",
      })
  void a_row_that_differs_in_one_field_is_no_repeat(String row) {
    String file = HEADER + "A,Soup,soup_or_stew,10:00,cooked,185F,,\nA,,,11:00,reading,120F,,e1\n";
    bench.keep(file);
    Admission admission = bench.keep(file + row + "\n");
    assertThat(admission.repeats()).isEqualTo(2);
    assertThat(admission.lots().get(0).added()).hasSize(1);
  }

  @Test
  void a_new_lot_needs_food_and_category() {
    assertThat(bench.admit(HEADER + "A,,,10:00,cooked,185F,,\n").problems())
        .containsExactly(
            new Problem(
                "missing",
                at(2, "food"),
                "",
                "the name of the food; or one lot in \"from\", to take it over",
                "This is the first row of lot A: name the food."),
            new Problem(
                "missing",
                at(2, "category"),
                "",
                "a key of the keeping list; or one lot in \"from\", to take it over",
                "This is the first row of lot A: give the category of the food."));
  }

  @Test
  void food_on_a_later_row_does_not_make_up_for_the_first() {
    assertThat(
            bench
                .admit(
                    HEADER
                        + "A,,,10:00,cooked,185F,,\n"
                        + "A,Soup,soup_or_stew,12:00,reading,70F,,\n")
                .problems())
        .extracting(Problem::code, Problem::where)
        .containsExactly(tuple("missing", at(2, "food")), tuple("missing", at(2, "category")));
  }

  @Test
  void an_unknown_category_brings_up_those_that_may_have_been_meant() {
    assertThat(problem(HEADER + "A,Soup,soup,10:00,cooked,185F,,\n"))
        .isEqualTo(
            new Problem(
                "unknown-category",
                at(2, "category"),
                "soup",
                "a key of the keeping list",
                "\"soup\" is not in the keeping list. Did you mean soup_or_stew?"));
    assertThat(problem(HEADER + "A,Soup,xyzzy,10:00,cooked,185F,,\n").says())
        .isEqualTo("\"xyzzy\" is not in the keeping list. Look the keys up in that list.");
  }

  @Test
  void columns_may_be_filled_down() {
    Admission admission =
        bench.keep(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n"
                + "A,Soup,soup_or_stew,12:00,reading,70F,,\n");
    assertThat(admission.lots().get(0).added().get(1).details().food()).isEmpty();
    assertThat(bench.keep(HEADER + "A,,,12:00,reading,70F,,\n").repeats()).isEqualTo(1);
  }

  @Test
  void a_later_row_may_not_say_something_else() {
    String first = HEADER + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n";
    Problem expected =
        new Problem(
            "differs-from-first-row",
            at(3, "food"),
            "Stew",
            "Soup, or blank",
            "The first row of lot A says Soup. Leave this cell blank; if the first row is wrong,"
                + " write a correction; if this is other food, give it a lot of its own.");
    assertThat(problem(first + "A,Stew,,12:00,reading,70F,,\n")).isEqualTo(expected);
    assertThat(problem(first + "A,,gravy_or_broth,12:00,reading,70F,,\n").where())
        .isEqualTo(at(3, "category"));
    bench.keep(first);
    assertThat(problem(first + "A,Stew,,12:00,reading,70F,,\n")).isEqualTo(expected);
    assertThat(problem(HEADER + "A,Stew,soup_or_stew,10:00,cooked,185F,,\n").where())
        .as("a first row changed in the file after it was stored")
        .isEqualTo(at(2, "food"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"portions", "action"})
  void some_words_never_begin_a_lot(String word) {
    assertThat(problem(HEADER + "A,Soup,soup_or_stew,10:00," + word + ",,,\n"))
        .isEqualTo(
            new Problem(
                "not-a-first-row",
                at(2, "entry"),
                word,
                "cooked, prepared, received, opened or another word that tells where the food is",
                "Lot A cannot begin with \"%s\". Write first how it came to be.".formatted(word)));
  }

  @Test
  void a_lot_with_an_unreadable_row_is_not_good_but_others_are() {
    Admission admission =
        bench.admit(
            HEADER
                + "A,Soup,soup_or_stew,10:00,cooked,185,,\n"
                + "A,,,12:00,reading,70F,,\n"
                + "B,Ham,cooked_meat,10:05,cooked,160F,,\n");
    assertThat(admission.problems()).extracting(Problem::code).containsExactly("no-scale");
    assertThat(lotsOf(admission)).containsExactly("B");
  }

  @Test
  void no_lot_of_a_file_that_breaks_off_is_good() {
    List<Incoming> rows =
        new ArrayList<>(
            IntakeBench.rows(
                "broken.csv",
                HEADER
                    + "A,Soup,soup_or_stew,10:00,cooked,185F,,\n"
                    + ",,,10:05,reading,38F,,\n"
                    + "A,\"Soup,,12:00,reading,70F,,\n"));
    rows.addAll(IntakeBench.rows("good.csv", HEADER + "B,Ham,cooked_meat,10:05,cooked,160F,,\n"));
    assertThat(lotsOf(bench.admit(rows))).containsExactly("B");
  }

  @Test
  void problems_come_in_the_order_of_the_rows() {
    assertThat(
            bench
                .admit(
                    HEADER
                        + "A,Soup,nothing_such,10:00,cooked,185F,,\n"
                        + "B,Ham,cooked_meat,10:05,cooked,160,,\n"
                        + "C,,,10:05,cooked,160F,,\n")
                .problems())
        .extracting(Problem::where)
        .containsExactly(at(2, "category"), at(3, "temperature"), at(4, "food"), at(4, "category"));
  }

  private static final String PLACES = "lot,when,entry,temperature,place,id,corrects\n";

  @Test
  void readings_of_places_are_kept_apart() {
    Admission admission =
        bench.keep(
            PLACES
                + ",10:00,reading,38F,walk-in,,\n,10:00,reading,0F,freezer,p1,\n"
                + ",10:00,reading,38F,walk-in,,\n");
    assertThat(admission.lots()).isEmpty();
    assertThat(admission.repeats()).isEqualTo(1);
    assertThat(idsOf(admission.ofPlaces())).containsExactly("place-20260302T100000Z.1", "p1");
    Admission again =
        bench.keep(PLACES + ",10:00,reading,38F,walk-in,,\n,10:00,reading,39F,walk-in,,\n");
    assertThat(again.repeats()).isEqualTo(1);
    assertThat(idsOf(again.ofPlaces())).containsExactly("place-20260302T100000Z.2");
  }

  @Test
  void a_reading_of_a_place_can_be_corrected_and_voided() {
    bench.keep(PLACES + ",10:00,reading,83F,walk-in,p1,\n");
    assertThat(
            bench
                .keep(PLACES + ",10:10,correction,38F,,p2,p1\n,10:20,correction,,,,p1\n")
                .ofPlaces())
        .hasSize(2);
    assertThat(problem(PLACES + ",10:10,correction,38F,,,p9\n").code())
        .isEqualTo("unknown-entry-corrected");
    assertThat(problem(PLACES + "A,10:10,correction,38F,,,p1\n"))
        .isEqualTo(
            new Problem(
                "other-lot-corrected",
                at(2, "corrects"),
                "p1",
                "an entry of the same lot",
                "The entry p1 is one of a place, not of a lot. Write the correction there."));
  }

  @Test
  void an_id_of_a_place_is_taken_for_a_lot() {
    bench.keep(PLACES + ",10:00,reading,38F,walk-in,p1,\n");
    assertThat(problem(HEADER + "A,Soup,soup_or_stew,10:00,cooked,185F,,p1\n").says())
        .startsWith("The id p1 belongs to a stored entry of a place,");
    assertThat(problem(PLACES + ",10:00,reading,39F,walk-in,p1,\n").code()).isEqualTo("id-taken");
  }
}
