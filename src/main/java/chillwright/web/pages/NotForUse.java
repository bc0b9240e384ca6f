package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.learning.CoolingRuns;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Row;
import chillwright.core.log.Word;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Occasion;
import chillwright.core.rules.OpenCooling;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Verdict;
import chillwright.print.LeaveText;
import chillwright.print.Sentences;
import chillwright.service.LotView;
import java.time.Instant;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Why food is not for use as its record stands, and the question before it is handed on all the
 * same. Only people are asked, never a program: a log tells what happened.
 */
record NotForUse(Desk desk, Visitor visitor) {
  /** What is done about such food, and what only tells of it. */
  private static final Set<Word> NEVER_ASKED =
      EnumSet.of(
          Word.ACTION, Word.DISCARDED, Word.READING, Word.CORRECTION, Word.MOVED, Word.COOLING);

  private static final Set<Phase> COOLS = EnumSet.of(Phase.COOKED, Phase.PREPARED, Phase.COOLING);

  private static final Set<Occasion> THAWS =
      EnumSet.of(
          Occasion.THAWING_REFRIGERATOR,
          Occasion.THAWING_RUNNING_WATER,
          Occasion.THAWING_RUNNING_WATER_RAW);

  /** How food is put away, often with the reading that was missing. */
  private static final Set<Word> PUT_AWAY = EnumSet.of(Word.CHILLED, Word.FROZEN);

  /** Why no date of a lot holds, in words; empty where they do. */
  static Optional<String> dates(LotView view, Instant now, Visitor visitor) {
    if (LotActs.isOwed(view.state(), now)) {
      return Optional.of(visitor.say("lot.dates.owed"));
    }
    if (reasons(view, now).isEmpty()) {
      return Optional.empty();
    }
    boolean isReheated = reheated(view, now).isPresent();
    return Optional.of(visitor.say(isReheated ? "lot.dates.reheated" : "lot.dates.out"));
  }

  /** The worst of the reasons, where the food was reheated in full since. */
  static Optional<Finding> reheated(LotView view, Instant now) {
    return view.judged()
        .flatMap(
            judged ->
                reasons(view, now).stream()
                    .findFirst()
                    .filter(
                        worst ->
                            Acts.isMissed(worst, now)
                                && Acts.reheatedSince(worst, judged.timeline(), judged.ruleSet())
                                    .isPresent()));
  }

  /** What a lot on hand was out of, or is owed, the worst first. */
  static List<Finding> reasons(LotView view, Instant now) {
    return view.judged().stream()
        .filter(judged -> view.state().isOnHand())
        .flatMap(judged -> judged.against(now).stream())
        .sorted(Sentences.worstFirst(now))
        .toList();
  }

  /** Whether a lot on hand is not for use as its record stands. */
  boolean is(LotId lot) {
    return desk.kitchen()
        .lots()
        .lot(lot)
        .filter(view -> !reasons(view, desk.kitchen().now()).isEmpty())
        .isPresent();
  }

  /**
   * Of a lot that is for use although a limit was missed: what was missed and what mended it, in
   * words. Pages tell it the same wherever they tell of the lot.
   */
  static Optional<String> mended(LotView view, Sentences sentences, Visitor visitor) {
    Instant now = sentences.now();
    return view.judged()
        .filter(judged -> view.state().isOnHand() && judged.against(now).isEmpty())
        .flatMap(
            judged ->
                judged.findings().stream()
                    .filter(finding -> Acts.isMissed(finding, now))
                    .min(Sentences.worstFirst(now)))
        .map(missed -> says(missed, view, sentences) + " " + visitor.say("lot.fit"));
  }

  /** Why a lot is not shown although nothing is against its use, and what would show it. */
  static Optional<String> unread(LotView view, Sentences sentences, Visitor visitor) {
    Instant now = sentences.now();
    return view.judged()
        .filter(judged -> view.state().isOnHand() && judged.against(now).isEmpty())
        .flatMap(
            judged ->
                judged.findings().stream()
                    .filter(finding -> finding.at(now) == Verdict.NOT_SHOWN)
                    .min(Sentences.worstFirst(now)))
        .map(finding -> says(finding, view, sentences) + mayShow(finding, visitor));
  }

  /** What would show what no reading shows, or what is left to do where none can any more. */
  private static String mayShow(Finding finding, Visitor visitor) {
    if (!finding.has(Remark.NO_READING)) {
      return "";
    }
    boolean isOver = isThaw(finding) && !finding.has(Remark.STILL_GOES_ON);
    return " " + visitor.say(isOver ? "lot.read-over" : "lot.read-now");
  }

  private static boolean isThaw(Finding finding) {
    return finding.rule().occasions().stream().anyMatch(THAWS::contains);
  }

  /** Whether a reading of food that thaws can show now what none has shown yet. */
  static boolean isThawUnread(LotView view, Instant now) {
    return view.judged().map(LotView.Judged::findings).orElse(List.of()).stream()
        .filter(finding -> finding.at(now) == Verdict.NOT_SHOWN && isThaw(finding))
        .anyMatch(f -> f.has(Remark.NO_READING) && f.has(Remark.STILL_GOES_ON));
  }

  /** That food which has cooled in time stands in the log as cooling still. */
  static Optional<String> coldNow(LotView view, Instant now, Visitor visitor) {
    return view.judged()
        .filter(judged -> view.state().isOnHand() && COOLS.contains(judged.timeline().phase()))
        .filter(judged -> OpenCooling.of(judged.timeline(), judged.ruleSet()).isEmpty())
        .filter(
            judged ->
                judged.findings().stream()
                    .anyMatch(
                        finding ->
                            CoolingRuns.isCooling(finding.rule()) && finding.at(now) == Verdict.IN))
        .map(judged -> visitor.say("lot.cold-now"));
  }

  /** What was mended of a lot that falls due next. */
  Optional<String> mended(LotState lot) {
    Instant now = desk.kitchen().now();
    Sentences sentences = new Sentences(desk.zone(), visitor.scale(), now, visitor.language());
    return lot.standing()
        .flatMap(standing -> standing.verdicts().at(now))
        .filter(verdict -> verdict.compareTo(Verdict.NOT_SHOWN) <= 0)
        .flatMap(verdict -> desk.kitchen().lots().lot(lot.lot()))
        .flatMap(view -> mended(view, sentences, visitor));
  }

  /** Why a lot is not for use, for a list: what its own page says where it was reheated since. */
  String listed(LotState lot) {
    Instant now = desk.kitchen().now();
    Sentences sentences = new Sentences(desk.zone(), visitor.scale(), now, visitor.language());
    return LotActs.isOwed(lot, now)
        ? visitor.say("lots.owed")
        : desk.kitchen()
            .lots()
            .lot(lot.lot())
            .flatMap(view -> reheated(view, now).map(worst -> says(worst, view, sentences)))
            .orElseGet(() -> visitor.say("lots.out"));
  }

  /** The question before an entry; empty where there is none. */
  Optional<Question> before(Row row, LotView view) {
    boolean isNeverAsked =
        NEVER_ASKED.contains(row.word())
            || isTheMissingReading(row, view)
            || isHeldHotInstead(row, view)
            || isTheReheat(row, view);
    return isNeverAsked ? Optional.empty() : of(view);
  }

  /** Whether all that was wrong is that nobody had read the food, which this entry does. */
  private boolean isTheMissingReading(Row row, LotView view) {
    Instant now = desk.kitchen().now();
    return PUT_AWAY.contains(row.word())
        && row.details().temperature().isPresent()
        && reasons(view, now).stream().noneMatch(reason -> reason.at(now) == Verdict.OUT)
        && desk.kitchen().lots().findingsWith(view.state().lot(), row).stream()
            .noneMatch(finding -> finding.at(now) == Verdict.OUT);
  }

  /** Whether it tells that the food was held hot all the while, so that no limit was missed. */
  private boolean isHeldHotInstead(Row row, LotView view) {
    Instant now = desk.kitchen().now();
    return row.word() == Word.HOT_HOLDING
        && desk.kitchen().lots().findingsWith(view.state().lot(), row).stream()
            .noneMatch(finding -> Acts.isMissed(finding, now));
  }

  /** Whether it is the reheat that the rule set still offers for all that was wrong. */
  private boolean isTheReheat(Row row, LotView view) {
    return row.word() == Word.REHEATING
        && reasons(view, desk.kitchen().now()).stream()
            .allMatch(wrong -> wrong.offered(row.when()).stream().anyMatch(Rule.Action::isReheat));
  }

  /** A question for each lot of these codes that is not to be handed on. */
  List<Question> of(Collection<String> codes) {
    return codes.stream()
        .filter(LotId::isCode)
        .map(LotId::new)
        .distinct()
        .flatMap(code -> desk.kitchen().lots().lot(code).stream())
        .flatMap(view -> of(view).stream())
        .toList();
  }

  /** The question before one lot is handed on. */
  Optional<Question> of(LotView view) {
    return of(view, "entry.doubt.unfit");
  }

  /** The question before one lot gets labels. */
  Optional<Question> labelled(LotView view) {
    return of(view, "labels.doubt");
  }

  private Optional<Question> of(LotView view, String key) {
    Instant now = desk.kitchen().now();
    Sentences sentences = new Sentences(desk.zone(), visitor.scale(), now, visitor.language());
    String lot = view.state().lot().text();
    return reasons(view, now).stream()
        .findFirst()
        .map(
            worst ->
                Question.of(
                    "unfit",
                    lot + ":" + worst.rule().id(),
                    visitor.say(key, lot, says(worst, view, sentences))));
  }

  /** What a finding of a lot says, with what was done since where that changes it. */
  static String says(Finding finding, LotView view, Sentences sentences) {
    return view.judged()
        .map(
            judged ->
                sentences.says(finding, judged.timeline(), judged.ruleSet())
                    + LeaveText.says(
                        finding,
                        judged.timeline(),
                        judged.ruleSet(),
                        sentences.now(),
                        sentences.language()))
        .orElseGet(() -> sentences.says(finding));
  }
}
