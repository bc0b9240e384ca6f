package chillwright.core.log;

import chillwright.core.log.IntakeFaults.Fault;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Follows lots to the lots they came from, new and stored ones together: an unknown source, a lot
 * that leads back to itself, a source that was not there yet or no longer. A source may stand later
 * in the input than the lot made of it.
 */
final class Lineage {
  /** How many generations a lot may lead back, and how many lots along all its lines. */
  static final int MOST_GENERATIONS = 100;

  static final long MOST_LOTS = 10_000;

  private final Stored stored;
  private final Map<LotId, LotDraft> drafts;
  private final IntakeFaults faults;
  private final Map<LotId, Descent> descents = new LinkedHashMap<>();

  Lineage(Stored stored, Map<LotId, LotDraft> drafts, Instant writtenAt, IntakeFaults faults) {
    this.stored = stored;
    this.drafts = drafts;
    this.faults = faults;
    for (LotDraft draft : drafts.values()) {
      descents.put(draft.id(), Descent.of(draft.id(), draft.entries(writtenAt), draft.firstId()));
    }
    List.copyOf(descents.values()).forEach(this::addSources);
  }

  /** The lots of the input and all stored lots they lead back to. */
  Map<LotId, Descent> descents() {
    return descents;
  }

  private void addSources(Descent descent) {
    for (LotId source : descent.sources()) {
      if (!descents.containsKey(source)) {
        stored.lot(source).ifPresent(this::addStored);
      }
    }
  }

  private void addStored(LotLog found) {
    Deque<LotLog> open = new ArrayDeque<>(List.of(found));
    while (!open.isEmpty()) {
      LotLog log = open.pop();
      if (!descents.containsKey(log.lot())) {
        descents.put(log.lot(), Descent.of(log));
        open.addAll(log.sources());
      }
    }
  }

  /** Notes what is wrong with the sources of the lots in the input. */
  void check() {
    for (LotDraft draft : drafts.values()) {
      Descent descent = descents.get(draft.id());
      for (LotId source : descent.sources()) {
        checkSource(draft, descent, source);
      }
    }
  }

  private void checkSource(LotDraft draft, Descent descent, LotId source) {
    if (source.equals(draft.id())) {
      refuse(
          draft,
          new Fault(
              "source-itself",
              source.text(),
              "other lots",
              "Lot %s cannot come from itself.".formatted(source)));
    } else if (!descents.containsKey(source)) {
      refuse(
          draft,
          new Fault(
              "unknown-source",
              source.text(),
              "lots that are stored or stand in the same input",
              ("There is no lot %s. If this one came from it, give the log of that one, too. "
                      + "Else check the code; several lots are separated by a space.")
                  .formatted(source)));
    } else if (isWhole(source) && descent.used().isPresent()) {
      checkTimes(draft, descents.get(source), descent.used().get());
    }
  }

  private boolean isWhole(LotId source) {
    return !drafts.containsKey(source) || drafts.get(source).isComplete();
  }

  private void checkTimes(LotDraft draft, Descent source, Instant used) {
    if (source.began().filter(began -> began.isAfter(used)).isPresent()) {
      refuse(
          draft,
          new Fault(
              "source-later",
              source.lot().text(),
              "lots that were there when this one began",
              "Lot %s began on %s, but its source %s only on %s. Check the times."
                  .formatted(
                      draft.id(),
                      faults.text(used),
                      source.lot(),
                      faults.text(source.began().get()))));
      return;
    }
    Optional<Instant> thrown = source.thrownAway(Optional.of(draft.id()));
    if (thrown.filter(at -> at.isBefore(used)).isPresent()) {
      refuse(
          draft,
          new Fault(
              "source-discarded",
              source.lot().text(),
              "lots of which something was left when this one began",
              "Lot %s began on %s, but all of its source %s was discarded on %s. Check the times."
                  .formatted(
                      draft.id(), faults.text(used), source.lot(), faults.text(thrown.get()))));
    }
  }

  /** Notes the fault at the row that names the sources; stored lots are not judged again. */
  private void refuse(LotDraft draft, Fault fault) {
    Optional<NewRow> naming =
        draft
            .newFirst()
            .filter(first -> !first.details().from().isEmpty())
            .or(
                () ->
                    draft.rows().stream()
                        .filter(row -> row.isCorrection() && !row.details().from().isEmpty())
                        .reduce((earlier, later) -> later));
    if (naming.isPresent()) {
      draft.blame();
      faults.add(naming.get(), "from", fault);
    }
  }

  /**
   * The good lots with something new, each after its sources. Lots with a fault, and lots that came
   * from such, are left out; lots that lead back to themselves are noted.
   */
  List<Admission.Lot> grown() {
    List<LotId> order = sourcesFirst();
    Map<LotId, LotLog> logs = new HashMap<>();
    Map<LotId, Size> sizes = new HashMap<>();
    List<Admission.Lot> grown = new ArrayList<>();
    for (LotId lot : order) {
      Descent descent = descents.get(lot);
      Size size = Size.of(descent.sources().stream().map(s -> sizes.getOrDefault(s, Size.ONE)));
      sizes.put(lot, size);
      LotDraft draft = drafts.get(lot);
      if (draft != null && size.isTooBig()) {
        refuseTooBig(draft);
      }
      boolean good = draft == null || !draft.isFaulty();
      if (good && logs.keySet().containsAll(descent.sources()) && !descent.entries().isEmpty()) {
        LotLog log =
            new LotLog(lot, descent.entries(), descent.sources().stream().map(logs::get).toList());
        logs.put(lot, log);
        if (draft != null && !draft.rows().isEmpty()) {
          grown.add(new Admission.Lot(log, draft.addedOf(log.entries())));
        }
      }
    }
    return grown;
  }

  /** How many generations a lot leads back, and how many lots it leads to along all lines. */
  private record Size(int generations, long lots) {
    static final Size ONE = new Size(1, 1);

    static Size of(Stream<Size> sources) {
      return sources.reduce(
          ONE,
          (sum, source) ->
              new Size(
                  Math.max(sum.generations, source.generations + 1),
                  Math.min(MOST_LOTS + 1, sum.lots + source.lots)));
    }

    boolean isTooBig() {
      return generations > MOST_GENERATIONS || lots > MOST_LOTS;
    }
  }

  private void refuseTooBig(LotDraft draft) {
    refuse(
        draft,
        new Fault(
            "too-many-sources",
            "",
            "at most %d generations and %d lots back".formatted(MOST_GENERATIONS, MOST_LOTS),
            "Lot %s leads back through too many other lots. Begin a fresh lot without the old one."
                .formatted(draft.id())));
  }

  private List<LotId> sourcesFirst() {
    Map<LotId, Integer> open = new HashMap<>();
    Map<LotId, List<LotId>> users = new HashMap<>();
    Deque<LotId> ready = new ArrayDeque<>();
    for (Descent descent : descents.values()) {
      List<LotId> known = knownSources(descent);
      known.forEach(
          source -> users.computeIfAbsent(source, s -> new ArrayList<>()).add(descent.lot()));
      open.put(descent.lot(), known.size());
      if (known.isEmpty()) {
        ready.add(descent.lot());
      }
    }
    List<LotId> order = new ArrayList<>();
    while (!ready.isEmpty()) {
      LotId lot = ready.remove();
      order.add(lot);
      for (LotId user : users.getOrDefault(lot, List.of())) {
        if (open.merge(user, -1, Integer::sum) == 0) {
          ready.add(user);
        }
      }
    }
    noteCircles(order);
    return order;
  }

  private List<LotId> knownSources(Descent descent) {
    return descent.sources().stream().filter(descents::containsKey).toList();
  }

  /**
   * What has no place in the order is in a circle, or came from one; only the former is at fault.
   */
  private void noteCircles(List<LotId> order) {
    Set<LotId> circle = new HashSet<>(descents.keySet());
    circle.removeAll(Set.copyOf(order));
    Set<LotId> used;
    do {
      used =
          circle.stream()
              .flatMap(lot -> descents.get(lot).sources().stream())
              .collect(Collectors.toSet());
    } while (circle.retainAll(used));
    for (LotDraft draft : drafts.values()) {
      if (circle.contains(draft.id()) && !descents.get(draft.id()).sources().contains(draft.id())) {
        refuse(
            draft,
            new Fault(
                "source-circle",
                text(descents.get(draft.id()).sources()),
                "lots that do not come from this one",
                "Lot %s leads back to itself through its sources. Check which came from which."
                    .formatted(draft.id())));
      }
    }
  }

  private static String text(List<LotId> lots) {
    return lots.stream().map(LotId::text).collect(Collectors.joining(" "));
  }
}
