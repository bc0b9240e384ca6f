package chillwright.web.answers;

import chillwright.core.log.Category;
import chillwright.core.log.KeepingList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Storage categories as answered, with their sources. */
public final class CategoryAnswers {
  private CategoryAnswers() {}

  /** A printed range; null where an end was not printed. */
  public record Range(Optional<Integer> min, Optional<Integer> max) {}

  /**
   * One storage category.
   *
   * @param fridgeDays days in a home refrigerator, counted from the day after the making day
   * @param freezerMonths calendar months of quality, not of safety
   * @param freezes {@code well}, {@code poorly} or {@code no}
   * @param also other words for such food; none of them is a key
   * @param daysAreQuality whether the refrigerator days tell of quality only
   */
  public record CategoryLine(
      String category,
      String food,
      Range fridgeDays,
      Range freezerMonths,
      String freezes,
      boolean tcs,
      boolean readyToEat,
      boolean daysAreQuality,
      String source,
      String status,
      Optional<String> note,
      List<String> also) {}

  public static List<CategoryLine> all(KeepingList list) {
    return list.categories().stream().map(CategoryAnswers::line).toList();
  }

  private static CategoryLine line(Category category) {
    return new CategoryLine(
        category.key(),
        category.title(),
        range(category.fridge()),
        range(category.freezer()),
        category.freezes().name().toLowerCase(Locale.ROOT),
        category.tcs(),
        category.readyToEat(),
        category.daysAreQuality(),
        category.source(),
        category.status(),
        category.note(),
        category.also());
  }

  private static Range range(Category.Range range) {
    return new Range(EntryAnswers.number(range.min()), EntryAnswers.number(range.max()));
  }
}
