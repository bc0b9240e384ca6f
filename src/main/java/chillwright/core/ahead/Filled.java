package chillwright.core.ahead;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Objects;

/**
 * A figure of a sentence with its name, by which a program finds it.
 *
 * @param name such as "longest"
 */
public record Filled(String name, Value value) {
  /** What is filled in. */
  public sealed interface Value {}

  /** An amount in one unit; how it is shown is not its matter. */
  public record Amount(double amount, Unit unit) implements Value {
    public Amount {
      Objects.requireNonNull(unit, "unit");
    }
  }

  /** Words as they stand in a table or a rule. */
  public record Word(String text) implements Value {
    public Word {
      Objects.requireNonNull(text, "text");
    }
  }

  /** A calendar day. */
  public record Day(LocalDate day) implements Value {
    public Day {
      Objects.requireNonNull(day, "day");
    }
  }

  /** A moment with what the clock there showed. */
  public record Moment(OffsetDateTime at) implements Value {
    public Moment {
      Objects.requireNonNull(at, "at");
    }
  }

  /** The units in which amounts are told, the same in every answer. */
  public enum Unit {
    CELSIUS,
    HOURS,
    KILOGRAMS,
    LITRES,
    MILLIMETRES,
    DAYS,
    PERCENT,
    COUNT
  }

  public Filled {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(value, "value");
  }

  public static Filled hours(String name, double hours) {
    return amount(name, hours, Unit.HOURS);
  }

  public static Filled count(String name, long count) {
    return amount(name, (double) count, Unit.COUNT);
  }

  public static Filled amount(String name, double amount, Unit unit) {
    return new Filled(name, new Amount(amount, unit));
  }

  public static Filled word(String name, String text) {
    return new Filled(name, new Word(text));
  }

  public static Filled moment(String name, OffsetDateTime at) {
    return new Filled(name, new Moment(at));
  }

  public static Filled day(String name, LocalDate day) {
    return new Filled(name, new Day(day));
  }
}
