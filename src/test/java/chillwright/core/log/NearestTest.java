package chillwright.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
  private static final List<String> KEYS =
      List.of("soup_or_stew", "gravy_or_broth", "cooked_meat", "cooked_pasta", "cookies");

  @Test
  void a_slip_of_the_pen_finds_its_word() {
    assertThat(Nearest.to("cokies", KEYS)).containsExactly("cookies");
    assertThat(Nearest.to("Soup-or-Stew", KEYS)).containsExactly("soup_or_stew");
    assertThat(Nearest.to("gravy or brot", KEYS)).containsExactly("gravy_or_broth");
  }

  @Test
  void part_of_a_word_finds_all_that_hold_it() {
    assertThat(Nearest.to("cooked", KEYS)).startsWith("cooked_meat", "cooked_pasta");
    assertThat(Nearest.to("stew", KEYS)).containsExactly("soup_or_stew");
  }

  @Test
  void what_is_far_from_all_finds_nothing() {
    assertThat(Nearest.to("xyzzy", KEYS)).isEmpty();
    assertThat(Nearest.to("", KEYS)).isEmpty();
    assertThat(Nearest.to("x".repeat(1000), KEYS)).isEmpty();
  }

  @Test
  void the_question_names_what_was_found() {
    assertThat(Nearest.question("cooked", KEYS))
        .isEqualTo(" Did you mean cooked_meat or cooked_pasta or cookies?");
    assertThat(Nearest.question("xyzzy", KEYS)).isEmpty();
  }
}
