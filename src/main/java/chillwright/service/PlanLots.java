package chillwright.service;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.learning.CoolingRuns;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.core.plan.Progress;
import chillwright.core.plan.Progress.Cools;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Verdict;
import chillwright.service.Plans.LeftOut;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The lots that the dishes of a plan became, and how far these have come. */
final class PlanLots {
  private static final Set<Phase> GONE = EnumSet.of(Phase.SERVED, Phase.DISCARDED);

  private final Kitchen kitchen;

  PlanLots(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** By dish; a lot that was discarded is none, since its dish is to be made again. */
  Map<String, List<LotId>> of(String plan) {
    Map<String, List<LotId>> lots = new HashMap<>();
    kitchen
        .database()
        .read(session -> session.plans().lots(plan))
        .forEach(
            (dish, all) -> {
              List<LotId> kept = all.stream().filter(lot -> !isDiscarded(lot)).toList();
              if (!kept.isEmpty()) {
                lots.put(dish, kept);
              }
            });
    return lots;
  }

  boolean isDiscarded(LotId lot) {
    return kitchen
        .lots()
        .state(lot)
        .flatMap(state -> state.standing())
        .filter(standing -> standing.phase() == Phase.DISCARDED)
        .isPresent();
  }

  /**
   * How far the lots of a dish have come, those of which something is left where any are; empty as
   * each of them is.
   *
   * @param served the day on which it is eaten
   */
  Optional<Progress> progress(List<LotId> lots, LocalDate served) {
    List<Progress> all = lots.stream().flatMap(lot -> progress(lot).stream()).toList();
    List<Progress> there = all.stream().filter(lot -> !lot.keeping().isEmpty()).toList();
    List<Progress> count = there.isEmpty() ? all : there;
    return count.isEmpty() ? Optional.empty() : Optional.of(Progress.ofAll(count, served));
  }

  /** Lots that keep in the refrigerator until a day, where others of the dish were frozen. */
  List<LotId> cold(List<LotId> lots, LocalDate served) {
    boolean isAnyFrozen =
        lots.stream()
            .flatMap(lot -> progress(lot).stream())
            .anyMatch(at -> at.frozen().isPresent());
    return lots.stream()
        .filter(lot -> isAnyFrozen && progress(lot).filter(at -> at.keepsCold(served)).isPresent())
        .toList();
  }

  /**
   * How far a lot has come, with the parts it was divided into; empty until something is written of
   * it, and where all that is left is unfit for use.
   */
  Optional<Progress> progress(LotId lot) {
    Optional<LotView> whole = kitchen.lots().lot(lot);
    Optional<Timeline> own = whole.flatMap(LotView::judged).map(LotView.Judged::timeline);
    if (own.isEmpty()) {
      return Optional.empty();
    }
    List<LotView> known = withParts(whole.get());
    List<LotView> all = known.stream().filter(this::isFit).toList();
    if (all.size() < known.size() && all.stream().noneMatch(PlanLots::isThere)) {
      return Optional.empty();
    }
    List<Progress> parts =
        all.stream()
            .flatMap(part -> part.judged().stream())
            .map(judged -> of(judged, kitchen.now()))
            .toList();
    return Optional.of(
        new Progress(
            own.get().beganAt(),
            parts.stream().flatMap(one -> one.frozen().stream()).min(Comparator.naturalOrder()),
            parts.stream().flatMap(one -> one.takenOut().stream()).min(Comparator.naturalOrder()),
            keeping(all),
            parts.stream().flatMap(part -> part.cools().stream()).distinct().toList()));
  }

  private List<LotView> withParts(LotView whole) {
    List<LotView> all = new ArrayList<>(List.of(whole));
    whole.descendants().stream()
        .flatMap(part -> kitchen.lots().lot(part).stream())
        .filter(part -> part.state().food().equals(whole.state().food()))
        .forEach(all::add);
    return all;
  }

  /** Of a lot and of its parts: two lots that have one of them count the same portions. */
  Set<LotId> codes(LotId lot) {
    return withParts(List.of(lot)).stream()
        .map(part -> part.state().lot())
        .collect(Collectors.toSet());
  }

  private static boolean isThere(LotView part) {
    return part.state().portions().left().orElse(1) > 0
        && part.state().standing().map(at -> !GONE.contains(at.phase())).orElse(true);
  }

  boolean isFit(LotView part) {
    return unfit(part.state().food(), part).isEmpty();
  }

  /** Of lots and their parts, those that are there and unfit for use, each by its own state. */
  List<LeftOut> leftOut(String dish, List<LotId> lots) {
    return withParts(lots).stream().flatMap(part -> unfit(dish, part).stream()).toList();
  }

  /** Each once, also where a part was named beside its whole. */
  private List<LotView> withParts(List<LotId> lots) {
    Map<LotId, LotView> all = new LinkedHashMap<>();
    lots.stream()
        .flatMap(lot -> kitchen.lots().lot(lot).stream())
        .flatMap(whole -> withParts(whole).stream())
        .forEach(part -> all.putIfAbsent(part.state().lot(), part));
    return List.copyOf(all.values());
  }

  /** Why a lot alone serves no dish; empty where it may, and where nothing of it is left. */
  Optional<LeftOut> unfit(String dish, LotView part) {
    Instant now = kitchen.now();
    return Stream.of(part)
        .filter(PlanLots::isThere)
        .flatMap(there -> there.judged().stream())
        .flatMap(is -> Acts.unfit(is.timeline(), is.findings(), is.ruleSet(), now).stream())
        .map(why -> new LeftOut(part.state().lot(), dish, why.at(now) == Verdict.OUT))
        .findFirst();
  }

  /** Of what there is left; of that in the freezer alone, where any is, for it waits there. */
  private static List<Keeping> keeping(List<LotView> parts) {
    List<Standing> there =
        parts.stream()
            .filter(part -> part.state().portions().left().orElse(1) > 0)
            .flatMap(part -> part.state().standing().stream())
            .filter(standing -> !GONE.contains(standing.phase()))
            .toList();
    boolean isFrozen = there.stream().anyMatch(PlanLots::isFrozen);
    return there.stream()
        .filter(standing -> !isFrozen || isFrozen(standing))
        .map(Standing::keeping)
        .toList();
  }

  static boolean isFrozen(LotView part) {
    return part.state().standing().filter(PlanLots::isFrozen).isPresent();
  }

  private static boolean isFrozen(Standing standing) {
    return standing.phase() == Phase.FROZEN;
  }

  /**
   * Portions fit for use of lots and of their parts, once something is written of them; empty where
   * those of a lot are not counted.
   */
  OptionalInt left(List<LotId> lots) {
    List<LotId> begun = lots.stream().filter(lot -> progress(lot).isPresent()).toList();
    boolean isCounted =
        begun.stream()
            .flatMap(lot -> kitchen.lots().state(lot).stream())
            .allMatch(state -> state.portions().left().isPresent());
    return isCounted ? OptionalInt.of(portions(begun, part -> true)) : OptionalInt.empty();
  }

  /** Lots that nothing is written of yet, with the portions they were made known for. */
  Map<LotId, Integer> toCome(List<LotId> lots) {
    Map<LotId, Integer> toCome = new HashMap<>();
    lots.stream()
        .flatMap(lot -> kitchen.lots().state(lot).stream())
        .filter(state -> state.standing().isEmpty())
        .forEach(state -> toCome.put(state.lot(), state.portions().left().orElse(0)));
    return toCome;
  }

  /** Portions fit for use of those lots and parts that are as asked. */
  int portions(List<LotId> lots, Predicate<LotView> asked) {
    return withParts(lots).stream()
        .filter(this::isFit)
        .filter(asked)
        .mapToInt(part -> part.state().portions().left().orElse(0))
        .sum();
  }

  /**
   * The progress of one lot alone, without its days: where a dish did not become it by the button,
   * any lot of that food may serve, and the pull list chooses.
   */
  static Progress of(LotView.Judged judged, Instant now) {
    Timeline timeline = judged.timeline();
    Optional<Instant> frozen = first(timeline, Phase.FROZEN);
    Optional<Instant> thawing =
        first(timeline, Phase.THAWING).or(() -> first(timeline, Phase.REHEATING));
    return new Progress(
        timeline.beganAt(),
        frozen,
        thawing.filter(out -> frozen.isPresent()),
        List.of(),
        judged.findings().stream()
            .filter(found -> CoolingRuns.isCooling(found.rule()))
            .filter(found -> found.at(now) == Verdict.PENDING)
            .flatMap(found -> found.deadline().stream().map(by -> new Cools(found.rule(), by)))
            .toList());
  }

  private static Optional<Instant> first(Timeline timeline, Phase phase) {
    return timeline.entries().stream()
        .filter(entry -> entry.word().phase().filter(phase::equals).isPresent())
        .map(LogEntry::happenedAt)
        .findFirst();
  }
}
