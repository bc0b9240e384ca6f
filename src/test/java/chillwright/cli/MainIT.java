package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar as a user starts it, in a process of its own. */
class MainIT {
  @TempDir private Path folder;

  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin/java").toString();

  /** How a process ended and what it wrote, both streams together. */
  private record Ended(int code, String wrote) {}

  @Test
  void version_prints_the_version_of_the_build() throws Exception {
    Ended ended = chillwright("--version");
    assertThat(ended.wrote().strip())
        .isEqualTo("chillwright " + System.getProperty("chillwright.version"));
    assertThat(ended.code()).isZero();
  }

  @Test
  void help_says_what_it_is_and_who_decides() throws Exception {
    Ended ended = chillwright("--help");
    // The help is wrapped to the width of the terminal.
    assertThat(ended.wrote().replaceAll("\\s+", " "))
        .contains("Usage: chillwright", "the local health authority decides");
    assertThat(ended.code()).isZero();
  }

  @Test
  void an_unknown_option_is_a_usage_fault() throws Exception {
    Ended ended = chillwright("--no-such-option");
    assertThat(ended.wrote()).contains("--no-such-option");
    assertThat(ended.code()).isEqualTo(2);
  }

  /** The jar leaves out parts of libraries; these commands need what it keeps of them. */
  @Test
  void plans_forecasts_and_questions_ahead_work_from_the_jar() throws Exception {
    Ended plan =
        chillwright(
            "plan", "sample-logs/plans/harvest-supper.yaml", "--at", "2026-11-26T08:00:00-07:00");
    assertThat(plan.wrote()).contains("There is a plan.");
    assertThat(plan.code()).isZero();
    Path log = folder.resolve("soup.csv");
    Files.writeString(
        log,
        """
        lot,food,category,when,entry,temperature,air
        LS-9,Leek soup,soup_or_stew,2026-11-24T10:00:00-07:00,cooked,135F,38F
        LS-9,,,2026-11-24T10:30:00-07:00,reading,120F,
        LS-9,,,2026-11-24T11:00:00-07:00,reading,107F,
        """);
    assertThat(chillwright("check", log.toString(), "--at", "2026-11-24T11:02:00-07:00").wrote())
        .contains("Expected to reach 70 °F");
    Ended ahead =
        chillwright("ahead", "outage", "--appliance", "full-freezer", "--without-power=6h");
    assertThat(ahead.code()).as(ahead.wrote()).isZero();
  }

  private static Ended chillwright(String... words) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(List.of(JAVA, "-jar", System.getProperty("chillwright.jar")));
    command.addAll(List.of(words));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String wrote = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), wrote);
  }
}
