package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.HandOut;
import chillwright.core.log.LogEntry;
import chillwright.service.Recall;
import chillwright.service.Recall.Recalled;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Traced;
import chillwright.web.pages.WhomToTell.Receiver;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Lots that were traced, as a table: a row for each hand-out, or one for a lot without any; then
 * one for each of those who got some, with all they got; last one where there may be more. The last
 * column tells these kinds apart.
 */
final class TraceTable {
  private static final List<String> HEADER =
      List.of(
          "lot",
          "food",
          "began",
          "from",
          "phase",
          "place",
          "portions_made",
          "portions_left",
          "when",
          "what",
          "portions",
          "to",
          "by",
          "note");
  private static final List<String> OF_ALLERGEN =
      List.of(
          "bears",
          "by_foods",
          "named_from",
          "before_naming",
          "labels_without",
          "labels_naming",
          "got_unnamed");
  private static final String ROW = "row";
  private static final List<String> NO_OUT = List.of("", "", "", "", "", "");

  private final ZoneId zone;
  private final Visitor visitor;

  TraceTable(ZoneId zone, Visitor visitor) {
    this.zone = zone;
    this.visitor = visitor;
  }

  Table of(TraceAsked asked) {
    List<List<String>> rows = new ArrayList<>();
    asked.trace().ifPresent(trace -> trace.lots().forEach(lot -> add(rows, lot, Optional.empty())));
    asked.recall().ifPresent(recall -> add(rows, recall));
    List<String> header = new ArrayList<>(HEADER);
    asked.recall().ifPresent(recall -> header.addAll(OF_ALLERGEN));
    header.add(ROW);
    WhomToTell.receivers(asked).forEach(who -> rows.add(told(who, header)));
    if (asked.isCut()) {
      String says = visitor.say("trace.cut", Tracing.MOST_LOTS);
      rows.add(row(header, Map.of("note", says, ROW, "cut")));
    }
    return new Table(header, rows);
  }

  /** Somebody who got some, or nobody named, with the lots of it. */
  private List<String> told(Receiver who, List<String> header) {
    Map<String, String> cells = new HashMap<>();
    cells.put("lot", String.join(" ", who.lots()));
    cells.put("food", Isolated.plain(String.join("; ", who.foods())));
    cells.put("when", time(who.last()));
    cells.put("portions", Integer.toString(who.portions()));
    cells.put("to", Isolated.plain(who.name()));
    cells.put("bears", who.isCertain() ? "yes" : "unsure");
    cells.put("before_naming", who.isEarly() ? "yes" : "");
    cells.put("got_unnamed", who.isUnnamed() ? "yes" : "");
    cells.put(ROW, who.name().isEmpty() ? "nobody-named" : "tell");
    return row(header, cells);
  }

  private static List<String> row(List<String> header, Map<String, String> cells) {
    return header.stream().map(column -> cells.getOrDefault(column, "")).toList();
  }

  private void add(List<List<String>> rows, Recall recall) {
    recall.bearing().forEach(lot -> add(rows, lot.traced(), Optional.of(lot)));
    recall.unsure().forEach(lot -> add(rows, lot.traced(), Optional.of(lot)));
  }

  private void add(List<List<String>> rows, Traced traced, Optional<Recalled> recalled) {
    List<String> lot = cells(traced);
    if (traced.handOuts().isEmpty()) {
      boolean isBefore = recalled.filter(Recalled::beganBeforeNaming).isPresent();
      rows.add(joined(lot, NO_OUT, cells(recalled, isBefore, false)));
    }
    for (HandOut out : traced.handOuts()) {
      Instant when = out.entry().happenedAt();
      boolean isBefore = recalled.filter(of -> of.isBeforeNaming(when)).isPresent();
      boolean isUnnamed = recalled.filter(of -> of.isUnnamed(out)).isPresent();
      rows.add(joined(lot, cells(out), cells(recalled, isBefore, isUnnamed)));
    }
  }

  private static List<String> joined(List<String> lot, List<String> out, List<String> naming) {
    return Stream.of(lot, out, naming, List.of("lot")).flatMap(List::stream).toList();
  }

  private List<String> cells(Traced traced) {
    LotState lot = traced.lot();
    return List.of(
        lot.lot().text(),
        Isolated.plain(lot.food()),
        lot.standing().map(s -> time(s.beganAt())).orElse(""),
        traced.from().stream().map(from -> from.lot().text()).collect(Collectors.joining(" ")),
        lot.standing().map(s -> s.phase().word()).orElse(""),
        lot.standing().flatMap(Standing::place).orElse(""),
        number(lot.portions().made()),
        number(lot.portions().left()));
  }

  private List<String> cells(HandOut out) {
    LogEntry entry = out.entry();
    return List.of(
        time(entry.happenedAt()),
        out.kind().key(),
        number(entry.details().portions()),
        entry.details().to().map(Isolated::plain).orElse(""),
        entry.by().map(Isolated::plain).orElse(""),
        entry.note().map(Isolated::plain).orElse(""));
  }

  private List<String> cells(Optional<Recalled> recalled, boolean isBefore, boolean isUnnamed) {
    return recalled
        .map(
            lot ->
                List.of(
                    lot.bears() ? "yes" : "unsure",
                    String.join("; ", lot.foods()),
                    lot.namedFrom().map(this::time).orElse(""),
                    isBefore ? "yes" : "",
                    labels(lot, false),
                    labels(lot, true),
                    isUnnamed ? "yes" : ""))
        .orElse(List.of());
  }

  /** How many labels were made that name it, or do not; blank where none is on record. */
  private static String labels(Recalled lot, boolean naming) {
    int count = lot.labels(naming).stream().mapToInt(LabelsMade::labels).sum();
    return lot.labels().isEmpty() ? "" : Integer.toString(count);
  }

  private String time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone).toString();
  }

  private static String number(OptionalInt count) {
    return count.isPresent() ? Integer.toString(count.getAsInt()) : "";
  }
}
