package chillwright.web.pages;

import chillwright.core.measure.SaidLength;
import chillwright.logfile.Cells;
import chillwright.logfile.SaidDay;
import chillwright.logfile.SaidTime.Toward;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.ToIntFunction;

/** What the address of a page asks for, with every fault of it in words. */
final class Parameters {
  /** The earliest day that a log may hold, and as far ahead. */
  private static final LocalDate FIRST = LocalDate.ofInstant(Cells.EARLIEST, ZoneOffset.UTC);

  private static final LocalDate LAST = LocalDate.of(2099, 12, 31);

  /** So much of what was given is shown. */
  private static final int SHOWN = 40;

  private final Context context;
  private final Visitor visitor;
  private final Map<String, String> names;
  private final List<String> faults = new ArrayList<>();
  private final Map<String, String> wrong = new LinkedHashMap<>();

  /**
   * Refuses every name but these.
   *
   * @param names each with the key of what the form calls it
   */
  Parameters(Context context, Visitor visitor, Map<String, String> names) {
    this.context = context;
    this.visitor = visitor;
    this.names = names;
    String known = String.join(", ", new TreeSet<>(names.keySet()));
    for (String name : new TreeSet<>(context.queryParamMap().keySet())) {
      if (!names.containsKey(name)) {
        faults.add(visitor.say("fault.parameter", cut(name), known));
      }
    }
  }

  /** A period of days, both included. */
  record Period(LocalDate from, LocalDate to) {}

  /** What was given under that name; empty for nothing but blanks. */
  Optional<String> text(String name) {
    return Optional.ofNullable(context.queryParam(name))
        .map(String::strip)
        .filter(text -> !text.isEmpty());
  }

  /** The same, with a fault where it is longer than that many characters. */
  Optional<String> text(String name, int most) {
    Optional<String> given = text(name);
    given
        .filter(text -> text.codePointCount(0, text.length()) > most)
        .ifPresent(text -> refuse("fault.long", name, text, most));
    return given;
  }

  /** One of a few words; the usual one where none, or another, was given. */
  String choice(String name, List<String> words, String usual) {
    Optional<String> given = text(name);
    given
        .filter(text -> !words.contains(text))
        .ifPresent(text -> refuse("fault.choice", name, text, String.join(", ", words)));
    return given.filter(words::contains).orElse(usual);
  }

  /** A whole number from 1 to the most; empty where none, or no such, was given. */
  Optional<Integer> number(String name, int most) {
    return number(name, most, text -> text.matches("\\d{1,6}") ? Integer.parseInt(text) : 0);
  }

  /** The same of days, which may be said so: "12 days", "2 weeks". */
  Optional<Integer> days(String name, int most) {
    return number(name, most, text -> SaidLength.days(text).orElse(0));
  }

  private Optional<Integer> number(String name, int most, ToIntFunction<String> reader) {
    Optional<String> given = text(name);
    Optional<Integer> number =
        given.map(reader::applyAsInt).filter(count -> count >= 1 && count <= most);
    if (given.isPresent() && number.isEmpty()) {
      refuse("fault.number", name, given.get(), most);
    }
    return number;
  }

  /** The days from "from" to "to"; the usual ones where they are not given, or not days. */
  Period period(LocalDate usualFrom, LocalDate usualTo) {
    Optional<LocalDate> from = day("from", usualTo, Toward.PAST);
    Optional<LocalDate> to = day("to", usualTo, Toward.PAST);
    Period asked =
        new Period(
            from.orElse(usualFrom.isAfter(to.orElse(usualTo)) ? to.get() : usualFrom),
            to.orElse(from.filter(usualTo::isBefore).orElse(usualTo)));
    if (asked.from().isAfter(asked.to())) {
      faults.add(visitor.say("fault.period", asked.from(), asked.to()));
    }
    return faults.isEmpty() ? asked : new Period(usualFrom, usualTo);
  }

  /** A day, as people say it today; empty where none, or no such, was given. */
  Optional<LocalDate> day(String name, LocalDate today, Toward toward) {
    Optional<String> given = text(name);
    Optional<LocalDate> day = given.flatMap(text -> read(text, today, toward));
    if (given.isPresent() && day.isEmpty()) {
      refuse("fault.day", name, given.get(), FIRST + " \u2013 " + LAST);
    }
    return day;
  }

  /** A day within what a log may hold; empty for anything else. */
  static Optional<LocalDate> read(String text, LocalDate today, Toward toward) {
    return SaidDay.read(text, today, toward)
        .filter(day -> !day.isBefore(FIRST) && !day.isAfter(LAST));
  }

  private void refuse(String key, String name, String given, Object allowed) {
    refuseField(name, visitor.say(key, visitor.say(names.get(name)), cut(given), allowed));
  }

  /** Adds a fault of one field that only who asked can tell. */
  void refuseField(String name, String says) {
    faults.add(says);
    wrong.put(name, says);
  }

  /** What is wrong in each field, by its name. */
  Map<String, String> wrong() {
    return Map.copyOf(wrong);
  }

  /** Adds a fault that only who asked can tell. */
  void refuse(String says) {
    faults.add(says);
  }

  private static String cut(String given) {
    boolean fits = given.codePointCount(0, given.length()) <= SHOWN;
    return fits ? given : given.substring(0, given.offsetByCodePoints(0, SHOWN)) + "\u2026";
  }

  List<String> faults() {
    return List.copyOf(faults);
  }
}
