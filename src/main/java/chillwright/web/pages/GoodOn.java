package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.keeping.RoomLife;
import chillwright.core.keeping.StillGood;
import chillwright.core.keeping.StillGood.Against;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Category;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Timeline;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Which lots are still good on a day, or once posted, and why the others are left out. */
final class GoodOn {
  /** So many lots are looked at for one page. */
  static final int LOOKED_AT = 1_000;

  private final Desk desk;
  private final Visitor visitor;
  private final StillGood asked;
  private final Map<String, OptionalInt> roomDays = new HashMap<>();

  GoodOn(Desk desk, Visitor visitor, StillGood asked) {
    this.desk = desk;
    this.visitor = visitor;
    this.asked = asked;
  }

  /**
   * Lots in the order of use.
   *
   * @param isCut whether there are more than were looked at
   */
  record Split(List<LotState> good, List<LotsView.LeftOut> leftOut, boolean isCut) {}

  Split split(LotQuery query) {
    List<LotState> good = new ArrayList<>();
    List<LotsView.LeftOut> leftOut = new ArrayList<>();
    Page<LotState> page = desk.kitchen().lots().list(query, Page.Wanted.first(Page.MOST));
    add(page, good, leftOut);
    while (page.next().isPresent() && good.size() + leftOut.size() < LOOKED_AT) {
      page = desk.kitchen().lots().list(query, new Page.Wanted(Page.MOST, page.next()));
      add(page, good, leftOut);
    }
    return new Split(good, leftOut, page.next().isPresent());
  }

  private void add(Page<LotState> page, List<LotState> good, List<LotsView.LeftOut> leftOut) {
    for (LotState lot : page.items()) {
      Optional<String> why = against(lot);
      if (why.isPresent()) {
        leftOut.add(new LotsView.LeftOut(lot.lot().text(), lot.food(), why.get()));
      } else {
        good.add(lot);
      }
    }
  }

  /** Why a lot is left out, in words; empty where it is not. */
  Optional<String> against(LotState lot) {
    Optional<Standing> standing = lot.standing();
    Optional<Category> category = desk.kitchen().library().keepingList().category(lot.category());
    if (standing.isEmpty() || category.isEmpty()) {
      return Optional.of(visitor.say("lots.nothing-logged"));
    }
    if (!new LotActs(desk.kitchen()).mayBeUsed(lot)) {
      return Optional.of(new NotForUse(desk, visitor).listed(lot));
    }
    return asked.against(standing.get(), category.get(), room(lot, category.get())).map(this::said);
  }

  private String said(Against against) {
    String day = against.last().map(desk.times(visitor)::day).orElse("");
    return visitor.say("lots.left-out." + against.why().key(), day, against.days());
  }

  private StillGood.AtRoom room(LotState lot, Category category) {
    OptionalInt days =
        category.tcs()
            ? OptionalInt.empty()
            : roomDays.computeIfAbsent(
                lot.food(),
                food ->
                    desk.kitchen()
                        .setUp()
                        .food(food)
                        .map(KnownFood::roomDays)
                        .orElse(OptionalInt.empty()));
    boolean isFrozen = lot.standing().filter(s -> s.phase() == Phase.FROZEN).isPresent();
    Optional<Timeline> timeline = category.tcs() ? Optional.empty() : timeline(lot.lot());
    Optional<LocalDate> begun = timeline.flatMap(RoomLife::begins);
    Optional<LocalDate> over = timeline.flatMap(life -> RoomLife.over(life, days));
    if (isFrozen && days.isPresent() && timeline.isPresent() && begun.isEmpty()) {
      int left = RoomLife.left(timeline.get(), days.getAsInt());
      return new StillGood.AtRoom(OptionalInt.of(left), Optional.empty(), over);
    }
    return new StillGood.AtRoom(days, begun, over);
  }

  private Optional<Timeline> timeline(LotId lot) {
    return desk.kitchen()
        .lots()
        .lot(lot)
        .flatMap(view -> view.judged())
        .map(judged -> judged.timeline());
  }
}
