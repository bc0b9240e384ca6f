package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.kitchen.Allergen;
import chillwright.rulebook.AllergenWords.Entry;
import chillwright.rulebook.AllergenWords.Named;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The shipped words of allergens, against the law's own examples and lists of state agencies. */
class AllergenFileTest {
  /**
   * Section 201(qq) of the Federal Food, Drug, and Cosmetic Act with its examples of fish,
   * crustacean shellfish and tree nuts; sesame by the FASTER Act of 2021.
   */
  @ParameterizedTest
  @CsvSource({
    "Milk, milk",
    "eggs, eggs",
    "sea bass, fish",
    "flounder, fish",
    "COD, fish",
    "crab, crustacean_shellfish",
    "lobster tail, crustacean_shellfish",
    "shrimps, crustacean_shellfish",
    "almonds, tree_nuts",
    "pecans, tree_nuts",
    "walnuts, tree_nuts",
    "wheat, wheat",
    "peanuts, peanuts",
    "soybeans, soybeans",
    "sesame, sesame"
  })
  void the_kinds_that_the_law_names_are_known(String ingredient, String allergen) {
    assertThat(keys("water, " + ingredient)).containsExactly(allergen);
  }

  /** Minnesota Department of Agriculture, "Food ingredients that may cause allergies". */
  @ParameterizedTest
  @CsvSource({
    "butter, milk",
    "buttermilk, milk",
    "sodium caseinate, milk",
    "cottage cheese, milk",
    "ghee, milk",
    "whey (dried), milk",
    "mayonnaise, eggs",
    "meringue, eggs",
    "ground nuts, peanuts"
  })
  void words_of_a_state_agency_are_known(String ingredient, String allergen) {
    assertThat(keys("sugar, " + ingredient)).containsExactly(allergen);
  }

  /** Common knowledge, no source. */
  @ParameterizedTest
  @CsvSource({
    "coconut milk", "butternut squash", "cream of tartar", "buckwheat groats", "rice flour",
    "water chestnuts", "nuez moscada", "eggplant", "codfather spice", "gluten-free bread"
  })
  void a_word_inside_another_is_none(String ingredient) {
    assertThat(keys("salt, " + ingredient)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"peanut butter, peanuts", "almond milk, tree_nuts", "soy milk, soybeans"})
  void a_name_that_is_not_of_one_may_be_of_another(String ingredient, String allergen) {
    assertThat(keys(ingredient)).containsExactly(allergen);
  }

  @Test
  void accents_and_spanish_are_read() {
    assertThat(keys("mantequilla\nharina, atún, maní, ajonjolí, camarón"))
        .containsExactly("milk", "fish", "crustacean_shellfish", "peanuts", "wheat", "sesame");
  }

  @Test
  void what_was_declared_is_not_told_again() {
    assertThat(AllergenFile.shipped().undeclared("butter, flour", Set.of(Allergen.WHEAT)))
        .containsExactly(new Named(Allergen.MILK, "butter"));
  }

  @Test
  void every_entry_has_words_as_they_are_compared_and_a_source() {
    List<Entry> entries = AllergenFile.entries();
    assertThat(entries.stream().map(Entry::allergen)).contains(Allergen.values());
    for (Entry entry : entries) {
      assertThat(entry.words()).allMatch(word -> word.matches("[a-z]+([ &-]+[a-z]+)*"));
      assertThat(entry.source()).isNotBlank();
    }
    assertThat(Arrays.stream(Allergen.values()).map(Allergen::key)).hasSize(9);
  }

  private static List<String> keys(String ingredients) {
    return AllergenFile.shipped().undeclared(ingredients, Set.of()).stream()
        .map(named -> named.allergen().key())
        .toList();
  }
}
