package chillwright.web.pages;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Phase;
import chillwright.core.log.Row;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature;
import chillwright.service.LotView;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * The question where food is read far too cool right after it was logged as no longer held hot:
 * nothing cools so fast, so it left the heat earlier than was written. Common practice, no source.
 */
final class FastDoubt {
  private static final Duration SOON = Duration.ofMinutes(10);

  /** Hot food is 57 °C (135 °F) or above: FDA Food Code 2022 3-501.16(A)(1); 20 °F below that. */
  private static final double COOL_CELSIUS = 46;

  private FastDoubt() {}

  static Optional<Question> of(
      Temperature given, Row row, LotView view, Desk desk, Visitor visitor) {
    boolean isCool = row.word() == Word.READING && given.celsiusDegrees() < COOL_CELSIUS;
    return view.judged()
        .filter(judged -> isCool)
        .flatMap(judged -> leftHeat(judged.timeline(), row))
        .map(
            left -> {
              String time = desk.clock(left.happenedAt(), visitor);
              String says = visitor.say("entry.doubt.fast", given.text(), time);
              return Question.of("fast", given.text() + ":" + left.happenedAt(), says);
            });
  }

  /** The row by which food held hot was cooled or chilled just before, with nothing read since. */
  private static Optional<LogEntry> leftHeat(Timeline timeline, Row row) {
    List<LogEntry> before =
        timeline.entries().stream()
            .filter(entry -> !entry.happenedAt().isAfter(row.when()))
            .toList();
    Phase phase = Phase.USED_UP;
    Optional<LogEntry> left = Optional.empty();
    for (LogEntry entry : before) {
      Optional<Phase> next = entry.word().phase();
      if (next.isPresent()) {
        boolean isLeaving = phase == Phase.HOT_HOLDING && next.get() != Phase.HOT_HOLDING;
        left = Optional.of(entry).filter(opening -> isLeaving);
        phase = next.get();
      }
      left = left.filter(opening -> entry.temperature().isEmpty());
    }
    return left.filter(
        opening -> Duration.between(opening.happenedAt(), row.when()).compareTo(SOON) <= 0);
  }
}
