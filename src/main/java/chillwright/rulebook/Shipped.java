package chillwright.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * The files in this jar. A folder inside a jar cannot be listed plainly, so {@code rules/index.txt}
 * names the rule sets and their topics; a test holds it against the folders.
 */
final class Shipped {
  private static final List<String> HANDBOOK =
      List.of("foods", "surfaces", "pans", "measures", "figures", "lives", "outage-foods");

  private Shipped() {}

  static Shelf shelf() {
    List<RuleFolder> folders = index().stream().map(Shipped::folder).toList();
    return new Shelf(folders, List.of(file("keeping/categories.yaml")));
  }

  /** The tables that questions ahead are worked out with. */
  static List<TextFile> handbook() {
    return HANDBOOK.stream().map(name -> file("handbook/" + name + ".yaml")).toList();
  }

  /** Every rule file, the storage categories and the handbook. */
  static List<TextFile> files() {
    Shelf shelf = shelf();
    List<TextFile> files = new ArrayList<>(shelf.keeping());
    files.addAll(handbook());
    shelf.folders().forEach(folder -> files.addAll(folder.files()));
    return files;
  }

  /** One line a rule set: its id, then its topics. */
  private static List<String> index() {
    return text("rules/index.txt")
        .lines()
        .map(String::strip)
        .filter(line -> !line.isEmpty() && !line.startsWith("#"))
        .toList();
  }

  private static RuleFolder folder(String line) {
    String[] words = line.split("\\s+", -1);
    String name = "rules/" + words[0];
    List<TextFile> files = new ArrayList<>();
    files.add(file(name + "/ruleset.yaml"));
    for (int i = 1; i < words.length; i++) {
      files.add(file(name + "/" + words[i] + ".yaml"));
    }
    return new RuleFolder(words[0], name, files);
  }

  private static TextFile file(String name) {
    return new TextFile(name, text(name), true);
  }

  /**
   * A resource of this jar as text.
   *
   * @throws IllegalStateException if there is none, since the jar was then built wrongly
   */
  static String text(String name) {
    try (InputStream in = Shipped.class.getResourceAsStream("/" + name)) {
      if (in == null) {
        throw new IllegalStateException("missing from the jar: " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
