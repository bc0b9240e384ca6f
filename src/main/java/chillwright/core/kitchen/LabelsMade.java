package chillwright.core.kitchen;

import static java.util.stream.Collectors.toSet;

import chillwright.core.kitchen.AllergenNaming.Names;
import chillwright.core.log.Folded;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Labels of a lot that were made as one document; nobody knows what came out on paper.
 *
 * @param labels how many of that lot
 * @param leaves whether for somebody who buys or gets it; else for the kitchen's own freezer
 * @param allergens those of the law that each of them names
 * @param others further ones that they name, in words, a line each
 */
public record LabelsMade(
    Instant at, int labels, boolean leaves, List<Allergen> allergens, Optional<String> others) {
  /** So many documents are kept of a lot, the newest. */
  public static final int MOST = 300;

  /** More words are cut off: what is cut off then stands as not named. */
  private static final int LONGEST_OTHERS = 2_000;

  public LabelsMade {
    Objects.requireNonNull(at, "at");
    if (labels < 1) {
      throw new IllegalArgumentException("a document has a label, not " + labels);
    }
    allergens = List.copyOf(allergens);
    Objects.requireNonNull(others, "others");
  }

  /** Labels that name all that is in a lot, as far as it is on file. */
  public static LabelsMade of(Instant at, int labels, boolean leaves, Contents contents) {
    String others = String.join("\n", contents.otherAllergens());
    return new LabelsMade(
        at,
        labels,
        leaves,
        contents.allergens(),
        Optional.of(others).filter(words -> !words.isBlank()).map(LabelsMade::cut));
  }

  private static String cut(String words) {
    int end = Math.min(words.length(), LONGEST_OTHERS);
    boolean isSplit = end < words.length() && Character.isHighSurrogate(words.charAt(end - 1));
    return words.substring(0, isSplit ? end - 1 : end);
  }

  /** Whether they name what is looked for. */
  public boolean names(Names names) {
    return names.isIn(allergens, others);
  }

  /** Allergens that do not stand on labels. */
  public record Unnamed(List<Allergen> allergens, List<String> others) {
    public Unnamed {
      allergens = List.copyOf(allergens);
      others = List.copyOf(others);
    }

    public boolean isNothing() {
      return allergens.isEmpty() && others.isEmpty();
    }
  }

  /** What labels made now would name, and these do not. */
  public Unnamed unnamed(Contents contents) {
    LabelsMade now = of(at, labels, leaves, contents);
    List<Allergen> missing = new ArrayList<>(now.allergens);
    missing.removeAll(allergens);
    Set<String> named = others.stream().flatMap(FoodInLot::each).map(Folded::of).collect(toSet());
    return new Unnamed(
        missing,
        now.others.stream()
            .flatMap(FoodInLot::each)
            .filter(word -> !named.contains(Folded.of(word)))
            .toList());
  }

  /**
   * Those that boxes handed on at a moment bear, as far as that is on record: the last made until
   * then. Where some were made for who buys or gets it, labels for the own freezer are no answer.
   *
   * @param made of a lot, the earliest first
   */
  public static Optional<LabelsMade> onBoxes(List<LabelsMade> made, Instant moment) {
    List<LabelsMade> until = made.stream().filter(one -> !one.at().isAfter(moment)).toList();
    boolean isSold = until.stream().anyMatch(LabelsMade::leaves);
    return until.stream().filter(one -> one.leaves() || !isSold).reduce((earlier, later) -> later);
  }
}
