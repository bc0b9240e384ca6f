package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Category;
import chillwright.core.log.FoodWords;
import chillwright.core.log.KeepingList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
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
    "cornbread dressing, stuffing_cooked",
    "sage stuffing, stuffing_cooked",
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

  /**
   * Nothing gets days that no source gives it: for these our reference has no row. FDA Food Code
   * 2022 1-201.10: garlic in oil, raw sprouts and cut melon need the cold.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "garlic butter",
        "herb butter",
        "peanut butter",
        "mantequilla de ajo",
        "chili oil",
        "garlic in oil",
        "garlic confit",
        "sun-dried tomatoes in oil",
        "aceite de chile",
        "caesar dressing",
        "stuffed turkey",
        "pavo relleno",
        "frozen berries",
        "giblets",
        "cheese ball",
        "ranch dressing",
        "homemade mayonnaise",
        "hollandaise",
        "aioli",
        "eggnog",
        "tiramisu",
        "chocolate mousse",
        "ceviche",
        "ceviche de pescado",
        "gravlax",
        "cured salmon",
        "smoked salmon",
        "sushi",
        "spicy tuna poke",
        "home-canned tomatoes",
        "canned beans",
        "jam",
        "pickled eggs",
        "bean sprouts",
        "brotes de soya",
        "cut melon",
        "infused honey",
        "miel con ajo",
        "brioche dough",
        "raw dough",
        "pancake batter",
        "fresh pasta",
        "cream cheese",
        "cottage cheese",
        "queso fresco",
        "fresh cheese",
        "homemade cheese",
        "crema fresca",
        "fresh ravioli",
        "breast milk",
        "raw eggs",
        "egg whites",
        "raw shrimp",
        "camarones",
        "ham sandwich",
        "chicken liver pate"
      })
  void no_kind_stands_for_food_without_a_figure(String given) {
    assertThat(WORDS.untold(given)).as(given).isPresent();
    assertThat(WORDS.kinds(given).isCertain()).as(given).isFalse();
  }

  /** A dish with such food in it is that dish. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "pasta with shrimp", "sopa de mariscos", "smoked salmon quiche", "clam chowder", "butter",
        "salted butter", "cheese", "bread dressing", "bread and butter",
            "potato salad with mayonnaise",
        "pizza dough", "masa de galletas", "crab cakes", "hard-boiled eggs", "cooked shrimp",
        "peanut butter cookies", "milk", "chicken salad", "olive oil cake"
      })
  void a_dish_with_such_food_in_it_is_told_or_asked_about(String given) {
    assertThat(WORDS.untold(given)).as(given).isEmpty();
    assertThat(WORDS.kinds(given).kinds()).as(given).isNotEmpty();
  }

  /** "Frozen turkey" is turkey, raw before cooked: FoodSafety.gov chart, 1 to 2 days and 3 to 4. */
  @ParameterizedTest
  @CsvSource({
    "frozen turkey, turkey",
    "turkey 12 lb, turkey",
    "12lb thanksgiving turkey, turkey",
    "whole frozen chicken, chicken",
    "homemade chicken soup, chicken soup",
    "pavo congelado, pavo",
    "pavo de 5 kg, pavo",
    "sopa casera, sopa",
    "2 lb of fish, fish"
  })
  void words_that_only_describe_are_set_aside(String given, String plain) {
    if (!given.startsWith("whole")) {
      assertThat(WORDS.kinds(given)).isEqualTo(WORDS.kinds(plain));
    }
    assertThat(keys(WORDS.kinds(given))).first().isEqualTo(keys(WORDS.kinds(plain)).get(0));
  }

  /**
   * Fresh ham is raw pork: FoodSafety.gov, Cold Food Storage Chart, 3 to 5 days; a fresh tart holds
   * custard, and fresh tuna is raw fish (common practice, no source).
   */
  @Test
  void fresh_makes_another_food_of_some() {
    assertThat(keys(WORDS.kinds("fresh ham"))).containsExactly("raw_meat_whole");
    assertThat(keys(WORDS.kinds("fresh fruit tart"))).containsExactly("pie_custard_or_cream");
    for (String tuna : new String[] {"fresh tuna", "atún fresco", "tuna"}) {
      assertThat(keys(WORDS.kinds(tuna))).first().isEqualTo("raw_fish_fatty");
    }
  }

  /** FoodSafety.gov, Ham Storage Chart: whole in store wrapping 7 days, cut or spiral 3 to 5. */
  @Test
  void of_ham_it_is_asked_which_where_the_chart_has_two_rows() {
    for (String ham : new String[] {"ham", "whole ham", "cooked ham", "jamón"}) {
      assertThat(keys(WORDS.kinds(ham))).containsExactly("ham_cooked_cut", "ham_cooked_whole");
    }
    assertThat(keys(WORDS.kinds("spiral ham"))).containsExactly("ham_cooked_cut");
    assertThat(WORDS.untold("country ham").orElseThrow().says()).contains("7 days");
  }

  /** Not raw fish, nor a cake that needs no cold: what is opened goes by its maker's label. */
  @ParameterizedTest
  @CsvSource({
    "opened can of tuna, jar or can",
    "can of tuna, jar or can",
    "opened canned salmon, jar or can",
    "tuna from a can, jar or can",
    "opened can of beans, jar or can",
    "lata de atún, jar or can",
    "atún de lata, jar or can",
    "half a can of tomatoes, jar or can",
    "cream cheese frosting cake, cream",
    "carrot cake with cream cheese frosting, cream",
    "cream cheese frosting, cream"
  })
  void what_was_in_a_can_or_under_cream_cheese_is_that(String given, String says) {
    assertThat(WORDS.untold(given).orElseThrow().says()).as(given).contains(says);
    assertThat(WORDS.kinds(given).isCertain()).as(given).isFalse();
  }

  @Test
  void what_is_left_over_was_cooked() {
    assertThat(keys(WORDS.kinds("leftover turkey"))).containsExactly("cooked_poultry_plain");
    assertThat(keys(WORDS.kinds("sobras de pollo"))).containsExactly("cooked_poultry_plain");
  }

  @Test
  void a_word_shared_with_a_food_brings_that_food_raw_too() {
    FoodWords.Found found = WORDS.kinds("lemon chicken");
    assertThat(keys(found)).contains("raw_poultry_whole", "cooked_poultry_plain");
    assertThat(found.kinds().get(0).readyToEat()).isFalse();
  }

  @Test
  void a_slip_in_one_word_of_two_is_asked_about() {
    assertThat(keys(WORDS.kinds("chicken stok"))).first().isEqualTo("stock_or_meat_broth");
    assertThat(WORDS.kinds("chicken stok").isCertain()).isFalse();
  }

  /** The dishes a home cook asks about most, in both languages: one answer, no question back. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "soup",
        "chicken soup",
        "tomato soup",
        "potato soup",
        "butternut squash soup",
        "clam chowder",
        "ramen",
        "beef stew",
        "chili",
        "chili con carne",
        "stock",
        "bone broth",
        "chicken stock",
        "vegetable broth",
        "gravy",
        "turkey gravy",
        "lasagna",
        "shepherd's pie",
        "chicken pot pie",
        "tuna casserole",
        "green bean casserole",
        "mac and cheese",
        "baked ziti",
        "meatballs",
        "meatloaf",
        "pulled pork",
        "pot roast",
        "roast beef",
        "brisket",
        "cooked chicken",
        "rotisserie chicken",
        "grilled chicken",
        "chicken curry",
        "chicken tikka masala",
        "stir fry",
        "fried rice",
        "cooked rice",
        "rice",
        "pasta",
        "spaghetti",
        "pasta sauce",
        "alfredo sauce",
        "bechamel",
        "pesto",
        "salsa",
        "hummus",
        "guacamole",
        "beans",
        "black beans",
        "baked beans",
        "lentils",
        "quinoa",
        "oatmeal",
        "mashed potatoes",
        "baked potatoes",
        "steamed broccoli",
        "stuffing",
        "spiral ham",
        "leftover ham",
        "fresh ham",
        "leftover turkey",
        "pizza",
        "quiche",
        "hard-boiled eggs",
        "scrambled eggs",
        "egg salad",
        "potato salad",
        "pasta salad",
        "coleslaw",
        "bread",
        "sourdough",
        "banana bread",
        "zucchini bread",
        "muffins",
        "pancakes",
        "french toast",
        "cookies",
        "chocolate chip cookies",
        "brownies",
        "cheesecake",
        "apple pie",
        "cherry pie",
        "pumpkin pie",
        "key lime pie",
        "pudding",
        "rice pudding",
        "bread pudding",
        "flan",
        "ice cream",
        "butter",
        "milk",
        "cookie dough",
        "pizza dough",
        "pie crust",
        "tamales",
        "enchiladas",
        "burritos",
        "egg rolls",
        "jambalaya",
        "ground beef",
        "hot dogs",
        "caldo",
        "caldo de pollo",
        "sopa de fideo",
        "menudo",
        "pozole",
        "arroz",
        "arroz blanco",
        "arroz con pollo",
        "arroz con leche",
        "frijoles",
        "frijoles negros",
        "lentejas",
        "mole",
        "tinga",
        "pollo cocido",
        "carne asada",
        "carne molida",
        "carne guisada",
        "milanesa",
        "puré de papas",
        "ensalada de papa",
        "lasaña",
        "croquetas",
        "empanadas",
        "tortilla de patatas",
        "pan dulce",
        "galletas",
        "natilla",
        "tarta de manzana",
        "salsa roja",
        "salsa verde",
        "sobras de pavo",
        "huevos duros",
        "carnitas",
        "barbacoa",
        "camarones cocidos"
      })
  void a_common_dish_is_answered_without_a_question_back(String given) {
    FoodWords.Found found = WORDS.kinds(given);
    assertThat(found.isCertain()).as(given).isTrue();
    assertThat(found.kinds()).as(given).hasSize(1);
    assertThat(WORDS.untold(given)).as(given).isEmpty();
  }

  /** FoodSafety.gov, Cold Food Storage Chart: raw sausage 1-2 d, bacon 1 week, nuggets 3-4 d. */
  @ParameterizedTest
  @CsvSource({
    "raw sausage, 1, 2, 1, 2",
    "raw bacon, 7, 7, 1, 1",
    "chicken nuggets, 3, 4, 1, 3",
    "scrambled eggs, 3, 4, 2, 3"
  })
  void what_the_chart_has_a_row_for_keeps_as_it_says(
      String given, int from, int to, int monthsFrom, int monthsTo) {
    Category kind = WORDS.kinds(given).kinds().get(0);
    assertThat(kind.fridge()).isEqualTo(range(from, to));
    assertThat(kind.freezer()).isEqualTo(range(monthsFrom, monthsTo));
  }

  private static Category.Range range(int from, int to) {
    return new Category.Range(OptionalInt.of(from), OptionalInt.of(to));
  }
}
