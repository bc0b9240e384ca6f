package chillwright.web;

import chillwright.core.log.Nearest;
import chillwright.service.Page;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/** The parameters of a query, read strictly, and what is wrong with them. */
final class Query {
  static final String LIMIT = "limit";
  static final String CURSOR = "cursor";

  private static final int LONGEST = 500;
  private static final Pattern CURSOR_SHAPE = Pattern.compile("[A-Za-z0-9_-]{1,200}");

  /** A '+' in an offset from UTC that was sent unescaped comes as a blank. */
  private static final Pattern LOST_PLUS = Pattern.compile(" (\\d\\d:\\d\\d)$");

  private final Map<String, String> given = new LinkedHashMap<>();
  private final List<Fault> faults = new ArrayList<>();

  private Query() {}

  /**
   * @param known all parameters it may have
   */
  static Query of(Context context, String... known) {
    Query query = new Query();
    List<String> names = List.of(known);
    Optional<String> text = Optional.ofNullable(context.queryString());
    for (String part : text.orElse("").split("&", -1)) {
      if (!part.isEmpty()) {
        query.take(part, names);
      }
    }
    return query;
  }

  /** For an address that takes no parameters. */
  static void none(Context context) {
    of(context).requireFaultless();
  }

  private void take(String part, List<String> known) {
    int equals = part.indexOf('=');
    String name = Percent.decoded(equals < 0 ? part : part.substring(0, equals));
    String value = equals < 0 ? "" : Percent.decoded(part.substring(equals + 1));
    if (!known.contains(name)) {
      String shown = Shown.text(name);
      add(
          "unknown-parameter",
          shown,
          shown,
          known.isEmpty() ? "none" : String.join(", ", known),
          "\"%s\" is no parameter here.%s".formatted(shown, Nearest.question(name, known)));
    } else if (given.putIfAbsent(name, value) != null) {
      add("twice", name, Shown.text(value), "once", "\"%s\" is given twice.".formatted(name));
    }
  }

  private void add(String code, String name, String shown, String allowed, String says) {
    faults.add(new Fault(code, new Answers.InParameter(name), shown, allowed, says));
  }

  /**
   * @throws RequestFault if anything was wrong so far
   */
  void requireFaultless() {
    if (!faults.isEmpty()) {
      throw new RequestFault(RequestFault.WRONG, faults);
    }
  }

  Optional<String> text(String name) {
    return read(
        name,
        "bad-text",
        "1 to " + LONGEST + " characters",
        value ->
            value.isBlank() || value.codePointCount(0, value.length()) > LONGEST
                ? Optional.empty()
                : Optional.of(value));
  }

  /** Text without control characters: what is shown again as it came. */
  Optional<String> line(String name) {
    return read(
        name,
        "bad-text",
        "1 to " + LONGEST + " characters, none of them a control character",
        value -> Optional.of(value).filter(Query::isLine));
  }

  private static boolean isLine(String value) {
    int length = value.codePointCount(0, value.length());
    return !value.isBlank()
        && length <= LONGEST
        && value.codePoints().noneMatch(Character::isISOControl);
  }

  Optional<Boolean> flag(String name) {
    return read(name, "bad-choice", "true or false", Query::flagOf);
  }

  private static Optional<Boolean> flagOf(String value) {
    return switch (value) {
      case "true" -> Optional.of(true);
      case "false" -> Optional.of(false);
      default -> Optional.empty();
    };
  }

  /** A moment, or a date of that zone, which stands for its beginning. */
  Optional<Instant> from(String name, ZoneId zone) {
    return bound(name, zone, day -> day.atStartOfDay(zone).toInstant());
  }

  /** A moment, or a date of that zone, which stands for its last millisecond. */
  Optional<Instant> to(String name, ZoneId zone) {
    return bound(name, zone, day -> day.plusDays(1).atStartOfDay(zone).toInstant().minusMillis(1));
  }

  private Optional<Instant> bound(String name, ZoneId zone, Function<LocalDate, Instant> ofDay) {
    return read(
        name,
        "bad-time",
        Moments.timeAllowed(zone) + "; or " + Moments.DATE_ALLOWED,
        value -> Moments.date(value).map(ofDay).or(() -> time(value)));
  }

  private static Optional<Instant> time(String value) {
    return Moments.time(LOST_PLUS.matcher(value).replaceFirst("+$1"));
  }

  /** A value that stands for something; what it cannot stand for is a fault. */
  <T> Optional<T> read(
      String name, String code, String allowed, Function<String, Optional<T>> reader) {
    Optional<String> value = Optional.ofNullable(given.get(name));
    Optional<T> found = value.flatMap(reader);
    if (value.isPresent() && found.isEmpty()) {
      String shown = Shown.text(value.get());
      add(
          code,
          name,
          shown,
          allowed,
          "\"%s\" cannot be %s: give %s.".formatted(shown, name, allowed));
    }
    return found;
  }

  /** How much of the list is wanted; the last that is read of a query. */
  Page.Wanted page(int usual) {
    Optional<Integer> limit =
        read(LIMIT, "bad-limit", "a whole number from 1 to " + Page.MOST, Query::limit);
    Optional<String> cursor =
        read(
            CURSOR,
            "unknown-cursor",
            "the \"next\" of a page of the same list",
            value -> Optional.of(value).filter(CURSOR_SHAPE.asMatchPredicate()));
    requireFaultless();
    return new Page.Wanted(limit.orElse(usual), cursor);
  }

  private static Optional<Integer> limit(String value) {
    boolean isShort = !value.isEmpty() && value.length() <= 3;
    boolean isNumber = isShort && value.chars().allMatch(c -> c >= '0' && c <= '9');
    return isNumber
        ? Optional.of(Integer.valueOf(value)).filter(n -> n >= 1 && n <= Page.MOST)
        : Optional.empty();
  }
}
