package chillwright.web.answers;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.learning.Likewise;
import chillwright.core.log.LotId;
import chillwright.core.log.Phase;
import chillwright.core.log.Portions;
import chillwright.core.log.Timeline;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Verdict;
import chillwright.print.Figures;
import chillwright.print.Language;
import chillwright.print.Sentences;
import chillwright.rulebook.RuleBook;
import chillwright.service.LotView;
import chillwright.service.Page;
import chillwright.service.Reports.Due;
import chillwright.service.Reports.Trouble;
import chillwright.service.Written;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * Turns what a kitchen knows of its lots into answers, as read at one moment.
 *
 * @param book the kitchen's rules, named wherever a verdict is
 */
public record LotAnswers(RuleBook book, ZoneId zone, Instant now) {

  private AnswerMaker maker() {
    return new AnswerMaker(zone, now);
  }

  private EntryAnswers entries() {
    return new EntryAnswers(zone);
  }

  /** Part of a list whose items hold verdicts. */
  public <T> Answers.JudgedListing<T> listing(Page<T> page) {
    return new Answers.JudgedListing<>(
        page.items(), page.next(), maker().time(now), ruleSet(), defers());
  }

  public Answers.RuleSetRef ruleSet() {
    return new Answers.RuleSetRef(book.id(), book.version());
  }

  public String defers() {
    return book.defers().strip();
  }

  /** A lot as a list shows it, told of without dates where none holds. */
  public Answers.LotLine line(LotState state) {
    Optional<Standing> standing = state.standing();
    return new Answers.LotLine(
        state.lot().text(),
        state.food(),
        state.category(),
        state.note(),
        state.isOnHand(),
        portions(state.portions()),
        standing.map(Standing::phase).map(Phase::word),
        standing.flatMap(Standing::place),
        verdict(state).map(Verdict::text),
        standing.map(Standing::beganAt).map(maker()::time),
        state.portions().closedAt().map(maker()::time),
        standing.flatMap(Standing::lastDay),
        dates(state),
        standing
            .map(Standing::judgedBy)
            .map(by -> new Answers.RuleSetRef(by.ruleSet(), by.version())));
  }

  private static Answers.Portions portions(Portions portions) {
    return new Answers.Portions(
        EntryAnswers.number(portions.made()), EntryAnswers.number(portions.left()));
  }

  private Optional<Verdict> verdict(LotState state) {
    return state.standing().flatMap(standing -> standing.verdicts().at(now));
  }

  private Answers.Dates dates(LotState state) {
    return state
        .standing()
        .map(standing -> maker().dates(standing.keeping()))
        .orElse(Answers.Dates.NONE);
  }

  /**
   * All that is known of a lot, but its entries.
   *
   * @param told its state, without dates where none holds
   * @param earlier how coolings went that began as its own
   */
  public Answers.LotDetail detail(LotView view, LotState told, Optional<Likewise> earlier) {
    return new Answers.LotDetail(
        line(told),
        texts(view.sources()),
        texts(view.descendants()),
        view.judged().map(j -> maker().findings(j.findings(), j.timeline())).orElse(List.of()),
        view.judged().flatMap(j -> j.due().map(finding -> due(finding, j.timeline()))),
        view.judged().map(j -> maker().forecasts(j.forecasts(), j.timeline())).orElse(List.of()),
        earlier.map(CoolingMethodAnswers::earlier),
        view.placeReadings().stream().map(entries()::reading).toList(),
        AheadAnswers.lines(view.frozenLife(), Language.ENGLISH),
        ContentsAnswer.of(view.contents()),
        defers());
  }

  private static List<String> texts(List<LotId> lots) {
    return lots.stream().map(LotId::text).toList();
  }

  private static Instant lastMoment(Finding finding) {
    return finding.deadline().orElse(finding.settlesAt());
  }

  /** What must be done next: what is owed has been due since the limit was missed. */
  private Answers.Due due(Finding finding, Timeline timeline) {
    boolean isOwed = finding.at(now) != Verdict.PENDING;
    return new Answers.Due(
        says(finding, timeline),
        maker().time(isOwed ? finding.settlesAt() : lastMoment(finding)),
        finding.rule().id());
  }

  private String says(Finding finding, Timeline timeline) {
    return new Sentences(zone, Figures.scale(timeline), now).says(finding);
  }

  /** What entries of one lot did. */
  public Answers.EntriesWritten written(Written written) {
    Written.Lot lot = written.lots().get(0);
    return new Answers.EntriesWritten(
        entries().some(written.entries(), written.record()),
        written.repeats(),
        written.isReplay(),
        lot.state().lot().text(),
        verdict(lot.state()).map(Verdict::text),
        maker().findings(lot.findings(), lot.timeline(), lot.before()),
        maker().dates(lot.keeping()),
        lot.due().map(finding -> due(finding, lot.timeline())),
        maker().forecasts(lot.forecasts(), lot.timeline()),
        lot.descendants().stream().map(LotId::text).sorted().toList(),
        maker().time(now),
        ruleSet(),
        defers());
  }

  /** What falls due next of one lot. */
  public Answers.DueLine due(Due due) {
    LotState lot = due.lot();
    Finding finding = due.finding();
    Rule rule = finding.rule();
    return new Answers.DueLine(
        lot.lot().text(),
        lot.food(),
        lot.category(),
        lot.standing().map(Standing::phase).map(Phase::word),
        lot.standing().flatMap(Standing::place),
        maker().time(finding.deadline().orElse(finding.settlesAt())),
        says(finding, due.timeline()),
        rule.id(),
        Figures.limit(rule, Figures.scale(due.timeline())),
        rule.citation().text(),
        rule.status(),
        offered(finding),
        due.forecast().map(forecast -> maker().forecast(forecast, due.timeline())),
        ref(due.ruleSet()));
  }

  private List<String> offered(Finding finding) {
    return finding.offered(now).stream().map(Rule.Action::says).toList();
  }

  private static Answers.RuleSetRef ref(RuleSet ruleSet) {
    return new Answers.RuleSetRef(ruleSet.id(), ruleSet.version());
  }

  /** A limit that was missed, or a reading that was not taken in time. */
  public Answers.TroubleLine trouble(Trouble trouble) {
    LotState lot = trouble.lot();
    Finding finding = trouble.finding();
    Rule rule = finding.rule();
    return new Answers.TroubleLine(
        maker().time(finding.settlesAt()),
        lot.lot().text(),
        lot.food(),
        lot.category(),
        lot.isOnHand(),
        finding.at(now).text(),
        rule.id(),
        Figures.limit(rule, Figures.scale(trouble.timeline())),
        rule.citation().text(),
        rule.status(),
        finding.elapsed().shortest(),
        finding.elapsed().longest(),
        finding.elapsed().estimate(),
        finding.deadline().map(maker()::time),
        says(finding, trouble.timeline()),
        finding.lot().text(),
        entries().some(trouble.evidence(), trouble.record()),
        AnswerMaker.corrected(finding, trouble.timeline()),
        entries().some(trouble.taken(), trouble.record()),
        entries().some(trouble.handedOnAsWritten(), trouble.record()),
        trouble.isOwed(),
        offered(finding),
        ref(trouble.ruleSet()));
  }
}
