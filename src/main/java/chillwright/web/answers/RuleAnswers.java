package chillwright.web.answers;

import chillwright.core.measure.Limit;
import chillwright.core.rules.Citation;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape;
import chillwright.core.rules.Shape.DayCount;
import chillwright.core.rules.Shape.Hold;
import chillwright.core.rules.Shape.Reach;
import chillwright.core.rules.Shape.StaysFrozen;
import chillwright.core.rules.Shape.TimeAlone;
import chillwright.print.Figures;
import chillwright.rulebook.Choice;
import chillwright.rulebook.RuleBook;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Rule sets as answered: every figure as printed, with its citation. */
public final class RuleAnswers {
  private RuleAnswers() {}

  /** A whole rule set with the figures in force on one day. */
  public record RuleSetDetail(
      @JsonUnwrapped Answers.RuleSetLine line,
      LocalDate asOf,
      List<Setting> settings,
      List<RuleLine> rules) {}

  /** A choice between published conventions. */
  public record Setting(String key, String value, String status, Cited citation) {}

  /** Where a figure is printed, how sure that is, and the copy that was read. */
  public record Cited(String text, String state, Optional<String> copy) {}

  /** A corrective action that the rule set offers. */
  public record Action(String says, Cited citation) {}

  /**
   * A limit as printed; {@code passes} is {@code at} the limit itself or only {@code beyond} it.
   */
  public record Printed(
      @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<BigDecimal> c,
      @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<BigDecimal> f,
      String passes) {}

  /**
   * One rule.
   *
   * @param limit in words, with both printed figures
   * @param figures the same as numbers; which there are depends on the shape
   * @param changed whether the set's own files change or add it
   * @param instead what the set it extends says, where that is changed
   */
  public record RuleLine(
      String id,
      String topic,
      String says,
      List<String> occasions,
      String shape,
      String status,
      String limit,
      Map<String, Object> figures,
      Cited citation,
      List<Action> actions,
      boolean changed,
      Optional<Instead> instead) {}

  /** What a changed rule replaces. */
  public record Instead(String limit, Cited citation) {}

  public static Answers.RuleSetLine line(RuleBook book, boolean inUse) {
    return new Answers.RuleSetLine(
        book.id(),
        book.version(),
        book.title(),
        book.status(),
        book.extendsId(),
        book.lastChecked(),
        inUse,
        book.defers().strip());
  }

  /**
   * A whole rule set.
   *
   * @param base the set it extends, where it extends one
   */
  public static RuleSetDetail detail(
      RuleBook book, Optional<RuleBook> base, boolean inUse, LocalDate day) {
    Optional<RuleSet> baseRules = base.map(extended -> extended.on(day));
    return new RuleSetDetail(
        line(book, inUse),
        day,
        book.choices().stream().map(RuleAnswers::setting).toList(),
        book.on(day).rules().stream()
            .map(rule -> rule(rule, book.isChanged(rule.id()), baseRules))
            .toList());
  }

  private static Setting setting(Choice choice) {
    return new Setting(choice.key(), choice.value(), choice.status(), cited(choice.citation()));
  }

  private static Cited cited(Citation citation) {
    return new Cited(citation.text().strip(), citation.state(), citation.copy());
  }

  private static RuleLine rule(Rule rule, boolean isChanged, Optional<RuleSet> base) {
    Optional<Rule> replaced =
        isChanged ? base.flatMap(set -> set.rule(rule.id())) : Optional.empty();
    return new RuleLine(
        rule.id(),
        rule.topic(),
        rule.says().strip(),
        rule.occasions().stream().sorted().map(Occasion::key).toList(),
        shape(rule.shape()),
        rule.status(),
        Figures.limitInBoth(rule),
        figures(rule.shape()),
        cited(rule.citation()),
        rule.actions().stream().map(act -> new Action(act.says(), cited(act.citation()))).toList(),
        isChanged,
        replaced.map(old -> new Instead(Figures.limitInBoth(old), cited(old.citation()))));
  }

  private static String shape(Shape shape) {
    if (shape instanceof Reach) {
      return "reach";
    }
    if (shape instanceof Hold) {
      return "hold";
    }
    if (shape instanceof TimeAlone) {
      return "time-alone";
    }
    if (shape instanceof DayCount) {
      return "day-count";
    }
    return shape instanceof StaysFrozen ? "stays-frozen" : "no-figure";
  }

  private static Map<String, Object> figures(Shape shape) {
    Map<String, Object> figures = new LinkedHashMap<>();
    if (shape instanceof Reach reach) {
      put(figures, "from", reach.from());
      put(figures, "to", Optional.of(reach.to()));
      reach.within().ifPresent(time -> figures.put("within", time));
      putLasting(figures, "stays", reach.stays());
      putLasting(figures, "stands", reach.stands());
    } else if (shape instanceof Hold hold) {
      put(figures, "atMost", hold.atMost());
      put(figures, "atLeast", hold.atLeast());
      putLasting(figures, "allowed", hold.allowed());
    } else if (shape instanceof TimeAlone time) {
      figures.put("within", time.within());
      put(figures, "ceiling", time.ceiling());
      put(figures, "hotAir", time.hotAir());
      time.withinHotAir().ifPresent(hot -> figures.put("withinHotAir", hot));
    } else if (shape instanceof DayCount count) {
      figures.put("days", count.days().isPresent() ? count.days().getAsInt() : "chart");
      figures.put("firstDay", count.firstDayCounts() ? "counts" : "does-not-count");
    } else if (shape instanceof StaysFrozen frozen) {
      put(figures, "atMost", frozen.atMost());
    }
    return figures;
  }

  private static void putLasting(Map<String, Object> figures, String key, Duration time) {
    if (!time.isZero()) {
      figures.put(key, time);
    }
  }

  private static void put(Map<String, Object> figures, String key, Optional<Limit> limit) {
    limit.ifPresent(
        given ->
            figures.put(
                key,
                new Printed(
                    degrees(given.celsius()),
                    degrees(given.fahrenheit()),
                    given.inclusive() ? "at" : "beyond")));
  }

  private static Optional<BigDecimal> degrees(OptionalInt hundredths) {
    return hundredths.isEmpty()
        ? Optional.empty()
        : Optional.of(whole(BigDecimal.valueOf(hundredths.getAsInt(), 2).stripTrailingZeros()));
  }

  /** Without an exponent: 57, not 5.7E+1. */
  private static BigDecimal whole(BigDecimal number) {
    return number.scale() < 0 ? number.setScale(0) : number;
  }
}
