package chillwright.paper;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.RoomLife;
import chillwright.core.log.Category;
import chillwright.core.rules.DayCounting;
import chillwright.paper.LabelMaker.Judged;
import chillwright.print.Times;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Until when the food of a label keeps. What holds in a freezer is not told of food that leaves it
 * and needs no cold: by the time somebody reads the label it has thawed.
 */
final class KeepingLines {
  /** Room to write a date by hand. */
  static final String BLANK = "__________";

  private final Words words;
  private final Times times;
  private final LocalDate today;

  /**
   * @param today the day that it is read from
   */
  KeepingLines(Words words, Times times, LocalDate today) {
    this.words = words;
    this.times = times;
    this.today = today;
  }

  /**
   * Days at room temperature, as the kitchen states them of food that needs no cold.
   *
   * @param by whose figure it is, in words
   */
  record Room(OptionalInt days, String by) {}

  /** Of a frozen lot, whose label stays with the freezer. */
  List<String> frozen(Keeping keeping, Judged judged, Room room) {
    List<String> lines = new ArrayList<>();
    best(keeping).ifPresent(day -> lines.add(quality("label.best-quality", day)));
    if (!judged.timeline().food().category().tcs() && room.days().isPresent()) {
      int days = room.days().getAsInt();
      int left = RoomLife.left(judged.timeline(), days);
      if (left < days) {
        lines.add(words.say("label.room-days", left, room.by()));
      }
    }
    lines.addAll(onceThawed(keeping, judged));
    return lines;
  }

  /**
   * Of a frozen lot that leaves its freezer.
   *
   * @param posted the day on which it does, and thaws where it needs no cold
   */
  List<String> leavesFrozen(Keeping keeping, Judged judged, Room room, Optional<LocalDate> posted) {
    List<String> lines = new ArrayList<>();
    if (judged.timeline().food().category().tcs()) {
      lines.add(words.say("label.keep-frozen"));
      best(keeping).ifPresent(day -> lines.add(quality("label.best-while-frozen", day)));
      lines.addAll(onceThawed(keeping, judged));
      return lines;
    }
    if (best(keeping).filter(this::isOver).isPresent()) {
      lines.add(words.say("label.quality-passed"));
    } else if (room.days().isPresent()) {
      int left = RoomLife.left(judged.timeline(), room.days().getAsInt());
      lines.add(
          posted
              .map(day -> roomUntil(day.plusDays(left), room))
              .orElseGet(() -> words.say("label.room-days", left, room.by())));
    }
    lines.addAll(onceThawed(keeping, judged));
    return lines.isEmpty() ? List.of(words.say("label.no-date-outside")) : lines;
  }

  /** Of a lot that was past its best before it was frozen, or before it left its freezer. */
  List<String> over(Keeping keeping, Judged judged) {
    List<String> lines = new ArrayList<>();
    keeping.discardAt().ifPresent(at -> lines.add(words.say("label.serve-by", times.moment(at))));
    lastDay(keeping)
        .filter(day -> !judged.timeline().food().category().daysAreQuality())
        .map(day -> words.say("label.discard-after", times.day(day)))
        .ifPresent(lines::add);
    lines.add(words.say("label.quality-passed"));
    return lines;
  }

  /** Of a lot that is not frozen. */
  List<String> chilled(Keeping keeping, Judged judged, Room room) {
    List<String> lines = new ArrayList<>();
    Category category = judged.timeline().food().category();
    keeping.discardAt().ifPresent(at -> lines.add(words.say("label.serve-by", times.moment(at))));
    String key = category.daysAreQuality() ? "label.best-chilled" : "label.discard-after";
    lastDay(keeping)
        .map(day -> category.daysAreQuality() ? quality(key, day) : words.say(key, times.day(day)))
        .ifPresent(lines::add);
    if (!category.tcs() && room.days().isPresent()) {
      RoomLife.begins(judged.timeline())
          .map(day -> day.plusDays(room.days().getAsInt()))
          .map(day -> isOver(day) ? quality("", day) : roomUntil(day, room))
          .ifPresent(lines::add);
    }
    return lines;
  }

  private String roomUntil(LocalDate day, Room room) {
    return words.say("label.room-until", times.day(day), room.by());
  }

  static Optional<LocalDate> lastDay(Keeping keeping) {
    return keeping.dateMarkLastDay().or(keeping::chilledLastDay);
  }

  private static Optional<LocalDate> best(Keeping keeping) {
    return keeping.bestQualityBy().or(keeping::qualityLimit);
  }

  private List<String> onceThawed(Keeping keeping, Judged judged) {
    OptionalInt left = keeping.daysLeftWhenThawed();
    if (left.isEmpty()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    DayCounting.any(judged.timeline(), judged.rules())
        .ifPresent(days -> lines.add(words.say("label.days-used", days.used())));
    lines.add(thawed(left.getAsInt(), judged.rules().settings().thawingDayCounts()));
    return lines;
  }

  private String thawed(int left, boolean thawingDayCounts) {
    if (left == 0) {
      return words.say("label.after-thawing-at-once", BLANK);
    }
    String key = left == 1 ? "label.after-thawing-day" : "label.after-thawing-days";
    String counted = thawingDayCounts ? " " + words.say("label.thawing-day-counts") : "";
    return words.say(key, left, BLANK) + counted;
  }

  /** A day of quality; that it is over, since a day in the past tells nobody what to do. */
  private String quality(String key, LocalDate day) {
    return isOver(day) ? words.say("label.quality-passed") : words.say(key, times.day(day));
  }

  private boolean isOver(LocalDate day) {
    return today.isAfter(day);
  }
}
