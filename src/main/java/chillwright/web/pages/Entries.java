package chillwright.web.pages;

import chillwright.core.log.Corrections;
import chillwright.core.log.Details;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Mark;
import chillwright.core.log.Word;
import chillwright.service.Places.PlaceReading;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Entries in words, the corrected ones with what they said before. */
final class Entries {
  private static final String COUNTED = "word.counted";

  private final Desk desk;
  private final Visitor visitor;
  private final List<LogEntry> all;

  /**
   * @param all entries of the lot as they were written, corrections included
   */
  Entries(Desk desk, Visitor visitor, List<LogEntry> all) {
    this.desk = desk;
    this.visitor = visitor;
    this.all = all;
  }

  /** What happened last stands first; corrections stand beside what they correct. */
  List<LotPageView.Entry> shown() {
    List<LogEntry> ordered =
        all.stream()
            .filter(entry -> entry.word() != Word.CORRECTION)
            .sorted(Comparator.comparing(this::happenedAt))
            .toList();
    List<LotPageView.Entry> shown = new ArrayList<>();
    ordered.forEach(entry -> shown.add(0, shown(entry)));
    return shown;
  }

  /** When it happened, as it stands now. */
  private Instant happenedAt(LogEntry entry) {
    return Corrections.standing(entry, all).orElse(entry).happenedAt();
  }

  private LotPageView.Entry shown(LogEntry entry) {
    List<LogEntry> corrections =
        all.stream()
            .filter(other -> other.corrects().filter(entry.id()::equals).isPresent())
            .toList();
    Optional<LogEntry> standing = Corrections.standing(entry, all);
    String now = standing.map(this::text).orElse(visitor.say("lot.void"));
    return new LotPageView.Entry(
        entry.id().text(),
        entry.happenedAt().toString(),
        desk.moment(entry.happenedAt(), visitor),
        title(standing.orElse(entry)),
        now,
        corrections.isEmpty() ? "" : visitor.say("lot.was", text(entry)),
        corrections.stream().map(this::why).collect(Collectors.joining("; ")),
        standing.flatMap(LogEntry::temperature).map(read -> read.text(visitor.scale())).orElse(""),
        standing.isPresent());
  }

  /** The key of what an entry is called: a count is no sale. */
  static String title(LogEntry entry) {
    return entry.is(How.COUNTED) ? COUNTED : "word." + entry.word().text();
  }

  String why(LogEntry correction) {
    String when = desk.moment(correction.writtenAt(), visitor);
    String note = correction.note().orElse("-");
    return correction
        .by()
        .map(by -> visitor.say("lot.corrected", by, when, note))
        .orElseGet(() -> visitor.say("lot.corrected.unsigned", when, note));
  }

  /** What an entry says besides its word. */
  String text(LogEntry entry) {
    List<String> parts = parts(entry);
    entry.by().ifPresent(by -> parts.add(parts.size() - (entry.note().isPresent() ? 1 : 0), by));
    return String.join(", ", parts);
  }

  /** The same without who signed it. */
  String unsigned(LogEntry entry) {
    return String.join(", ", parts(entry));
  }

  /** A reading of a place without the place and without who signed it. */
  String reading(LogEntry entry) {
    List<String> parts = parts(entry);
    entry.details().place().ifPresent(parts::remove);
    return String.join(", ", parts);
  }

  private List<String> parts(LogEntry entry) {
    Details details = entry.details();
    List<String> parts = new ArrayList<>();
    details.temperature().map(read -> read.text(visitor.scale())).ifPresent(parts::add);
    details.how().ifPresent(how -> parts.add(visitor.say("how." + how.text())));
    details.place().ifPresent(parts::add);
    details
        .air()
        .ifPresent(air -> parts.add(visitor.say("entry.air") + " " + air.text(visitor.scale())));
    details.portions().ifPresent(count -> parts.add(visitor.say("entry.portions") + " " + count));
    details.to().ifPresent(to -> parts.add(visitor.say("entry.to") + " " + Isolated.of(to)));
    details.until().ifPresent(until -> parts.add(mark(until)));
    details.container().map(visitor.language()::named).ifPresent(parts::add);
    details.depth().ifPresent(depth -> parts.add(depth.text() + " " + visitor.say("entry.deep")));
    details.probe().ifPresent(probe -> parts.add(visitor.say("entry.probe") + " " + probe));
    entry.note().ifPresent(parts::add);
    return parts;
  }

  private String mark(Mark until) {
    return until instanceof Mark.Day day
        ? desk.times(visitor).day(day.date())
        : desk.moment(((Mark.Time) until).at(), visitor);
  }

  /** A reading of a place that the lot was in. */
  String text(PlaceReading reading) {
    LogEntry shown = reading.standing().orElse(reading.written());
    String words = reading.standing().isPresent() ? text(shown) : visitor.say("lot.void");
    return desk.moment(shown.happenedAt(), visitor) + ": " + words;
  }
}
