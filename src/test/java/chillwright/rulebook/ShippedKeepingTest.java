package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Category;
import chillwright.core.log.Category.Freezes;
import chillwright.core.log.KeepingList;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The storage categories in this jar, each beside who printed its figures. */
class ShippedKeepingTest {
  private static final KeepingList LIST = load();

  private static KeepingList load() {
    try {
      return RuleLibrary.load(Optional.empty()).keepingList();
    } catch (BrokenRules e) {
      throw new AssertionError(e.getMessage(), e);
    }
  }

  /** The last column names the chart; "-" stands for no figure. */
  @ParameterizedTest(name = "{0}: {1} days, {2} months")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          soup_or_stew                   | 3-4     | 2-3   | FoodSafety.gov, Cold Food Storage Chart
          soup_cream_or_flour_thickened  | 3-4     | 2-3   | USDA Home and Garden Bulletin 40
          stock_or_meat_broth            | 3-4     | 2-3   | USDA refrigerator storage chart
          gravy                          | 3-4     | 2-3   | USDA refrigerator storage chart
          casserole_meat                 | 3-4     | 2-3   | DuPage County (Illinois)
          casserole_poultry              | 3-4     | 4-6   | FDA, Refrigerator & Freezer
          casserole_vegetable_or_pasta   | 3-4     | 2-3   | Food Safety and Inspection Service
          casserole_egg                  | 3-4     | 2-3   | FoodSafety.gov, egg storage chart
          quiche                         | 3-4     | 1-2   | FoodSafety.gov, egg storage chart
          cooked_meat_plain              | 3-4     | 2-3   | Food Safety and Inspection Service
          cooked_poultry_plain           | 3-4     | 4-4   | FDA, Refrigerator & Freezer
          cooked_poultry_in_sauce        | 3-4     | 6-6   | FDA, Refrigerator & Freezer
          cooked_fish                    | 3-4     | 4-6   | FDA, Refrigerator & Freezer
          sausage_cooked_here            | 3-4     | 1-2   | FoodSafety.gov, Cold Food Storage Chart
          sausage_bought_cooked          | 7-7     | 1-2   | FoodSafety.gov, Cold Food Storage Chart
          ham_cooked_cut                 | 3-5     | 1-2   | FoodSafety.gov, Ham Storage Chart
          ham_cooked_whole               | 7-7     | 1-2   | FoodSafety.gov, Ham Storage Chart
          pizza                          | 3-4     | 1-2   | FoodSafety.gov, Cold Food Storage Chart
          stuffing_cooked                | 3-4     | 1-1   | DuPage County (Illinois)
          frozen_entree                  | 3-4     | 3-4   | Food Safety and Inspection Service
          cooked_rice_or_grain           | 3-4     | 2-2   | county extension page on freezing rice
          cooked_pasta_plain             | 3-4     | --2   | Oregon State University Extension
          cooked_beans                   | 3-4     | 6-6   | University of Maine
          puree_fruit_or_vegetable       | 3-4     | 8-12  | USDA garden-produce bulletin
          salad_protein_or_macaroni_mayo | 3-4     | ---   | FoodSafety.gov, Cold Food Storage Chart
          eggs_hard_cooked               | 7-7     | ---   | FoodSafety.gov, egg storage chart
          cooked_vegetables              | 3-4     | 3-4   | University of Illinois Extension
          raw_meat_whole                 | 3-5     | 4-12  | FoodSafety.gov, Cold Food Storage Chart
          raw_meat_ground                | 1-2     | 3-4   | FoodSafety.gov, Cold Food Storage Chart
          raw_sausage                    | 1-2     | 1-2   | FoodSafety.gov, Cold Food Storage Chart
          bacon_raw                      | 7-7     | 1-1   | FoodSafety.gov, Cold Food Storage Chart
          chicken_nuggets_or_patties     | 3-4     | 1-3   | FoodSafety.gov, Cold Food Storage Chart
          raw_poultry_whole              | 1-2     | 12-12 | FoodSafety.gov, Cold Food Storage Chart
          raw_poultry_pieces             | 1-2     | 9-9   | FoodSafety.gov, Cold Food Storage Chart
          raw_fish_fatty                 | 1-3     | 2-3   | FoodSafety.gov, Cold Food Storage Chart
          raw_fish_lean                  | 1-3     | 4-8   | FoodSafety.gov, Cold Food Storage Chart
          milk                           | ---     | ---   | FoodSafety.gov, food safety during
          ice_cream                      | ---     | ---   | FoodSafety.gov, food safety during
          yeast_bread_baked              | ---     | 2-3   | North Carolina State Extension
          yeast_dough_unbaked            | 3-4     | --1   | North Carolina State Extension
          quick_bread_or_muffin          | ---     | 2-3   | North Carolina State Extension
          pancake_or_waffle              | ---     | 2-3   | North Carolina State Extension
          cake_unfrosted                 | ---     | 2-3   | North Carolina State Extension
          cake_frosted_butter_icing      | ---     | ---   | North Dakota State University Extension
          cheesecake                     | 3-4     | ---   | University of Illinois Extension
          cookies_baked                  | ---     | 6-12  | North Carolina State Extension
          cookie_dough_raw               | 2-3     | 2-3   | DuPage County (Illinois)
          bar_cookies_brownies           | ---     | 2-3   | North Carolina State Extension
          bar_cookies_cut_and_wrapped    | ---     | 6-6   | common practice, no source
          pie_fruit_baked                | 2-2     | 1-4   | Iowa State University Extension
          pie_fruit_unbaked              | ---     | 2-4   | North Carolina Cooperative Extension
          pie_pumpkin_or_pecan           | 3-4     | 1-2   | Iowa State University Extension
          pie_custard_or_cream           | 3-4     | ---   | Iowa State University Extension
          sauce_salsa_or_dip             | 3-4     | 3-4   | University of Illinois Extension
          pie_dough_raw                  | ---     | 2-6   | DuPage County (Illinois)
          butter                         | ---     | 6-9   | National Center for Home Food
          cheese_hard                    | ---     | 2-6   | National Center for Home Food
          nuts_plain                     | 365-365 | 12-24 | Michigan State University Extension
          """)
  void a_category_has_the_figures_of_its_source(
      String key, String days, String months, String source) {
    Category category = LIST.category(key).orElseThrow();
    assertThat(text(category.fridge())).isEqualTo(days);
    assertThat(text(category.freezer())).isEqualTo(months);
    assertThat(category.source()).contains(source);
  }

  private static String text(Category.Range range) {
    return text(range.min()) + "-" + text(range.max());
  }

  private static String text(OptionalInt figure) {
    return figure.isPresent() ? String.valueOf(figure.getAsInt()) : "-";
  }

  @Test
  void the_table_above_leaves_no_category_out() {
    assertThat(LIST.categories()).hasSize(58);
  }

  static Stream<Category> all_categories() {
    return LIST.categories().stream();
  }

  @ParameterizedTest
  @MethodSource("all_categories")
  void a_category_never_gives_a_figure_from_memory(Category category) {
    if (category.status().equals("memory")) {
      assertThat(category.fridge()).isEqualTo(Category.Range.NONE);
      assertThat(category.freezer()).isEqualTo(Category.Range.NONE);
    } else {
      assertThat(category.status()).isIn("verified", "reported", "practice");
    }
  }

  @ParameterizedTest
  @MethodSource("all_categories")
  void figures_from_practice_never_make_a_lot_out(Category category) {
    boolean isPractice = category.source().contains("common practice, no source");
    assertThat(category.status().equals("practice")).isEqualTo(isPractice);
    if (isPractice) {
      assertThat(category.fridge()).isEqualTo(Category.Range.NONE);
      assertThat(category.isDateMarked()).isFalse();
    }
  }

  /** What does not freeze has no months, and TCS food has days unless no chart prints them. */
  @ParameterizedTest
  @MethodSource("all_categories")
  void the_parts_of_a_category_fit_each_other(Category category) {
    assertThat(category.title()).isNotBlank();
    if (category.freezes() == Freezes.NO) {
      assertThat(category.freezer()).isEqualTo(Category.Range.NONE);
    }
    if (category.isDateMarked()) {
      boolean saysWhy = category.note().orElse("").contains("no chart figure for");
      assertThat(category.fridge().max().isPresent()).isNotEqualTo(saysWhy);
      assertThat(category.daysAreQuality()).isFalse();
    }
  }

  /** A note is there to keep someone from a wrong choice, so it names the right one, or why not. */
  @ParameterizedTest
  @MethodSource("all_categories")
  void a_note_that_names_a_category_names_one_that_is_there(Category category) {
    Matcher keys = Pattern.compile("[a-z]+(_[a-z]+)+").matcher(category.note().orElse(""));
    while (keys.find()) {
      String key = keys.group();
      assertThat(LIST.categories())
          .as(category.key())
          .anySatisfy(known -> assertThat(known.key()).startsWith(key));
    }
  }

  /** The words are ours; a key never needs another word for itself. */
  @ParameterizedTest
  @CsvSource({
    "curry, casserole_meat",
    "Chili, soup_or_stew",
    "soup, soup_or_stew",
    "rice, cooked_rice_or_grain",
    "chicken, cooked_poultry_plain",
    "sauce, gravy",
    "steak, raw_meat_whole",
    "ice-cream, ice_cream",
    "lasagna, casserole_meat",
    "brownies, bar_cookies_brownies"
  })
  void another_word_for_a_food_leads_to_its_category(String given, String key) {
    assertThat(LIST.category(given)).isEmpty();
    assertThat(LIST.question(given)).startsWith(" Did you mean ").contains(key);
  }

  /**
   * 1-201.10 (TCS food): heat-treated food and filled baked goods are; plain baked goods are not.
   */
  @Test
  void plain_baked_goods_warn_of_fillings() {
    assertThat(LIST.categories())
        .filteredOn(
            category -> category.note().orElse("").contains("take a kind that needs the cold"))
        .extracting(Category::key)
        .containsExactly(
            "yeast_bread_baked",
            "quick_bread_or_muffin",
            "cake_unfrosted",
            "cake_frosted_butter_icing",
            "cookies_baked",
            "bar_cookies_brownies",
            "bar_cookies_cut_and_wrapped",
            "pie_fruit_baked");
    assertThat(LIST.category("soup_or_stew").orElseThrow().isDateMarked()).isTrue();
    assertThat(LIST.category("cookie_dough_raw").orElseThrow().isDateMarked()).isFalse();
  }
}
