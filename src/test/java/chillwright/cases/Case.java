package chillwright.cases;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * One case: a log, the moment it is judged as of, and what must come out.
 *
 * @param source who says so: a clause, a published example, or a convention of our own
 * @param rules folder of local rule sets below the test resources
 * @param log the text of a log file
 * @param expect one item a lot
 * @param problems faults the log must have, by line and column; none if empty
 */
public record Case(
    String name,
    String source,
    String ruleSet,
    Optional<String> rules,
    ZoneId zone,
    Instant at,
    Duration tolerance,
    String log,
    List<Node> expect,
    List<Node> problems) {
  public Case {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(source, "source");
    expect = List.copyOf(expect);
    problems = List.copyOf(problems);
  }

  /** The cases of a file: one, or the items of its list {@code cases}. */
  public static List<Case> of(Path file) {
    Node root = Node.of(file.getFileName().toString(), load(file));
    if (root.has("cases")) {
      return root.allow("cases").list("cases").stream().map(Case::of).toList();
    }
    return List.of(of(root));
  }

  private static Object load(Path file) {
    try {
      return new Load(LoadSettings.builder().setLabel(file.toString()).build())
          .loadFromString(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Case of(Node node) {
    node.allow(
        "name",
        "source",
        "rule-set",
        "rules",
        "zone",
        "at",
        "tolerance",
        "log",
        "expect",
        "problems");
    return new Case(
        node.text("name"),
        node.text("source"),
        node.optionalText("rule-set").orElse("us-food-code-2022"),
        node.optionalText("rules"),
        ZoneId.of(node.optionalText("zone").orElse("UTC")),
        Instant.parse(node.text("at")),
        Duration.parse(node.optionalText("tolerance").orElse("PT0S")),
        node.text("log"),
        node.list("expect"),
        node.has("problems") ? node.list("problems") : List.of());
  }
}
