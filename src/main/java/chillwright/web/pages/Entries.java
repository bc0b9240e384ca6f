package chillwright.web.pages;

import chillwright.core.log.Corrections;
import chillwright.core.log.Details;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Mark;
import chillwright.core.log.Word;
import chillwright.service.LotView;
import chillwright.service.Places.PlaceReading;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Entries in words, the corrected ones with what they said before. */
final class Entries {
  private static final String COUNTED = "word.counted";

  private final Desk desk;
  private final Visitor visitor;
  private final List<LogEntry> all;
  private final String code;
  private final Set<String> made;

  /** What the first row of a part is called, where the log was told nothing of cooling. */
  private final Optional<String> begun;

  private Entries(
      Desk desk,
      Visitor visitor,
      List<LogEntry> all,
      String code,
      Collection<LotId> made,
      Optional<String> begun) {
    this.begun = begun;
    this.desk = desk;
    this.visitor = visitor;
    this.all = all;
    this.code = code;
    this.made = made.stream().map(LotId::text).collect(Collectors.toSet());
  }

  /** Of no lot. */
  Entries(Desk desk, Visitor visitor) {
    this(desk, visitor, List.of(), "", List.of(), Optional.empty());
  }

  /** Entries of the lot as they were written, corrections included. */
  Entries(Desk desk, Visitor visitor, LotView view) {
    this(desk, visitor, view.entries(), view.state().lot().text(), view.descendants(), begun(view));
  }

  /**
   * A part of what was cooked begins with a row of cooling that the form wrote. Of food that needs
   * no cold nobody said so: at the same moment it was cooked, later it was divided off.
   */
  private static Optional<String> begun(LotView view) {
    Optional<LogEntry> first = view.entries().stream().findFirst();
    if (view.sources().size() != 1 || first.filter(Entries::isPlainCooling).isEmpty()) {
      return Optional.empty();
    }
    Instant moment = first.get().happenedAt();
    return view
        .judged()
        .filter(judged -> !judged.timeline().food().category().tcs())
        .map(judged -> judged.timeline().entries())
        .orElse(List.of())
        .stream()
        .filter(entry -> !entry.id().equals(first.get().id()))
        .filter(entry -> !entry.happenedAt().isAfter(moment))
        .filter(entry -> entry.word().phase().isPresent())
        .reduce((before, last) -> last)
        .filter(last -> last.word() == Word.COOKED || last.word() == Word.PREPARED)
        .map(last -> last.happenedAt().equals(moment) ? title(last) : "word.divided-off");
  }

  private static boolean isPlainCooling(LogEntry entry) {
    return entry.word() == Word.COOLING && entry.temperature().isEmpty();
  }

  /**
   * What happened last stands first, and what was divided at once is one; corrections stand beside
   * what they correct.
   */
  List<LotPageView.Entry> shown() {
    List<LotPageView.Entry> shown = new ArrayList<>();
    List<LogEntry> parted = new ArrayList<>();
    for (LogEntry entry : ordered()) {
      boolean isMore = isPlainlyDivided(entry);
      if (isMore && !parted.isEmpty() && isAtOnce(parted.get(0), entry)) {
        parted.add(entry);
        shown.set(0, divided(parted));
        continue;
      }
      parted.clear();
      if (isMore) {
        parted.add(entry);
      }
      shown.add(0, shown(entry));
    }
    return shown;
  }

  private boolean isPlainlyDivided(LogEntry entry) {
    return isDivided(entry)
        && entry.note().isEmpty()
        && all.stream().noneMatch(other -> other.corrects().equals(Optional.of(entry.id())));
  }

  private static boolean isAtOnce(LogEntry one, LogEntry other) {
    return one.happenedAt().equals(other.happenedAt())
        && one.by().equals(other.by())
        && one.details().portions().equals(other.details().portions());
  }

  /** One line for all of them, with each behind it. */
  private LotPageView.Entry divided(List<LogEntry> parts) {
    LogEntry first = parts.get(0);
    String into =
        PartCodes.inShort(parts.stream().map(part -> part.details().to().orElseThrow()).toList());
    List<String> says = new ArrayList<>(List.of(visitor.say("entry.into", into)));
    if (first.details().portions().isPresent()) {
      says.add(visitor.say("entry.each", first.details().portions().getAsInt()));
    }
    first.by().ifPresent(says::add);
    return shown(first).over(String.join(", ", says), parts.stream().map(this::shown).toList());
  }

  /** Each by itself, the newest first. */
  List<LotPageView.Entry> each() {
    List<LotPageView.Entry> shown = new ArrayList<>();
    ordered().forEach(entry -> shown.add(0, shown(entry)));
    return shown;
  }

  private List<LogEntry> ordered() {
    return all.stream()
        .filter(entry -> entry.word() != Word.CORRECTION)
        .sorted(Comparator.comparing(this::happenedAt))
        .toList();
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
        titled(standing.orElse(entry)),
        now,
        corrections.isEmpty() ? "" : visitor.say("lot.was", text(entry)),
        corrections.stream().map(this::why).collect(Collectors.joining("; ")),
        standing.flatMap(LogEntry::temperature).map(read -> read.text(visitor.scale())).orElse(""),
        standing.isPresent(),
        List.of());
  }

  /** The same of this lot: what went into a part of it was divided. */
  String titled(LogEntry entry) {
    boolean isFirst = !all.isEmpty() && all.get(0).id().equals(entry.id());
    return isFirst && begun.isPresent() && isPlainCooling(entry)
        ? begun.get()
        : isDivided(entry) ? "word.divided" : title(entry);
  }

  private boolean isDivided(LogEntry entry) {
    return entry.word() == Word.PORTIONS
        && entry.details().to().filter(made::contains).stream()
            .anyMatch(to -> to.startsWith(code + "-"));
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
    Optional<String> into = details.to().filter(made::contains);
    into.ifPresent(to -> parts.add(visitor.say("entry.into", to)));
    details.portions().ifPresent(count -> parts.add(visitor.say("entry.portions") + " " + count));
    details
        .to()
        .filter(to -> into.isEmpty())
        .ifPresent(to -> parts.add(visitor.say("entry.to") + " " + Isolated.of(to)));
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
