package chillwright.web.pages;

import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Mark;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import chillwright.logfile.Column;
import chillwright.service.LotView;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Entries as the rows of a log file, corrections among them, so that what is taken away can be
 * checked and taken again elsewhere.
 *
 * @param zone in which times are written, with their offset
 */
record LogTable(ZoneId zone) {
  /**
   * @param lot of all the entries; blank for readings of places
   */
  Table of(String lot, List<LogEntry> entries) {
    return new Table(Column.titles(), entries.stream().map(entry -> row(lot, entry)).toList());
  }

  /** The logs of several lots, one after another. */
  Table of(List<LotView> lots) {
    return new Table(
        Column.titles(),
        lots.stream()
            .flatMap(
                lot -> lot.entries().stream().map(entry -> row(lot.state().lot().text(), entry)))
            .toList());
  }

  private List<String> row(String lot, LogEntry entry) {
    Details details = entry.details();
    List<String> cells = new ArrayList<>();
    for (Column column : Column.values()) {
      cells.add(
          switch (column) {
            case LOT -> lot;
            case WHEN -> time(entry.happenedAt());
            case ENTRY -> entry.word().text();
            case BY -> entry.by().orElse("");
            case NOTE -> entry.note().orElse("");
            case ID -> entry.id().text();
            case CORRECTS -> entry.corrects().map(EntryId::text).orElse("");
            default -> cell(column, details);
          });
    }
    return cells;
  }

  private String cell(Column column, Details details) {
    return switch (column) {
      case FOOD -> details.food().orElse("");
      case CATEGORY -> details.category().orElse("");
      case TEMPERATURE -> details.temperature().map(Temperature::text).orElse("");
      case HOW -> details.how().map(How::text).orElse("");
      case PLACE -> details.place().orElse("");
      case AIR -> details.air().map(Temperature::text).orElse("");
      case PORTIONS ->
          details.portions().isPresent() ? Integer.toString(details.portions().getAsInt()) : "";
      case FROM -> details.from().stream().map(LotId::text).collect(Collectors.joining(" "));
      case TO -> details.to().orElse("");
      case UNTIL -> details.until().map(this::mark).orElse("");
      case PROBE -> details.probe().orElse("");
      case CONTAINER -> details.container().orElse("");
      case DEPTH -> details.depth().map(Depth::text).orElse("");
      default -> "";
    };
  }

  private String mark(Mark mark) {
    return mark instanceof Mark.Day day ? day.date().toString() : time(((Mark.Time) mark).at());
  }

  private String time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone).toString();
  }
}
