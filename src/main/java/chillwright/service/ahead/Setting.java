package chillwright.service.ahead;

import chillwright.core.log.KeepingList;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.Handbook;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Objects;

/**
 * What questions are answered by.
 *
 * @param rules whose cooling limits count
 * @param business the rules of food businesses, told as advice where {@code rules} print no limit
 * @param keeping the storage categories
 * @param handbook foods, surfaces, pans and kitchen figures
 * @param asked when it is asked, in the kitchen's zone
 */
public record Setting(
    RuleSet rules, RuleSet business, KeepingList keeping, Handbook handbook, ZonedDateTime asked) {
  private static final String BUSINESS = "us-food-code-2022";

  public Setting {
    Objects.requireNonNull(rules, "rules");
    Objects.requireNonNull(business, "business");
    Objects.requireNonNull(keeping, "keeping");
    Objects.requireNonNull(handbook, "handbook");
    Objects.requireNonNull(asked, "asked");
  }

  /** What the kitchen's clock shows. */
  public LocalDateTime now() {
    return asked.toLocalDateTime();
  }

  /** By a rule book as it stands on that day, and the shipped tables. */
  public static Setting of(RuleLibrary library, RuleBook book, ZonedDateTime asked) {
    return new Setting(
        book.on(asked.toLocalDate()),
        library.ruleBook(BUSINESS).orElse(book).on(asked.toLocalDate()),
        library.keepingList(),
        Handbook.shipped(),
        asked);
  }
}
