package chillwright.rulebook;

import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import chillwright.core.log.Problem;
import chillwright.core.log.Untold;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Reads files of storage categories. A later shelf replaces whole categories of an earlier one. */
final class KeepingFiles {
  private final Faults faults;
  private final Map<String, Category> categories = new LinkedHashMap<>();
  private final Map<String, JsonNode> written = new LinkedHashMap<>();
  private final List<Untold> untold = new ArrayList<>();

  KeepingFiles(Faults faults) {
    this.faults = faults;
  }

  /** Reads the files of one shelf, in which a key stands once. */
  void read(List<TextFile> files) {
    Set<String> seen = new HashSet<>();
    for (TextFile file : files) {
      YamlText.read(file, faults).ifPresent(document -> read(document, seen));
    }
  }

  private void read(Document document, Set<String> seen) {
    faults.addAll(SchemaCheck.KEEPING.faults(document));
    Spot list = Spot.whole(document).at("categories");
    for (String key : list.keys()) {
      Spot place = list.at(key);
      if (!seen.add(key)) {
        faults.add(twice(key, place));
      }
      checkRange(place.at("fridge-days"));
      checkRange(place.at("thawed-days"));
      checkRange(place.at("freezer-months"));
      if (!faults.anyIn(place)) {
        categories.put(key, category(key, place));
        written.put(key, place.node());
      }
    }
    readUntold(Spot.whole(document).at("untold"));
  }

  private void readUntold(Spot list) {
    for (String key : list.keys()) {
      Spot place = list.at(key);
      if (!faults.anyIn(place)) {
        untold.add(new Untold(texts(place.at("words")), place.text("says")));
      }
    }
  }

  private static Problem twice(String key, Spot place) {
    String says = key + " is in another file of this folder too. Take one of the two out.";
    return place.fault("id-twice", "a key once in a folder", says);
  }

  private void checkRange(Spot range) {
    if (!faults.anyIn(range)
        && range.has("min")
        && range.has("max")
        && range.at("min").node().intValue() > range.at("max").node().intValue()) {
      String says = "min is larger than max. Write the smaller figure as min.";
      faults.add(range.fault("upside-down", "min no larger than max", says));
    }
  }

  private static Category category(String key, Spot place) {
    return new Category(
        key,
        place.text("title"),
        range(place.at("fridge-days")),
        range(place.at("thawed-days")),
        range(place.at("freezer-months")),
        Category.Freezes.valueOf(place.text("freezes").toUpperCase(Locale.ROOT)),
        isTrue(place, "tcs"),
        isTrue(place, "ready-to-eat"),
        isTrue(place, "days-are-quality"),
        isTrue(place, "discard-when-soft"),
        isTrue(place, "thaws-for-days"),
        place.text("source"),
        place.text("status"),
        place.has("note") ? Optional.of(place.text("note")) : Optional.empty(),
        texts(place.at("also")),
        texts(place.at("stands-in-for")));
  }

  private static boolean isTrue(Spot place, String key) {
    return place.at(key).node().booleanValue();
  }

  private static List<String> texts(Spot list) {
    List<String> texts = new ArrayList<>();
    list.node().forEach(text -> texts.add(text.textValue()));
    return texts;
  }

  private static Category.Range range(Spot range) {
    return new Category.Range(count(range.at("min")), count(range.at("max")));
  }

  private static OptionalInt count(Spot count) {
    return count.node().isNumber() ? OptionalInt.of(count.node().intValue()) : OptionalInt.empty();
  }

  /** Changes with anything that a category says. */
  String fingerprint() {
    Fingerprint mark = new Fingerprint();
    written.forEach((key, node) -> mark.add(key).add(node));
    return mark.text();
  }

  KeepingList keepingList() {
    return new KeepingList(List.copyOf(categories.values()), untold);
  }
}
