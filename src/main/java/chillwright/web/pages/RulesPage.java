package chillwright.web.pages;

import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.print.Figures;
import chillwright.print.Language;
import chillwright.rulebook.RuleBook;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The kitchen, and the rules that judge it: every limit with where it is printed. */
final class RulesPage {
  static final String ADDRESS = "/kitchen";

  private final Desk desk;

  RulesPage(Desk desk) {
    this.desk = desk;
  }

  void show(Context context) {
    Visitor visitor = desk.visitor(context);
    RuleBook book = desk.kitchen().judge().book();
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Optional<RuleSet> base =
        book.extendsId().flatMap(desk.kitchen().library()::ruleBook).map(set -> set.on(today));
    RulesView view =
        new RulesView(
            desk.zone().getId(),
            book.title(),
            book.version(),
            book.on(today).rules().stream()
                .map(rule -> rule(rule, book, base, visitor.language()))
                .toList());
    Frame frame = desk.frame(visitor, "page.kitchen", ADDRESS, List.of());
    desk.answer(context, Templates.PAGES.rules(frame, view).render());
  }

  private static RulesView.Rule rule(
      Rule rule, RuleBook book, Optional<RuleSet> base, Language language) {
    Optional<Rule> replaced =
        book.isChanged(rule.id()) ? base.flatMap(set -> set.rule(rule.id())) : Optional.empty();
    return new RulesView.Rule(
        rule.id(),
        rule.says().strip(),
        Figures.limitInBoth(rule, language),
        rule.citation().text().strip(),
        rule.status(),
        replaced
            .map(
                old ->
                    Figures.limitInBoth(old, language) + " [" + old.citation().text().strip() + "]")
            .orElse(""));
  }
}
