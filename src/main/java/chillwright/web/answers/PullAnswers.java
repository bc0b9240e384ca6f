package chillwright.web.answers;

import chillwright.core.keeping.LotState;
import chillwright.core.plan.Pull;
import chillwright.core.plan.Pull.Need;
import chillwright.core.plan.Pull.Unlogged;
import chillwright.core.plan.PullList;
import chillwright.print.Language;
import chillwright.print.PullText;
import chillwright.print.Times;
import chillwright.rulebook.RuleBook;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What to take out of the freezer, as answered.
 *
 * @param now the moment of the answer
 */
public record PullAnswers(RuleBook book, ZoneId zone, Instant now) {
  /** The list of some days. */
  public record Answer(
      OffsetDateTime asOf,
      int days,
      List<Line> pulls,
      List<Missing> missing,
      List<UnloggedDish> unlogged,
      Answers.RuleSetRef ruleSet,
      String caution,
      String defers) {}

  /**
   * A lot to take out, or to use.
   *
   * @param why plan, best-quality, best-at-room or last-day
   * @param at when it comes out of the freezer; null where no plan says
   * @param day on which it is to be taken out or used at the latest
   * @param portions null where they are not counted
   * @param lastDay once thawed, where it is frozen; null where no day of safety counts
   */
  public record Line(
      String lot,
      String food,
      Optional<String> place,
      OptionalInt portions,
      String why,
      Optional<OffsetDateTime> at,
      LocalDate day,
      Optional<LocalDate> lastDay,
      Optional<String> plan,
      Optional<String> dish,
      String says) {}

  /** A dish for which the freezer holds too little. */
  public record Missing(String plan, String dish, int portions, String says) {}

  /**
   * A dish that comes out by a plan, of which the log has nothing in the freezer.
   *
   * @param why plan-not-frozen-yet, or plan-thaws where its first step thaws what was got frozen
   */
  public record UnloggedDish(
      String plan, String dish, int portions, String why, OffsetDateTime at, String says) {}

  public Answer answer(PullList list, int days) {
    PullText text = new PullText(Times.at(now, zone, Language.ENGLISH));
    return new Answer(
        OffsetDateTime.ofInstant(now, zone),
        days,
        list.pulls().stream().map(pull -> line(pull, text)).toList(),
        missing(list.missing(), text),
        list.unlogged().stream().map(dish -> unlogged(dish, text)).toList(),
        new Answers.RuleSetRef(book.id(), book.version()),
        text.caution(),
        book.defers().strip());
  }

  private Line line(Pull pull, PullText text) {
    LotState lot = pull.lot();
    return new Line(
        lot.lot().text(),
        lot.food(),
        lot.standing().flatMap(standing -> standing.place()),
        pull.portions(),
        pull.why().key(),
        pull.at().map(at -> OffsetDateTime.ofInstant(at, zone)),
        pull.day(),
        pull.lastDay(),
        pull.need().map(Need::plan),
        pull.need().map(Need::dish),
        text.what(pull) + ". " + text.why(pull));
  }

  private UnloggedDish unlogged(Unlogged dish, PullText text) {
    return new UnloggedDish(
        dish.plan(),
        dish.dish(),
        dish.portions(),
        dish.why(),
        OffsetDateTime.ofInstant(dish.at(), zone),
        text.why(dish));
  }

  private static List<Missing> missing(Map<Need, Integer> missing, PullText text) {
    return missing.entrySet().stream()
        .sorted(Comparator.comparing(lack -> lack.getKey().at()))
        .map(
            lack ->
                new Missing(
                    lack.getKey().plan(),
                    lack.getKey().dish(),
                    lack.getValue(),
                    text.missing(lack.getKey(), lack.getValue())))
        .toList();
  }
}
