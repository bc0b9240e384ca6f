package chillwright.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Which form a letter takes beside others: The Unicode Standard, section 9.2, "Arabic Cursive
 * Joining". Letters and forms are named as in its code charts.
 */
class JoinedTest {
  private static String letters(String names) {
    return Stream.of(names.split(" "))
        .map(name -> "ARABIC LETTER " + name.replace('_', ' '))
        .map(name -> Character.toString(Character.codePointOf(name)))
        .collect(Collectors.joining());
  }

  private static String forms(String names) {
    return Stream.of(names.split(" "))
        .map(name -> name.replace('_', ' '))
        .map(name -> "ARABIC " + (name.startsWith("LIGATURE") ? "" : "LETTER ") + name + " FORM")
        .map(name -> Character.toString(Character.codePointOf(name)))
        .collect(Collectors.joining());
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "BEH, BEH_ISOLATED",
    "BEH BEH, BEH_INITIAL BEH_FINAL",
    "BEH BEH BEH, BEH_INITIAL BEH_MEDIAL BEH_FINAL",
    "SHEEN WAW REH BEH TEH_MARBUTA,"
        + " SHEEN_INITIAL WAW_FINAL REH_ISOLATED BEH_INITIAL TEH_MARBUTA_FINAL",
    "ALEF LAM AIN DAL SEEN, ALEF_ISOLATED LAM_INITIAL AIN_MEDIAL DAL_FINAL SEEN_ISOLATED",
    "SEEN LAM ALEF MEEM, SEEN_INITIAL LIGATURE_LAM_WITH_ALEF_FINAL MEEM_ISOLATED",
    "LAM ALEF, LIGATURE_LAM_WITH_ALEF_ISOLATED",
    "PEH GAF FARSI_YEH, PEH_INITIAL GAF_MEDIAL FARSI_YEH_FINAL"
  })
  void letters_take_the_form_of_their_place(String given, String expected) {
    assertThat(Joined.of(letters(given), point -> true)).isEqualTo(forms(expected));
  }

  @Test
  void marks_between_letters_part_nothing() {
    String beh = letters("BEH");
    assertThat(Joined.of(beh + "\u064e" + beh, point -> true))
        .isEqualTo(forms("BEH_INITIAL") + "\u064e" + forms("BEH_FINAL"));
  }

  @Test
  void what_a_font_lacks_stays_as_it_was_and_so_does_other_text() {
    assertThat(Joined.of(letters("LAM ALEF"), point -> false)).isEqualTo(letters("LAM ALEF"));
    assertThat(Joined.of("Barley soup \ud83c\udf72", point -> true))
        .isEqualTo("Barley soup \ud83c\udf72");
  }
}
