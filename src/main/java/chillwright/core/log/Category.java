package chillwright.core.log;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A storage category of the keeping list: whether date and temperature limits bear on such food,
 * how long it keeps in a home refrigerator and how long it stays at its best in a freezer at 0 °F.
 *
 * @param key as written in log files, such as "soup_or_stew"
 * @param fridge days counted from the day after the making day: min "best used", max "discard"
 * @param thawed days after thawing in a refrigerator, where they are printed apart; else none
 * @param freezer calendar months of quality from the first freezing
 * @param tcs needs time/temperature control for safety
 * @param readyToEat eaten without further cooking for safety; date marks judge only such food
 * @param daysAreQuality the refrigerator days tell quality only and never make a lot out
 * @param discardWhenSoft such food is discarded once it softened, at whatever temperature
 * @param thawsForDays a large piece, so that being taken out is not yet being thawed
 * @param source who printed the figures, in words a reader can follow
 * @param status how the figures were come by: verified, reported, memory, practice
 * @param note a caution shown when the key is chosen
 * @param also other words people use for such food, in lower case; they lead to the key and are
 *     none
 * @param standsInFor those of them for which no figure was found, told here for want of a kind
 */
public record Category(
    String key,
    String title,
    Range fridge,
    Range thawed,
    Range freezer,
    Freezes freezes,
    boolean tcs,
    boolean readyToEat,
    boolean daysAreQuality,
    boolean discardWhenSoft,
    boolean thawsForDays,
    String source,
    String status,
    Optional<String> note,
    List<String> also,
    List<String> standsInFor) {
  /** How well such food freezes. */
  public enum Freezes {
    WELL,
    POORLY,
    NO
  }

  /** A printed range; either end may be missing where no figure was printed. */
  public record Range(OptionalInt min, OptionalInt max) {
    public static final Range NONE = new Range(OptionalInt.empty(), OptionalInt.empty());

    public Range {
      if (min.isPresent() && max.isPresent() && min.getAsInt() > max.getAsInt()) {
        throw new IllegalArgumentException("range upside down: " + min + " to " + max);
      }
    }
  }

  public Category {
    Objects.requireNonNull(key, "key");
    also = List.copyOf(also);
    standsInFor = List.copyOf(standsInFor);
  }

  /** Date marks judge ready-to-eat TCS food only. */
  public boolean isDateMarked() {
    return tcs && readyToEat;
  }

  /** Whether every figure and every limit is the same as of the other. */
  boolean keepsAs(Category other) {
    return fridge.equals(other.fridge)
        && thawed.equals(other.thawed)
        && freezer.equals(other.freezer)
        && freezes == other.freezes
        && tcs == other.tcs
        && readyToEat == other.readyToEat
        && daysAreQuality == other.daysAreQuality
        && discardWhenSoft == other.discardWhenSoft
        && thawsForDays == other.thawsForDays;
  }

  /** The same with the days of food that thawed as its refrigerator days. */
  public Category onceThawed() {
    Range days = thawed.max().isPresent() ? thawed : fridge;
    return new Category(
        key,
        title,
        days,
        thawed,
        freezer,
        freezes,
        tcs,
        readyToEat,
        daysAreQuality,
        discardWhenSoft,
        thawsForDays,
        source,
        status,
        note,
        also,
        standsInFor);
  }
}
