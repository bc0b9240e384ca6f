package chillwright.web;

import chillwright.core.log.Incoming;
import chillwright.core.log.LotId;
import chillwright.core.log.Misread;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.log.Row;
import chillwright.logfile.Cells;
import chillwright.logfile.Column;
import chillwright.logfile.Place;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Entries of a request as rows of a log: fields are named as the columns of a log file, and read by
 * the same class.
 */
final class EntryRows {
  /** The most entries of one request. */
  static final int MOST = 10_000;

  private static final String ENTRIES = "entries";

  private final Cells cells;

  EntryRows(Cells cells) {
    this.cells = cells;
  }

  /** What an entry must, may or must not say where it is sent; adds to its cells. */
  interface Where {
    void complete(Map<String, String> cells, Place place, List<Problem> problems);
  }

  /**
   * One entry, or several under "entries".
   *
   * @throws RequestFault if the body is neither, with the faults of the entries too
   */
  List<Incoming> oneOrMore(ObjectNode body, Where where) {
    return body.has(ENTRIES)
        ? list(new Fields(body, "", List.of(ENTRIES)), ENTRIES, where)
        : List.of(row(body, "", where));
  }

  /**
   * The rows under a field that must be there.
   *
   * @throws RequestFault if it is no list of objects, or if anything else was wrong with the fields
   */
  List<Incoming> list(Fields fields, String name, Where where) {
    Optional<JsonNode> given = fields.node(name);
    String allowed = "a list of 1 to " + MOST + " objects";
    List<Incoming> rows = new ArrayList<>();
    if (given.isEmpty()) {
      fields.missing(name, allowed);
    } else if (!(given.get() instanceof ArrayNode list) || list.isEmpty() || list.size() > MOST) {
      fields.wrongType(name, given.get(), allowed);
    } else {
      for (int i = 0; i < list.size(); i++) {
        if (list.get(i) instanceof ObjectNode object) {
          rows.add(row(object, "/" + name + "/" + i, where));
        } else {
          fields.wrongItem(name, i, list.get(i), "an object");
        }
      }
    }
    if (!fields.problems().isEmpty()) {
      throw RequestFault.wrong(withFaultsOf(rows, fields.problems()));
    }
    return rows;
  }

  private static List<Problem> withFaultsOf(List<Incoming> rows, List<Problem> problems) {
    List<Problem> all = new ArrayList<>(problems);
    for (Incoming row : rows) {
      if (row instanceof Misread misread) {
        all.addAll(misread.problems());
      }
    }
    return all;
  }

  private Incoming row(ObjectNode object, String pointer, Where where) {
    Place place = Place.object(pointer);
    Fields fields = new Fields(object, pointer, Column.titles());
    Map<String, String> given = new LinkedHashMap<>();
    for (String title : Column.titles()) {
      fields
          .node(title)
          .ifPresent(node -> cell(fields, title, node).ifPresent(t -> given.put(title, t)));
    }
    where.complete(given, place, fields.problems());
    return withFaults(cells.read(given, place), fields.problems());
  }

  /**
   * A value as the cell of a file would have it; empty with its fault noted if it cannot be one.
   */
  static Optional<String> cell(Fields fields, String title, JsonNode node) {
    if (node.isTextual()) {
      return Optional.of(node.textValue());
    }
    boolean isTemperature =
        title.equals(Column.TEMPERATURE.title()) || title.equals(Column.AIR.title());
    boolean isCount = title.equals(Column.PORTIONS.title());
    if (node.isNumber() && (isTemperature || isCount)) {
      // A temperature without its scale is refused by name, a number that is no count likewise.
      return Optional.of(node.toString());
    }
    if (title.equals(Column.FROM.title())) {
      return codes(fields, title, node);
    }
    fields.wrongType(title, node, isCount ? "a whole number" : "text");
    return Optional.empty();
  }

  private static Optional<String> codes(Fields fields, String title, JsonNode node) {
    List<String> codes = new ArrayList<>();
    if (node.isArray()) {
      node.forEach(code -> codes.add(code.isTextual() ? code.textValue() : ""));
    }
    if (!node.isArray() || codes.stream().anyMatch(code -> !LotId.isCode(code))) {
      fields.wrongType(title, node, "a list of lot codes, or text with blanks between them");
      return Optional.empty();
    }
    return Optional.of(String.join(" ", codes));
  }

  /** A cell that is at fault already is not missing besides. */
  private static Incoming withFaults(Incoming read, List<Problem> faults) {
    if (faults.isEmpty()) {
      return read;
    }
    List<Problem> all = new ArrayList<>(faults);
    if (read instanceof Misread misread) {
      Set<Problem.Where> told = new HashSet<>();
      faults.forEach(fault -> told.add(fault.where()));
      misread.problems().stream().filter(p -> !told.contains(p.where())).forEach(all::add);
      return new Misread(misread.where(), misread.lot(), misread.id(), false, all);
    }
    Row row = (Row) read;
    return new Misread(row.where(), row.lot(), row.id(), false, all);
  }

  /** For rows that stand as they are. */
  static void asGiven(Map<String, String> cells, Place place, List<Problem> problems) {}

  /** For entries sent to a lot, which need not name it, and may name no other. */
  static Where ofLot(LotId lot) {
    return (cells, place, problems) -> {
      String given = cells.put(Column.LOT.title(), lot.text());
      if (given != null && !given.isBlank() && !given.strip().equals(lot.text())) {
        problems.add(
            new Problem(
                "other-lot",
                pointer(place, Column.LOT),
                Shown.text(given),
                lot.text() + ", or left out",
                "These entries are of lot %s. Send those of another lot to its own address."
                    .formatted(lot)));
      }
    };
  }

  /** For readings of places, which name no lot; the word "reading" may be left out. */
  static void ofPlace(Map<String, String> cells, Place place, List<Problem> problems) {
    String given = cells.remove(Column.LOT.title());
    if (given != null && !given.isBlank()) {
      problems.add(
          new Problem(
              "lot-not-here",
              pointer(place, Column.LOT),
              Shown.text(given),
              "left out",
              "Readings of a place name no lot. Send those of a lot to the entries of that lot."));
    }
    String word = cells.computeIfAbsent(Column.ENTRY.title(), title -> "reading");
    if (!Set.of("reading", "action", "correction").contains(word.strip())) {
      cells.put(Column.ENTRY.title(), "reading");
      problems.add(
          new Problem(
              "entry-not-here",
              pointer(place, Column.ENTRY),
              Shown.text(word),
              "reading, action, correction",
              "Of a place there are readings, what was done about them, and corrections only."));
    }
  }

  private static Problem.Where pointer(Place place, Column column) {
    return ((InField) place.row()).at(column.title());
  }
}
