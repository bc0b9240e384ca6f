package chillwright.core.keeping;

import chillwright.core.log.Category;
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

  private final List<String> lines = new ArrayList<>();

  private Reasons() {}

  static List<String> of(
      Timeline timeline,
      Category category,
      Optional<Days> days,
      Optional<Instant> discardAt,
      Optional<LocalDate> frozen) {
    Reasons reasons = new Reasons();
    discardAt.ifPresent(
        at ->
            reasons.add(
                "time control: gone by "
                    + MINUTE.format(OffsetDateTime.ofInstant(at, timeline.zone()))));
    days.ifPresent(reasons::addDays);
    frozen.ifPresent(day -> reasons.addQuality(day, category));
    return reasons.lines;
  }

  private void add(String line) {
    lines.add(line);
  }

  private void addDays(Days days) {
    String done = days.dayOneRow().word() == Word.OPENED ? "opened " : "made ";
    add(done + days.dayOne() + (days.firstDayCounts() ? " = day 1" : ", days count from the next"));
    for (var source : days.sources()) {
      add("from " + source.lot() + ": its last day would be " + source.lastDay());
    }
    days.makersDate().ifPresent(date -> add("maker's date on the pack: " + date));
    if (days.missed().isPresent()) {
      add("its last day, " + days.missed().get() + ", had passed before it was frozen");
    }
    if (days.isFrozen() || days.wasThawed()) {
      add(count(days.used()) + " used + " + days.left() + " left");
    }
    if (!days.isFrozen()) {
      add((days.wasThawed() ? "thawed " + days.since() + ", " : "") + "last day " + days.lastDay());
    }
  }

  private static String count(int days) {
    return days == 1 ? "1 day" : days + " days";
  }

  private void addQuality(LocalDate frozen, Category category) {
    Category.Range months = category.freezer();
    if (months.min().isEmpty() && months.max().isEmpty()) {
      add("frozen " + frozen + ": no quality figure for this food");
      return;
    }
    months
        .min()
        .ifPresent(
            min ->
                add(
                    "frozen "
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
                    "frozen "
                        + frozen
                        + " + "
                        + months(max)
                        + ": quality limit "
                        + frozen.plusMonths(max)
                        + " (quality, not safety, while it stays at 0 °F or below)"));
    add("figures: " + category.source());
  }

  private static String months(int count) {
    return count == 1 ? "1 month" : count + " months";
  }
}
