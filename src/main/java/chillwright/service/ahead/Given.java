package chillwright.service.ahead;

import chillwright.core.log.Nearest;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.measure.SaidLength;
import chillwright.core.measure.Temperature;
import chillwright.logfile.Degrees;
import chillwright.logfile.SaidDay;
import chillwright.logfile.SaidTime;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToIntFunction;

/** Reads what was given with a question, and gathers what is wrong with it. */
final class Given {
  private static final int LONGEST_SHOWN = 80;
  private static final String OR = " or ";

  static final String DAY = "a day such as 2026-11-22, 22 Nov 2026 or yesterday";

  private static final String SINCE =
      "since when, such as yesterday 14:00, 6 pm or 18:00, a time that has passed; or how long,"
          + " with its unit, such as 6h, 90 min or 2d";

  private final Map<String, String> values;
  private final List<Problem> problems = new ArrayList<>();

  Given(Map<String, String> values) {
    this.values = Map.copyOf(values);
  }

  /**
   * Goes on only with a sound question.
   *
   * @throws BadQuestion if anything was wrong so far
   */
  void requireFaultless() throws BadQuestion {
    if (!problems.isEmpty()) {
      throw new BadQuestion(problems);
    }
  }

  boolean has(String name) {
    return values.containsKey(name);
  }

  /** Notes a fault of what was given under that name, or left out. */
  void refuse(String name, String code, String allowed, String says) {
    String given = Optional.ofNullable(values.get(name)).orElse("");
    problems.add(new Problem(code, new InField("", name), inPrint(given), allowed, says));
  }

  void missing(String name, String allowed) {
    refuse(name, "missing", allowed, name + " is missing: give " + allowed + ".");
  }

  /** What was given under that name, fit to be shown. */
  String shown(String name) {
    return inPrint(values.getOrDefault(name, ""));
  }

  private static String inPrint(String text) {
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .limit(LONGEST_SHOWN)
        .map(c -> Character.isISOControl(c) || Character.getType(c) == Character.FORMAT ? '?' : c)
        .forEach(shown::appendCodePoint);
    return shown.toString();
  }

  private <T> Optional<T> read(
      String name, String code, String allowed, Function<String, Optional<T>> reader) {
    Optional<String> text = Optional.ofNullable(values.get(name));
    Optional<T> value = text.flatMap(reader);
    if (text.isPresent() && value.isEmpty()) {
      String says = "\"%s\" cannot be read: give %s.".formatted(inPrint(text.get()), allowed);
      refuse(name, code, allowed, says);
    }
    return value;
  }

  /** Millimetres, litres, kilograms or hours. */
  OptionalDouble amount(String name, Measured kind) {
    Optional<String> bare = text(name).filter(kind::isBare);
    if (bare.isPresent()) {
      Measured.WithoutUnit fault = kind.withoutUnit(name);
      String says = fault.asks(inPrint(bare.get())) + " Give " + kind.allowed() + ".";
      refuse(name, fault.code(), kind.allowed(), says);
      return OptionalDouble.empty();
    }
    Optional<Double> amount =
        read(name, kind.code(), kind.allowed(), text -> boxed(kind.read(text)));
    return amount.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }

  private static Optional<Double> boxed(OptionalDouble amount) {
    return amount.isPresent() ? Optional.of(amount.getAsDouble()) : Optional.empty();
  }

  double amount(String name, Measured kind, double otherwise) {
    return amount(name, kind).orElse(otherwise);
  }

  /** An amount that must be there; 1 stands in for it once its fault is noted. */
  double needed(String name, Measured kind) {
    if (!has(name)) {
      missing(name, kind.allowed());
    }
    return amount(name, kind, 1);
  }

  /** Degrees Celsius. */
  OptionalDouble temperature(String name) {
    Optional<Temperature> read =
        read(name, "bad-temperature", Degrees.ALLOWED, text -> Degrees.read(text.strip()));
    return read.map(temperature -> OptionalDouble.of(temperature.celsiusDegrees()))
        .orElseGet(OptionalDouble::empty);
  }

  double temperature(String name, double otherwise) {
    return temperature(name).orElse(otherwise);
  }

  OptionalInt count(String name, int most) {
    return count(name, most, text -> text.matches("[0-9]{1,6}") ? Integer.parseInt(text) : 0);
  }

  /** A count of days, which may be said so: "12 days", "2 weeks". */
  OptionalInt days(String name, int most) {
    return count(name, most, text -> SaidLength.days(text).orElse(0));
  }

  private OptionalInt count(String name, int most, ToIntFunction<String> reader) {
    Optional<Integer> count =
        read(
            name,
            "bad-count",
            "a whole number from 1 to " + most,
            text -> Optional.of(reader.applyAsInt(text)).filter(n -> n >= 1 && n <= most));
    return count.map(OptionalInt::of).orElseGet(OptionalInt::empty);
  }

  /** A plain number with at most two decimals. */
  double number(String name, double least, double most, double otherwise) {
    String allowed = "a number from " + plain(least) + " to " + plain(most);
    return read(
            name,
            "bad-number",
            allowed,
            text ->
                Optional.of(text)
                    .filter(t -> t.matches("[0-9]{1,4}([.][0-9]{1,2})?"))
                    .map(Double::valueOf)
                    .filter(n -> n >= least && n <= most))
        .orElse(otherwise);
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? String.valueOf((long) number) : String.valueOf(number);
  }

  /** A day as people say it; one without its year is the nearest on that side of today. */
  Optional<LocalDate> date(String name, LocalDate today, SaidTime.Toward toward) {
    return read(
        name,
        "bad-date",
        DAY,
        text ->
            SaidDay.read(text, today, toward)
                .filter(day -> day.getYear() >= 1900 && day.getYear() <= 9999));
  }

  /** A moment to come by the kitchen's own clock, to the minute. */
  Optional<LocalDateTime> localTime(String name, LocalDateTime now) {
    String given = text(name).orElse("");
    List<LocalDateTime> times = SaidTime.times(given, now, SaidTime.Toward.AHEAD);
    if (times.size() > 1) {
      twoMeanings(name, "two-moments", new SaidTime.Either(times.get(0), times.get(1)));
      return Optional.empty();
    }
    return read(
        name,
        "bad-time",
        "a day and an hour such as 2026-12-24T18:00, tomorrow 6 pm or 18:00",
        text -> times.stream().findFirst().map(time -> time.truncatedTo(ChronoUnit.MINUTES)));
  }

  private void twoMeanings(String name, String code, SaidTime.Either two) {
    String either = String.join(OR, two.written());
    String says =
        "\"%s\" may be %s: give one of them.".formatted(inPrint(values.get(name)), either);
    if (code.equals("two-times")) {
      says = says.replaceFirst("[.]$", ", or how long with its unit, such as 6h.");
    }
    refuse(name, code, either, says);
  }

  /**
   * Since when something lasts, told by that moment or by a length of time with its unit. A bare
   * "5:30" is a time of day that has passed, and words such as "last night" the earliest hour that
   * they mean; now stands in where it cannot be read.
   */
  OffsetDateTime since(String name, ZonedDateTime asked) {
    if (!has(name)) {
      missing(name, SINCE);
    }
    SaidTime.Read read = SinceWhen.read(text(name).orElse("").strip(), asked);
    if (read instanceof SaidTime.Either two) {
      twoMeanings(name, "two-times", two);
    }
    Optional<Instant> moment =
        read instanceof SaidTime.At at ? Optional.of(at.moment()) : Optional.empty();
    if (moment.isEmpty() && !(read instanceof SaidTime.Either)) {
      read(name, "bad-since", SINCE, text -> Optional.empty());
    }
    return moment.map(at -> at.atZone(asked.getZone())).orElse(asked).toOffsetDateTime();
  }

  /** One of a list by its key; the first stands in for a faulty one. */
  <T> T one(String name, List<T> list, Function<T, String> key, Optional<String> otherwise) {
    List<String> keys = list.stream().map(key).toList();
    String allowed = "one of " + String.join(", ", keys);
    Optional<String> wanted = Optional.ofNullable(values.get(name)).or(() -> otherwise);
    if (wanted.isEmpty()) {
      missing(name, allowed);
      return list.get(0);
    }
    int place = keys.indexOf(wanted.get());
    if (place < 0) {
      String says =
          "There is no %s \"%s\".%s Known: %s."
              .formatted(
                  name,
                  inPrint(wanted.get()),
                  Nearest.question(wanted.get(), keys),
                  String.join(", ", keys));
      refuse(name, "unknown-" + name, allowed, says);
      return list.get(0);
    }
    return list.get(place);
  }

  /** As {@link #one}, where it may be left out. */
  <T> Optional<T> oneIfGiven(String name, List<T> list, Function<T, String> key) {
    return has(name) ? Optional.of(one(name, list, key, Optional.empty())) : Optional.empty();
  }

  /** One of a few words; the first where none is given. */
  String choice(String name, List<String> words) {
    return one(name, words, Function.identity(), Optional.of(words.get(0)));
  }

  /** The raw text, for what only one question reads. */
  Optional<String> text(String name) {
    return Optional.ofNullable(values.get(name));
  }
}
