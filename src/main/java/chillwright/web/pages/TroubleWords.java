package chillwright.web.pages;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Temperature;
import chillwright.print.ReportText;
import chillwright.service.PlaceTrouble;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Places beyond their limit in the words of a record. */
final class TroubleWords {
  /** More readings of one time are not told one by one. */
  private static final int TOLD = 12;

  private final ZoneId zone;
  private final Visitor visitor;
  private final Function<Instant, String> moment;

  /**
   * @param moment how a moment is written
   */
  TroubleWords(ZoneId zone, Visitor visitor, Function<Instant, String> moment) {
    this.zone = zone;
    this.visitor = visitor;
    this.moment = moment;
  }

  RecordView.PlaceItem of(PlaceTrouble trouble) {
    return new RecordView.PlaceItem(
        trouble.place().name(),
        read(trouble.readings()) + "; " + ended(trouble),
        trouble.limit().map(limit -> PlaceWords.limit(limit, visitor)).orElse(""),
        done(trouble.acts()));
  }

  private String read(List<LogEntry> readings) {
    LogEntry first = readings.get(0);
    LogEntry last = readings.get(readings.size() - 1);
    String figures =
        readings.stream()
            .limit(TOLD)
            .map(reading -> reading.temperature().map(Temperature::text).orElse(""))
            .collect(Collectors.joining(", "));
    String told = readings.size() > TOLD ? figures + " …" : figures;
    String began = moment.apply(first.happenedAt());
    return readings.size() == 1
        ? visitor.say("record.place.once", told, began)
        : visitor.say(
            "record.place.read", readings.size(), told, began, moment.apply(last.happenedAt()));
  }

  private String ended(PlaceTrouble trouble) {
    return trouble
        .ended()
        .map(reading -> visitor.say("record.place.again", moment.apply(reading.happenedAt())))
        .orElse(visitor.say("record.place.still"));
  }

  private String done(List<LogEntry> acts) {
    return acts.isEmpty()
        ? visitor.say("record.place.none")
        : new ReportText(zone, visitor.scale(), Instant.EPOCH).done(acts, visitor.language());
  }
}
