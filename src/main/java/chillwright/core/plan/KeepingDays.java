package chillwright.core.plan;

import chillwright.core.keeping.Keeper;
import chillwright.core.keeping.Keeping;
import chillwright.core.log.Category;
import chillwright.core.log.Details;
import chillwright.core.log.EntryId;
import chillwright.core.log.Food;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Timeline;
import chillwright.core.log.Word;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.RuleSet;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Whether food still keeps on a day, by the same count as a lot that is logged. */
record KeepingDays(Category category, RuleSet rules, ZoneId zone) {
  /** Whether food made on a day and kept cold is within its days on another. */
  boolean keepsChilled(LocalDate made, LocalDate served) {
    return isWithin(keeping(made, Optional.empty(), Optional.empty()), served);
  }

  /** The same for food that was frozen and thawed in between; its quality must last too. */
  boolean keepsFrozen(LocalDate made, LocalDate frozen, LocalDate thawed, LocalDate served) {
    Keeping inFreezer = keeping(made, Optional.of(frozen), Optional.empty());
    boolean isGood = inFreezer.bestQualityBy().filter(thawed::isAfter).isEmpty();
    return isGood
        && inFreezer.lastDayMissed().isEmpty()
        && isWithin(keeping(made, Optional.of(frozen), Optional.of(thawed)), served);
  }

  /** Whether freezer charts print how long such food stays good. */
  boolean hasFreezerTime() {
    return category.freezer().min().isPresent();
  }

  private static boolean isWithin(Keeping keeping, LocalDate served) {
    Optional<LocalDate> last = keeping.dateMarkLastDay().or(keeping::chilledLastDay);
    return keeping.lastDayMissed().isEmpty() && last.filter(served::isAfter).isEmpty();
  }

  private Keeping keeping(LocalDate made, Optional<LocalDate> frozen, Optional<LocalDate> thawed) {
    List<LogEntry> rows = new ArrayList<>();
    rows.add(row(Word.PREPARED, made, 8));
    frozen.ifPresent(day -> rows.add(row(Word.FROZEN, day, 10)));
    thawed.ifPresent(day -> rows.add(row(Word.THAWING, day, 11)));
    Timeline timeline =
        new Timeline(
            new LotId("planned"),
            new Food(category.title(), category),
            zone,
            List.of(),
            rows,
            List.of(),
            Set.of());
    return Keeper.keep(timeline, Assessment.of(timeline, rules), rules);
  }

  private LogEntry row(Word word, LocalDate day, int hour) {
    Instant moment = day.atTime(LocalTime.of(hour, 0)).atZone(zone).toInstant();
    return new LogEntry(
        new EntryId(word.text()),
        word,
        moment,
        moment,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Details.NONE);
  }
}
