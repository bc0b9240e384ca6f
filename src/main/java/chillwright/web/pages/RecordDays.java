package chillwright.web.pages;

import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.Handover;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Word;
import chillwright.core.rules.RuleSet;
import chillwright.paper.LotSheet.Found;
import chillwright.paper.LotSheet.Row;
import chillwright.service.Page;
import chillwright.service.Places.PlaceReading;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What a record says besides its lots: readings of places, hand-overs and signs of days. */
final class RecordDays {
  /** The most readings of one document. */
  static final int MOST_READINGS = 2000;

  private final Desk desk;
  private final Visitor visitor;
  private final LotSheets words;

  RecordDays(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
    this.words = new LotSheets(desk, visitor);
  }

  /** What each place that the kitchen has named is held against. */
  List<String> limits() {
    RuleSet rules = desk.kitchen().setUp().rulesOfToday();
    return desk.kitchen().setUp().places().stream()
        .flatMap(
            place ->
                PlaceWords.limit(place, rules, visitor)
                    .map(limit -> place.name() + ": " + limit)
                    .stream())
        .toList();
  }

  /** Places beyond their limit between two moments, and what was done about it. */
  List<Found> troubles(Instant from, Instant to) {
    TroubleWords says = new TroubleWords(desk.zone(), visitor, words::moment);
    return desk.kitchen().places().troubles(from, to).items().stream()
        .map(says::of)
        .map(item -> new Found(item.place(), item.says(), item.limit(), item.action()))
        .toList();
  }

  /** Readings of places between two moments, the oldest first; the newest where not all fit. */
  List<Row> readings(Instant from, Instant to) {
    List<Row> rows = new ArrayList<>();
    Optional<String> next = Optional.empty();
    do {
      Page<PlaceReading> page =
          desk.kitchen()
              .places()
              .readings(
                  Optional.empty(),
                  Optional.of(from),
                  Optional.of(to),
                  new Page.Wanted(Page.MOST, next));
      page.items().forEach(reading -> rows.add(row(reading)));
      next = page.next();
    } while (next.isPresent() && rows.size() < MOST_READINGS);
    Collections.reverse(rows);
    return rows;
  }

  private Row row(PlaceReading reading) {
    Entries entries = new Entries(desk, visitor);
    LogEntry written = reading.written();
    LogEntry shown = reading.standing().orElse(written);
    String late =
        written.isLate()
            ? " (" + visitor.say("paper.late", words.moment(written.writtenAt())) + ")"
            : "";
    boolean isCorrected = !reading.corrections().isEmpty();
    return new Row(
        words.moment(shown.happenedAt()),
        shown.details().place().orElse(""),
        reading.standing().map(of -> says(of, entries)).orElse(visitor.say("lot.void")) + late,
        written.by().orElse(""),
        isCorrected ? visitor.say("lot.was", entries.reading(written)) : "",
        reading.corrections().stream().map(entries::why).collect(Collectors.joining("; ")));
  }

  /** What was read, or what was done about a reading. */
  private String says(LogEntry entry, Entries entries) {
    String says = entries.reading(entry);
    return entry.word() == Word.ACTION ? visitor.say("record.action") + " " + says : says;
  }

  /** Hand-overs and signs of days, both included, in the order of writing. */
  List<Row> days(LocalDate from, LocalDate to) {
    List<Written> written = new ArrayList<>();
    desk.kitchen()
        .days()
        .written(from, to)
        .forEach(
            day -> {
              day.handovers().forEach(over -> written.add(written(over)));
              day.signs().forEach(sign -> written.add(written(sign)));
            });
    return written.stream().sorted(Comparator.comparing(Written::at)).map(Written::row).toList();
  }

  /** A row with the moment it is ordered by. */
  private record Written(Instant at, Row row) {}

  private Written written(Handover over) {
    String text = visitor.say("label.lot", over.lot()) + noted(over.note());
    String word = visitor.say("paper.handed-over");
    return new Written(
        over.writtenAt(), new Row(words.moment(over.writtenAt()), word, text, over.by(), "", ""));
  }

  private Written written(DaySign sign) {
    boolean isClosed = sign.word() == DaySign.Word.CLOSED;
    String text =
        visitor.say(
                "paper.day-state",
                words.day(sign.day()),
                sign.unfinished(),
                sign.unread(),
                desk.kitchen().places().unanswered(sign.writtenAt()).size())
            + out(sign)
            + noted(sign.note());
    String word = visitor.say(isClosed ? "paper.day-closed" : "paper.day-reopened");
    return new Written(
        sign.writtenAt(), new Row(words.moment(sign.writtenAt()), word, text, sign.by(), "", ""));
  }

  private String out(DaySign sign) {
    return sign.out().isPresent() ? ", " + visitor.say("paper.day-out", sign.out().getAsInt()) : "";
  }

  private static String noted(Optional<String> note) {
    return note.map(text -> "; " + text).orElse("");
  }
}
