package chillwright.core.keeping;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Until when a lot keeps. Safety dates and quality dates are never mixed: past {@code
 * bestQualityBy} or {@code qualityLimit} food that stayed frozen is not unsafe.
 *
 * @param dateMarkLastDay last day of the date mark; empty while frozen, since it is known only from
 *     the day of thawing
 * @param lastDayMissed the last day that had passed before the food was frozen: it is discarded,
 *     and thawing gives it no other
 * @param daysLeftWhenThawed while frozen: days of the date mark it will have, the thawing day
 *     included; 0 means use at once, or discard where a last day was missed
 * @param chilledLastDay last day in a home refrigerator, where the rule set uses the home chart
 * @param discardAt end of time as a public health control
 * @param bestQualityBy first freezing plus the shorter quality time, in calendar months
 * @param qualityLimit first freezing plus the longer quality time
 * @param governs which of these counts now
 * @param because the arithmetic, line by line, such as "2 days used + 5 left"
 */
public record Keeping(
    Optional<LocalDate> dateMarkLastDay,
    Optional<LocalDate> lastDayMissed,
    OptionalInt daysLeftWhenThawed,
    Optional<LocalDate> chilledLastDay,
    Optional<Instant> discardAt,
    Optional<LocalDate> bestQualityBy,
    Optional<LocalDate> qualityLimit,
    Optional<Governs> governs,
    List<String> because) {
  /** Which date governs, by the name it has in answers. */
  public enum Governs {
    DATE_MARK_LAST_DAY("dateMarkLastDay"),
    LAST_DAY_MISSED("lastDayMissed"),
    DAYS_LEFT_WHEN_THAWED("daysLeftWhenThawed"),
    CHILLED_LAST_DAY("chilledLastDay"),
    DISCARD_AT("discardAt"),
    BEST_QUALITY_BY("bestQualityBy"),
    QUALITY_LIMIT("qualityLimit");

    private final String key;

    Governs(String key) {
      this.key = key;
    }

    public String key() {
      return key;
    }

    /** Whether it tells of quality only. */
    public boolean isQuality() {
      return this == BEST_QUALITY_BY || this == QUALITY_LIMIT;
    }
  }

  /** No date at all. */
  public static final Keeping NONE =
      new Keeping(
          Optional.empty(),
          Optional.empty(),
          OptionalInt.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of());

  public Keeping {
    because = List.copyOf(because);
  }

  Keeping governedBy(Optional<Governs> governing) {
    return new Keeping(
        dateMarkLastDay,
        lastDayMissed,
        daysLeftWhenThawed,
        chilledLastDay,
        discardAt,
        bestQualityBy,
        qualityLimit,
        governing,
        because);
  }

  /**
   * The same without what holds only while it stays frozen, for food that was taken out. What is
   * made of it still keeps to the dates that are left out here.
   */
  public Keeping outOfFreezer() {
    return new Keeping(
        dateMarkLastDay,
        lastDayMissed,
        daysLeftWhenThawed,
        chilledLastDay,
        discardAt,
        Optional.empty(),
        Optional.empty(),
        governs.filter(which -> !which.isQuality()),
        because.stream().filter(line -> !Reasons.isOfFreezer(line)).toList());
  }

  /** Of food frozen on a day that nobody named: no date, only the days it has once thawed. */
  public Keeping undated() {
    return new Keeping(
        Optional.empty(),
        Optional.empty(),
        daysLeftWhenThawed,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        because.stream().filter(line -> line.startsWith("figures: ")).toList());
  }

  /** The same with a further line of why. */
  public Keeping because(String line) {
    List<String> lines = new ArrayList<>(because);
    lines.add(line);
    return becauseOf(lines);
  }

  /** The same with other lines of why. */
  public Keeping becauseOf(List<String> lines) {
    return new Keeping(
        dateMarkLastDay,
        lastDayMissed,
        daysLeftWhenThawed,
        chilledLastDay,
        discardAt,
        bestQualityBy,
        qualityLimit,
        governs,
        lines);
  }
}
