package chillwright.paper;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a label says of the food itself, as the kitchen worded it.
 *
 * @param gap that some allergens are not on file, in words; blank where all are. Without it a label
 *     could be read as naming all
 * @param allergens printed bold after "contains"
 * @param ingredients in the order of their weight, the heaviest first
 * @param handling how the food is kept and made ready
 * @param kitchen its name; empty where it has given none
 * @param statement printed on every label of the kitchen, word for word
 */
public record LabelText(
    String gap,
    List<String> allergens,
    List<String> ingredients,
    Handling handling,
    Optional<String> kitchen,
    Optional<String> statement) {
  /**
   * How a food is kept and made ready.
   *
   * @param container what it is put into
   * @param place where it usually goes
   * @param reheating words for whoever reheats it
   * @param thawing words for whoever thaws it
   * @param roomDays days at room temperature of food that needs no cold, a figure of the kitchen's
   */
  public record Handling(
      Optional<String> container,
      Optional<String> place,
      Optional<String> reheating,
      Optional<String> thawing,
      OptionalInt roomDays) {
    /** Nothing is known. */
    public static final Handling NONE =
        new Handling(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty());
  }

  /**
   * What of a lot is in one container.
   *
   * @param portions how many; empty where nobody said
   * @param isWhole whether it is all of the lot
   * @param net its net quantity of contents, as the kitchen words it; empty where nobody said
   * @param leaves whether it leaves the kitchen: whoever has it then needs no place in a freezer,
   *     no page of the kitchen and no room to write, but every ingredient
   * @param posted the day on which it leaves, where somebody said
   */
  public record Inside(
      OptionalInt portions,
      boolean isWhole,
      Optional<String> net,
      boolean leaves,
      Optional<LocalDate> posted) {
    public static final Inside WHOLE =
        new Inside(OptionalInt.empty(), true, Optional.empty(), false, Optional.empty());
    public static final Inside SOME =
        new Inside(OptionalInt.empty(), false, Optional.empty(), false, Optional.empty());

    public Inside {
      Objects.requireNonNull(portions, "portions");
      Objects.requireNonNull(net, "net");
      Objects.requireNonNull(posted, "posted");
    }

    public static Inside of(int portions) {
      return new Inside(OptionalInt.of(portions), false, Optional.empty(), false, Optional.empty());
    }

    /** The same with its net quantity. */
    public Inside with(Optional<String> quantity) {
      return new Inside(portions, isWhole, quantity, leaves, posted);
    }

    /** The same on its way out of the kitchen. */
    public Inside leaving(Optional<LocalDate> day) {
      return new Inside(portions, isWhole, net, true, day);
    }
  }

  public LabelText {
    Objects.requireNonNull(gap, "gap");
    allergens = List.copyOf(allergens);
    ingredients = List.copyOf(ingredients);
    Objects.requireNonNull(handling, "handling");
    Objects.requireNonNull(kitchen, "kitchen");
    Objects.requireNonNull(statement, "statement");
  }
}
