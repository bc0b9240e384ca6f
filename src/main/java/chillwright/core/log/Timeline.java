package chillwright.core.log;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The life of one lot in order of time: corrections applied, with what it inherits from the lot it
 * was divided from, and the timelines of the lots it was made of, each cut at the moment of use.
 *
 * @param inherited entries of the lot this one was divided from, up to the division
 * @param own this lot's own entries; never empty
 * @param sources what it was made of; empty for food made from scratch or divided from one lot that
 *     was
 * @param corrected the inherited and own entries that do not stand as they were written
 * @param entries inherited and own entries in order of time; those of one moment in order of
 *     writing, a row with what was read right after it
 * @param portions how many portions were made and are left
 */
public record Timeline(
    LotId lot,
    Food food,
    ZoneId zone,
    List<LogEntry> inherited,
    List<LogEntry> own,
    List<Timeline> sources,
    Set<EntryId> corrected,
    List<LogEntry> entries,
    Portions portions) {
  /** A first row of these words means made of its sources; any other word means divided. */
  static final Set<Word> MADE = EnumSet.of(Word.COOKED, Word.PREPARED);

  /** Rows that tell of portions that left the source, not of the food that moved on. */
  private static final Set<Word> NOT_INHERITED =
      EnumSet.of(Word.PORTIONS, Word.SERVED, Word.DISCARDED, Word.ACTION);

  public Timeline {
    inherited = List.copyOf(inherited);
    own = List.copyOf(own);
    sources = List.copyOf(sources);
    corrected = Set.copyOf(corrected);
    entries = List.copyOf(entries);
    if (own.isEmpty()) {
      throw new IllegalArgumentException("a timeline needs an entry of its own: " + lot);
    }
  }

  /** A timeline of its own and inherited entries, each in order of time. */
  public Timeline(
      LotId lot,
      Food food,
      ZoneId zone,
      List<LogEntry> inherited,
      List<LogEntry> own,
      List<Timeline> sources,
      Set<EntryId> corrected) {
    this(
        lot,
        food,
        zone,
        inherited,
        own,
        sources,
        corrected,
        together(inherited, own),
        Portions.of(own));
  }

  private static List<LogEntry> together(List<LogEntry> inherited, List<LogEntry> own) {
    return figured(
        inherited.isEmpty()
            ? own
            : Stream.concat(inherited.stream(), own.stream())
                .sorted(Comparator.comparing(LogEntry::happenedAt))
                .toList());
  }

  /** What is read right after a row without a figure, in the same minute, is what the row read. */
  private static List<LogEntry> figured(List<LogEntry> entries) {
    List<LogEntry> figured = new ArrayList<>(entries);
    for (int i = 0; i + 1 < entries.size(); i++) {
      LogEntry row = entries.get(i);
      LogEntry next = entries.get(i + 1);
      boolean isMarked = row.word().phase().isPresent() && !Portions.isOutgoing(row.word());
      boolean isAtOnce = next.word() == Word.READING && next.happenedAt().equals(row.happenedAt());
      if (isMarked && row.temperature().isEmpty() && isAtOnce && next.temperature().isPresent()) {
        figured.set(i, row.with(row.details().reading(next.temperature().get())));
      }
    }
    return figured;
  }

  /**
   * The timeline of a lot as of a moment: entries and corrections that happened later are left out.
   *
   * @return empty if nothing of the lot had happened by then
   * @throws IllegalArgumentException if the category is not in the keeping list, or a lot names no
   *     food and has no single source to take it over from
   */
  public static Optional<Timeline> of(LotLog log, KeepingList keeping, ZoneId zone, Instant asOf) {
    return of(log, keeping, zone, new Cut(asOf, asOf));
  }

  /**
   * What is left out of a timeline.
   *
   * @param happened facts that happened later; of a source, those after it was used
   * @param corrected corrections written later: one that comes after a source was used still
   *     counts, since it tells what had been so all along
   */
  private record Cut(Instant happened, Instant corrected) {
    boolean keepsAll() {
      return happened.equals(Instant.MAX) && corrected.equals(Instant.MAX);
    }

    boolean keeps(LogEntry entry) {
      Instant last = entry.word() == Word.CORRECTION ? corrected : happened;
      return !entry.happenedAt().isAfter(last);
    }
  }

  private static Optional<Timeline> of(LotLog log, KeepingList keeping, ZoneId zone, Cut cut) {
    List<LogEntry> known =
        cut.keepsAll() ? log.entries() : log.entries().stream().filter(cut::keeps).toList();
    List<LogEntry> own = inOrder(Corrections.applied(known));
    if (own.isEmpty()) {
      return Optional.empty();
    }
    LogEntry first = firstRow(log, own);
    Instant used = earlier(cut.happened(), first.happenedAt());
    List<Timeline> sources = sourcesOf(log, keeping, zone, new Cut(used, cut.corrected()));
    Food food = foodOf(first, sources, keeping);
    Set<EntryId> corrected = corrected(known, own);
    if (!isDivided(first, sources)) {
      return Optional.of(new Timeline(log.lot(), food, zone, List.of(), own, sources, corrected));
    }
    Timeline source = sources.get(0);
    List<LogEntry> inherited =
        source.entries().stream().filter(e -> !NOT_INHERITED.contains(e.word())).toList();
    corrected.addAll(source.corrected());
    return Optional.of(
        new Timeline(log.lot(), food, zone, inherited, own, source.sources(), corrected));
  }

  /** Sorted by time; most logs are written so. */
  private static List<LogEntry> inOrder(List<LogEntry> entries) {
    for (int i = 1; i < entries.size(); i++) {
      if (entries.get(i).happenedAt().isBefore(entries.get(i - 1).happenedAt())) {
        return entries.stream().sorted(Comparator.comparing(LogEntry::happenedAt)).toList();
      }
    }
    return entries;
  }

  /** The entries that stand, but were not written so. */
  private static Set<EntryId> corrected(List<LogEntry> written, List<LogEntry> standing) {
    Set<EntryId> corrected = new HashSet<>();
    if (written.stream().anyMatch(entry -> entry.word() == Word.CORRECTION)) {
      Set<LogEntry> asWritten = new HashSet<>(written);
      standing.stream()
          .filter(entry -> !asWritten.contains(entry))
          .forEach(entry -> corrected.add(entry.id()));
    }
    return corrected;
  }

  /** Whether an entry of this lot, or of one it came from, stands otherwise than written. */
  public boolean isCorrected(EntryId entry) {
    return corrected.contains(entry)
        || sources.stream().anyMatch(source -> source.isCorrected(entry));
  }

  /** The row that names food, category and sources: the first that was written, corrected. */
  private static LogEntry firstRow(LotLog log, List<LogEntry> standing) {
    LogEntry written = log.entries().get(0);
    return standing.stream()
        .filter(entry -> entry.id().equals(written.id()))
        .findFirst()
        .orElse(written);
  }

  private static List<Timeline> sourcesOf(LotLog log, KeepingList keeping, ZoneId zone, Cut cut) {
    return log.sources().stream()
        .map(source -> Timeline.of(source, keeping, zone, cut))
        .flatMap(Optional::stream)
        .toList();
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }

  private static boolean isDivided(LogEntry first, List<Timeline> sources) {
    return sources.size() == 1 && !MADE.contains(first.word());
  }

  private static Food foodOf(LogEntry first, List<Timeline> sources, KeepingList keeping) {
    Optional<Food> source =
        sources.size() == 1 ? Optional.of(sources.get(0).food()) : Optional.empty();
    String name =
        first
            .details()
            .food()
            .or(() -> source.map(Food::name))
            .orElseThrow(() -> new IllegalArgumentException("no food named: " + first.id()));
    Category category =
        first
            .details()
            .category()
            .map(key -> keeping.category(key).orElseThrow(() -> unknown(key)))
            .or(() -> source.map(Food::category))
            .orElseThrow(() -> new IllegalArgumentException("no category: " + first.id()));
    return new Food(name, needsCold(first, sources).filter(c -> !category.tcs()).orElse(category));
  }

  /** What needs the cold needs it in whatever is made of it without cooking, under any name. */
  private static Optional<Category> needsCold(LogEntry first, List<Timeline> sources) {
    return first.word() == Word.COOKED
        ? Optional.empty()
        : sources.stream()
            .map(source -> source.food().category())
            .filter(Category::tcs)
            .findFirst();
  }

  private static IllegalArgumentException unknown(String key) {
    return new IllegalArgumentException("not in the keeping list: " + key);
  }

  /** When this lot came into being as a lot of its own. */
  public Instant beganAt() {
    return own.get(0).happenedAt();
  }

  /** The local day of a moment in the kitchen's zone. */
  public LocalDate day(Instant moment) {
    return LocalDate.ofInstant(moment, zone);
  }

  /**
   * Where the lot stands after its last entry. Food that needs no cold is not called cooling,
   * though the row of a part says so: there is no limit that it cools to.
   */
  public Phase phase() {
    if (closedAt().isPresent()) {
      return closingPhase(closedAt().get());
    }
    Phase phase = lastPhase(own).or(() -> lastPhase(inherited)).orElse(Phase.PREPARED);
    return phase == Phase.COOLING && !food.category().tcs() ? madeAs() : phase;
  }

  private Phase madeAs() {
    return entries().stream().anyMatch(entry -> entry.word() == Word.PREPARED)
        ? Phase.PREPARED
        : Phase.COOKED;
  }

  /** Told by the row that closed the lot, the last of that moment. */
  private Phase closingPhase(Instant closed) {
    List<LogEntry> closing =
        own.stream()
            .filter(entry -> Portions.isOutgoing(entry.word()))
            .filter(entry -> entry.happenedAt().equals(closed))
            .toList();
    if (closing.stream().anyMatch(entry -> entry.word() == Word.DISCARDED)) {
      return Phase.DISCARDED;
    }
    LogEntry last = closing.get(closing.size() - 1);
    if (last.word() == Word.SERVED) {
      return Phase.SERVED;
    }
    if (last.is(How.COUNTED)) {
      return Phase.COUNTED_OUT;
    }
    boolean isBack =
        last.details()
            .to()
            .filter(to -> own.stream().anyMatch(entry -> namesSource(entry, to)))
            .isPresent();
    return isBack ? Phase.PUT_BACK : Phase.USED_UP;
  }

  private static boolean namesSource(LogEntry entry, String lot) {
    return entry.details().from().stream().anyMatch(source -> source.text().equals(lot));
  }

  private static Optional<Phase> lastPhase(List<LogEntry> entries) {
    for (int i = entries.size() - 1; i >= 0; i--) {
      LogEntry entry = entries.get(i);
      boolean onlySome =
          Portions.isOutgoing(entry.word()) && entry.details().portions().isPresent();
      if (!onlySome && entry.word().phase().isPresent()) {
        return entry.word().phase();
      }
    }
    return Optional.empty();
  }

  /** When the lot left the kitchen's hands; empty while it is on hand. */
  public Optional<Instant> closedAt() {
    return portions.closedAt();
  }
}
