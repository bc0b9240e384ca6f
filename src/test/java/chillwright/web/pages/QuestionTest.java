package chillwright.web.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Our own, no source: what is asked of two things has two names, however these are spelled. */
class QuestionTest {
  @Test
  void no_two_subjects_share_a_name_and_no_name_has_a_blank() {
    List<String> subjects =
        List.of("Walk in", "Walk_in", "Walk%20in", "Walk%0020in", "Walk\u2009in", "Walk 09in");
    Set<String> names = new HashSet<>();
    for (String subject : subjects) {
      String name = Question.of("warm", subject, "Is it?").name();
      assertThat(name).doesNotContainPattern("[\\s\\p{Z}]").startsWith("warm:Walk");
      assertThat(names.add(name)).as(name).isTrue();
    }
  }

  @Test
  void a_question_about_one_lot_is_another_about_the_next() {
    Question asked = Question.of("hot", "411 °F", "Is it?");
    assertThat(asked.about(List.of("A"))).isNotEqualTo(asked.about(List.of("B")));
    assertThat(asked.about(List.of("A", "B")).name()).endsWith(":A,B");
    assertThat(Question.isOpen(List.of(asked.about(List.of("A"))), Set.of(asked.name()))).isTrue();
  }
}
