package chillwright.service;

import chillwright.core.kitchen.KnownPlace;
import chillwright.core.kitchen.PlaceLimit;
import chillwright.core.log.Corrections;
import chillwright.core.log.EntryId;
import chillwright.core.log.How;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Word;
import chillwright.core.rules.RuleSet;
import chillwright.storage.PlaceStore;
import chillwright.storage.Session;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Readings of refrigerators, freezers, hot-holding units and counters. */
public final class Places {
  private static final String READINGS = "readings";

  /** So many entries of a place tell how it stands. */
  private static final int LATEST = 2 * KnownPlace.MOST_ROUNDS;

  /** More readings are no record that anybody reads. */
  private static final int MOST_LOOKED_AT = 5000;

  private final Kitchen kitchen;

  Places(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /**
   * A reading of a place.
   *
   * @param written as it was written
   * @param corrections of it, in the order of writing
   * @param standing with the corrections applied; empty if one of them voids it
   */
  public record PlaceReading(
      LogEntry written, List<LogEntry> corrections, Optional<LogEntry> standing) {
    public PlaceReading {
      corrections = List.copyOf(corrections);
    }
  }

  /** Readings between two moments, both included, the newest first. */
  public Page<PlaceReading> readings(
      Optional<String> place, Optional<Instant> from, Optional<Instant> to, Page.Wanted wanted) {
    return kitchen
        .database()
        .read(
            session -> {
              PlaceStore.Filter filter =
                  new PlaceStore.Filter(
                      place.map(name -> SpelledPlaces.named(session, name)),
                      from.orElse(Instant.EPOCH),
                      to.orElse(Instant.ofEpochMilli(Long.MAX_VALUE)));
              return Cursors.page(
                  READINGS,
                  session
                      .places()
                      .readings(filter, wanted.limit(), Cursors.position(READINGS, wanted)),
                  written -> corrected(session, written));
            });
  }

  static List<PlaceReading> corrected(Session session, List<LogEntry> written) {
    return corrected(session, written, Instant.MAX);
  }

  /** The same with what had been corrected at a moment. */
  static List<PlaceReading> corrected(Session session, List<LogEntry> written, Instant asOf) {
    List<LogEntry> corrections =
        session.places().corrections(written.stream().map(LogEntry::id).toList()).stream()
            .filter(correction -> !correction.writtenAt().isAfter(asOf))
            .toList();
    return written.stream().map(reading -> corrected(reading, corrections)).toList();
  }

  private static PlaceReading corrected(LogEntry reading, List<LogEntry> corrections) {
    Set<EntryId> chain = new HashSet<>(Set.of(reading.id()));
    List<LogEntry> own = new ArrayList<>();
    for (LogEntry correction : corrections) {
      if (chain.contains(correction.corrects().orElseThrow())) {
        chain.add(correction.id());
        own.add(correction);
      }
    }
    List<LogEntry> all = new ArrayList<>(own);
    all.add(0, reading);
    return new PlaceReading(reading, own, Corrections.applied(all).stream().findFirst());
  }

  /**
   * Places that the kitchen has named and that read beyond their limit with nothing done about it
   * until a moment, by what had been written until then; by name. That a place reads well again
   * says nothing of what was done: it stays owed until that is logged, or the reading is corrected.
   */
  public List<Day.PlaceRound> unanswered(Instant asOf) {
    RuleSet rules = rules(asOf);
    return kitchen
        .database()
        .read(
            session ->
                session.setUp().places().stream()
                    .flatMap(place -> unanswered(session, place, rules, asOf).stream())
                    .toList());
  }

  private static Optional<Day.PlaceRound> unanswered(
      Session session, KnownPlace place, RuleSet rules, Instant asOf) {
    List<LogEntry> standing = standing(session, place.name(), asOf);
    Optional<PlaceLimit> limit = PlaceLimit.of(place, rules);
    // Newest first: what was done after a reading answers it.
    return standing.stream()
        .takeWhile(entry -> !isAct(entry))
        .filter(entry -> entry.temperature().isPresent())
        .filter(entry -> PlaceTrouble.isBeyond(place, limit, entry))
        .findFirst()
        .map(
            newest ->
                new Day.PlaceRound(
                    place.name(),
                    Optional.of(place),
                    limit,
                    Optional.of(newest),
                    0,
                    List.of(),
                    false,
                    List.of()));
  }

  /** Whether something was done about a reading: that a place is not in use tells of none. */
  static boolean isAct(LogEntry entry) {
    return entry.word() == Word.ACTION && !entry.is(How.NOT_IN_USE);
  }

  /** What stood of a place at a moment, the newest first. */
  private static List<LogEntry> standing(Session session, String place, Instant asOf) {
    PlaceStore.Filter filter = new PlaceStore.Filter(Optional.of(place), Instant.EPOCH, asOf);
    List<LogEntry> known =
        session.places().readings(filter, LATEST, Optional.empty()).items().stream()
            .filter(entry -> !entry.writtenAt().isAfter(asOf))
            .toList();
    return corrected(session, known, asOf).stream()
        .flatMap(reading -> reading.standing().stream())
        .toList();
  }

  /**
   * The times in a period in which a place was beyond its limit, each from the first such reading
   * to the last before one that is within again, the oldest first. What a freezer reads above its
   * figure of quality is none, until food in it may thaw.
   */
  public Troubles troubles(Instant from, Instant to) {
    List<LogEntry> standing = new ArrayList<>();
    Optional<String> next = Optional.empty();
    do {
      Page<PlaceReading> page =
          readings(
              Optional.empty(),
              Optional.of(from),
              Optional.of(to),
              new Page.Wanted(Page.MOST, next));
      page.items().forEach(reading -> reading.standing().ifPresent(standing::add));
      next = page.next();
    } while (next.isPresent() && standing.size() < MOST_LOOKED_AT);
    Map<String, List<LogEntry>> byPlace =
        standing.stream()
            .sorted(Comparator.comparing(LogEntry::happenedAt))
            .collect(Collectors.groupingBy(entry -> entry.details().place().orElse("")));
    List<PlaceTrouble> troubles =
        kitchen.setUp().places().stream()
            .flatMap(place -> troubles(place, byPlace.getOrDefault(place.name(), List.of())))
            .sorted(Comparator.comparing(PlaceTrouble::began))
            .toList();
    return new Troubles(troubles, next.isPresent());
  }

  /**
   * What was beyond limits in a period.
   *
   * @param isCut whether only the newest readings were looked at
   */
  public record Troubles(List<PlaceTrouble> items, boolean isCut) {
    public Troubles {
      items = List.copyOf(items);
    }
  }

  /** Of one place, whose entries stand in order of time. */
  private Stream<PlaceTrouble> troubles(KnownPlace place, List<LogEntry> entries) {
    List<PlaceTrouble> troubles = new ArrayList<>();
    Optional<PlaceTrouble> open = Optional.empty();
    for (LogEntry entry : entries) {
      if (isAct(entry)) {
        open = open.map(trouble -> trouble.with(entry));
        troubles.replaceAll(ended -> ended.acts().isEmpty() ? ended.with(entry) : ended);
      } else if (entry.temperature().isPresent()) {
        Optional<PlaceLimit> limit = PlaceLimit.of(place, rules(entry.happenedAt()));
        if (PlaceTrouble.isBeyond(place, limit, entry)) {
          open = Optional.of(open.orElse(PlaceTrouble.none(place, limit)).with(entry));
        } else {
          open.map(trouble -> trouble.endedBy(entry)).ifPresent(troubles::add);
          open = Optional.empty();
        }
      }
    }
    open.ifPresent(troubles::add);
    return troubles.stream();
  }

  private RuleSet rules(Instant at) {
    return kitchen.judge().book().on(LocalDate.ofInstant(at, kitchen.zone()));
  }
}
