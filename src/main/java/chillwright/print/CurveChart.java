package chillwright.print;

import chillwright.core.log.LogEntry;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.Reach;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A lot's temperatures over time, against the limits that were to be reached or kept, as strokes,
 * dots and words on a plane of {@link #WIDTH} by {@link #HEIGHT}, y downwards: the same picture for
 * a page and for paper; {@link #NARROW} fits a phone, with words as large. It tells everything by
 * shape, so it prints in black and white.
 */
public final class CurveChart {
  public static final double WIDTH = 720;
  public static final double NARROW = 360;
  public static final double HEIGHT = 380;

  private static final double LEFT = 62;
  private static final double TOP = 14;
  private static final double BOTTOM = HEIGHT - 44;

  /** A longer silence between two readings begins another picture. */
  private static final Duration SILENCE = Duration.ofHours(12);

  private static final int MOST_TICKS = 7;
  private static final List<Duration> STEPS =
      List.of(
          Duration.ofMinutes(1),
          Duration.ofMinutes(2),
          Duration.ofMinutes(5),
          Duration.ofMinutes(10),
          Duration.ofMinutes(30),
          Duration.ofHours(1),
          Duration.ofHours(2),
          Duration.ofHours(4),
          Duration.ofHours(6),
          Duration.ofHours(12),
          Duration.ofDays(1),
          Duration.ofDays(7));

  private final double width;
  private final double right;
  private final Times times;
  private final Scale scale;
  private final List<LogEntry> readings;
  private final List<Goal> goals;
  private final Instant from;
  private final Instant to;
  private final double lowest;
  private final double highest;
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<Dot> dots = new ArrayList<>();
  private final List<Label> labels = new ArrayList<>();

  /** How a stroke is drawn. */
  public enum Line {
    AXIS,
    GRID,
    CURVE,
    LIMIT,
    /** Between the two readings in which a limit was crossed. */
    CROSSING
  }

  public record Stroke(Line line, double x1, double y1, double x2, double y2) {}

  public record Dot(double x, double y) {}

  /** Words that begin, are centred or end at a point. */
  public record Label(String text, double x, double y, Anchor anchor) {}

  /** Where words stand to their point. */
  public enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** A temperature to be reached by a moment, or with a sign before it, to be kept until then. */
  private record Goal(Limit limit, Instant opens, Instant last, Optional<String> sign) {}

  private CurveChart(
      List<LogEntry> readings, List<Goal> goals, Times times, Scale scale, double width) {
    this.width = width;
    this.right = width - 14;
    this.times = times;
    this.scale = scale;
    this.readings = readings;
    this.goals = goals;
    Instant first = readings.get(0).happenedAt();
    Instant last = readings.get(readings.size() - 1).happenedAt();
    for (Goal goal : goals) {
      first = first.isAfter(goal.opens()) ? goal.opens() : first;
      last = last.isBefore(goal.last()) ? goal.last() : last;
    }
    this.from = first;
    this.to = last.isAfter(first) ? last : first.plus(Duration.ofMinutes(1));
    double low = Double.MAX_VALUE;
    double high = -Double.MAX_VALUE;
    for (LogEntry reading : readings) {
      low = Math.min(low, degrees(reading.temperature().orElseThrow()));
      high = Math.max(high, degrees(reading.temperature().orElseThrow()));
    }
    for (Goal goal : goals) {
      low = Math.min(low, degrees(goal.limit().in(scale)));
      high = Math.max(high, degrees(goal.limit().in(scale)));
    }
    double step = step(high - low);
    this.lowest = Math.floor(low / step) * step;
    this.highest = Math.max(this.lowest + step, Math.ceil(high / step) * step);
    draw(step);
  }

  /**
   * The picture of the newest run of readings; empty where there are fewer than two.
   *
   * @param entries of the lot in order of time, corrections applied
   */
  public static Optional<CurveChart> of(
      List<LogEntry> entries, List<Finding> findings, Times times, Scale scale) {
    return of(entries, findings, times, scale, WIDTH);
  }

  /** The same, so wide. */
  public static Optional<CurveChart> of(
      List<LogEntry> entries, List<Finding> findings, Times times, Scale scale, double width) {
    List<LogEntry> run = new ArrayList<>();
    List<LogEntry> shown = List.of();
    for (LogEntry entry : entries) {
      if (entry.temperature().isEmpty()) {
        continue;
      }
      boolean isApart =
          !run.isEmpty()
              && Duration.between(run.get(run.size() - 1).happenedAt(), entry.happenedAt())
                      .compareTo(SILENCE)
                  > 0;
      if (isApart) {
        run = new ArrayList<>();
      }
      run.add(entry);
      shown = run.size() >= 2 ? run : shown;
    }
    if (shown.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new CurveChart(shown, goals(findings, shown), times, scale, width));
  }

  private static List<Goal> goals(List<Finding> findings, List<LogEntry> shown) {
    Instant first = shown.get(0).happenedAt();
    Instant last = shown.get(shown.size() - 1).happenedAt();
    List<Goal> goals = new ArrayList<>();
    for (Finding finding : findings) {
      Rule rule = finding.rule();
      if (rule.shape() instanceof Reach reach && finding.deadline().isPresent()) {
        Instant due = finding.deadline().get();
        if (!finding.opensAt().isAfter(last) && !due.isBefore(first)) {
          goals.add(new Goal(reach.to(), finding.opensAt(), due, Optional.empty()));
        }
      } else if (rule.shape() instanceof Hold hold) {
        kept(finding, hold, shown).ifPresent(goals::add);
      }
    }
    return goals;
  }

  /** The limit of holding over the readings that a finding rests on. */
  private static Optional<Goal> kept(Finding finding, Hold hold, List<LogEntry> shown) {
    List<Instant> told =
        shown.stream()
            .filter(reading -> finding.evidence().contains(reading.id()))
            .map(LogEntry::happenedAt)
            .toList();
    if (told.size() < 2) {
      return Optional.empty();
    }
    Instant from = told.get(0);
    Instant to = told.get(told.size() - 1);
    return hold.atMost()
        .map(limit -> new Goal(limit, from, to, Optional.of("\u2264 ")))
        .or(() -> hold.atLeast().map(l -> new Goal(l, from, to, Optional.of("\u2265 "))));
  }

  private void draw(double step) {
    for (double at = lowest; at <= highest + step / 100; at += step) {
      strokes.add(new Stroke(at == lowest ? Line.AXIS : Line.GRID, LEFT, y(at), right, y(at)));
      labels.add(new Label(Math.round(at) + " " + scale.sign(), LEFT - 6, y(at) + 5, Anchor.END));
    }
    strokes.add(new Stroke(Line.AXIS, LEFT, TOP, LEFT, BOTTOM));
    drawTimes();
    goals.forEach(this::draw);
    for (int i = 0; i < readings.size(); i++) {
      LogEntry reading = readings.get(i);
      dots.add(new Dot(x(reading.happenedAt()), y(reading)));
      if (i > 0) {
        LogEntry before = readings.get(i - 1);
        strokes.add(
            new Stroke(
                Line.CURVE,
                x(before.happenedAt()),
                y(before),
                x(reading.happenedAt()),
                y(reading)));
      }
    }
  }

  private void drawTimes() {
    Duration span = Duration.between(from, to);
    int most = (int) Math.ceil(MOST_TICKS * width / WIDTH);
    Duration step =
        STEPS.stream()
            .filter(each -> span.dividedBy(each) < most)
            .findFirst()
            .orElse(span.dividedBy(most));
    ZonedDateTime day = from.atZone(times.zone()).truncatedTo(ChronoUnit.DAYS);
    Instant tick = day.toInstant();
    while (tick.isBefore(from)) {
      tick = tick.plus(step);
    }
    boolean isLong = step.compareTo(Duration.ofDays(1)) >= 0;
    for (; !tick.isAfter(to); tick = tick.plus(step)) {
      strokes.add(new Stroke(Line.AXIS, x(tick), BOTTOM, x(tick), BOTTOM + 6));
      labels.add(
          new Label(
              isLong ? times.shortDay(LocalDate.ofInstant(tick, times.zone())) : times.hour(tick),
              x(tick),
              BOTTOM + 22,
              Anchor.MIDDLE));
    }
    labels.add(
        new Label(
            times.day(LocalDate.ofInstant(from, times.zone())), LEFT, BOTTOM + 40, Anchor.START));
  }

  private void draw(Goal goal) {
    double y = y(degrees(goal.limit().in(scale)));
    double end = x(goal.last());
    strokes.add(new Stroke(Line.LIMIT, x(goal.opens()), y, end, y));
    String limit = goal.limit().text(scale);
    if (goal.sign().isPresent()) {
      labels.add(new Label(goal.sign().get() + limit, end - 4, y - 6, Anchor.END));
      return;
    }
    strokes.add(new Stroke(Line.LIMIT, end, y - 14, end, y + 6));
    String by = limit + " \u2264 " + times.hour(goal.last());
    boolean isRight = end > (LEFT + right) / 2;
    labels.add(
        new Label(by, isRight ? end - 4 : end + 4, y - 6, isRight ? Anchor.END : Anchor.START));
    crossing(goal, y);
  }

  private void crossing(Goal goal, double y) {
    for (int i = 1; i < readings.size(); i++) {
      LogEntry before = readings.get(i - 1);
      LogEntry after = readings.get(i);
      boolean isInside =
          !after.happenedAt().isBefore(goal.opens()) && !before.happenedAt().isAfter(goal.last());
      double limit = degrees(goal.limit().in(scale));
      double was = degrees(before.temperature().orElseThrow()) - limit;
      double is = degrees(after.temperature().orElseThrow()) - limit;
      if (isInside && was * is <= 0 && was != is) {
        strokes.add(new Stroke(Line.CROSSING, x(before.happenedAt()), y, x(after.happenedAt()), y));
        return;
      }
    }
  }

  /** So many degrees apart that at most seven lines stand above one another. */
  private static double step(double span) {
    for (double step : new double[] {2, 5, 10, 20, 50, 100}) {
      if (span / step <= MOST_TICKS) {
        return step;
      }
    }
    return 200;
  }

  private double degrees(Temperature read) {
    double celsius = read.celsiusDegrees();
    return scale == Scale.CELSIUS ? celsius : celsius * 9 / 5 + 32;
  }

  private double x(Instant moment) {
    double share =
        (double) Duration.between(from, moment).toMillis() / Duration.between(from, to).toMillis();
    return LEFT + (right - LEFT) * Math.max(0, Math.min(1, share));
  }

  private double y(LogEntry reading) {
    return y(degrees(reading.temperature().orElseThrow()));
  }

  private double y(double degrees) {
    return BOTTOM - (BOTTOM - TOP) * (degrees - lowest) / (highest - lowest);
  }

  public double width() {
    return width;
  }

  public List<Stroke> strokes() {
    return List.copyOf(strokes);
  }

  public List<Dot> dots() {
    return List.copyOf(dots);
  }

  public List<Label> labels() {
    return List.copyOf(labels);
  }
}
