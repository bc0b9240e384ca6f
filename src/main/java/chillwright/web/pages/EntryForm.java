package chillwright.web.pages;

import chillwright.core.log.Incoming;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature.Scale;
import chillwright.logfile.Cells;
import chillwright.logfile.Column;
import chillwright.logfile.Place;
import chillwright.service.OnceKey;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

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

  /** The same, with what only a page asks for: who acts says in words what was done. */
  static List<String> faults(Incoming row, Visitor visitor) {
    boolean isMute = row instanceof Row read && read.word() == Word.ACTION && read.note().isEmpty();
    return isMute ? List.of(visitor.say("entry.action.note")) : faults(row);
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

  /** Whether the person was asked about it and says that it is right. */
  boolean isSure() {
    return form.has("sure");
  }

  /** What was filled in, to be shown again. */
  Map<String, String> fields() {
    return form.all();
  }

  static String letter(Scale scale) {
    return scale == Scale.CELSIUS ? "C" : "F";
  }
}
