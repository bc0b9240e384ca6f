package chillwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The launcher beside the jar, with and without an archive of classes that fits. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "this launcher is a script for POSIX shells")
class LauncherIT {
  private static final Path JAR = Path.of(System.getProperty("chillwright.jar"));
  private static final Path LAUNCHER = JAR.resolveSibling("chillwright");
  private static final Path ARCHIVE = JAR.resolveSibling("chillwright.jsa");
  private static final String JAVA_OPTIONS = "CHILLWRIGHT_JAVA_OPTIONS";

  /** Cooked at noon and read once, at 80 °F, four hours later: the first stage was missed. */
  private static final String MISSED =
      """
      lot,food,category,when,entry,temperature
      S-1,Soup,soup_or_stew,2026-03-03T12:00:00Z,cooked,170F
      S-1,,,2026-03-03T12:05:00Z,reading,135F
      S-1,,,2026-03-03T16:05:00Z,reading,80F
      """;

  @TempDir private Path folder;
  private Path log;

  /** How a process ended, and what it wrote to each stream. */
  private record Ended(int code, String result, String words) {}

  @BeforeEach
  void write_the_log() throws IOException {
    log = Files.writeString(folder.resolve("soup.csv"), MISSED);
  }

  @Test
  void it_says_what_the_jar_says_and_ends_as_it_does() throws Exception {
    Ended jar = run(Map.of(), List.of(java(), "-jar", JAR.toString()));
    assertThat(jar.code()).isEqualTo(1);
    assertThat(jar.result()).contains("cooling.cooked.first-stage");
    assertThat(launch(LAUNCHER)).isEqualTo(jar);
  }

  @Test
  void the_archive_that_the_build_made_fits() throws Exception {
    assumeThat(ARCHIVE).exists();
    // With this option Java refuses to start where it does not.
    Ended ended = run(Map.of(JAVA_OPTIONS, "-Xshare:on"), List.of(LAUNCHER.toString()));
    assertThat(ended).isEqualTo(launch(LAUNCHER));
  }

  @Test
  void an_archive_that_is_damaged_changes_nothing() throws Exception {
    Path moved = moved();
    Files.writeString(moved.resolveSibling("chillwright.jsa"), "no archive at all");
    assertThat(launch(moved)).isEqualTo(launch(LAUNCHER));
  }

  @Test
  void an_archive_that_is_cut_short_changes_nothing() throws Exception {
    assumeThat(ARCHIVE).exists();
    Path moved = moved();
    byte[] whole = Files.readAllBytes(ARCHIVE);
    Files.write(moved.resolveSibling("chillwright.jsa"), new byte[0]);
    assertThat(launch(moved)).isEqualTo(launch(LAUNCHER));
    Files.write(moved.resolveSibling("chillwright.jsa"), Arrays.copyOf(whole, 1 << 20));
    assertThat(launch(moved)).isEqualTo(launch(LAUNCHER));
  }

  @Test
  void moved_to_another_folder_and_called_through_a_link_it_says_the_same() throws Exception {
    Path moved = moved();
    if (Files.exists(ARCHIVE)) {
      Files.copy(ARCHIVE, moved.resolveSibling("chillwright.jsa"));
    }
    Path link = Files.createSymbolicLink(folder.resolve("cw"), Path.of("my tools/chillwright"));
    assertThat(launch(link)).isEqualTo(launch(LAUNCHER));
  }

  @Test
  void options_of_the_user_reach_java() throws Exception {
    Ended ended = run(Map.of(JAVA_OPTIONS, "-no-such-option"), List.of(LAUNCHER.toString()));
    assertThat(ended.code()).isNotZero();
    assertThat(ended.words()).contains("-no-such-option");
  }

  @Test
  void without_java_it_says_what_is_missing() throws Exception {
    Map<String, String> nowhere = Map.of("JAVA_HOME", "", "PATH", folder.toString());
    Ended ended = run(nowhere, List.of("/bin/sh", LAUNCHER.toString()));
    assertThat(ended.code()).isEqualTo(2);
    assertThat(ended.words()).contains("Java 17");
  }

  private Path moved() throws IOException {
    Path home = Files.createDirectory(folder.resolve("my tools"));
    Files.copy(JAR, home.resolve("chillwright.jar"));
    Path moved = home.resolve("chillwright");
    Files.copy(LAUNCHER, moved);
    assertThat(moved.toFile().setExecutable(true)).isTrue();
    return moved;
  }

  private static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  private Ended launch(Path launcher) throws IOException, InterruptedException {
    return run(Map.of(), List.of(launcher.toString()));
  }

  /** Checks the log with that program, by the Java that runs this test. */
  private Ended run(Map<String, String> settings, List<String> program)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(program);
    command.addAll(List.of("check", log.toString(), "--zone", "UTC"));
    command.addAll(List.of("--at", "2026-03-03T16:10:00Z"));
    Path words = Files.createTempFile(folder, "words", ".txt");
    ProcessBuilder builder = new ProcessBuilder(command).redirectError(words.toFile());
    builder.environment().remove(JAVA_OPTIONS);
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    builder.environment().putAll(settings);
    Process process = builder.start();
    String result = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Ended(process.waitFor(), result, Files.readString(words));
  }
}
