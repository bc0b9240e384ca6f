package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The program as a user has it: the launcher that the build made, else the jar. */
final class Program {
  private final Path jar;
  private final Path launcher;

  /** Takes the folder that the build wrote to. */
  Program(Path built) {
    this.jar = built.resolve("chillwright.jar");
    this.launcher = built.resolve("chillwright");
  }

  static String java() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  List<String> command(String... words) {
    List<String> start =
        Files.isExecutable(launcher) && Files.isRegularFile(launcher)
            ? List.of(launcher.toString())
            : List.of(java(), "-jar", jar.toString());
    return with(start, words);
  }

  /** The bare jar on a machine that shares no classes between processes. */
  List<String> unshared(String... words) {
    return with(List.of(java(), "-Xshare:off", "-jar", jar.toString()), words);
  }

  private static List<String> with(List<String> start, String... words) {
    List<String> command = new ArrayList<>(start);
    command.addAll(List.of(words));
    return command;
  }

  String startedAs() {
    return Files.isExecutable(launcher) && Files.isRegularFile(launcher) ? "launcher" : "java -jar";
  }

  long jarBytes() throws IOException {
    return Files.size(jar);
  }
}
