package chillwright.rulebook;

import chillwright.core.log.Problem;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A kitchen's own folder: one folder a rule set, named by its id, and {@code keeping} for storage
 * categories. A YAML file that stands elsewhere is a fault, since a rule nobody reads is worse than
 * none.
 */
final class OutsideFolder {
  private static final String KEEPING = "keeping";

  /** Deep enough to find a file that was put one folder too deep. */
  private static final int DEPTH = 4;

  private final Path dir;
  private final Faults faults;
  private final Map<String, List<TextFile>> filesByFolder = new LinkedHashMap<>();

  private OutsideFolder(Path dir, Faults faults) {
    this.dir = dir;
    this.faults = faults;
  }

  static Shelf shelf(Path dir, Faults faults) {
    return new OutsideFolder(dir, faults).read();
  }

  private Shelf read() {
    List<Path> files = yamlFiles();
    if (files.isEmpty()) {
      String says =
          "there are no rule files here. Name the folder that holds a folder for each rule set, or"
              + " one named keeping.";
      faults.add(
          Spot.whole(dir.toString(), "").fault("no-rule-files", "a folder of rule sets", says));
    }
    files.forEach(this::add);
    List<TextFile> keeping = Optional.ofNullable(filesByFolder.remove(KEEPING)).orElse(List.of());
    List<RuleFolder> folders =
        filesByFolder.entrySet().stream()
            .map(e -> new RuleFolder(e.getKey(), dir.resolve(e.getKey()).toString(), e.getValue()))
            .toList();
    return new Shelf(folders, keeping);
  }

  private List<Path> yamlFiles() {
    if (!Files.isDirectory(dir)) {
      return List.of();
    }
    try (Stream<Path> files = Files.walk(dir, DEPTH)) {
      return files.filter(OutsideFolder::isYaml).filter(this::isInSight).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isYaml(Path file) {
    String name = file.getFileName().toString();
    return Files.isRegularFile(file) && (name.endsWith(".yaml") || name.endsWith(".yml"));
  }

  /** Hidden files and folders are not ours. */
  private boolean isInSight(Path file) {
    for (Path part : dir.relativize(file)) {
      if (part.toString().startsWith(".")) {
        return false;
      }
    }
    return true;
  }

  private void add(Path file) {
    Path inside = dir.relativize(file);
    if (inside.getNameCount() != 2 || !file.toString().endsWith(".yaml")) {
      faults.add(misplaced(file, inside));
      return;
    }
    text(file)
        .ifPresent(
            text ->
                filesByFolder
                    .computeIfAbsent(inside.getName(0).toString(), folder -> new ArrayList<>())
                    .add(new TextFile(file.toString(), text, false)));
  }

  private Problem misplaced(Path file, Path inside) {
    String says =
        "this file would not be read. Move it into a folder named by its rule set's id, directly"
            + " below %s, with a name that ends in .yaml.";
    return Spot.whole(file.toString(), inside.toString())
        .fault(
            "misplaced-file",
            "<rule set id>/<topic>.yaml, or keeping/<name>.yaml",
            says.formatted(dir));
  }

  private Optional<String> text(Path file) {
    try {
      return Optional.of(Files.readString(file));
    } catch (CharacterCodingException e) {
      String says = "this is not UTF-8 text. Save it as UTF-8.";
      faults.add(Spot.whole(file.toString(), "").fault("not-utf-8", "UTF-8", says));
      return Optional.empty();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
