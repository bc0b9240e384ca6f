package chillwright.web.pages;

import chillwright.core.log.How;
import chillwright.core.log.Incoming;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature.Scale;
import chillwright.logfile.Cells;
import chillwright.logfile.Column;
import chillwright.logfile.Place;
import chillwright.logfile.SaidTime;
import chillwright.logfile.SaidTime.At;
import chillwright.logfile.SaidTime.Either;
import chillwright.logfile.SaidTime.Read;
import chillwright.logfile.SaidTime.Skipped;
import chillwright.logfile.SaidTime.Toward;
import chillwright.logfile.SaidTime.Unreadable;
import chillwright.print.Times;
import chillwright.service.OnceKey;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A form that says what happened to a lot: its fields are named as the columns of a log file, and
 * read by the same class. A figure may be written without its scale, which the form sends beside
 * it; a decimal comma is taken, since some phones offer no dot; a blank time is now. A time that
 * the clock skipped, or that may be two, is refused; of one that it showed twice the earlier is
 * taken.
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

  private static final String SHOWN = "a time that the clock showed";
  private static final String SKIPPED =
      "The clock was put forward from %s to %s: there was no such time. Give one before or after.";

  private static final String EITHER = "\"%s\" may be %s. Give one of them.";

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
    return row(lot, "");
  }

  /**
   * The same as one of several rows.
   *
   * @param pointer tells it from the others in what is said to be wrong
   */
  Incoming row(String lot, String pointer) {
    Map<String, String> cells = new LinkedHashMap<>();
    cells.put(Column.LOT.title(), lot);
    for (Column column : TAKEN) {
      cells.put(column.title(), cell(column));
    }
    cells.put(Column.WHEN.title(), when());
    Place place = Place.object(pointer);
    Incoming row = new Cells(now, zone).read(cells, place);
    Where whole = place.row();
    Read typed = typed();
    if (typed instanceof Either two) {
      String either = String.join(" or ", two.written());
      return refused(row, whole, "two-times", either, EITHER.formatted(form.text("when"), either));
    }
    return typed instanceof Skipped skipped
        ? refused(
            row, whole, "skipped-hour", SHOWN, SKIPPED.formatted(skipped.before(), skipped.after()))
        : row;
  }

  /** The row with a fault of its time. */
  private Incoming refused(Incoming row, Where whole, String code, String allowed, String says) {
    List<Problem> problems = new ArrayList<>();
    if (row instanceof Misread misread) {
      problems.addAll(misread.problems());
    }
    Where at = whole.at(Column.WHEN.title());
    problems.add(new Problem(code, at, form.text("when"), allowed, says));
    return new Misread(whole, Optional.empty(), Optional.empty(), false, problems);
  }

  /** The time that was typed, where the clock showed it twice and the earlier is taken. */
  Optional<LocalTime> twice() {
    return typed() instanceof At at && at.isTwice()
        ? Optional.of(LocalDateTime.ofInstant(at.moment(), zone).toLocalTime())
        : Optional.empty();
  }

  /** The time that was typed: as forms send it, or as people say it. */
  private Read typed() {
    String typed = form.text("when");
    try {
      return SaidTime.at(LocalDateTime.parse(typed), zone);
    } catch (DateTimeException said) {
      return SaidTime.moment(typed, zone, now, Toward.PAST);
    }
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
    Read read = typed();
    if (read instanceof At at) {
      return at.moment().toString();
    }
    return read instanceof Unreadable ? typed : now.toString();
  }

  /** What was just taken is not ahead of us, whatever the phone's clock says. */
  private String noted(String at) {
    try {
      return Instant.parse(at).isAfter(now) ? now.toString() : at;
    } catch (DateTimeException e) {
      return at;
    }
  }

  /** What is wrong, in the language of who filled the form in. */
  static List<String> faults(List<Problem> problems, Desk desk, Visitor visitor) {
    Times times = desk.times(visitor);
    return faults(problems, visitor).stream().map(times::retold).toList();
  }

  private static List<String> faults(List<Problem> problems, Visitor visitor) {
    return problems.stream().map(problem -> visitor.language().fault(problem.says())).toList();
  }

  /**
   * The same, with what only a page asks for: who acts says in words what was done, and who takes
   * portions says how many.
   */
  static List<String> faults(Incoming row, Visitor visitor) {
    if (row instanceof Misread misread) {
      return faults(misread.problems(), visitor);
    }
    Row read = (Row) row;
    boolean isMute =
        read.word() == Word.ACTION
            && read.note().isEmpty()
            && read.details().how().filter(How.NOT_IN_USE::equals).isEmpty();
    boolean isUncounted = read.word() == Word.PORTIONS && read.details().portions().isEmpty();
    if (isUncounted) {
      return List.of(visitor.say("entry.portions.missing"));
    }
    return isMute ? List.of(visitor.say("entry.action.note")) : List.of();
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

  /** What was filled in, to be shown again. */
  Map<String, String> fields() {
    return form.all();
  }

  static String letter(Scale scale) {
    return scale == Scale.CELSIUS ? "C" : "F";
  }
}
