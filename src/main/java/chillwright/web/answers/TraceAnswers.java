package chillwright.web.answers;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.HandOut;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.service.Recall;
import chillwright.service.Recall.Recalled;
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
  private static final String BASIS =
      "By the foods as the kitchen describes them today. Labels are those made here: nothing tells"
          + " what came out on paper, or was made elsewhere.";

  /**
   * What was found.
   *
   * @param isCut whether there may be more than was looked at
   * @param matched the foods, or those who got portions, whose names were meant
   * @param recall null unless an allergen was asked for
   */
  public record Answer(
      OffsetDateTime asOf,
      boolean isCut,
      int mostLots,
      List<String> matched,
      List<Line> lots,
      Optional<RecallAnswer> recall) {}

  /**
   * What is told of an allergen besides the lots that bear it.
   *
   * @param unsure lots that may bear it
   */
  public record RecallAnswer(String allergen, String basis, List<Food> foods, List<Line> unsure) {}

  /** How a food stands to the allergen. */
  public record Food(
      String food,
      String why,
      Optional<OffsetDateTime> since,
      Optional<String> word,
      boolean isCertain) {}

  /** What a lot has to do with the allergen: null where none was asked for. */
  public record Naming(
      List<String> foods,
      Optional<OffsetDateTime> namedFrom,
      boolean isCertain,
      boolean beganBefore,
      List<LabelsDone> labels) {}

  /** Labels of a lot that were made as one document, and whether they name the allergen. */
  public record LabelsDone(OffsetDateTime madeAt, int labels, boolean leaves, boolean named) {}

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
      List<Out> handOuts,
      Optional<Naming> naming) {}

  /**
   * Portions that left a lot.
   *
   * @param beforeNaming whether before its labels named the allergen that was asked for
   * @param labelsUnnamed whether its last labels on record did not name that
   */
  public record Out(
      OffsetDateTime when,
      String kind,
      OptionalInt portions,
      Optional<String> to,
      Optional<String> by,
      Optional<String> note,
      boolean beforeNaming,
      boolean labelsUnnamed) {}

  public Answer answer(Trace trace) {
    return new Answer(
        time(now),
        trace.isCut(),
        Tracing.MOST_LOTS,
        trace.matched(),
        trace.lots().stream().map(traced -> line(traced, Optional.empty())).toList(),
        Optional.empty());
  }

  public Answer answer(Recall recall) {
    List<Food> foods =
        recall.foods().stream()
            .map(
                naming ->
                    new Food(
                        naming.food(),
                        naming.why().key(),
                        naming.since().map(this::time),
                        naming.word(),
                        naming.isCertain()))
            .toList();
    return new Answer(
        time(now),
        recall.isCut(),
        Tracing.MOST_LOTS,
        List.of(),
        lines(recall.bearing()),
        Optional.of(new RecallAnswer(recall.asked().text(), BASIS, foods, lines(recall.unsure()))));
  }

  private List<Line> lines(List<Recalled> lots) {
    return lots.stream().map(lot -> line(lot.traced(), Optional.of(lot))).toList();
  }

  private Line line(Traced traced, Optional<Recalled> recalled) {
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
        traced.handOuts().stream().map(out -> out(out, recalled)).toList(),
        recalled.map(this::naming));
  }

  private Naming naming(Recalled lot) {
    return new Naming(
        lot.foods(),
        lot.namedFrom().map(this::time),
        lot.isCertain(),
        lot.beganBeforeNaming(),
        lot.labels().stream().map(this::labels).toList());
  }

  private LabelsDone labels(Recall.Made made) {
    return new LabelsDone(
        time(made.labels().at()), made.labels().labels(), made.labels().leaves(), made.names());
  }

  private Out out(HandOut out, Optional<Recalled> recalled) {
    LogEntry entry = out.entry();
    return new Out(
        time(entry.happenedAt()),
        out.kind().key(),
        entry.details().portions(),
        entry.details().to(),
        entry.by(),
        entry.note(),
        recalled.filter(lot -> lot.isBeforeNaming(entry.happenedAt())).isPresent(),
        recalled.filter(lot -> lot.isUnnamed(out)).isPresent());
  }

  private OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone);
  }
}
