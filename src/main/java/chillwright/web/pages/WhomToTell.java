package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.log.Folded;
import chillwright.core.log.HandOut;
import chillwright.core.log.HandOut.Kind;
import chillwright.core.log.LogEntry;
import chillwright.service.Recall.Recalled;
import chillwright.service.Tracing.Traced;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Everybody who got some of what was traced, once each, with what and when. */
final class WhomToTell {
  /** More names are no list that anybody reads; the table has them all. */
  private static final int SHOWN = 500;

  private final Desk desk;
  private final Visitor visitor;

  WhomToTell(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
  }

  /** Portions that somebody got. */
  private record Gift(Traced lot, HandOut out, Optional<Recalled> recalled) {
    Optional<String> who() {
      return out.entry().details().to();
    }

    Instant when() {
      return out.entry().happenedAt();
    }

    boolean recalled(Predicate<Recalled> is) {
      return recalled.filter(is).isPresent();
    }

    boolean isCertain() {
      return recalled.filter(of -> !of.bears()).isEmpty();
    }

    int portions() {
      return out.entry().details().portions().orElse(0);
    }
  }

  /**
   * Somebody who got some, in all.
   *
   * @param name blank for what was taken with nobody named
   * @param last when that was for the last time
   * @param isCertain whether any of it bears for certain what was asked for
   * @param isEarly whether any of it left before its labels named that
   * @param isUnnamed whether any of it left with labels that did not name that
   */
  record Receiver(
      String name,
      List<String> lots,
      List<String> foods,
      int portions,
      Instant last,
      boolean isCertain,
      boolean isEarly,
      boolean isUnnamed) {
    private static Receiver of(List<Gift> gifts) {
      return new Receiver(
          gifts.get(0).who().orElse(""),
          gifts.stream().map(gift -> gift.lot().lot().lot().text()).distinct().toList(),
          gifts.stream().map(gift -> gift.lot().lot().food()).distinct().toList(),
          gifts.stream().mapToInt(Gift::portions).sum(),
          gifts.stream().map(Gift::when).max(Comparator.naturalOrder()).orElseThrow(),
          gifts.stream().anyMatch(Gift::isCertain),
          gifts.stream().anyMatch(gift -> gift.recalled(of -> of.isBeforeNaming(gift.when()))),
          gifts.stream().anyMatch(gift -> gift.recalled(of -> of.isUnnamed(gift.out()))));
    }
  }

  /** All of them, in the order in which they are told; last what nobody is named for. */
  static List<Receiver> receivers(TraceAsked asked) {
    if (asked.given().containsKey(TraceAsked.TO)) {
      return List.of();
    }
    List<Gift> gifts = gifts(asked);
    List<Receiver> all = new ArrayList<>();
    byName(gifts).forEach(of -> all.add(Receiver.of(of)));
    List<Gift> unnamed = gifts.stream().filter(gift -> gift.who().isEmpty()).toList();
    if (!unnamed.isEmpty()) {
      all.add(Receiver.of(unnamed));
    }
    return all;
  }

  /**
   * Those who are named, first who got what bears it for certain; then what nobody is named for.
   */
  List<TraceView.Told> of(TraceAsked asked) {
    if (asked.given().containsKey(TraceAsked.TO)) {
      return List.of();
    }
    List<Gift> gifts = gifts(asked);
    List<TraceView.Told> told = new ArrayList<>(named(gifts));
    List<Gift> unnamed = gifts.stream().filter(gift -> gift.who().isEmpty()).toList();
    if (!unnamed.isEmpty()) {
      told.add(nobody(unnamed));
    }
    return told;
  }

  private static List<Gift> gifts(TraceAsked asked) {
    List<Gift> gifts = new ArrayList<>();
    asked.trace().stream()
        .flatMap(trace -> trace.lots().stream())
        .forEach(lot -> add(lot, Optional.empty(), gifts));
    asked.recall().stream()
        .flatMap(recall -> Stream.of(recall.bearing(), recall.unsure()))
        .flatMap(List::stream)
        .forEach(lot -> add(lot.traced(), Optional.of(lot), gifts));
    return gifts;
  }

  /** What was thrown away nobody got. */
  private static void add(Traced lot, Optional<Recalled> recalled, List<Gift> gifts) {
    lot.handOuts().stream()
        .filter(out -> out.isGiven() && out.kind() != Kind.DISCARDED)
        .forEach(out -> gifts.add(new Gift(lot, out, recalled)));
  }

  /** By name, first who got what bears it for certain. */
  private static List<List<Gift>> byName(List<Gift> gifts) {
    Map<String, List<Gift>> byName = new LinkedHashMap<>();
    for (Gift gift : gifts) {
      gift.who()
          .map(Folded::of)
          .ifPresent(who -> byName.computeIfAbsent(who, name -> new ArrayList<>()).add(gift));
    }
    return byName.entrySet().stream()
        .sorted(
            Comparator.comparing(
                    (Map.Entry<String, List<Gift>> one) ->
                        one.getValue().stream().noneMatch(Gift::isCertain))
                .thenComparing(Map.Entry::getKey))
        .map(Map.Entry::getValue)
        .toList();
  }

  private List<TraceView.Told> named(List<Gift> gifts) {
    List<List<Gift>> byName = byName(gifts);
    List<TraceView.Told> told = new ArrayList<>();
    byName.stream().limit(SHOWN).forEach(one -> told.add(told(one)));
    if (byName.size() > SHOWN) {
      told.add(
          new TraceView.Told(visitor.say("trace.tell.more", byName.size() - SHOWN), List.of()));
    }
    return told;
  }

  private TraceView.Told told(List<Gift> gifts) {
    return new TraceView.Told(
        Isolated.of(gifts.get(0).who().orElseThrow()),
        gifts.stream()
            .sorted(Comparator.comparing((Gift gift) -> gift.out().entry().happenedAt()))
            .map(this::line)
            .toList());
  }

  private String line(Gift gift) {
    LogEntry entry = gift.out().entry();
    String early =
        gift.recalled().map(of -> new RecallWords(desk, visitor).early(of, gift.out())).orElse("");
    String amount =
        entry.details().portions().isPresent()
            ? visitor.say("trace.tell.portions", gift.portions())
            : visitor.say("trace.tell.uncounted");
    String when = desk.moment(entry.happenedAt(), visitor);
    return when + ": " + what(gift) + ", " + amount + early + unsure(gift);
  }

  private static String what(Gift gift) {
    LotState lot = gift.lot().lot();
    return Isolated.of(lot.food()) + " (" + lot.lot() + ")";
  }

  private String unsure(Gift gift) {
    return gift.isCertain() ? "" : " \u2013 " + visitor.say("trace.tell.unsure");
  }

  /** Counted by lots: a counter hands out more often than anybody reads. */
  private TraceView.Told nobody(List<Gift> gifts) {
    Map<String, Integer> byLot = new LinkedHashMap<>();
    for (Gift gift : gifts) {
      byLot.merge(what(gift) + "\n" + unsure(gift), gift.portions(), Integer::sum);
    }
    List<String> lines = new ArrayList<>();
    byLot.forEach(
        (lot, portions) ->
            lines.add(lot.replace("\n", ", " + visitor.say("trace.tell.portions", portions))));
    long uncounted =
        gifts.stream().filter(g -> g.out().entry().details().portions().isEmpty()).count();
    int portions = gifts.stream().mapToInt(Gift::portions).sum();
    return new TraceView.Told(
        visitor.say("trace.tell.nobody", portions, gifts.size(), uncounted), lines);
  }
}
