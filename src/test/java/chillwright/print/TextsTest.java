package chillwright.print;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.How;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Rule;
import chillwright.rulebook.BrokenRules;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The files of texts: each text in every language, with the same places to fill in. */
class TextsTest {
  private static final String PRINT = "/words/print.properties";
  private static final String PAGES = "/words/pages.properties";
  private static final Pattern PLACE = Pattern.compile("\\{[0-9]}");
  private static final Pattern KEY = Pattern.compile("(?m)^([^#\\s]\\S*) = ");

  @ParameterizedTest
  @ValueSource(strings = {PRINT, PAGES})
  void every_text_is_there_in_each_language_with_the_same_places(String file) {
    Texts texts = new Texts(file);
    Set<String> keys = new TreeSet<>();
    texts.keys().forEach(key -> keys.add(key.replaceFirst("\\.[a-z]+$", "")));
    assertThat(keys).isNotEmpty();
    assertThat(texts.keys()).hasSize(keys.size() * Language.values().length);
    for (String key : keys) {
      for (Language language : Language.values()) {
        assertThat(places(texts.text(language, key)))
            .as(key)
            .isEqualTo(places(texts.text(Language.ENGLISH, key)));
        assertThat(texts.text(language, key)).as(key).isNotBlank();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {PRINT, PAGES})
  void no_text_is_written_twice(String file) throws IOException {
    String all =
        new String(Texts.class.getResourceAsStream(file).readAllBytes(), StandardCharsets.UTF_8);
    assertThat(KEY.matcher(all).results().map(found -> found.group(1)).toList())
        .hasSameSizeAs(new Texts(file).keys())
        .doesNotHaveDuplicates();
  }

  private static Set<String> places(String text) {
    return PLACE.matcher(text).results().map(MatchResult::group).collect(Collectors.toSet());
  }

  @Test
  void what_is_filled_in_may_hold_braces() {
    assertThat(Language.ENGLISH.say("or", "{1}", "{0} {")).isEqualTo("{1}, or {0} {");
  }

  @Test
  void a_place_for_which_nothing_is_given_stays() {
    assertThat(Language.SPANISH.say("or", "una")).isEqualTo("una, o {1}");
  }

  @Test
  void words_of_the_log_that_sentences_hold_have_a_spanish_form() {
    List<String> words = new ArrayList<>(List.of("action", "discarded", "reheating"));
    Arrays.stream(How.values()).map(How::text).forEach(words::add);
    assertThat(words).allMatch(word -> Language.SPANISH.said(word).isPresent());
  }

  @Test
  void what_the_shipped_rules_tell_a_cook_to_do_has_a_spanish_form() throws BrokenRules {
    List<String> told = new ArrayList<>();
    for (RuleBook book : RuleLibrary.load(Optional.empty()).ruleBooks()) {
      for (Rule rule : book.on(LocalDate.of(2026, 12, 1)).rules()) {
        rule.actions().forEach(act -> told.add(act.says()));
        told.add(rule.says().strip());
        told.add(rule.status());
      }
      told.add(book.title());
      told.add(book.defers().strip());
    }
    assertThat(told)
        .isNotEmpty()
        .allSatisfy(words -> assertThat(Language.SPANISH.said(words)).as(words).isPresent());
  }

  @Test
  void every_storage_category_has_a_spanish_title() throws BrokenRules {
    assertThat(RuleLibrary.load(Optional.empty()).keepingList().categories())
        .isNotEmpty()
        .allSatisfy(
            category ->
                assertThat(Language.SPANISH.said(category.title()))
                    .as(category.title())
                    .isPresent());
  }

  @Test
  void what_is_said_of_food_without_a_kind_has_a_spanish_form() throws BrokenRules {
    assertThat(RuleLibrary.load(Optional.empty()).keepingList().untold())
        .hasSizeGreaterThan(10)
        .allSatisfy(
            untold ->
                assertThat(Language.SPANISH.said(untold.says())).get().isNotEqualTo(untold.says()));
  }

  @Test
  void every_note_of_a_storage_category_has_a_spanish_form() throws BrokenRules {
    assertThat(RuleLibrary.load(Optional.empty()).keepingList().categories())
        .filteredOn(category -> category.note().isPresent())
        .hasSizeGreaterThan(40)
        .allSatisfy(
            category ->
                assertThat(Language.SPANISH.said(category.note().get()))
                    .as(category.key())
                    .isPresent()
                    .get()
                    .isNotEqualTo(category.note().get()));
  }

  /** FDA Food Code 2022, 3-403.11(A) prints 74 °C (165 °F), 3-501.14(A)(1) 21 °C (70 °F). */
  @Test
  void who_reads_celsius_is_told_figures_as_they_are_printed() {
    assertThat(Figures.asPrinted("reheat to 165 °F", Scale.CELSIUS))
        .isEqualTo("reheat to 74 °C (165 °F)");
    assertThat(Figures.asPrinted("to 70 °F in 2 hours", Scale.CELSIUS))
        .isEqualTo("to 21 °C (70 °F) in 2 hours");
    assertThat(Figures.asPrinted("to 170 °F or 1165 °F", Scale.CELSIUS))
        .isEqualTo("to 170 °F or 1165 °F");
    assertThat(Figures.asPrinted("reheat to 165 °F", Scale.FAHRENHEIT))
        .isEqualTo("reheat to 165 °F");
  }

  @Test
  void no_translation_changes_a_figure() {
    Texts texts = Texts.PRINT;
    for (String key : texts.keys()) {
      if (key.startsWith("said.") && key.endsWith(".en")) {
        String name = key.substring(0, key.length() - ".en".length());
        assertThat(figures(texts.text(Language.SPANISH, name)))
            .as(name)
            .isEqualTo(figures(texts.text(Language.ENGLISH, name)));
      }
    }
  }

  private static List<String> figures(String text) {
    return Pattern.compile("[0-9]+( °[FC])?")
        .matcher(text)
        .results()
        .map(MatchResult::group)
        .toList();
  }

  @Test
  void words_of_a_rule_set_without_a_translation_stay_and_are_marked() {
    assertThat(Language.SPANISH.saidByRules("discard")).isEqualTo("desechar");
    assertThat(Language.SPANISH.saidByRules("reheat to 170 °F"))
        .isEqualTo("según las reglas: «reheat to 170 °F»");
    assertThat(Language.ENGLISH.saidByRules("reheat to 170 °F")).isEqualTo("reheat to 170 °F");
  }

  /** Figures and days are filled in again as they were; the most of a line that is ours counts. */
  @Test
  void the_arithmetic_of_a_date_is_told_in_spanish_with_its_figures() {
    assertThat(Language.SPANISH.because("3 days used + 4 left"))
        .isEqualTo("3 días usados + quedan 4");
    assertThat(Language.SPANISH.because("1 day used + 6 left")).isEqualTo("1 día usado + quedan 6");
    assertThat(Language.SPANISH.because("made 2026-10-01 = day 1"))
        .isEqualTo("hecho 2026-10-01 = día 1");
    assertThat(
            Language.SPANISH.because(
                "its last day, 2026-02-24, had passed before it was frozen: discard"))
        .isEqualTo("su último día, 2026-02-24, había pasado antes de congelarlo: desechar");
    assertThat(Language.SPANISH.because("frozen 2026-02-01 + 3 months: best quality by 2026-05-01"))
        .isEqualTo("congelado 2026-02-01 + 3 meses: mejor calidad hasta 2026-05-01");
    assertThat(
            Language.SPANISH.because(
                "thawed 2026-03-10 and frozen again 2026-03-12: the months still count from the"
                    + " first freezing, and once it thaws it has only the days left"))
        .isEqualTo(
            "descongelado 2026-03-10 y congelado otra vez 2026-03-12: los meses siguen contando"
                + " desde la primera congelación, y al descongelarse le quedan solo los días"
                + " restantes");
    assertThat(Language.SPANISH.because("what nobody wrote")).isEqualTo("what nobody wrote");
    assertThat(Language.ENGLISH.because("last day 2026-10-14")).isEqualTo("last day 2026-10-14");
  }
}
