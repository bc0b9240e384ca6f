package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.Corrections;
import chillwright.core.log.Details;
import chillwright.core.log.Incoming;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Mark;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import chillwright.logfile.Column;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The rows that make an entry read as a form says it should. Cells that differ are corrected; a
 * word, a time, a note or a cell that should be blank cannot be, so the entry is voided and written
 * again in the same breath.
 */
final class CorrectRows {
  private static final List<Column> CELLS =
      List.of(
          Column.FOOD,
          Column.CATEGORY,
          Column.TEMPERATURE,
          Column.HOW,
          Column.PLACE,
          Column.AIR,
          Column.PORTIONS,
          Column.CONTAINER,
          Column.DEPTH,
          Column.TO,
          Column.PROBE);

  private final LogEntry entry;
  private final LotState lot;
  private final boolean isFirst;
  private final ZoneId zone;
  private final Instant now;

  /**
   * @param entry as it stands, corrections applied
   * @param isFirst whether it is the lot's first, which can be corrected but not voided
   */
  CorrectRows(LogEntry entry, LotState lot, boolean isFirst, ZoneId zone, Instant now) {
    this.entry = entry;
    this.lot = lot;
    this.isFirst = isFirst;
    this.zone = zone;
    this.now = now;
  }

  /** What was made of a form: rows to be logged, or what is wrong with it. */
  record Made(List<Incoming> rows, List<String> faults) {
    Made {
      rows = List.copyOf(rows);
      faults = List.copyOf(faults);
    }
  }

  /** The fields of the form as the entry stands. */
  Map<String, String> fields() {
    Map<String, String> fields = new HashMap<>(texts(entry.details()));
    entry.temperature().ifPresent(read -> fields.put("scale", EntryForm.letter(read.scale())));
    fields.put("entry", entry.word().text());
    fields.put("when", local().toString());
    fields.put("note", entry.note().orElse(""));
    return fields;
  }

  private LocalDateTime local() {
    return LocalDateTime.ofInstant(entry.happenedAt(), zone).truncatedTo(ChronoUnit.MINUTES);
  }

  private Map<String, String> texts(Details cells) {
    Map<String, String> texts = new HashMap<>();
    if (isFirst) {
      texts.put("food", cells.food().orElse(lot.food()));
      texts.put("category", cells.category().orElse(lot.category()));
    }
    texts.put(
        "temperature",
        cells.temperature().map(Temperature::text).map(CorrectRows::bare).orElse(""));
    texts.put("how", cells.how().map(how -> how.text()).orElse(""));
    texts.put("place", cells.place().orElse(""));
    texts.put("air", cells.air().map(Temperature::text).orElse(""));
    texts.put(
        "portions",
        cells.portions().isPresent() ? Integer.toString(cells.portions().getAsInt()) : "");
    texts.put("container", cells.container().orElse(""));
    texts.put("depth", cells.depth().map(Depth::text).orElse(""));
    texts.put("to", cells.to().orElse(""));
    texts.put("probe", cells.probe().orElse(""));
    return texts;
  }

  private static String bare(String temperature) {
    return temperature.replaceAll(" °[FC]$", "");
  }

  /** Voids the entry. */
  Made voided(Form form, Visitor visitor) {
    return made(List.of(correction(form, Map.of(), form.text("reason"))), visitor);
  }

  /** Makes it read as the form says. */
  Made corrected(Form form, Visitor visitor) {
    Map<String, String> typed = new HashMap<>(form.all());
    typed.remove("corrects");
    typed.put("when", whenTyped(form));
    if (isFirst) {
      typed.put("entry", entry.word().text());
      typed.put("note", entry.note().orElse(""));
    }
    Incoming whole = row(typed);
    if (!(whole instanceof Row row)) {
      return new Made(List.of(), EntryForm.faults(whole, visitor));
    }
    Set<String> changed = changed(row.details());
    boolean isCleared =
        changed.stream().anyMatch(title -> texts(row.details()).get(title).isEmpty());
    boolean isTold =
        row.word() == entry.word()
            && typed.get("when").isEmpty()
            && row.note().orElse("").equals(entry.note().orElse(""));
    if (isTold && !isCleared) {
      return changed.isEmpty()
          ? new Made(List.of(), List.of(visitor.say("correct.nothing")))
          : made(List.of(correction(form, cells(typed, changed), form.text("reason"))), visitor);
    }
    return isFirst
        ? new Made(List.of(), List.of(visitor.say("correct.first-blank")))
        : again(form, typed, visitor);
  }

  /** Titles of the cells that differ. */
  private Set<String> changed(Details typed) {
    Map<String, String> was = texts(entry.details());
    Map<String, String> is = texts(typed);
    Set<String> changed = new LinkedHashSet<>();
    for (Column column : CELLS) {
      String before = was.getOrDefault(column.title(), "") + scale(column, entry.details());
      String after = is.getOrDefault(column.title(), "") + scale(column, typed);
      if (!before.equals(after)) {
        changed.add(column.title());
      }
    }
    return changed;
  }

  private static String scale(Column column, Details cells) {
    return column == Column.TEMPERATURE
        ? cells.temperature().map(read -> EntryForm.letter(read.scale())).orElse("")
        : "";
  }

  /** A time that was left as it is keeps its seconds. */
  private String whenTyped(Form form) {
    boolean isSame = isFirst || form.text("when").equals(local().toString());
    return isSame ? "" : form.text("when");
  }

  private static Map<String, String> cells(Map<String, String> typed, Set<String> changed) {
    Map<String, String> cells = new HashMap<>();
    changed.forEach(title -> cells.put(title, typed.getOrDefault(title, "")));
    cells.put("scale", typed.getOrDefault("scale", ""));
    return cells;
  }

  private Made again(Form form, Map<String, String> typed, Visitor visitor) {
    Map<String, String> fields = new HashMap<>(typed);
    fields.keySet().removeAll(List.of("food", "category"));
    fields.put("by", entry.by().orElse(form.text("by")));
    entry.details().until().ifPresent(mark -> fields.put("until", mark(mark)));
    String reason = form.text("reason");
    String why = reason.isEmpty() ? "" : visitor.say("correct.again", reason);
    return made(List.of(correction(form, Map.of(), why), row(fields)), visitor);
  }

  private static String mark(Mark until) {
    return until instanceof Mark.Day day
        ? day.date().toString()
        : ((Mark.Time) until).at().toString();
  }

  private Incoming correction(Form form, Map<String, String> cells, String reason) {
    Map<String, String> fields = new HashMap<>(cells);
    fields.put("entry", Word.CORRECTION.text());
    fields.put("corrects", entry.id().text());
    fields.put("note", reason);
    fields.put("by", form.text("by"));
    fields.put("at", now.toString());
    return row(fields);
  }

  private Incoming row(Map<String, String> fields) {
    Map<String, List<String>> all = new HashMap<>();
    fields.forEach((name, text) -> all.put(name, List.of(text)));
    all.putIfAbsent("at", List.of(entry.happenedAt().toString()));
    return new EntryForm(new Form(all), zone, now).row(lot.lot().text());
  }

  private static Made made(List<Incoming> rows, Visitor visitor) {
    List<String> faults = new ArrayList<>();
    rows.forEach(row -> faults.addAll(EntryForm.faults(row, visitor)));
    return new Made(rows, faults);
  }

  /** The entry of that id as it stands, corrections applied; empty where it is void or unknown. */
  static Optional<LogEntry> standing(String id, List<LogEntry> all) {
    return all.stream()
        .filter(entry -> entry.word() != Word.CORRECTION)
        .filter(entry -> entry.id().text().equals(id))
        .findFirst()
        .flatMap(entry -> Corrections.standing(entry, all));
  }
}
