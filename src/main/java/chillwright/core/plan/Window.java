package chillwright.core.plan;

import chillwright.core.plan.Bound.Kind;
import chillwright.core.plan.Dish.Route;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Shape.TimeAlone;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The moments between which the parts of one dish must begin, whatever the other dishes need.
 *
 * @param makeFrom earliest beginning of its making
 * @param makeTo latest
 * @param takeOutFrom earliest taking out of the freezer; the same as {@code takeOutTo} elsewhere
 * @param finishFrom earliest beginning of its finishing, or earliest readiness where there is none
 * @param cool how long it stands in the refrigerator before it is cold, or goes to the freezer
 * @param freeze how long it stays in the freezer at least
 * @param thaw how long it thaws, from being taken out
 * @param progress how far it has come already
 * @param freezeTo latest beginning of its freezing, where its lot sets one
 * @param ahead latest beginning of its making with which it is made on an earlier day than it is
 *     served; empty where no day is left for that, or it was frozen or made fresh
 * @param ends why its lot does not keep until it is served; empty where it does
 */
record Window(
    Dish dish,
    Instant makeFrom,
    Instant makeTo,
    Instant takeOutFrom,
    Instant takeOutTo,
    Instant finishFrom,
    Instant finishTo,
    Duration cool,
    Duration freeze,
    Duration thaw,
    Optional<Progress> progress,
    Optional<Instant> freezeTo,
    Optional<Ends> ends,
    Optional<Instant> ahead,
    boolean keepsTooShort,
    boolean reheatsTooLong,
    List<Bound> bounds) {
  /** A lot whose last day, or the last at its best, comes before its dish needs it. */
  record Ends(LocalDate last, boolean isQuality) {}

  /**
   * Packs are frozen through after it: a whole day (a freezer takes so much a day). Planning only.
   */
  static final Duration FREEZES = Duration.ofHours(24);

  /** How long food may wait in the refrigerator for hands to bring it to the freezer. */
  static final Duration WAITS = Duration.ofHours(16);

  /** Food without a printed freezer time, or without a last day, is made at most so long before. */
  private static final int FARTHEST_DAYS = 30;

  private static final int FARTHEST_FROZEN_DAYS = 400;

  /** When it is served. */
  Instant due() {
    return finishTo.plus(total(dish.finish()));
  }

  static Window of(Dish dish, Menu menu, RuleSet rules) {
    return new Working(dish, menu, rules).window();
  }

  boolean isEmpty() {
    return makeFrom.isAfter(makeTo) || takeOutFrom.isAfter(takeOutTo);
  }

  private static Duration total(List<Step> steps) {
    return steps.stream().map(Step::lasts).reduce(Duration.ZERO, Duration::plus);
  }

  private record Working(Dish dish, Menu menu, RuleSet rules, KeepingDays days) {
    Working(Dish dish, Menu menu, RuleSet rules) {
      this(dish, menu, rules, new KeepingDays(dish.category(), rules, menu.zone()));
    }

    Window window() {
      Duration make = total(dish.make());
      Instant finishTo = menu.due(dish).minus(total(dish.finish()));
      Instant finishFrom = finishTo.minus(dish.hold());
      if (dish.route() == Route.FRESH) {
        return window(finishFrom.minus(make), finishTo.minus(make), finishTo, finishFrom, finishTo);
      }
      if (progress().isPresent()) {
        return begun(progress().get(), finishFrom, finishTo);
      }
      Duration cool = cool();
      Instant takeOut = finishTo.minus(dish.route() == Route.FROZEN ? dish.thaw() : Duration.ZERO);
      Duration before = dish.route() == Route.FROZEN ? cool.plus(FREEZES) : cool;
      Instant makeTo = takeOut.minus(before).minus(make);
      Optional<Instant> wished = dish.madeBy().map(day -> endOf(day, make).minus(make));
      return window(
          firstDay(), wished.filter(makeTo::isAfter).orElse(makeTo), takeOut, finishFrom, finishTo);
    }

    /** Where nobody said when hands are there, the hour of serving, as long as it is to come. */
    private Instant endOf(LocalDate day, Duration make) {
      LocalTime served = menu.due(dish).atZone(menu.zone()).toLocalTime();
      Instant hour = day.atTime(served).atZone(menu.zone()).toInstant();
      boolean isToCome = !hour.minus(make).isBefore(menu.from());
      return menu.open().isEmpty() && isToCome ? hour : startOf(day.plusDays(1));
    }

    private Optional<Progress> progress() {
      return menu.progress(dish);
    }

    private static Duration left(Instant end, Instant from) {
      return end.isAfter(from) ? Duration.between(from, end) : Duration.ZERO;
    }

    /** What is still to come of a dish that was begun: what is done stays where it is. */
    private Window begun(Progress done, Instant finishFrom, Instant finishTo) {
      boolean isFrozen = dish.route() == Route.FROZEN;
      Instant now = menu.from();
      Duration cool =
          done.frozen().isPresent() ? Duration.ZERO : left(done.made().plus(cool()), now);
      Duration freeze =
          done.frozen()
              .map(at -> left(at.plus(FREEZES), now))
              .orElse(isFrozen ? FREEZES : Duration.ZERO);
      Duration thaw =
          done.takenOut().map(at -> left(at.plus(dish.thaw()), now)).orElse(dish.thaw());
      Instant takeOut =
          done.takenOut().isPresent() ? now : finishTo.minus(isFrozen ? thaw : Duration.ZERO);
      OwnDays own = new OwnDays(done, rules.settings(), menu.zone());
      Optional<Instant> freezeBy =
          isFrozen && done.frozen().isEmpty() ? freezeBy(own, takeOut) : Optional.empty();
      Instant firstOut =
          done.takenOut().isPresent()
              ? now
              : isFrozen ? firstTakeOut(own, now.plus(cool), freezeBy, takeOut) : takeOut;
      return new Window(
          dish,
          now,
          now,
          firstOut.isBefore(now) ? now : firstOut,
          takeOut,
          finishFrom,
          finishTo,
          cool,
          done.takenOut().isPresent() ? Duration.ZERO : freeze,
          isFrozen ? thaw : Duration.ZERO,
          progress(),
          freezeBy,
          ends(own, now.plus(cool), takeOut),
          Optional.empty(),
          !own.isKnown() && done.made().isBefore(firstDay()),
          reheatsTooLong(),
          bounds(done.made(), done.made(), firstOut, takeOut, finishFrom, finishTo, freezeBy));
    }

    /** The end of the last day on which it may be frozen and still thaw; empty where none is. */
    private Optional<Instant> freezeBy(OwnDays own, Instant takeOut) {
      LocalDate out = day(takeOut);
      LocalDate first = day(menu.from());
      return own.lastDay()
          .flatMap(
              last ->
                  Stream.iterate(last, day -> !day.isBefore(first), day -> day.minusDays(1))
                      .filter(day -> !own.lastDay(day, out).orElse(served()).isBefore(served()))
                      .findFirst())
          .map(day -> startOf(day.plusDays(1)).minus(Duration.ofMinutes(1)));
    }

    /** Why the lot does not keep, if it is frozen at the earliest and comes out at the latest. */
    private Optional<Ends> ends(OwnDays own, Instant freeze, Instant takeOut) {
      Progress done = own.progress();
      boolean isThawed = dish.route() == Route.FROZEN && done.takenOut().isEmpty();
      Optional<LocalDate> last =
          !isThawed
              ? own.lastDay()
              : done.isInFreezer()
                  ? own.lastDayThawed(day(takeOut))
                  : own.lastDay(day(freeze), day(takeOut));
      Optional<Ends> safety = last.filter(served()::isAfter).map(day -> new Ends(day, false));
      return safety.or(
          () ->
              own.bestBy()
                  .filter(best -> isThawed && day(takeOut).isAfter(best))
                  .map(best -> new Ends(best, true)));
    }

    private LocalDate day(Instant moment) {
      return moment.atZone(menu.zone()).toLocalDate();
    }

    private Window window(
        Instant firstMake, Instant makeTo, Instant takeOut, Instant finishFrom, Instant finishTo) {
      Instant makeFrom = firstMake.isBefore(menu.from()) ? menu.from() : firstMake;
      Instant takeOutFrom = dish.route() == Route.FROZEN ? firstTakeOut(takeOut) : takeOut;
      boolean isKept = dish.route() == Route.FRESH || !firstMake.isAfter(makeTo);
      return new Window(
          dish,
          makeFrom,
          makeTo,
          takeOutFrom,
          takeOut,
          finishFrom,
          finishTo,
          cool(),
          FREEZES,
          dish.route() == Route.FROZEN ? dish.thaw() : Duration.ZERO,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          ahead(makeFrom, makeTo),
          !isKept || takeOutFrom.isAfter(takeOut),
          reheatsTooLong(),
          bounds(makeFrom, makeTo, takeOutFrom, takeOut, finishFrom, finishTo, Optional.empty()));
    }

    /** Where nobody said when hands are there, by the hour at which it is served. */
    private Optional<Instant> ahead(Instant makeFrom, Instant makeTo) {
      Instant due = menu.due(dish);
      Instant end =
          menu.open().isEmpty()
              ? due.atZone(menu.zone()).minusDays(1).toInstant()
              : startOf(day(due));
      return Optional.of(end.minus(total(dish.make())))
          .filter(latest -> dish.route() == Route.CHILLED)
          .filter(latest -> !latest.isBefore(makeFrom) && latest.isBefore(makeTo));
    }

    private LocalDate served() {
      return day(menu.due(dish));
    }

    private Instant startOf(LocalDate day) {
      return day.atStartOfDay(menu.zone()).toInstant();
    }

    /** The start of the earliest day on which it may be made. */
    private Instant firstDay() {
      boolean isFrozen = dish.route() == Route.FROZEN;
      int farthest = isFrozen && days.hasFreezerTime() ? FARTHEST_FROZEN_DAYS : FARTHEST_DAYS;
      LocalDate first = served().plusDays(1);
      LocalDate takenOut = lastTakeOutDay();
      for (int ahead = 0; ahead <= farthest; ahead++) {
        LocalDate day = served().minusDays(ahead);
        boolean keeps =
            isFrozen
                ? day.isAfter(takenOut.minusDays(2)) || keepsFrozen(day, takenOut)
                : days.keepsChilled(day, served());
        if (!keeps) {
          break;
        }
        first = day;
      }
      return startOf(first);
    }

    /** Frozen on the day after at the latest, since it is cooled first. */
    private boolean keepsFrozen(LocalDate made, LocalDate thawed) {
      return days.keepsFrozen(made, made.plusDays(1), thawed, served());
    }

    private LocalDate lastTakeOutDay() {
      Instant last = menu.due(dish).minus(total(dish.finish())).minus(dish.thaw());
      return day(last);
    }

    /** The start of the earliest day of thawing after which its last day is not before serving. */
    private Instant firstTakeOut(Instant latest) {
      LocalDate last = latest.atZone(menu.zone()).toLocalDate();
      LocalDate first = last.plusDays(1);
      LocalDate made = last.minusDays(3);
      for (int earlier = 0; earlier <= 1; earlier++) {
        LocalDate day = last.minusDays(earlier);
        if (!keepsFrozen(made, day)) {
          break;
        }
        first = day;
      }
      Instant start = startOf(first);
      return dish.thaw().isZero() && start.isBefore(latest) ? latest : start;
    }

    /** The same of a lot, by its own days, frozen as late as a plan may have it. */
    private Instant firstTakeOut(
        OwnDays own, Instant cold, Optional<Instant> freezeBy, Instant latest) {
      if (!own.isKnown()) {
        return firstTakeOut(latest);
      }
      Instant waited = cold.plus(WAITS);
      LocalDate frozen = day(freezeBy.filter(waited::isAfter).orElse(waited));
      LocalDate before = day(latest).minusDays(1);
      Optional<LocalDate> last =
          own.progress().isInFreezer() ? own.lastDayThawed(before) : own.lastDay(frozen, before);
      boolean isEarlier = !dish.thaw().isZero() && last.filter(served()::isAfter).isEmpty();
      Instant start = startOf(isEarlier ? before : day(latest));
      return dish.thaw().isZero() && start.isBefore(latest) ? latest : start;
    }

    private Duration cool() {
      return SetAside.cooling(dish, rules);
    }

    private Optional<Rule> reheating() {
      return dish.category().tcs() && dish.route() != Route.FRESH && !dish.finish().isEmpty()
          ? rules.rule(Occasion.REHEATING)
          : Optional.empty();
    }

    private boolean reheatsTooLong() {
      return reheating()
          .map(Rule::shape)
          .filter(Reach.class::isInstance)
          .flatMap(shape -> ((Reach) shape).within())
          .filter(within -> total(dish.finish()).compareTo(within) > 0)
          .isPresent();
    }

    private List<Bound> bounds(
        Instant makeFrom,
        Instant makeTo,
        Instant takeOutFrom,
        Instant takeOut,
        Instant finishFrom,
        Instant finishTo,
        Optional<Instant> ownFreezeBy) {
      List<Bound> bounds = new ArrayList<>();
      Optional<Rule> dateMark =
          rules.rule(Occasion.DATE_MARK).filter(rule -> dish.category().isDateMarked());
      String quality = dish.route() == Route.FROZEN ? dish.category().source() : "";
      bounds.add(bound(Kind.MAKE, makeFrom, makeTo, dateMark, quality));
      if (dish.route() == Route.FROZEN) {
        Instant planned = takeOut.minus(FREEZES);
        Instant freezeBy = ownFreezeBy.filter(planned::isAfter).orElse(planned);
        if (progress().flatMap(Progress::frozen).isEmpty()) {
          bounds.add(bound(Kind.FREEZE, makeFrom, freezeBy, dateMark, ""));
        }
        bounds.add(bound(Kind.TAKE_OUT, takeOutFrom, takeOut, dateMark, ""));
      }
      if (!dish.finish().isEmpty() && dish.route() != Route.FRESH) {
        bounds.add(bound(Kind.REHEAT, finishFrom, finishTo, reheating(), ""));
      }
      if (!dish.hold().isZero()) {
        bounds.add(
            bound(
                Kind.HOLD,
                menu.due(dish).minus(dish.hold()),
                menu.due(dish),
                rules.rule(Occasion.HOT_HOLDING).filter(rule -> dish.category().tcs()),
                ""));
      }
      table().ifPresent(bounds::add);
      bounds.addAll(Readings.of(dish, progress().flatMap(Progress::frozen).isPresent(), rules));
      return bounds;
    }

    /** Out on the table, without heat or cold, only so long. */
    private Optional<Bound> table() {
      return Stream.of(Occasion.SET_OUT, Occasion.TIME_CONTROL_DISCARD_4H)
          .flatMap(occasion -> rules.rule(occasion).stream())
          .filter(rule -> dish.category().tcs() && rule.shape() instanceof TimeAlone)
          .findFirst()
          .map(
              rule -> {
                Duration within = ((TimeAlone) rule.shape()).within();
                Instant end = menu.due(dish).plus(within);
                return bound(Kind.TABLE, menu.due(dish), end, Optional.of(rule), "");
              });
    }

    private Bound bound(Kind kind, Instant from, Instant to, Optional<Rule> rule, String source) {
      Optional<Rule> bearing =
          kind == Kind.MAKE && dish.route() == Route.FRESH ? Optional.empty() : rule;
      // What may end as the kitchen closes ends while somebody is there still.
      boolean isClosed = kind != Kind.HOLD && !menu.isOpen(to) && !menu.isOpen(to.minusSeconds(1));
      return new Bound(
          dish.name(), kind, Optional.of(from), Optional.of(to), bearing, isClosed, source, false);
    }
  }
}
