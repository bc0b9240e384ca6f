package chillwright.web.answers;

import chillwright.core.ahead.Ahead;
import chillwright.core.ahead.Filled;
import chillwright.core.ahead.Filled.Amount;
import chillwright.core.ahead.Filled.Day;
import chillwright.core.ahead.Filled.Moment;
import chillwright.core.ahead.Filled.Word;
import chillwright.core.ahead.Told;
import chillwright.core.heat.Reason;
import chillwright.print.AheadText;
import chillwright.print.Language;
import chillwright.rulebook.RuleBook;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Answers to questions asked ahead. */
public final class AheadAnswers {
  private AheadAnswers() {}

  /**
   * An answer.
   *
   * @param told its sentences, the most wanted first
   */
  public record Answered(
      Answers.RuleSetRef ruleSet,
      String question,
      List<Line> told,
      List<String> cautions,
      List<Source> sources,
      String defers) {}

  /**
   * One sentence with its figures.
   *
   * @param values figures by name; a text, a date, or an amount with its unit
   * @param reason why there is no figure; null where there is one
   */
  public record Line(
      String key, String says, Map<String, Object> values, Optional<String> reason) {}

  /** An amount in its unit, not rounded. */
  public record Quantity(double amount, String unit) {}

  /** Where a figure is printed. */
  public record Source(String what, String source, String status) {}

  public static Answered of(Ahead ahead, RuleBook book, Language language) {
    AheadText text = new AheadText(language);
    return new Answered(
        new Answers.RuleSetRef(book.id(), book.version()),
        ahead.question(),
        lines(ahead.told(), language),
        text.cautions(ahead),
        ahead.sources().stream()
            .map(source -> new Source(source.what(), source.source(), source.status()))
            .toList(),
        book.defers().strip());
  }

  static List<Line> lines(List<Told> told, Language language) {
    AheadText text = new AheadText(language);
    return told.stream().map(one -> line(one, text)).toList();
  }

  private static Line line(Told told, AheadText text) {
    Map<String, Object> values = new LinkedHashMap<>();
    told.filled().forEach(filled -> values.put(filled.name(), value(filled)));
    return new Line(told.key(), text.says(told), values, told.reason().map(Reason::key));
  }

  private static Object value(Filled filled) {
    if (filled.value() instanceof Amount amount) {
      return new Quantity(amount.amount(), amount.unit().name().toLowerCase(Locale.ROOT));
    }
    if (filled.value() instanceof Word word) {
      return word.text();
    }
    if (filled.value() instanceof Moment moment) {
      return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(moment.at());
    }
    return ((Day) filled.value()).day();
  }
}
