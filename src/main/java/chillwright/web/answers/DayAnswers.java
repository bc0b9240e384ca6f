package chillwright.web.answers;

import chillwright.core.keeping.LotState;
import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.Handover;
import chillwright.core.kitchen.KnownPlace;
import chillwright.core.log.LogEntry;
import chillwright.core.measure.Temperature;
import chillwright.core.rules.Finding;
import chillwright.print.Figures;
import chillwright.print.Sentences;
import chillwright.rulebook.RuleBook;
import chillwright.service.Day.Open;
import chillwright.service.Day.PlaceRound;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * Days, as answered.
 *
 * @param now the moment of the answer
 */
public record DayAnswers(RuleBook book, ZoneId zone, Instant now) {
  /** A day; what is open is known of today only. */
  public record Day(
      LocalDate date,
      boolean closed,
      List<Round> places,
      List<OpenLot> open,
      boolean moreOpen,
      List<Over> handovers,
      List<Sign> signatures,
      Answers.RuleSetRef ruleSet,
      String defers) {}

  /**
   * A place on its round.
   *
   * @param within whether the last reading is within the limit; null where none can tell
   * @param read how many rounds were read on the day; a reading soon after another is the same
   * @param rounds how often it should be; null where nothing was said of the place
   * @param thawing whether it is a freezer above freezing: see whether the food is still frozen
   * @param lotsInside where the last reading is beyond the limit, or the place is not in use
   * @param acts what was done about its readings on the day
   */
  public record Round(
      String name,
      Optional<String> kind,
      Optional<Reading> last,
      Optional<SetUpAnswers.Bound> limit,
      Optional<Boolean> within,
      int read,
      Optional<Integer> rounds,
      boolean due,
      boolean thawing,
      List<String> lotsInside,
      List<Act> acts) {}

  /** What was done about the readings of a place. */
  public record Act(String note, Optional<String> by, OffsetDateTime when) {}

  /** What was read, and when. */
  public record Reading(String temperature, OffsetDateTime when, Optional<String> by) {}

  /** A lot that somebody has to go on with. */
  public record OpenLot(
      String lot,
      String food,
      boolean owed,
      Optional<OffsetDateTime> due,
      Optional<String> says,
      Optional<String> takenOverBy) {}

  /** Who took over a lot. */
  public record Over(String lot, String by, Optional<String> note, OffsetDateTime when) {}

  /** A sign under the day. */
  public record Sign(
      String word,
      String by,
      Optional<String> note,
      int unfinished,
      Optional<Integer> out,
      int unread,
      OffsetDateTime when) {}

  public Day day(chillwright.service.Day day) {
    return new Day(
        day.date(),
        day.isClosed(),
        day.places().stream().map(this::round).toList(),
        day.open().stream().map(open -> open(day, open)).toList(),
        day.hasMoreOpen(),
        day.handovers().stream().map(this::over).toList(),
        day.signs().stream().map(this::sign).toList(),
        new Answers.RuleSetRef(book.id(), book.version()),
        book.defers().strip());
  }

  private Round round(PlaceRound place) {
    return new Round(
        place.name(),
        place.known().map(known -> known.kind().key()),
        place.last().flatMap(this::reading),
        place.limit().map(SetUpAnswers::bound),
        place.isWithin(),
        place.read(),
        place.known().map(KnownPlace::rounds),
        place.isDue(),
        place.isThawing(),
        place.inside().stream().map(lot -> lot.lot().text()).toList(),
        place.acts().stream()
            .map(act -> new Act(act.note().orElse(""), act.by(), time(act.happenedAt())))
            .toList());
  }

  private Optional<Reading> reading(LogEntry entry) {
    return entry
        .temperature()
        .map(Temperature::text)
        .map(text -> new Reading(text, time(entry.happenedAt()), entry.by()));
  }

  private OpenLot open(chillwright.service.Day day, Open open) {
    LotState lot = open.lot();
    Optional<Finding> finding = open.due().map(due -> due.finding());
    return new OpenLot(
        lot.lot().text(),
        lot.food(),
        open.owed().isPresent(),
        finding.map(found -> time(found.deadline().orElse(found.settlesAt()))),
        open.wrong()
            .or(open::due)
            .map(
                due ->
                    new Sentences(zone, Figures.scale(due.timeline()), now)
                        .says(due.finding(), due.timeline(), due.ruleSet())),
        day.takenOver(lot.lot()).map(Handover::by));
  }

  private Over over(Handover handover) {
    return new Over(
        handover.lot().text(), handover.by(), handover.note(), time(handover.writtenAt()));
  }

  private Sign sign(DaySign sign) {
    return new Sign(
        sign.word().key(),
        sign.by(),
        sign.note(),
        sign.unfinished(),
        EntryAnswers.number(sign.out()),
        sign.unread(),
        time(sign.writtenAt()));
  }

  private OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone);
  }
}
