package chillwright.service;

import java.util.List;

/** The kinds of things that a kitchen describes ahead of any log, with the cells of each. */
public enum CardKind {
  FOODS(
      "name",
      "category",
      "portions",
      "container",
      "place",
      "reheating",
      "thawing",
      "roomDays",
      "allergens",
      "otherAllergens",
      "ingredients"),
  PLACES("name", "kind", "ownLimit", "rounds"),
  PEOPLE("initials", "name"),
  PROBES("name", "scales", "note");

  private final List<String> cells;

  CardKind(String... cells) {
    this.cells = List.of(cells);
  }

  /** Their names in requests and files; the first one names the thing. */
  public List<String> cells() {
    return cells;
  }
}
