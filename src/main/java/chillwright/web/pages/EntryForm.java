package chillwright.web.pages;

import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Phase;
import chillwright.core.log.Problem;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.logfile.Cells;
import chillwright.logfile.Column;
import chillwright.logfile.Place;
import chillwright.service.LotView;
import chillwright.service.OnceKey;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A form that says what happened to a lot: its fields are named as the columns of a log file, and
 * read by the same class. A figure may be written without its scale, which the form sends beside
 * it; a decimal comma is taken, since some phones offer no dot; a blank time is now.
 */
final class EntryForm {
  private static final List<Column> TAKEN =
      List.of(
          Column.ENTRY,
          Column.TEMPERATURE,
          Column.HOW,
          Column.PLACE,
          Column.AIR,
          Column.PORTIONS,
          Column.FROM,
          Column.TO,
          Column.UNTIL,
          Column.PROBE,
          Column.CONTAINER,
          Column.DEPTH,
          Column.BY,
          Column.NOTE,
          Column.CORRECTS,
          Column.FOOD,
          Column.CATEGORY);

  /** A reading so far from the one before, so soon after it, is asked about. */
  private static final double FAR_CELSIUS = 22;

  private static final Duration SOON = Duration.ofMinutes(30);

  /** From warm to cold within so long is asked about where nobody looked between. */
  private static final double WARM_CELSIUS = 21;

  private static final double COLD_CELSIUS = 5;
  private static final Set<Phase> COLD =
      EnumSet.of(Phase.PREPARED, Phase.OPENED, Phase.CHILLED, Phase.FROZEN, Phase.THAWING);
  private static final double RISE_CELSIUS = 10;
  private static final Duration LONG = Duration.ofHours(6);

  /** Hotter than food with water in it gets, salt and sugar counted: common practice, no source. */
  private static final double HOTTEST_CELSIUS = 121;

  /** Food that reads colder is frozen: what it is made of freezes a little below 0 °C. */
  private static final double FROZEN_CELSIUS = -3;

  private final Form form;
  private final ZoneId zone;
  private final Instant now;

  EntryForm(Form form, ZoneId zone, Instant now) {
    this.form = form;
    this.zone = zone;
    this.now = now;
  }

  /** The row it makes, or all that is wrong with its fields. */
  Incoming row(String lot) {
    Map<String, String> cells = new LinkedHashMap<>();
    cells.put(Column.LOT.title(), lot);
    for (Column column : TAKEN) {
      cells.put(column.title(), cell(column));
    }
    cells.put(Column.WHEN.title(), when());
    return new Cells(now).read(cells, Place.object(""));
  }

  private String cell(Column column) {
    String given = form.text(column.title());
    if (column == Column.DEPTH) {
      return depth(given);
    }
    boolean isFigure = column == Column.TEMPERATURE || column == Column.AIR;
    if (given.isEmpty() || !isFigure) {
      return given;
    }
    String dotted = given.replace(',', '.');
    char last = dotted.charAt(dotted.length() - 1);
    return Character.isDigit(last) ? dotted + form.text("scale") : dotted;
  }

  /** A bare figure is in inches where the form's scale is Fahrenheit, else in centimeters. */
  private String depth(String given) {
    String dotted = given.replace(',', '.');
    boolean isBare = !dotted.isEmpty() && Character.isDigit(dotted.charAt(dotted.length() - 1));
    return isBare ? dotted + (form.text("scale").equals("C") ? "cm" : "in") : dotted;
  }

  /** A moment that the outbox noted, a time of the kitchen's zone that was typed, or now. */
  private String when() {
    String typed = form.text("when");
    if (typed.isEmpty()) {
      return form.has("at") ? noted(form.text("at")) : now.toString();
    }
    try {
      return LocalDateTime.parse(typed).atZone(zone).toInstant().toString();
    } catch (DateTimeException e) {
      return typed;
    }
  }

  /** What was just taken is not ahead of us, whatever the phone's clock says. */
  private String noted(String at) {
    try {
      return Instant.parse(at).isAfter(now) ? now.toString() : at;
    } catch (DateTimeException e) {
      return at;
    }
  }

  static List<String> faults(List<Problem> problems) {
    return problems.stream().map(Problem::says).toList();
  }

  static List<String> faults(Incoming row) {
    return row instanceof Misread misread ? faults(misread.problems()) : List.of();
  }

  /** Makes the same form, sent twice, count once. */
  Optional<OnceKey> once(String address) {
    if (!form.has("once")) {
      return Optional.empty();
    }
    Map<String, String> sent = new TreeMap<>(form.all());
    sent.remove("token");
    sent.remove("once");
    byte[] bytes = sent.toString().getBytes(StandardCharsets.UTF_8);
    return Optional.of(OnceKey.of(form.text("once"), "POST " + address, bytes));
  }

  /**
   * A question about a reading that can hardly be, such as one in the wrong scale or with a digit
   * missing; common practice, no source, and never more than a question.
   *
   * @param readings the readings of the lot so far, in order of time
   * @param isFrozen whether the lot may be frozen as it stands
   */
  Optional<String> doubt(
      Incoming incoming, List<LogEntry> readings, boolean isFrozen, Desk desk, Visitor visitor) {
    if (form.has("sure") || !(incoming instanceof Row row)) {
      return Optional.empty();
    }
    boolean mayBeFrozen = isFrozen || row.word() == Word.FROZEN;
    return row.details()
        .temperature()
        .flatMap(
            given ->
                beside(given, row.when(), readings, desk, visitor)
                    .or(() -> tooHot(given, visitor))
                    .or(() -> tooCold(given, mayBeFrozen, visitor)));
  }

  /** What is said to have happened to a part before it was one happened to all of its source. */
  Optional<String> doubtBefore(Incoming incoming, LotView view, Desk desk, Visitor visitor) {
    if (form.has("sure") || !(incoming instanceof Row row) || view.sources().isEmpty()) {
      return Optional.empty();
    }
    return view.entries().stream()
        .map(LogEntry::happenedAt)
        .min(Comparator.naturalOrder())
        .filter(row.when()::isBefore)
        .map(
            begun ->
                visitor.say(
                    "entry.doubt.before",
                    desk.clock(begun, visitor),
                    view.sources().stream().map(LotId::text).collect(Collectors.joining(" "))));
  }

  /** A reading beside the one before it. */
  private static Optional<String> beside(
      Temperature given, Instant when, List<LogEntry> readings, Desk desk, Visitor visitor) {
    if (readings.isEmpty()) {
      return Optional.empty();
    }
    LogEntry last = readings.get(readings.size() - 1);
    Temperature before = last.temperature().orElseThrow();
    Duration since = Duration.between(last.happenedAt(), when);
    if (isOfOtherScale(given, before.celsiusDegrees(), since)) {
      Scale other = given.scale() == Scale.CELSIUS ? Scale.FAHRENHEIT : Scale.CELSIUS;
      String meant = given.text().replace(given.scale().sign(), other.sign());
      return Optional.of(visitor.say("entry.doubt.scale", given.text(), before.text(), meant));
    }
    boolean isSoon = since.compareTo(SOON) <= 0;
    double apart = Math.abs(given.celsiusDegrees() - before.celsiusDegrees());
    String clock = desk.clock(last.happenedAt(), visitor);
    return isSoon && apart > FAR_CELSIUS
        ? Optional.of(visitor.say("entry.doubt", given.text(), before.text(), clock))
        : Optional.empty();
  }

  /**
   * Whether a figure hardly follows the one before it, but would if it were of the other scale:
   * from hot to cold with no look between, or warmer than it was.
   */
  private static boolean isOfOtherScale(Temperature given, double before, Duration since) {
    double degrees = given.celsiusDegrees();
    double figure = given.hundredths() / 100.0;
    double other = given.scale() == Scale.FAHRENHEIT ? figure : (figure - 32) / 1.8;
    boolean isAtOnceCold =
        before >= WARM_CELSIUS
            && degrees <= COLD_CELSIUS
            && other > degrees
            && other <= before
            && since.compareTo(LONG) <= 0;
    boolean isWarmer = degrees > before + RISE_CELSIUS && other <= before && other >= 0;
    return isAtOnceCold || isWarmer;
  }

  /** Food that was cold and is warm at the first row of its reheat: when did its time begin? */
  Optional<String> doubtReheat(Incoming incoming, LotView view, Visitor visitor) {
    if (form.has("sure") || !(incoming instanceof Row row) || row.word() != Word.REHEATING) {
      return Optional.empty();
    }
    boolean wasCold =
        view.state().standing().filter(standing -> COLD.contains(standing.phase())).isPresent();
    return row.details()
        .temperature()
        .filter(given -> wasCold && given.celsiusDegrees() > COLD_CELSIUS)
        .map(given -> visitor.say("entry.doubt.reheating", given.text()));
  }

  private static Optional<String> tooHot(Temperature given, Visitor visitor) {
    return given.celsiusDegrees() > HOTTEST_CELSIUS
        ? Optional.of(visitor.say("entry.doubt.hot", given.text()))
        : Optional.empty();
  }

  private static Optional<String> tooCold(Temperature given, boolean isFrozen, Visitor visitor) {
    return !isFrozen && given.celsiusDegrees() < FROZEN_CELSIUS
        ? Optional.of(visitor.say("entry.doubt.frozen", given.text()))
        : Optional.empty();
  }

  /** What was filled in, to be shown again. */
  Map<String, String> fields() {
    return form.all();
  }

  static String letter(Scale scale) {
    return scale == Scale.CELSIUS ? "C" : "F";
  }
}
