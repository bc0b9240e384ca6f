package chillwright.web.pages;

import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.print.Figures;
import chillwright.print.Language;
import chillwright.rulebook.RuleBook;
import java.time.LocalDate;
import java.util.Optional;

/** The rules that judge the kitchen: every limit with where it is printed. */
final class RulesPage {
  static final String ADDRESS = "/kitchen";

  private final Desk desk;

  RulesPage(Desk desk) {
    this.desk = desk;
  }

  RulesView view(Visitor visitor) {
    RuleBook book = desk.kitchen().judge().book();
    LocalDate today = LocalDate.ofInstant(desk.kitchen().now(), desk.zone());
    Optional<RuleSet> base =
        book.extendsId().flatMap(desk.kitchen().library()::ruleBook).map(set -> set.on(today));
    return new RulesView(
        desk.zone().getId(),
        visitor.language().named(book.title()),
        book.version(),
        book.on(today).rules().stream()
            .map(rule -> rule(rule, book, base, visitor.language()))
            .toList());
  }

  private static RulesView.Rule rule(
      Rule rule, RuleBook book, Optional<RuleSet> base, Language language) {
    Optional<Rule> replaced =
        book.isChanged(rule.id()) ? base.flatMap(set -> set.rule(rule.id())) : Optional.empty();
    return new RulesView.Rule(
        rule.id(),
        language.saidByRules(rule.says().strip()),
        Figures.limitInBoth(rule, language),
        rule.citation().text().strip(),
        language.named(rule.status()).replace('-', ' '),
        replaced
            .map(
                old ->
                    Figures.limitInBoth(old, language) + " [" + old.citation().text().strip() + "]")
            .orElse(""));
  }
}
