package chillwright;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.cases.Case;
import chillwright.cases.CaseCheck;
import chillwright.cases.CaseKitchen;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Runs every case file through the real reader, intake, rules and dates. A new case is only a new
 * file in {@code src/test/resources/cases}, or one more item in one; each names its source.
 */
class CasesTest {
  private static final Path RESOURCES =
      Path.of(System.getProperty("basedir", System.getProperty("user.dir")))
          .resolve("src/test/resources");

  @TestFactory
  Stream<DynamicContainer> every_case_comes_out_as_its_source_says() {
    return files().stream()
        .map(
            file ->
                DynamicContainer.dynamicContainer(
                    file.getFileName().toString(), Case.of(file).stream().map(CasesTest::test)));
  }

  @Test
  void no_two_cases_have_the_same_name() {
    assertThat(files()).isNotEmpty();
    assertThat(files().stream().flatMap(file -> Case.of(file).stream().map(Case::name)))
        .doesNotHaveDuplicates();
  }

  private static DynamicTest test(Case example) {
    return DynamicTest.dynamicTest(example.name(), () -> run(example));
  }

  private static void run(Case example) {
    CaseKitchen.Outcome outcome = CaseKitchen.of(example, RESOURCES).outcome();
    assertThat(CaseCheck.differences(example, outcome))
        .describedAs("%s%nsource: %s", example.name(), example.source())
        .isEmpty();
  }

  private static List<Path> files() {
    try (Stream<Path> files = Files.list(RESOURCES.resolve("cases"))) {
      return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
