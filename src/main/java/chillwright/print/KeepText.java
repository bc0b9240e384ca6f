package chillwright.print;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** The answer to "how long does it keep?" in words. Safety days and quality dates never mix. */
public final class KeepText {
  private KeepText() {}

  public static String answer(
      Category category,
      Keeping keeping,
      ZoneId zone,
      String ruleSet,
      String version,
      String defers) {
    List<String> lines = new ArrayList<>();
    lines.add(category.title() + " (" + category.key() + ")");
    lines.addAll(dates(keeping, zone));
    if (category.freezes() == Category.Freezes.NO) {
      lines.add("  Does not freeze well; no freezer date is given.");
    } else if (category.freezes() == Category.Freezes.POORLY) {
      lines.add("  Freezes poorly: expect it to separate, crumble or go soft.");
    }
    keeping.because().forEach(reason -> lines.add("    " + reason));
    category.note().ifPresent(note -> lines.add("  Note: " + note));
    if (keeping.bestQualityBy().isEmpty() && keeping.qualityLimit().isEmpty()) {
      lines.addAll(ifFrozen(category));
      lines.add("    figures: " + category.source());
    }
    lines.add("Judged by " + ruleSet + ", version " + version + ". " + defers.strip());
    return String.join(System.lineSeparator(), lines);
  }

  /** What freezing would do for food that is not frozen. */
  private static List<String> ifFrozen(Category category) {
    String months = range(category.freezer());
    return months.equals("-")
        ? List.of()
        : List.of(
            "    If frozen and kept at 0 °F or below: best quality for "
                + months
                + (months.equals("1") ? " month" : " months")
                + " (quality, not safety)");
  }

  /** The dates of a lot, the governing one first and marked. */
  static List<String> dates(Keeping keeping, ZoneId zone) {
    List<String> lines = new ArrayList<>();
    keeping
        .discardAt()
        .ifPresent(
            at -> lines.add(line(keeping, Governs.DISCARD_AT, "Discard at " + local(at, zone))));
    keeping
        .dateMarkLastDay()
        .ifPresent(
            day ->
                lines.add(
                    line(
                        keeping,
                        Governs.DATE_MARK_LAST_DAY,
                        "Use or discard by the end of " + day)));
    keeping
        .chilledLastDay()
        .ifPresent(
            day ->
                lines.add(
                    line(
                        keeping,
                        Governs.CHILLED_LAST_DAY,
                        "In the refrigerator until the end of " + day)));
    keeping
        .bestQualityBy()
        .ifPresent(
            day ->
                lines.add(
                    line(keeping, Governs.BEST_QUALITY_BY, "Frozen: best quality by " + day)));
    keeping
        .qualityLimit()
        .ifPresent(
            day ->
                lines.add(
                    line(
                        keeping,
                        Governs.QUALITY_LIMIT,
                        "Frozen: quality fades after " + day + "; that is no safety limit")));
    keeping
        .daysLeftWhenThawed()
        .ifPresent(days -> lines.add(line(keeping, Governs.DAYS_LEFT_WHEN_THAWED, thawed(days))));
    return lines.isEmpty() ? List.of("  No date applies.") : lines;
  }

  private static String thawed(int days) {
    return days == 0
        ? "Once thawed: no days left, use at once"
        : "Once thawed: use within "
            + days
            + (days == 1 ? " day" : " days")
            + ", the thawing day included";
  }

  private static String line(Keeping keeping, Governs which, String text) {
    boolean governs = keeping.governs().filter(which::equals).isPresent();
    return (governs ? "  > " : "    ") + text + (governs ? "  (this governs now)" : "");
  }

  private static String local(Instant moment, ZoneId zone) {
    return Figures.time(moment, zone, Instant.EPOCH);
  }

  /** The categories, a line each. */
  public static String categories(KeepingList list) {
    List<String> lines = new ArrayList<>();
    lines.add(
        String.format("%-34s %-12s %-14s %s", "category", "fridge days", "freezer months", "food"));
    for (Category category : list.categories()) {
      lines.add(
          String.format(
              "%-34s %-12s %-14s %s",
              category.key(),
              range(category.fridge()),
              range(category.freezer()),
              category.title()));
    }
    lines.add(
        "Fridge days are a home chart's; a food business counts its own date mark (7 days in the"
            + " Food Code).");
    return String.join(System.lineSeparator(), lines);
  }

  private static String range(Category.Range range) {
    OptionalInt min = range.min();
    OptionalInt max = range.max();
    if (max.isEmpty()) {
      return "-";
    }
    boolean isOne = min.isEmpty() || min.getAsInt() == max.getAsInt();
    return isOne ? String.valueOf(max.getAsInt()) : min.getAsInt() + "-" + max.getAsInt();
  }
}
