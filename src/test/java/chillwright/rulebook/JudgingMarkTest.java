package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program that judges otherwise has another mark. */
class JudgingMarkTest {
  @TempDir private Path classes;

  private void write(String room, String file, String bytes) throws IOException {
    Path folder = Files.createDirectories(classes.resolve("chillwright/core").resolve(room));
    Files.writeString(folder.resolve(file), bytes);
  }

  @Test
  void it_is_that_of_the_judging_code_alone() throws IOException {
    for (String room : new String[] {"keeping", "log", "measure", "rules"}) {
      write(room, "A.class", "as it was");
    }
    String before = JudgingMark.of(classes);
    write("plan", "B.class", "plans judge nothing");
    assertThat(JudgingMark.of(classes)).isEqualTo(before);
    write("rules", "A.class", "as it is");
    assertThat(JudgingMark.of(classes)).isNotEqualTo(before);
  }

  @Test
  void the_build_has_made_one() throws Exception {
    Path built =
        Path.of(JudgingMark.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    assertThat(JudgingMark.ofThisJar()).isEqualTo(JudgingMark.of(built)).hasSize(8);
    RuleLibrary library = RuleLibrary.load(Optional.empty());
    assertThat(library.figures(library.ruleBook("us-home").orElseThrow()))
        .endsWith("program " + JudgingMark.ofThisJar());
  }
}
