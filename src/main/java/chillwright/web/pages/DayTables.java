package chillwright.web.pages;

import chillwright.core.kitchen.Handover;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.rules.Finding;
import chillwright.service.Day;
import chillwright.service.Day.Open;
import chillwright.service.Day.PlaceRound;
import chillwright.service.Reports.Due;
import io.javalin.http.Context;
import java.io.IOException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The round of today and what is unfinished, as tables to take away. */
record DayTables(Desk desk) {
  static final String ROUND = DayPage.ADDRESS + ".csv";
  static final String OPEN = DayPage.ADDRESS + "/unfinished.csv";

  private static final List<String> PLACE =
      List.of(
          "place",
          "kind",
          "limit",
          "limit_source",
          "rounds",
          "rounds_read",
          "to_be_read",
          "last_read",
          "temperature",
          "within_limit",
          "done");
  private static final List<String> LOT =
      List.of("lot", "food", "owed", "owed_since", "due", "due_at", "taken_over_by", "taken_over");

  void round(Context context) throws IOException {
    new Table(PLACE, today().places().stream().map(this::row).toList()).answer(context, "day");
  }

  void open(Context context) throws IOException {
    Day day = today();
    new Table(LOT, day.open().stream().map(open -> row(day, open)).toList())
        .answer(context, "unfinished");
  }

  private Day today() {
    return desk.kitchen().days().day(desk.kitchen().days().today());
  }

  private List<String> row(PlaceRound place) {
    return List.of(
        place.name(),
        place.known().map(known -> known.kind().key()).orElse(""),
        place.limit().map(limit -> limit.limit().text()).orElse(""),
        place.limit().map(limit -> limit.source().key()).orElse(""),
        place.known().map(KnownPlace::rounds).map(Object::toString).orElse(""),
        Integer.toString(place.read()),
        yes(place.isDue()),
        place.last().map(LogEntry::happenedAt).map(this::time).orElse(""),
        place.last().flatMap(LogEntry::temperature).map(read -> read.text()).orElse(""),
        place.isWithin().map(DayTables::yes).orElse(""),
        place.acts().stream()
            .map(DayTables::done)
            .filter(done -> !done.isEmpty())
            .collect(Collectors.joining("; ")));
  }

  private List<String> row(Day day, Open open) {
    Optional<Finding> owed = open.owed().map(Due::finding);
    Optional<Finding> due = open.due().map(Due::finding);
    Optional<Handover> over = day.takenOver(open.lot().lot());
    return List.of(
        open.lot().lot().text(),
        open.lot().food(),
        owed.map(found -> found.rule().id()).orElse(""),
        owed.map(Finding::settlesAt).map(this::time).orElse(""),
        due.map(found -> found.rule().id()).orElse(""),
        due.map(found -> found.deadline().orElse(found.settlesAt())).map(this::time).orElse(""),
        over.map(Handover::by).orElse(""),
        over.map(Handover::writtenAt).map(this::time).orElse(""));
  }

  /** What was done; of a place that is not in use the word of a log file goes first. */
  private static String done(LogEntry act) {
    Optional<String> how = Optional.of(How.NOT_IN_USE).filter(act::is).map(How::text);
    return Stream.concat(how.stream(), act.note().stream()).collect(Collectors.joining(": "));
  }

  private static String yes(boolean isSo) {
    return isSo ? "yes" : "no";
  }

  /** As the kitchen's clock showed it, with its offset. */
  private String time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, desk.zone()).toString();
  }
}
