package chillwright.web.pages;

import chillwright.core.measure.SaidLength;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.TimeAlone;
import chillwright.logfile.SaidTime;
import chillwright.logfile.SaidTime.At;
import chillwright.logfile.SaidTime.Edge;
import chillwright.logfile.SaidTime.Either;
import chillwright.logfile.SaidTime.Skipped;
import chillwright.print.Figures;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * "I left it out", answered by the time outside alone. What cannot be, or is said in two ways at
 * once, is refused at its field: nothing is guessed.
 */
final class LeftOut {
  private static final Duration LONGEST = Duration.ofHours(1000);

  private final Map<String, String> fields;
  private final Desk desk;
  private final Visitor visitor;
  private final Instant now;
  private final Map<String, String> wrong;
  private final List<String> counted = new ArrayList<>();

  /**
   * @param wrong takes what is wrong, by the name of its field
   */
  LeftOut(Map<String, String> fields, Desk desk, Visitor visitor, Map<String, String> wrong) {
    this.fields = fields;
    this.desk = desk;
    this.visitor = visitor;
    this.now = desk.kitchen().now();
    this.wrong = wrong;
  }

  /** The answer by that rule; blank where nothing was asked, or not so that it can be answered. */
  String says(Rule rule) {
    boolean isAsked = fields.containsKey("left") || fields.containsKey("hours");
    Optional<Duration> outside = isAsked ? outside() : Optional.empty();
    return outside.map(out -> says(rule, out)).orElse("");
  }

  private String says(Rule rule, Duration out) {
    TimeAlone limit = (TimeAlone) rule.shape();
    boolean isHot = fields.containsKey("hot");
    Duration within = isHot ? limit.withinHotAir().orElse(limit.within()) : limit.within();
    String kept = given("till").isEmpty() ? "left.keep" : "left.kept";
    String key = out.compareTo(within) > 0 ? "left.discard" : kept;
    List<String> says = new ArrayList<>();
    says.add(visitor.say("left.out", Figures.duration(out)));
    says.add(visitor.say(key, Figures.duration(within), rule.citation().text()));
    says.addAll(counted);
    return String.join(" ", says);
  }

  private Optional<Duration> outside() {
    boolean hasTimes = !given("since").isEmpty() || !given("till").isEmpty();
    if (given("hours").isEmpty()) {
      return hasTimes ? byTheClock() : refuse("hours", "left.wrong");
    }
    if (hasTimes) {
      return refuse("hours", "left.both");
    }
    Optional<Duration> hours = SaidLength.of(given("hours"));
    return hours.filter(out -> out.compareTo(LONGEST) <= 0).isPresent()
        ? hours
        : refuse("hours", "left.wrong");
  }

  private Optional<Duration> byTheClock() {
    if (given("since").isEmpty()) {
      return refuse("since", "left.no-since");
    }
    boolean isOver = !given("till").isEmpty();
    Optional<Instant> till = isOver ? read("till", now, Edge.LATEST) : Optional.of(now);
    Optional<Instant> since = read("since", till.orElse(now), Edge.EARLIEST);
    if (till.isEmpty() || since.isEmpty()) {
      return Optional.empty();
    }
    Instant end = till.get().truncatedTo(ChronoUnit.MINUTES);
    // The same time twice is no time at all, or a whole day: nobody may guess.
    if (!since.get().isBefore(end)) {
      return refuse("since", "left.order", desk.moment(since.get(), visitor));
    }
    counted.add(
        visitor.say("left.counted", desk.moment(since.get(), visitor), desk.moment(end, visitor)));
    return Optional.of(Duration.between(since.get(), end));
  }

  /**
   * The last such moment before another; one still to come is refused. The earliest beginning is
   * the careful one, and the latest end.
   */
  private Optional<Instant> read(String name, Instant before, Edge edge) {
    String given = given(name);
    SaidTime.Read read = SaidTime.passed(given, desk.zone(), now, before, edge);
    if (read instanceof Skipped skipped) {
      return refuse(name, "clock.skipped", given, skipped.before(), skipped.after());
    }
    if (read instanceof Either two) {
      return refuse(name, "clock.either", given, two.written().get(0), two.written().get(1));
    }
    if (!(read instanceof At at)) {
      return refuse(name, "left.no-time", given);
    }
    if (at.moment().isAfter(now)) {
      return refuse(name, "left.ahead", desk.moment(at.moment(), visitor));
    }
    if (at.isTwice() && edge == Edge.LATEST) {
      // The later of two is the careful end.
      return Optional.of(at.moment().atZone(desk.zone()).withLaterOffsetAtOverlap().toInstant())
          .filter(later -> !later.isAfter(now))
          .or(() -> Optional.of(at.moment()));
    }
    if (at.isTwice()) {
      LocalDateTime shown = LocalDateTime.ofInstant(at.moment(), desk.zone());
      counted.add(visitor.say("clock.twice", shown.toLocalTime()));
    }
    if (at.isRough()) {
      String key = edge == Edge.EARLIEST ? "left.roughly" : "left.roughly-till";
      counted.add(visitor.say(key, given, desk.moment(at.moment(), visitor)));
    }
    return Optional.of(at.moment());
  }

  private String given(String name) {
    return fields.getOrDefault(name, "");
  }

  private <T> Optional<T> refuse(String name, String key, Object... filled) {
    wrong.put(name, visitor.say(key, filled));
    return Optional.empty();
  }
}
