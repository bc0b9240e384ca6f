package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** What the README prints under a command is what the command prints. */
class ReadmeTest {
  @TempDir private Path folder;

  /** A command of the README with the block printed under it. */
  private record Shown(List<String> command, String output) {}

  @TestFactory
  Stream<DynamicTest> commands_print_what_the_readme_shows() throws IOException {
    List<Shown> all = shown(Files.readAllLines(Path.of("README.md")));
    assertThat(all).hasSizeGreaterThanOrEqualTo(3);
    return all.stream()
        .map(
            one ->
                DynamicTest.dynamicTest(
                    String.join(" ", one.command()),
                    () -> assertThat(printed(one.command())).contains(one.output())));
  }

  private static String printed(List<String> command) {
    StringWriter out = new StringWriter();
    Console console = new Console(new PrintWriter(out), new PrintWriter(new StringWriter()), false);
    Main.commandLine(Clock.systemUTC(), console)
        .execute(command.subList(1, command.size()).toArray(String[]::new));
    return out.toString();
  }

  /** Commands in a block that is followed at once by a block of output. */
  private List<Shown> shown(List<String> lines) throws IOException {
    List<Shown> found = new ArrayList<>();
    List<List<String>> blocks = new ArrayList<>();
    List<Integer> starts = new ArrayList<>();
    List<String> block = null;
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).startsWith("```")) {
        if (block == null) {
          block = new ArrayList<>();
          starts.add(i);
        } else {
          blocks.add(block);
          block = null;
        }
      } else if (block != null) {
        block.add(lines.get(i));
      }
    }
    for (int i = 0; i + 1 < blocks.size(); i++) {
      boolean follows = starts.get(i + 1) == starts.get(i) + blocks.get(i).size() + 2;
      String command = follows ? command(blocks.get(i)) : "";
      if (command.startsWith("chillwright ")) {
        found.add(new Shown(List.of(command.split(" ")), String.join("\n", blocks.get(i + 1))));
      }
    }
    return found;
  }

  /** The last line of a block; a file written in the block is written to the test's folder. */
  private String command(List<String> block) throws IOException {
    String last = block.get(block.size() - 1);
    if (block.get(0).startsWith("cat > ")) {
      String name = block.get(0).split(" ", 4)[2];
      int end = block.indexOf("END");
      Path file = folder.resolve(name);
      Files.write(file, block.subList(1, end));
      return last.replace(name, file.toString());
    }
    return last;
  }
}
