package chillwright.web.pages;

import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.service.Day.PlaceRound;
import chillwright.service.Places.PlaceReading;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was written of a place on its round, in words. */
record RoundWords(Desk desk, Visitor visitor) {
  /** What was done about its readings. */
  List<String> acts(PlaceRound place) {
    return place.acts().stream().filter(act -> !act.is(How.NOT_IN_USE)).map(this::act).toList();
  }

  /** What can be corrected: that it is not in use, and what was read. */
  List<DayView.Reading> readings(PlaceRound place) {
    return Stream.concat(
            place.idle().stream().map(this::idle), place.readings().stream().map(this::reading))
        .toList();
  }

  private DayView.Reading reading(PlaceReading reading) {
    Entries entries = new Entries(desk, visitor);
    LogEntry written = reading.written();
    boolean isCorrected = !reading.corrections().isEmpty();
    String by = written.by().map(initials -> ", " + initials).orElse("");
    return new DayView.Reading(
        written.id().text(),
        desk.clock(written.happenedAt(), visitor)
            + ": "
            + reading.standing().map(entries::reading).orElse(visitor.say("lot.void"))
            + by,
        isCorrected ? visitor.say("lot.was", entries.reading(written)) : "",
        reading.corrections().stream().map(entries::why).collect(Collectors.joining("; ")),
        reading.standing().isPresent(),
        true);
  }

  /** What said that a place is not in use, which can be made void. */
  private DayView.Reading idle(PlaceReading idle) {
    String said = act(idle.written());
    boolean stands = idle.standing().isPresent();
    Entries entries = new Entries(desk, visitor);
    return new DayView.Reading(
        idle.written().id().text(),
        idle.standing().map(standing -> act(standing)).orElse(visitor.say("lot.void")),
        stands ? "" : said,
        idle.corrections().stream().map(entries::why).collect(Collectors.joining("; ")),
        stands,
        false);
  }

  private String act(LogEntry act) {
    String by = act.by().map(initials -> ", " + initials).orElse("");
    String when = desk.clock(act.happenedAt(), visitor) + by;
    String key = act.is(How.NOT_IN_USE) ? "day.idle" : "day.done";
    return visitor.say(key, when, act.note().orElse("")).strip();
  }
}
