package chillwright.rulebook;

import chillwright.core.measure.Limit;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A rule's figures in one line, so that a table of them can be held against the printed source. */
final class Printed {
  private Printed() {}

  static String figures(Rule rule) {
    Shape shape = rule.shape();
    if (shape instanceof Shape.Reach reach) {
      return reach(reach);
    } else if (shape instanceof Shape.Hold hold) {
      return hold(hold);
    } else if (shape instanceof Shape.TimeAlone time) {
      return time(time);
    } else if (shape instanceof Shape.DayCount count) {
      String days = count.days().isPresent() ? count.days().getAsInt() + " days" : "chart";
      return days + (count.firstDayCounts() ? ", first day counts" : ", first day does not count");
    } else if (shape instanceof Shape.StaysFrozen frozen) {
      return "frozen" + limit(" at or below ", frozen.atMost());
    }
    return "no figure";
  }

  private static String reach(Shape.Reach reach) {
    List<String> parts = new ArrayList<>();
    reach.from().ifPresent(from -> parts.add("from " + from.text()));
    parts.add("to " + reach.to().text());
    reach.within().ifPresent(within -> parts.add("in " + within));
    if (!reach.stays().isZero()) {
      parts.add("stays " + reach.stays());
    }
    if (!reach.stands().isZero()) {
      parts.add("stands " + reach.stands());
    }
    return String.join(" ", parts);
  }

  private static String hold(Shape.Hold hold) {
    List<String> parts = new ArrayList<>();
    hold.atMost().ifPresent(limit -> parts.add("at most " + limit.text()));
    hold.atLeast().ifPresent(limit -> parts.add("at least " + limit.text()));
    String limits = String.join(" or ", parts);
    return hold.allowed().isZero() ? limits : limits + " but for " + hold.allowed();
  }

  private static String time(Shape.TimeAlone time) {
    String hot = time.withinHotAir().map(w -> " or " + w + " in air above ").orElse("");
    return "in "
        + time.within()
        + limit(" never above ", time.ceiling())
        + hot
        + limit("", time.hotAir());
  }

  private static String limit(String words, Optional<Limit> limit) {
    return limit.map(figure -> words + figure.text()).orElse("");
  }
}
