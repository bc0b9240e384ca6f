package chillwright.rulebook;

import chillwright.core.log.KeepingList;
import chillwright.core.log.Problem;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** All rule sets and the keeping list, read and checked once. Immutable. */
public final class RuleLibrary {
  private final Map<String, RuleBook> books = new LinkedHashMap<>();
  private final KeepingList keepingList;
  private final String keepingMark;

  private RuleLibrary(List<RuleBook> books, KeepingFiles keeping) {
    books.forEach(book -> this.books.put(book.id(), book));
    this.keepingList = keeping.keepingList();
    this.keepingMark = keeping.fingerprint();
  }

  /**
   * Reads what this jar holds, and on top of it a kitchen's own folder.
   *
   * @param outside a folder with one folder a rule set, and {@code keeping} for storage categories
   * @throws BrokenRules if any file has a fault: all faults of all files, and nothing is loaded
   * @throws java.io.UncheckedIOException if a file cannot be read at all
   */
  public static RuleLibrary load(Optional<Path> outside) throws BrokenRules {
    Faults faults = new Faults();
    List<Shelf> shelves = new ArrayList<>(List.of(Shipped.shelf()));
    outside.ifPresent(dir -> shelves.add(OutsideFolder.shelf(dir, faults)));
    List<RuleSetReader> readers = readers(sets(shelves, faults), faults);
    KeepingFiles keeping = new KeepingFiles(faults);
    shelves.forEach(shelf -> keeping.read(shelf.keeping()));
    faults.throwIfAny();
    return new RuleLibrary(readers.stream().map(RuleSetReader::book).toList(), keeping);
  }

  /** The rule sets by id, in the order of the shelves. */
  private static Map<String, RuleSetFiles> sets(List<Shelf> shelves, Faults faults) {
    Map<String, RuleSetFiles> sets = new LinkedHashMap<>();
    for (Shelf shelf : shelves) {
      for (RuleFolder folder : shelf.folders()) {
        if (sets.containsKey(folder.id())) {
          faults.add(shippedAlready(folder));
        } else {
          sets.put(folder.id(), RuleSetFiles.read(folder, faults));
        }
      }
    }
    return sets;
  }

  private static Problem shippedAlready(RuleFolder folder) {
    String says =
        "there is a rule set %s already, and it cannot be replaced. Name the folder otherwise and"
            + " write extends: %s to change single limits.";
    return Spot.whole(folder.name(), folder.id())
        .fault("id-twice", "an id that is not taken", says.formatted(folder.id(), folder.id()));
  }

  private static List<RuleSetReader> readers(Map<String, RuleSetFiles> sets, Faults faults) {
    Lineage lineage = new Lineage(sets);
    lineage.check(faults);
    Map<String, RuleSetReader> readers = new LinkedHashMap<>();
    for (RuleSetFiles files : lineage.basesFirst()) {
      Optional<RuleSetReader> base = files.extendsAt().map(place -> readers.get(place.text()));
      RuleSetReader reader = new RuleSetReader(files, base, faults);
      reader.read();
      readers.put(files.id(), reader);
    }
    return sets.keySet().stream().map(readers::get).toList();
  }

  /** All rule sets, those of this jar first. */
  public List<RuleBook> ruleBooks() {
    return List.copyOf(books.values());
  }

  public Optional<RuleBook> ruleBook(String id) {
    return Optional.ofNullable(books.get(id));
  }

  /** Names what a lot is judged by under that set: its rules, the categories and this program. */
  public String figures(RuleBook book) {
    return book.version() + ", categories " + keepingMark + ", program " + JudgingMark.ofThisJar();
  }

  /** The storage categories, local ones in place of shipped ones of the same key. */
  public KeepingList keepingList() {
    return keepingList;
  }
}
