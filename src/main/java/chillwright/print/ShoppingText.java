package chillwright.print;

import chillwright.core.plan.Menu;
import chillwright.core.plan.Plan;
import chillwright.core.plan.Shopping;
import chillwright.core.plan.Shopping.Item;
import chillwright.core.plan.Shopping.Week;
import chillwright.print.PlanText.Day;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is to be bought for a plan, in words, week by week. */
public record ShoppingText(PlanText text) {
  /** Units that measure; any other, such as a can or a stick, is bought whole. */
  private static final Pattern MEASURES =
      Pattern.compile(
          "k?g|mg|kilos?|grams?|gramos?|lbs?|pounds?|libras?|oz|ounces?|onzas?|[mcd]?l"
              + "|lit(er|re|ro)s?|cups?|tazas?|tsp|tbsp|(tea|table)spoons?|cucharad(it)?as?"
              + "|qts?|quarts?|pts?|pints?|gal|gallons?|galones|fl");

  /** Each week under its Monday and its number. */
  public List<Day> weeks(Menu menu, Plan plan, Map<String, Integer> missing) {
    return Shopping.of(menu, plan, missing).stream().map(this::week).toList();
  }

  private Day week(Week week) {
    String title = text.language().say("plan.shopping.week", text.title(week.monday()), week.iso());
    return new Day(title, week.items().stream().map(ShoppingText::line).toList());
  }

  /** Such as "2 kg flour (Barley bread, Seeded rolls)". */
  private static String line(Item item) {
    String amount = amount(item).map(BigDecimal::toPlainString).orElse("");
    return Stream.of(amount, item.unit(), item.name(), "(" + String.join(", ", item.dishes()) + ")")
        .filter(part -> !part.isBlank())
        .collect(Collectors.joining(" "));
  }

  /**
   * What is counted in whole things, none too few; what is measured to a hundredth, and less than
   * one of it to two figures: nobody weighs finer.
   */
  public static Optional<BigDecimal> amount(Item item) {
    return item.amount().stream()
        .mapToObj(BigDecimal::valueOf)
        .map(exact -> isMeasured(item) ? measured(exact) : whole(exact))
        .findFirst();
  }

  private static boolean isMeasured(Item item) {
    return MEASURES.matcher(item.unit().toLowerCase(Locale.ROOT)).matches();
  }

  private static BigDecimal whole(BigDecimal exact) {
    return exact.setScale(6, RoundingMode.HALF_UP).setScale(0, RoundingMode.UP);
  }

  private static BigDecimal measured(BigDecimal exact) {
    BigDecimal rounded =
        exact.compareTo(BigDecimal.ONE) < 0
            ? exact.round(new MathContext(2, RoundingMode.HALF_UP))
            : exact.setScale(2, RoundingMode.HALF_UP);
    BigDecimal plain = rounded.stripTrailingZeros();
    return plain.scale() < 0 ? plain.setScale(0) : plain;
  }
}
