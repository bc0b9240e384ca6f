package chillwright.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A prepared file says what its YAML says, and is not used for any other text. */
class PreparedTest {
  @Test
  void every_file_of_the_jar_comes_back_node_for_node() throws IOException {
    Prepared prepared = Prepared.read(Prepared.write(Shipped.files()));
    assertThat(Shipped.files()).isNotEmpty();
    for (TextFile file : Shipped.files()) {
      assertThat(prepared.tree(file)).as(file.name()).contains(YamlText.tree(file.text()));
    }
  }

  @Test
  void the_build_has_prepared_every_file() {
    for (TextFile file : Shipped.files()) {
      assertThat(Prepared.ofThisJar().tree(file)).as(file.name()).isPresent();
    }
  }

  @Test
  void every_kind_of_node_comes_back() throws IOException {
    TextFile file = new TextFile("a.yaml", "[a: {b: 1, c: -2.5}, yes, true, null, '°F', []]", true);
    Prepared prepared = Prepared.read(Prepared.write(List.of(file)));
    assertThat(prepared.tree(file)).contains(YamlText.tree(file.text()));
  }

  @Test
  void a_text_that_was_changed_since_is_read_anew() throws IOException {
    Prepared prepared =
        Prepared.read(Prepared.write(List.of(new TextFile("a.yaml", "limit: 41", true))));
    assertThat(prepared.tree(new TextFile("a.yaml", "limit: 45", true))).isEmpty();
    assertThat(prepared.tree(new TextFile("b.yaml", "limit: 41", true))).isEmpty();
  }
}
