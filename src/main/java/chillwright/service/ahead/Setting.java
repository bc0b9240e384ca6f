package chillwright.service.ahead;

import chillwright.core.log.KeepingList;
import chillwright.core.rules.RuleSet;
import chillwright.rulebook.Handbook;
import chillwright.rulebook.RuleBook;
import chillwright.rulebook.RuleLibrary;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.Objects;
import java.util.Optional;

/**
 * What questions are answered by.
 *
 * @param rules whose cooling limits count
 * @param business the rules of food businesses, told as advice where {@code rules} print no limit
 * @param keeping the storage categories
 * @param handbook foods, surfaces, pans and kitchen figures
 * @param asked when it is asked, in the kitchen's zone
 * @param book of which {@code rules} are those in force that day
 * @param own the foods of the kitchen; empty where none is at hand
 */
public record Setting(
    RuleSet rules,
    RuleSet business,
    KeepingList keeping,
    Handbook handbook,
    ZonedDateTime asked,
    RuleBook book,
    Optional<OwnFoods> own) {
  private static final String BUSINESS = "us-food-code-2022";

  public Setting {
    Objects.requireNonNull(rules, "rules");
    Objects.requireNonNull(business, "business");
    Objects.requireNonNull(keeping, "keeping");
    Objects.requireNonNull(handbook, "handbook");
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(book, "book");
    Objects.requireNonNull(own, "own");
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
        asked,
        book,
        Optional.empty());
  }

  /** The same for a kitchen with foods of its own. */
  public Setting with(OwnFoods foods) {
    return new Setting(rules, business, keeping, handbook, asked, book, Optional.of(foods));
  }
}
