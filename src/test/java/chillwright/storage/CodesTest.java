package chillwright.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.log.How;
import chillwright.core.log.Phase;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Verdict;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Stored codes stand in every kitchen's file: these numbers may never change. */
class CodesTest {
  @Test
  void codes_stay_as_they_were_first_stored() {
    assertThat(Codes.WORDS.of(Word.COOKED)).isZero();
    assertThat(Codes.WORDS.of(Word.READING)).isEqualTo(6);
    assertThat(Codes.WORDS.of(Word.CORRECTION)).isEqualTo(17);
    assertThat(Codes.PHASES.of(Phase.COOKED)).isZero();
    assertThat(Codes.PHASES.of(Phase.DISCARDED)).isEqualTo(13);
    assertThat(Codes.HOWS.of(How.SERVE_NOW)).isZero();
    assertThat(Codes.HOWS.of(How.SOFT)).isEqualTo(12);
    assertThat(Codes.GOVERNING.of(Governs.QUALITY_LIMIT)).isEqualTo(5);
    assertThat(Codes.SCALES.of(Scale.CELSIUS)).isZero();
    assertThat(Codes.SCALES.of(Scale.FAHRENHEIT)).isOne();
  }

  /** The partial indexes of the schema name these numbers. */
  @Test
  void verdicts_have_the_codes_that_the_indexes_name() {
    assertThat(Arrays.stream(Verdict.values()).map(Codes.VERDICTS::of))
        .containsExactly(0, 1, 2, 3, 4);
  }

  @Test
  void every_code_leads_back_to_its_word() {
    assertThat(Arrays.stream(Word.values()))
        .allMatch(word -> Codes.WORDS.word(Codes.WORDS.of(word)) == word);
    assertThat(Codes.HOWS.wordOrEmpty(null)).isEmpty();
    assertThat(Codes.HOWS.orNull(Optional.empty())).isNull();
  }

  @Test
  void an_unknown_code_is_not_taken_for_a_word() {
    assertThatThrownBy(() -> Codes.WORDS.word(19)).isInstanceOf(IllegalStateException.class);
    assertThatThrownBy(() -> Codes.WORDS.word(-1)).isInstanceOf(IllegalStateException.class);
  }
}
