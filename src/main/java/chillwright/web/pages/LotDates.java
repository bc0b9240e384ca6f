package chillwright.web.pages;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.RoomLife;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Category;
import chillwright.core.log.Ending;
import chillwright.core.log.Phase;
import chillwright.print.KeepText;
import chillwright.service.LotView;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The dates of a lot that hold where it is now, in words, as its label has them. */
record LotDates(Desk desk, Visitor visitor, Instant now) {
  /** A sentence each; of food that is not for use, or that left, why none holds. */
  List<String> says(LotView view) {
    if (!view.state().isOnHand()) {
      return List.of(gone(Optional.empty(), visitor));
    }
    Optional<Category> category = category(view.state());
    OptionalInt days = category.map(kind -> roomDays(view, kind)).orElse(OptionalInt.empty());
    Optional<String> room = room(view, days);
    // Found soft in its freezer it goes by its days at room temperature alone.
    Optional<Keeping> dates =
        kept(view.state()).map(kept -> room.isPresent() ? kept.outOfFreezer() : kept);
    if (category.isEmpty() || dates.isEmpty()) {
      return List.of();
    }
    Optional<String> none = NotForUse.dates(view, now, visitor);
    if (none.isPresent()) {
      return List.of(none.get());
    }
    Optional<LocalDate> over = over(view, days);
    if (over.isPresent()) {
      List<String> says =
          new ArrayList<>(text(category.get(), dates.get().outOfFreezer()).saysOfSafety());
      says.add(visitor.say("lot.dates.over", desk.times(visitor).day(over.get())));
      return says;
    }
    List<String> says = new ArrayList<>(text(category.get(), dates.get()).says());
    room.or(() -> leftOfRoom(view, days)).ifPresent(says::add);
    boolean hasLeftFreezer = view.state().isOnHand() && !dates.equals(all(view.state()));
    if (says.isEmpty() && hasLeftFreezer) {
      says.add(visitor.say("label.no-date-outside"));
    }
    return says;
  }

  /** Of a lot of which nothing is left, why none holds. */
  static String gone(Optional<Ending> ending, Visitor visitor) {
    return ending
        .map(
            end ->
                switch (end.how()) {
                  case PUT_BACK -> visitor.say("lot.dates.put-back", end.to());
                  case COUNTED_OUT -> visitor.say("lot.dates.counted-out");
                  case DIVIDED, COMBINED -> visitor.say("lot.dates.used-up");
                  default -> visitor.say("lot.dates.gone");
                })
        .orElseGet(() -> visitor.say("lot.dates.gone"));
  }

  /** The dates that hold where the lot is now: those of a freezer hold only in it. */
  static Optional<Keeping> kept(LotState lot) {
    boolean isFrozen = lot.standing().filter(s -> s.phase() == Phase.FROZEN).isPresent();
    return all(lot).map(dates -> isFrozen ? dates : dates.outOfFreezer());
  }

  private static Optional<Keeping> all(LotState lot) {
    return lot.standing().map(LotState.Standing::keeping);
  }

  private Optional<Category> category(LotState lot) {
    return desk.kitchen().library().keepingList().category(lot.category());
  }

  private KeepText text(Category category, Keeping dates) {
    return new KeepText(category, dates, desk.zone(), now, visitor.language());
  }

  /** What the kitchen itself states of food that needs no cold. */
  private OptionalInt roomDays(LotView view, Category category) {
    return desk.kitchen()
        .setUp()
        .food(view.state().food())
        .filter(food -> !category.tcs() && view.state().isOnHand())
        .map(KnownFood::roomDays)
        .orElse(OptionalInt.empty());
  }

  /** Whether it was past its best before it was frozen, or before it left its freezer. */
  boolean isOver(LotView view) {
    return category(view.state())
        .filter(kind -> over(view, roomDays(view, kind)).isPresent())
        .isPresent();
  }

  /** Its last day at its best, where freezing or thawing came after it. */
  private static Optional<LocalDate> over(LotView view, OptionalInt days) {
    return view.judged().flatMap(judged -> RoomLife.over(judged.timeline(), days));
  }

  /** Of what is out of a freezer, until when. */
  private Optional<String> room(LotView view, OptionalInt days) {
    return days.isEmpty()
        ? Optional.empty()
        : view.judged()
            .flatMap(judged -> RoomLife.begins(judged.timeline()))
            .map(begun -> room(begun.plusDays(days.getAsInt())));
  }

  /** Of what is frozen, the days it has once thawed, where some were used before. */
  private Optional<String> leftOfRoom(LotView view, OptionalInt days) {
    return view.judged()
        .filter(judged -> days.isPresent() && RoomLife.begins(judged.timeline()).isEmpty())
        .map(judged -> RoomLife.left(judged.timeline(), days.getAsInt()))
        .filter(left -> left < days.getAsInt())
        .map(left -> visitor.say("label.room-days", left, figureOf()));
  }

  private String room(LocalDate last) {
    return LocalDate.ofInstant(now, desk.zone()).isAfter(last)
        ? visitor.say("label.quality-passed")
        : visitor.say("label.room-until", desk.times(visitor).day(last), figureOf());
  }

  private String figureOf() {
    return desk.kitchen()
        .settings()
        .name()
        .map(name -> visitor.say("label.figure-of", name))
        .orElseGet(() -> visitor.say("label.figure-of-kitchen"));
  }
}
