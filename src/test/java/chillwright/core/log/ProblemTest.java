package chillwright.core.log;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Problem.Where.InFile;
import org.junit.jupiter.api.Test;

class ProblemTest {
  @Test
  void a_cell_stands_in_its_row() {
    assertThat(new InFile("a.csv", 7, "").at("when")).isEqualTo(new InFile("a.csv", 7, "when"));
    assertThat(new InField("", "/entries/0").at("when"))
        .isEqualTo(new InField("", "/entries/0/when"));
  }
}
