package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Category;
import chillwright.core.log.FoodWords;
import chillwright.core.log.KeepingList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The words that people use for foods are common practice, no source. What needs the cold: FDA Food
 * Code 2022 1-201.10, TCS food (animal food, cooked plant food, filled baked goods).
 */
class ShippedFoodWordsTest {
  private static final KeepingList LIST = load();
  private static final FoodWords WORDS = new FoodWords(LIST);

  /** What may be added to a food and makes it need the cold, or says nothing. */
  private static final List<String> MORE =
      List.of("cheese", "cream", "ham", "egg", "con queso", "de carne", "milk", "filled", "zzzzxq");

  private static KeepingList load() {
    try {
      return RuleLibrary.load(Optional.empty()).keepingList();
    } catch (BrokenRules e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  static Stream<Category> kinds_that_need_no_cold() {
    return LIST.categories().stream().filter(category -> !category.tcs());
  }

  private static List<String> keys(FoodWords.Found found) {
    return found.kinds().stream().map(Category::key).toList();
  }

  @ParameterizedTest
  @MethodSource("kinds_that_need_no_cold")
  void a_word_with_another_beside_it_never_leads_to_a_kind_that_needs_no_cold(Category category) {
    for (String also : category.also()) {
      for (String more : MORE) {
        assertNotTaken(also + " " + more);
        assertNotTaken(more + " " + also);
      }
    }
  }

  private static void assertNotTaken(String phrase) {
    boolean isListed =
        LIST.categories().stream().anyMatch(category -> category.also().contains(phrase));
    FoodWords.Found found = WORDS.kinds(phrase);
    if (!isListed) {
      assertThat(found.isCertain()).as(phrase).isFalse();
    } else if (found.kinds().size() == 1) {
      assertThat(found.kinds().get(0).tcs()).as(phrase).isTrue();
    }
  }

  /** Common practice, no source: what people mean by the bare word, in both languages. */
  @ParameterizedTest
  @CsvSource({
    "bread, yeast_bread_baked",
    "rolls, yeast_bread_baked",
    "baguette, yeast_bread_baked",
    "pan, yeast_bread_baked",
    "muffins, quick_bread_or_muffin",
    "cake, cake_unfrosted",
    "pastel, cake_unfrosted",
    "bizcocho, cake_unfrosted",
    "pie, pie_pumpkin_or_pecan",
    "pay, pie_pumpkin_or_pecan",
    "cookies, cookies_baked",
    "galletas, cookies_baked",
    "bars, bar_cookies_brownies",
    "barras, bar_cookies_brownies",
    "rice, cooked_rice_or_grain",
    "arroz, cooked_rice_or_grain",
    "soup, soup_or_stew",
    "sopa, soup_or_stew",
    "stew, soup_or_stew",
    "guiso, soup_or_stew",
    "chili, soup_or_stew",
    "stock, stock_or_meat_broth",
    "caldo, stock_or_meat_broth",
    "lasagna, casserole_meat",
    "lasaña, casserole_meat",
    "tamales, casserole_meat",
    "pesto, sauce_salsa_or_dip",
    "guacamole, sauce_salsa_or_dip",
    "hummus, sauce_salsa_or_dip",
    "marinara, sauce_salsa_or_dip",
    "chicken soup, soup_or_stew",
    "fish soup, soup_or_stew",
    "sopa de pescado, soup_or_stew",
    "chicken stock, stock_or_meat_broth",
    "turkey stock, stock_or_meat_broth",
    "beef broth, stock_or_meat_broth",
    "caldo de pollo, stock_or_meat_broth",
    "sopa de pollo, soup_or_stew",
    "gumbo, soup_or_stew",
    "pierogi, casserole_meat",
    "stuffing, stuffing_cooked",
    "cinnamon rolls, yeast_bread_baked",
    "salsa, sauce_salsa_or_dip",
    "beans, cooked_beans",
    "frijoles, cooked_beans",
    "turkey, raw_poultry_whole",
    "pavo, raw_poultry_whole",
    "pollo, raw_poultry_whole",
    "ham, ham_cooked_cut",
    "jamón, ham_cooked_cut",
    "fish, raw_fish_fatty",
    "pescado, raw_fish_fatty",
    "eggs, eggs_hard_cooked",
    "huevos, eggs_hard_cooked",
    "milk, milk",
    "leche, milk",
    "cheese, cheese_hard",
    "queso, cheese_hard",
    "butter, butter",
    "mantequilla, butter",
    "pasta, cooked_pasta_plain",
    "potatoes, cooked_vegetables",
    "verduras, cooked_vegetables",
    "nuts, nuts_plain",
    "nueces, nuts_plain",
    "salchichas, sausage_cooked_here",
    "helado, ice_cream",
    "meat, raw_meat_ground",
    "carne, raw_meat_ground",
    "pizza, pizza",
    "gravy, gravy"
  })
  void a_common_word_leads_with_the_food_that_is_meant(String given, String key) {
    assertThat(keys(WORDS.kinds(given))).first().isEqualTo(key);
  }

  @Test
  void what_a_kind_stands_in_for_is_among_its_words() {
    for (Category category : LIST.categories()) {
      assertThat(category.also()).containsAll(category.standsInFor());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "mac and cheese, casserole_vegetable_or_pasta",
    "Mac & Cheese, casserole_vegetable_or_pasta",
    "Meat-loaf, casserole_meat",
    "pan de carne, casserole_meat",
    "egg roll, casserole_meat",
    "spring rolls, casserole_meat",
    "sausage rolls, casserole_meat",
    "crab cakes, cooked_fish",
    "tres leches cake, pie_custard_or_cream",
    "pastel de tres leches, pie_custard_or_cream",
    "Quiche, quiche",
    "milk, milk",
    "leche, milk",
    "oatmeal, cooked_rice_or_grain",
    "pumpkin pies, pie_pumpkin_or_pecan",
    "tarta de calabaza, pie_pumpkin_or_pecan",
    "pure de papas, cooked_vegetables",
    "cookies, cookies_baked",
    "brownie, bar_cookies_brownies"
  })
  void a_phrase_of_the_list_leads_to_its_kind(String given, String key) {
    FoodWords.Found found = WORDS.kinds(given);
    assertThat(keys(found)).containsExactly(key);
    assertThat(found.isCertain()).isTrue();
  }

  /** The first that is asked about needs the cold. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "cottage cheese",
        "cheese dip",
        "pan con queso",
        "breast milk",
        "raw eggs",
        "ham bread",
        "beef minestrone",
        "lasaña de la abuela",
        "sourdough bread",
        "crab cake"
      })
  void what_only_shares_a_word_is_asked_about_food_that_needs_the_cold_first(String given) {
    FoodWords.Found found = WORDS.kinds(given);
    assertThat(found.kinds()).isNotEmpty();
    assertThat(found.kinds().get(0).tcs()).isTrue();
    assertThat(found.isCertain()).isEqualTo(given.equals("crab cake"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"guacamayo", "hamster", "panini", "cakewalk", "zzzzxq", " ", "and", "de"})
  void part_of_a_word_tells_nothing(String given) {
    assertThat(WORDS.kinds(given).kinds()).isEmpty();
    assertThat(LIST.question("guacamayo")).doesNotContain("poultry");
  }

  @Test
  void a_slip_of_the_pen_is_asked_about() {
    assertThat(keys(WORDS.kinds("lasange"))).contains("casserole_meat");
    assertThat(WORDS.kinds("lasange").isCertain()).isFalse();
    assertThat(WORDS.kinds("pam").kinds()).isEmpty();
  }

  /** FoodSafety.gov, Cold Food Storage Chart: raw poultry 1 to 2 days, cooked 3 to 4. */
  @Test
  void a_word_that_may_mean_what_keeps_shorter_is_asked_about() {
    assertThat(keys(WORDS.kinds("chicken"))).startsWith("raw_poultry_whole", "raw_poultry_pieces");
    assertThat(keys(WORDS.kinds("torta"))).containsExactly("casserole_meat", "cake_unfrosted");
    assertThat(keys(WORDS.kinds("cheese"))).contains("cheese_hard").hasSizeGreaterThan(1);
  }
}
