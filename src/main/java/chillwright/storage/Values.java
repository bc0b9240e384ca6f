package chillwright.storage;

import chillwright.core.log.EntryId;
import chillwright.core.log.LotId;
import chillwright.core.log.Mark;
import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Values of the core as SQLite keeps them, where null stands for what is empty, and back. */
final class Values {
  private static final String BETWEEN = " ";

  private Values() {}

  static Integer count(OptionalInt count) {
    return count.isPresent() ? count.getAsInt() : null;
  }

  static OptionalInt count(Integer count) {
    return count == null ? OptionalInt.empty() : OptionalInt.of(count);
  }

  static Integer hundredths(Optional<Temperature> reading) {
    return reading.map(Temperature::hundredths).orElse(null);
  }

  static Integer scale(Optional<Temperature> reading) {
    return Codes.SCALES.orNull(reading.map(Temperature::scale));
  }

  static Optional<Temperature> temperature(Integer hundredths, Integer scale) {
    return hundredths == null
        ? Optional.empty()
        : Optional.of(new Temperature(hundredths, Codes.SCALES.word(scale)));
  }

  /** The moment, where the mark is one. */
  static Instant markedAt(Optional<Mark> mark) {
    return mark.orElse(null) instanceof Mark.Time time ? time.at() : null;
  }

  /** The day, where the mark is one. */
  static LocalDate markedDay(Optional<Mark> mark) {
    return mark.orElse(null) instanceof Mark.Day day ? day.date() : null;
  }

  static Optional<Mark> mark(Instant at, LocalDate day) {
    if (at != null) {
      return Optional.of(new Mark.Time(at));
    }
    return Optional.ofNullable(day).map(Mark.Day::new);
  }

  /** Ids and codes hold no blank, so one can stand between them. */
  static String joined(Collection<?> codes) {
    return codes.isEmpty()
        ? ""
        : codes.stream().map(Object::toString).collect(Collectors.joining(BETWEEN));
  }

  static List<EntryId> entryIds(String joined) {
    return split(joined, EntryId::new);
  }

  static List<LotId> lotIds(String joined) {
    return split(joined, LotId::new);
  }

  static <T> List<T> split(String joined, Function<String, T> made) {
    return joined == null || joined.isEmpty()
        ? List.of()
        : Arrays.stream(joined.split(BETWEEN)).map(made).toList();
  }
}
