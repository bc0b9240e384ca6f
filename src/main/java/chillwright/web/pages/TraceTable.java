package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.HandOut;
import chillwright.core.log.LogEntry;
import chillwright.service.Recall;
import chillwright.service.Recall.Recalled;
import chillwright.service.Tracing.Traced;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Lots that were traced, as a table: a row for each hand-out, or one for a lot without any. */
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
  private static final List<String> NO_OUT = List.of("", "", "", "", "", "");

  private final ZoneId zone;

  TraceTable(ZoneId zone) {
    this.zone = zone;
  }

  Table of(TraceAsked asked) {
    List<List<String>> rows = new ArrayList<>();
    asked.trace().ifPresent(trace -> trace.lots().forEach(lot -> add(rows, lot, Optional.empty())));
    asked.recall().ifPresent(recall -> add(rows, recall));
    List<String> header = new ArrayList<>(HEADER);
    asked.recall().ifPresent(recall -> header.addAll(OF_ALLERGEN));
    return new Table(header, rows);
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
    return Stream.of(lot, out, naming).flatMap(List::stream).toList();
  }

  private List<String> cells(Traced traced) {
    LotState lot = traced.lot();
    return List.of(
        lot.lot().text(),
        lot.food(),
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
        entry.details().to().orElse(""),
        entry.by().orElse(""),
        entry.note().orElse(""));
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
