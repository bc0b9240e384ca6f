package chillwright.web.answers;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.HandOut;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.service.Tracing;
import chillwright.service.Tracing.Trace;
import chillwright.service.Tracing.Traced;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Who got some of a food or of a lot, as answered.
 *
 * @param now the moment of the answer
 */
public record TraceAnswers(ZoneId zone, Instant now) {
  /**
   * What was found.
   *
   * @param isCut whether there may be more than was looked at
   */
  public record Answer(OffsetDateTime asOf, boolean isCut, int mostLots, List<Line> lots) {}

  /** A lot that one came from. */
  public record Source(String lot, String food) {}

  /**
   * A lot on the way.
   *
   * @param asked whether it was asked for; the others came from those
   * @param began null until something is written of it
   */
  public record Line(
      String lot,
      String food,
      boolean asked,
      Optional<OffsetDateTime> began,
      List<Source> from,
      List<String> madeInto,
      Optional<String> phase,
      Optional<String> place,
      OptionalInt portionsMade,
      OptionalInt portionsLeft,
      boolean onHand,
      List<Out> handOuts) {}

  /** Portions that left a lot. */
  public record Out(
      OffsetDateTime when,
      String kind,
      OptionalInt portions,
      Optional<String> to,
      Optional<String> by,
      Optional<String> note) {}

  public Answer answer(Trace trace) {
    return new Answer(
        time(now),
        trace.isCut(),
        Tracing.MOST_LOTS,
        trace.lots().stream().map(this::line).toList());
  }

  private Line line(Traced traced) {
    LotState lot = traced.lot();
    return new Line(
        lot.lot().text(),
        lot.food(),
        traced.isAsked(),
        lot.standing().map(Standing::beganAt).map(this::time),
        traced.from().stream().map(from -> new Source(from.lot().text(), from.food())).toList(),
        traced.into().stream().map(LotId::text).toList(),
        lot.standing().map(standing -> standing.phase().word()),
        lot.standing().flatMap(Standing::place),
        lot.portions().made(),
        lot.portions().left(),
        lot.isOnHand(),
        traced.handOuts().stream().map(this::out).toList());
  }

  private Out out(HandOut out) {
    LogEntry entry = out.entry();
    return new Out(
        time(entry.happenedAt()),
        out.kind().key(),
        entry.details().portions(),
        entry.details().to(),
        entry.by(),
        entry.note());
  }

  private OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone);
  }
}
