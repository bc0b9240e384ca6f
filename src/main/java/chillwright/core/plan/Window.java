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
    boolean keepsTooShort,
    boolean reheatsTooLong,
    List<Bound> bounds) {
  /**
   * Packs are frozen through after it: a whole day (a freezer takes so much a day). Planning only.
   */
  static final Duration FREEZES = Duration.ofHours(24);

  /** Where a rule set prints no cooling time this much is set aside. Planning only. */
  static final Duration COOLS = Duration.ofHours(6);

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
      return window(firstDay(), makeTo, takeOut, finishFrom, finishTo);
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
      Instant firstOut =
          done.takenOut().isPresent() ? now : isFrozen ? firstTakeOut(takeOut) : takeOut;
      boolean isKept = !done.made().isBefore(firstDay());
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
          !isKept,
          reheatsTooLong(),
          bounds(done.made(), done.made(), firstOut, takeOut, finishFrom, finishTo));
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
          !isKept || takeOutFrom.isAfter(takeOut),
          reheatsTooLong(),
          bounds(makeFrom, makeTo, takeOutFrom, takeOut, finishFrom, finishTo));
    }

    private LocalDate served() {
      return menu.due(dish).atZone(menu.zone()).toLocalDate();
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
      return last.atZone(menu.zone()).toLocalDate();
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

    private Duration cool() {
      if (dish.route() == Route.FRESH || !dish.category().tcs()) {
        return Duration.ZERO;
      }
      return rules.rules(Occasion.COOLING_COOKED).stream()
          .map(Rule::shape)
          .filter(Reach.class::isInstance)
          .flatMap(shape -> ((Reach) shape).within().stream())
          .reduce(Duration.ZERO, (one, other) -> one.compareTo(other) > 0 ? one : other)
          .plus(rules.rules(Occasion.COOLING_COOKED).isEmpty() ? COOLS : Duration.ZERO);
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
        Instant finishTo) {
      List<Bound> bounds = new ArrayList<>();
      Optional<Rule> dateMark =
          rules.rule(Occasion.DATE_MARK).filter(rule -> dish.category().isDateMarked());
      String quality = dish.route() == Route.FROZEN ? dish.category().source() : "";
      bounds.add(bound(Kind.MAKE, makeFrom, makeTo, dateMark, quality));
      if (dish.route() == Route.FROZEN) {
        Instant freezeBy = takeOut.minus(FREEZES);
        bounds.add(bound(Kind.FREEZE, makeFrom, freezeBy, dateMark, ""));
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
          dish.name(), kind, Optional.of(from), Optional.of(to), bearing, isClosed, source);
    }
  }
}
