package chillwright.core.keeping;

import chillwright.core.log.Category;
import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.DayCounting.Days;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The arithmetic behind the dates of a lot, line by line, so that a cook can redo it. */
final class Reasons {
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private static final String FROZEN = "frozen ";
  private static final String FIGURES = "figures: ";
  private static final String AGAIN = " and frozen again ";

  private final Timeline timeline;
  private final Category category;
  private final boolean usesChart;
  private final List<String> lines = new ArrayList<>();

  /**
   * @param usesChart whether the days are those of the category's chart
   */
  Reasons(Timeline timeline, boolean usesChart) {
    this.timeline = timeline;
    this.category = timeline.food().category();
    this.usesChart = usesChart;
  }

  List<String> of(
      Optional<Days> days,
      Optional<Instant> discardAt,
      Optional<LocalDate> frozen,
      Quality quality) {
    discardAt.ifPresent(
        at ->
            add(
                "time control: served or discarded by "
                    + MINUTE.format(OffsetDateTime.ofInstant(at, timeline.zone()))));
    days.ifPresent(this::addDays);
    boolean isDiscarded = category.tcs() && days.flatMap(Days::missed).isPresent();
    frozen.filter(day -> !isDiscarded).ifPresent(day -> addQuality(day, quality));
    return List.copyOf(lines);
  }

  /** Whether that is a line of the dates of quality in a freezer. */
  static boolean isOfFreezer(String line) {
    return line.startsWith(FROZEN)
        || line.startsWith(FIGURES)
        || line.contains(AGAIN)
        || line.matches("from .*: (best quality by|quality limit) .*");
  }

  private void add(String line) {
    lines.add(line);
  }

  private void addDays(Days days) {
    addDayOne(days);
    if (usesChart) {
      addChart();
    }
    for (var source : days.sources()) {
      add("from " + source.lot() + ": its last day would be " + source.lastDay());
    }
    days.makersDate().ifPresent(date -> add("maker's date on the pack: " + date));
    if (days.missed().isPresent()) {
      add(
          "its last day, "
              + days.missed().get()
              + ", had passed before it was frozen"
              + (category.tcs() ? ": discard" : ""));
      return;
    }
    if (days.isFrozen() || days.wasThawed()) {
      add(count(days.used()) + " used + " + days.left() + " left");
    }
    if (!days.isFrozen()) {
      add((days.wasThawed() ? "thawed " + days.since() + ", " : "") + "last day " + days.lastDay());
    }
  }

  private void addDayOne(Days days) {
    String first = days.firstDayCounts() ? " = day 1" : ", days count from the next";
    if (days.isDayOneShown()) {
      add((days.dayOneRow().word() == Word.OPENED ? "opened " : "made ") + days.dayOne() + first);
    } else {
      add(
          "days counted from "
              + days.dayOne()
              + ", the first row; the record does not show when it was made");
    }
  }

  /** A chart prints a range: its shorter end is about the best, its longer one the last day. */
  private void addChart() {
    Category.Range chart = category.fridge();
    if (chart.min().isPresent() && !chart.min().equals(chart.max())) {
      String range = chart.min().getAsInt() + "-" + chart.max().orElseThrow();
      add(
          "refrigerator chart "
              + range
              + " days: best used within "
              + chart.min().getAsInt()
              + "; the longer is counted");
    }
  }

  private static String count(int days) {
    return days == 1 ? "1 day" : days + " days";
  }

  private void addQuality(LocalDate frozen, Quality quality) {
    Category.Range months = category.freezer();
    if (months.min().isEmpty() && months.max().isEmpty()) {
      add(FROZEN + frozen + ": no quality figure for this food");
      return;
    }
    months
        .min()
        .ifPresent(
            min ->
                add(
                    FROZEN
                        + frozen
                        + " + "
                        + months(min)
                        + ": best quality by "
                        + frozen.plusMonths(min)));
    months
        .max()
        .ifPresent(
            max ->
                add(
                    FROZEN
                        + frozen
                        + " + "
                        + months(max)
                        + ": quality limit "
                        + frozen.plusMonths(max)
                        + " (quality, not safety, while it stays at 0 °F or below)"));
    for (var source : quality.sources()) {
      source.best().ifPresent(day -> add("from " + source.lot() + ": best quality by " + day));
      source.limit().ifPresent(day -> add("from " + source.lot() + ": quality limit " + day));
    }
    addFrozenAgain();
    add(FIGURES + category.source());
  }

  /** Thawed between, it keeps its first months and has fewer days: both of one and the same lot. */
  private void addFrozenAgain() {
    Optional<LocalDate> thawed = Optional.empty();
    Optional<LocalDate> again = Optional.empty();
    for (LogEntry entry : timeline.entries()) {
      if (entry.word() == Word.THAWING) {
        thawed = Optional.of(timeline.day(entry.happenedAt()));
        again = Optional.empty();
      } else if (entry.word() == Word.FROZEN && thawed.isPresent() && again.isEmpty()) {
        again = Optional.of(timeline.day(entry.happenedAt()));
      }
    }
    if (again.isPresent()) {
      add(
          "thawed "
              + thawed.get()
              + AGAIN
              + again.get()
              + ": the months still count from the first freezing, and once it thaws it has only"
              + " the days left");
    }
  }

  private static String months(int count) {
    return count == 1 ? "1 month" : count + " months";
  }
}
