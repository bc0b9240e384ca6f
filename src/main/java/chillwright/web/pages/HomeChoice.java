package chillwright.web.pages;

import chillwright.rulebook.RuleBook;
import chillwright.service.Kitchen;
import chillwright.service.SetUp;

/** Whether a question is asked at home or of the food of this kitchen, and by which rules. */
final class HomeChoice {
  static final String FIELD = "home";

  private static final String HOME = "us-home";

  private final Kitchen kitchen;
  private final boolean isHome;

  /**
   * @param given "yes" or "no" as the person chose; blank is home where nobody has set up a kitchen
   */
  HomeChoice(Kitchen kitchen, String given) {
    this.kitchen = kitchen;
    this.isHome = given.isEmpty() ? !isSetUp() : !given.equals("no");
  }

  boolean isHome() {
    return isHome;
  }

  /** The rules that were chosen. */
  RuleBook book() {
    return isHome ? homeBook() : kitchen.judge().book();
  }

  /** The advice for homes; the rules of this kitchen where there is none. */
  RuleBook homeBook() {
    return kitchen.library().ruleBook(HOME).orElse(kitchen.judge().book());
  }

  private boolean isSetUp() {
    SetUp setUp = kitchen.setUp();
    return kitchen.settings().name().isPresent()
        || !setUp.people().isEmpty()
        || !setUp.places().isEmpty()
        || !setUp.foods().isEmpty();
  }
}
