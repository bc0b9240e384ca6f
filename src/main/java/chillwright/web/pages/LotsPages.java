package chillwright.web.pages;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.keeping.StillGood;
import chillwright.core.kitchen.KnownFood;
import chillwright.core.log.Category;
import chillwright.core.log.Ending;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.PlaceName;
import chillwright.print.KeepText;
import chillwright.service.LotQuery;
import chillwright.service.Page;
import chillwright.service.Refused;
import chillwright.service.RoomLots.RoomLot;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Lists of lots: what is on hand, what must be used first, and every lot. */
final class LotsPages {
  static final String ON_HAND = "/on-hand";
  static final String ALL = "/lots";

  private static final int SHOWN = 50;
  private static final String PLACE = "place";
  private static final Map<String, String> NAMES =
      Map.of(
          PLACE,
          "entry.place",
          GoodOnForm.DAY,
          "lots.good-on",
          GoodOnForm.DAYS,
          "lots.good-on.days",
          "cursor",
          "list.next",
          TakenNotice.TAKEN,
          "lots.take.save");
  private static final String DAY = "good-on=[0-9-]+(&days=[0-9]+)?";
  private static final Pattern LISTS =
      Pattern.compile(
          "(%s|%s)(\\?(place=[A-Za-z0-9%%+._*-]+|%s)(&%s)?)?".formatted(ON_HAND, ALL, DAY, DAY));

  private final Desk desk;

  LotsPages(Desk desk) {
    this.desk = desk;
  }

  /** On hand, what must go first before the others; all of it or of one place. */
  void onHand(Context context) {
    Visitor visitor = desk.visitor(context);
    Parameters parameters = parameters(context, visitor);
    Asked asked = asked(parameters, desk, visitor);
    if (parameters.faults().isEmpty()) {
      show(context, "page.on-hand", ON_HAND, asked);
    } else if (parameters.faults().size() == parameters.wrong().size()) {
      askAgain(context, visitor, parameters, asked);
    } else {
      refuse(desk, context, visitor, parameters);
    }
  }

  /** The form with what was entered, each fault at its field. */
  private void askAgain(Context context, Visitor visitor, Parameters parameters, Asked asked) {
    LotsView view =
        new LotsView(
            "",
            "",
            places(visitor, new Asked(asked.query(), Optional.empty())),
            asked.query().place().orElse(""),
            GoodOnForm.refused(parameters),
            List.of(),
            List.of(),
            "",
            "",
            ON_HAND);
    List<Frame.Notice> taken = TakenNotice.of(context, desk, visitor).stream().toList();
    Frame frame = desk.frame(visitor, "page.on-hand", ON_HAND, taken);
    desk.answer(context, HttpStatus.BAD_REQUEST, Templates.PAGES.lots(frame, view));
  }

  /**
   * What is on hand, of one place or all.
   *
   * @param good on which day it must be so; empty where none is asked for
   */
  record Asked(LotQuery query, Optional<StillGood> good) {
    /** Whether it is asked for food that leaves its freezer. */
    boolean isPosted() {
      return good.filter(on -> on.after().isPresent()).isPresent();
    }
  }

  static Asked asked(Parameters parameters, Desk desk, Visitor visitor) {
    LotQuery query = LotQuery.ALL.in(LotOrder.USE_FIRST);
    LotQuery there = parameters.text(PLACE).map(query::at).orElse(query);
    return new Asked(there, GoodOnForm.read(parameters, desk, visitor));
  }

  static Parameters parameters(Context context, Visitor visitor) {
    return new Parameters(context, visitor, NAMES);
  }

  static void refuse(Desk desk, Context context, Visitor visitor, Parameters parameters) {
    String says = visitor.say("fault.list");
    Choice back = new Choice(GoodOnForm.again(parameters), visitor.say("lots.good-on.back"));
    desk.faults(context, visitor, HttpStatus.BAD_REQUEST, says, parameters.faults(), List.of(back));
  }

  void all(Context context) {
    show(context, "page.lots", ALL, new Asked(LotQuery.ALL, Optional.empty()));
  }

  private static Optional<String> cursor(Context context) {
    return Optional.ofNullable(context.queryParam("cursor")).filter(text -> !text.isBlank());
  }

  private List<LotsView.Place> places(Visitor visitor, Asked asked) {
    List<LotsView.Place> places = new ArrayList<>();
    Optional<String> shown = asked.query().place();
    String everywhere = ON_HAND + narrowed(Optional.empty(), asked.good());
    places.add(new LotsView.Place(visitor.say("lots.everywhere"), everywhere, shown.isEmpty()));
    for (String place : new Known(desk.kitchen()).placesOfLots()) {
      boolean isShown = shown.filter(place::equals).isPresent();
      String address = ON_HAND + narrowed(Optional.of(place), asked.good());
      places.add(new LotsView.Place(place, address, isShown));
    }
    return places;
  }

  private static String narrowed(Optional<String> place, Optional<StillGood> good) {
    String asked =
        Stream.of(
                place.map(name -> PLACE + "=" + encoded(name)),
                good.map(on -> GoodOnForm.DAY + "=" + on.day()),
                good.filter(on -> on.after().isPresent())
                    .map(on -> GoodOnForm.DAYS + "=" + on.after().getAsInt()))
            .flatMap(Optional::stream)
            .collect(Collectors.joining("&"));
    return asked.isEmpty() ? "" : "?" + asked;
  }

  private void show(Context context, String title, String here, Asked asked) {
    Visitor visitor = desk.visitor(context);
    Optional<String> cursor = cursor(context);
    LotsView view;
    try {
      view =
          desk.view(
              here + " " + asked + " " + cursor,
              visitor,
              LotsView.class,
              () -> view(visitor, here, asked, cursor));
    } catch (Refused stale) {
      context.redirect(here, HttpStatus.SEE_OTHER);
      return;
    }
    List<Frame.Notice> taken = TakenNotice.of(context, desk, visitor).stream().toList();
    Frame frame = desk.frame(visitor, title, here, taken);
    desk.answer(context, Templates.PAGES.lots(frame, view));
  }

  private LotsView view(Visitor visitor, String here, Asked asked, Optional<String> cursor) {
    Optional<GoodOn.Split> split =
        asked.good().map(good -> new GoodOn(desk, visitor, good).split(asked.query()));
    Page<LotState> lots =
        split
            .map(parts -> new Page<>(parts.good(), Optional.empty()))
            .orElseGet(
                () -> desk.kitchen().lots().list(asked.query(), new Page.Wanted(SHOWN, cursor)));
    boolean isOnHand = here.equals(ON_HAND);
    List<RoomLot> room = isOnHand ? desk.kitchen().roomLots().list() : List.of();
    List<LotState> first = asked.good().isEmpty() ? first(room, asked.query()) : List.of();
    String address = narrowed(asked.query().place(), asked.good());
    String next =
        lots.next()
            .map(at -> here + address + (address.isEmpty() ? "?" : "&") + "cursor=" + encoded(at))
            .orElse("");
    Showing showing =
        new Showing(
            asked,
            new LotActs(desk.kitchen()),
            new CallingPlaces(desk, visitor),
            desk.kitchen().tracing().endings(lots.items()),
            room.stream().collect(Collectors.toMap(lot -> lot.lot().lot(), RoomLot::until)),
            visitor,
            desk.kitchen().now());
    return new LotsView(
        isOnHand ? visitor.say("lots.on-hand.says") : "",
        isOnHand && next.isEmpty() && cursor.isEmpty() ? total(lots.items(), visitor) : "",
        isOnHand ? places(visitor, asked) : List.of(),
        asked.query().place().orElse(""),
        split
            .map(parts -> GoodOnForm.shown(asked.good().orElseThrow(), parts, desk, visitor))
            .orElse(LotsView.Good.NOT_ASKED),
        groups(cursor.isEmpty() ? first : List.of(), without(first, lots.items()), showing),
        isOnHand ? desk.kitchen().tracing().recipients() : List.of(),
        next,
        here + ".csv" + address,
        here + address);
  }

  /** What is out of the freezer goes before all that is in it, at most so many lots. */
  private static List<LotState> first(List<RoomLot> room, LotQuery query) {
    return room.stream()
        .map(RoomLot::lot)
        .filter(lot -> query.place().isEmpty() || query.place().map(PlaceName::key).equals(at(lot)))
        .limit(SHOWN)
        .toList();
  }

  private static Optional<String> at(LotState lot) {
    return lot.standing().flatMap(Standing::place).map(PlaceName::key);
  }

  private static List<LotState> without(List<LotState> first, List<LotState> lots) {
    Set<LotId> gone = first.stream().map(LotState::lot).collect(Collectors.toSet());
    return lots.stream().filter(lot -> !gone.contains(lot.lot())).toList();
  }

  private List<LotsView.Group> groups(
      List<LotState> first, List<LotState> others, Showing showing) {
    Visitor visitor = showing.visitor();
    List<LotsView.Group> groups = new ArrayList<>();
    if (!first.isEmpty()) {
      groups.add(new LotsView.Group(visitor.say("lots.room"), items(first, showing)));
    }
    if (!others.isEmpty()) {
      String title = first.isEmpty() ? "" : visitor.say("lots.room.others");
      groups.add(new LotsView.Group(title, items(others, showing)));
    }
    return groups;
  }

  private List<LotsView.Item> items(List<LotState> lots, Showing showing) {
    return lots.stream().map(lot -> item(lot, showing)).toList();
  }

  /** How many meals are made, of lots that fit one page; more are counted by no glance. */
  private static String total(List<LotState> lots, Visitor visitor) {
    List<LotState> made = lots.stream().filter(lot -> lot.standing().isPresent()).toList();
    int portions = made.stream().mapToInt(lot -> lot.portions().left().orElse(0)).sum();
    long uncounted = lots.stream().filter(lot -> lot.portions().left().isEmpty()).count();
    return lots.isEmpty() ? "" : visitor.say("lots.total", lots.size(), portions, uncounted);
  }

  /**
   * What is told of every lot of a list.
   *
   * @param room until when those out of the freezer are at their best by the kitchen's own days
   */
  private record Showing(
      Asked asked,
      LotActs acts,
      CallingPlaces calling,
      Map<LotId, Ending> endings,
      Map<LotId, LocalDate> room,
      Visitor visitor,
      Instant now) {}

  private LotsView.Item item(LotState lot, Showing showing) {
    Visitor visitor = showing.visitor();
    Instant now = showing.now();
    boolean isFew = lot.portions().left().orElse(0) > 0;
    boolean mayBeUsed = showing.acts().mayBeUsed(lot);
    return new LotsView.Item(
        lot.lot().text(),
        lot.food(),
        Sign.of(lot.standing().flatMap(standing -> standing.verdicts().at(now))),
        LotLines.where(lot, Optional.ofNullable(showing.endings().get(lot.lot())), visitor),
        Stream.concat(
                showing.calling().warning(lot).stream(),
                mayBeUsed
                    ? says(lot, showing).stream()
                    : Stream.of(new NotForUse(desk, visitor).listed(lot)))
            .toList(),
        lot.isOnHand() && lot.standing().isPresent() && isFew && mayBeUsed,
        showing.acts().moves(lot));
  }

  /** The dates that count where the lot is now; of food that thawed its quality dates do not. */
  private List<String> says(LotState lot, Showing showing) {
    Visitor visitor = showing.visitor();
    Instant now = showing.now();
    boolean isPosted = showing.asked().isPosted();
    Optional<Category> category = desk.kitchen().library().keepingList().category(lot.category());
    Optional<Keeping> dates = lot.standing().map(Standing::keeping);
    if (!lot.isOnHand() || category.isEmpty() || dates.isEmpty()) {
      return List.of();
    }
    KeepText text = new KeepText(category.get(), dates.get(), desk.zone(), now, visitor.language());
    boolean isFrozen = lot.standing().filter(s -> s.phase() == Phase.FROZEN).isPresent();
    Optional<LocalDate> own = Optional.ofNullable(showing.room().get(lot.lot()));
    if (isFrozen && own.isEmpty() && !isPosted) {
      return text.says();
    }
    List<String> says = new ArrayList<>(text.saysOfSafety());
    own.ifPresent(day -> says.add(own(day, visitor, now)));
    if (own.isEmpty() && isPosted && !category.get().tcs()) {
      desk.kitchen().setUp().food(lot.food()).map(KnownFood::roomDays).stream()
          .flatMapToInt(OptionalInt::stream)
          .forEach(days -> says.add(visitor.say("lots.good-on.room", days)));
    }
    return says;
  }

  private String own(LocalDate until, Visitor visitor, Instant now) {
    boolean isOver = LocalDate.ofInstant(now, desk.zone()).isAfter(until);
    return visitor.say(
        isOver ? "lots.room.passed" : "lots.room.until", desk.times(visitor).day(until));
  }

  /** Whether that is the address of a list, to which a form may lead back. */
  static boolean isList(String address) {
    return LISTS.matcher(address).matches();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
