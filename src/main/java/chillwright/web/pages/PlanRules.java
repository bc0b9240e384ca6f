package chillwright.web.pages;

import chillwright.core.rules.Occasion;
import chillwright.rulebook.RuleBook;

/**
 * By which rules a plan is made.
 *
 * @param title of the rule set
 * @param isHome whether they are the advice for homes
 */
public record PlanRules(String title, boolean isHome) {
  static PlanRules of(Desk desk, Visitor visitor) {
    RuleBook book = desk.kitchen().settings().ruleBook();
    // Rules for a business print when food must be cold; a county's own set is one or the other.
    boolean isHome = desk.kitchen().setUp().rulesOfToday().rules(Occasion.COOLING_COOKED).isEmpty();
    return new PlanRules(visitor.language().named(book.title()), isHome);
  }
}
