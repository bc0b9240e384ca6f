package chillwright.web.answers;

import chillwright.core.log.Corrections;
import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Mark;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import chillwright.service.Places.PlaceReading;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Turns entries into answers: a corrected entry is shown as it was written, with what holds
 * instead.
 *
 * @param zone the kitchen's zone
 */
public record EntryAnswers(ZoneId zone) {
  private static final String STANDS = "stands";
  private static final String CORRECTED = "corrected";
  private static final String VOIDED = "voided";

  /** All entries of one record, corrections included, in the order given. */
  public List<Answers.Entry> all(List<LogEntry> entries) {
    return some(entries, entries);
  }

  /** Some entries of a record. */
  public List<Answers.Entry> some(List<LogEntry> entries, List<LogEntry> record) {
    List<LogEntry> corrections =
        record.stream().filter(entry -> entry.corrects().isPresent()).toList();
    return entries.stream().map(entry -> entry(entry, corrections)).toList();
  }

  /** A reading of a place. */
  public Answers.Entry reading(PlaceReading reading) {
    return entry(reading.written(), reading.corrections());
  }

  private Answers.Entry entry(LogEntry entry, List<LogEntry> corrections) {
    List<String> correctedBy =
        corrections.stream()
            .filter(other -> other.corrects().filter(entry.id()::equals).isPresent())
            .map(other -> other.id().text())
            .toList();
    List<LogEntry> chain = correctedBy.isEmpty() ? List.of() : chain(entry.id(), corrections);
    Optional<LogEntry> standing = Corrections.standing(entry, chain);
    boolean isCorrected = standing.filter(now -> !now.equals(entry)).isPresent();
    return new Answers.Entry(
        entry.id().text(),
        entry.word().text(),
        time(entry.happenedAt()),
        time(entry.writtenAt()),
        entry.isLate(),
        cells(entry.details()),
        entry.by(),
        entry.note(),
        entry.corrects().map(EntryId::text),
        standing.isEmpty() ? VOIDED : isCorrected ? CORRECTED : STANDS,
        correctedBy,
        chain.stream().map(other -> correction(other, chain)).toList(),
        standing.filter(now -> isCorrected).map(now -> cells(now.details())));
  }

  /** The corrections of an entry, and the corrections of those, in the order of writing. */
  private static List<LogEntry> chain(EntryId entry, List<LogEntry> corrections) {
    Set<EntryId> named = new HashSet<>(Set.of(entry));
    int before = 0;
    while (named.size() > before) {
      before = named.size();
      corrections.stream()
          .filter(other -> named.contains(other.corrects().orElseThrow()))
          .forEach(other -> named.add(other.id()));
    }
    return corrections.stream()
        .filter(other -> named.contains(other.corrects().orElseThrow()))
        .toList();
  }

  private Answers.Correction correction(LogEntry correction, List<LogEntry> chain) {
    return new Answers.Correction(
        correction.id().text(),
        correction.corrects().orElseThrow().text(),
        time(correction.happenedAt()),
        time(correction.writtenAt()),
        correction.by(),
        correction.note(),
        Corrections.standing(correction, chain).isPresent());
  }

  private Answers.Cells cells(Details details) {
    return new Answers.Cells(
        details.food(),
        details.category(),
        details.temperature().map(Temperature::text),
        details.how().map(How::text),
        details.place(),
        details.air().map(Temperature::text),
        number(details.portions()),
        details.from().stream().map(LotId::text).toList(),
        details.to(),
        details.until().map(this::mark),
        details.probe(),
        details.container(),
        details.depth().map(Depth::text));
  }

  private String mark(Mark mark) {
    return mark instanceof Mark.Day day
        ? day.date().toString()
        : time(((Mark.Time) mark).at()).toString();
  }

  static Optional<Integer> number(OptionalInt number) {
    return number.stream().boxed().findFirst();
  }

  private OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone);
  }
}
