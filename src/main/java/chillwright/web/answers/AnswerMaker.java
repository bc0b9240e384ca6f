package chillwright.web.answers;

import chillwright.core.forecast.Forecast;
import chillwright.core.forecast.Speedup;
import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.Keeping.Governs;
import chillwright.core.log.Category;
import chillwright.core.log.EntryId;
import chillwright.core.log.Problem;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Assessment;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import chillwright.core.rules.Verdict;
import chillwright.print.Figures;
import chillwright.print.ForecastText;
import chillwright.print.KeepText;
import chillwright.print.Language;
import chillwright.print.Sentences;
import chillwright.print.SpeedupText;
import chillwright.rulebook.RuleBook;
import chillwright.service.Judge.Judged;
import chillwright.service.KeepQuestion;
import chillwright.service.LogCheck.Checked;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Turns findings, dates and faults of the core into answers, as read at one moment in one zone.
 *
 * @param zone the kitchen's zone
 * @param now the moment of the answer
 */
public record AnswerMaker(ZoneId zone, Instant now) {

  public OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone);
  }

  /** A stateless check, lots worst first. */
  public Answers.Check check(RuleBook book, Checked checked) {
    return new Answers.Check(
        new Answers.RuleSetRef(book.id(), book.version()),
        time(checked.at()),
        checked.lots().stream().map(judged -> lot(judged, checked)).toList(),
        faults(checked.problems()),
        book.defers().strip());
  }

  private Answers.Lot lot(Judged judged, Checked checked) {
    Timeline timeline = judged.timeline();
    return new Answers.Lot(
        timeline.lot().text(),
        timeline.food().name(),
        timeline.food().category().key(),
        verdict(judged.findings()),
        findings(judged.findings(), timeline),
        forecasts(checked.forecasts(judged), timeline),
        dates(judged.held(now)));
  }

  /** Forecasts of a lot, in the order of its rules. */
  public List<ForecastLine> forecasts(List<Forecast> forecasts, Timeline timeline) {
    return forecasts.stream().map(forecast -> forecast(forecast, timeline)).toList();
  }

  ForecastLine forecast(Forecast forecast, Timeline timeline) {
    Scale scale = Figures.scale(timeline);
    ForecastText text = new ForecastText(zone, scale, now);
    Rule rule = forecast.awaited().rule();
    return new ForecastLine(
        rule.id(),
        Figures.limit(rule, scale),
        forecast.awaited().deadline().map(this::time),
        forecast.expected().map(this::time),
        forecast.earliest().map(this::time),
        forecast.latest().map(this::time),
        forecast
            .target()
            .map(target -> new ForecastLine.Target(target.temperature().text(), time(target.by()))),
        forecast.outlook().key(),
        text.says(forecast),
        text.basis(forecast),
        forecast.speedups().stream().map(speedup -> action(speedup, forecast, scale)).toList());
  }

  private ForecastLine.Action action(Speedup speedup, Forecast forecast, Scale scale) {
    SpeedupText text = new SpeedupText(zone, scale, now, Language.ENGLISH);
    return new ForecastLine.Action(
        speedup.act().key(),
        text.says(speedup, forecast),
        speedup.window().map(window -> time(window.expected())),
        speedup.window().map(window -> time(window.earliest())),
        speedup.window().flatMap(Speedup.Window::latest).map(this::time),
        text.basis(speedup));
  }

  /** The findings, worst first; of equal verdicts the one that falls due first. */
  public List<Answers.Finding> findings(List<Finding> findings, Timeline timeline) {
    Scale scale = Figures.scale(timeline);
    return worstFirst(findings).stream()
        .map(finding -> finding(finding, timeline, scale, Optional.empty()))
        .toList();
  }

  /** The same after a write, with the changed ones marked. */
  public List<Answers.Finding> findings(
      List<Finding> findings, Timeline timeline, Set<Finding> before) {
    Scale scale = Figures.scale(timeline);
    return worstFirst(findings).stream()
        .map(finding -> finding(finding, timeline, scale, Optional.of(!before.contains(finding))))
        .toList();
  }

  private List<Finding> worstFirst(List<Finding> findings) {
    return findings.stream().sorted(Sentences.worstFirst(now)).toList();
  }

  private Answers.Finding finding(
      Finding finding, Timeline timeline, Scale scale, Optional<Boolean> changed) {
    Rule rule = finding.rule();
    return new Answers.Finding(
        rule.id(),
        finding.at(now).text(),
        rule.citation().text(),
        rule.status(),
        Figures.limit(rule, scale),
        finding.elapsed().shortest(),
        finding.elapsed().longest(),
        finding.elapsed().estimate(),
        time(finding.opensAt()),
        finding.deadline().map(this::time),
        new Sentences(zone, scale, now).says(finding),
        finding.offered(now).stream().map(Rule.Action::says).toList(),
        finding.lot().text(),
        finding.evidence().stream().map(EntryId::text).toList(),
        corrected(finding, timeline),
        remarks(finding),
        changed);
  }

  /** The evidence that was corrected: whoever reads the finding should know. */
  static List<String> corrected(Finding finding, Timeline timeline) {
    return finding.evidence().stream().filter(timeline::isCorrected).map(EntryId::text).toList();
  }

  /** A reading that is still to be waited for is not overdue yet. */
  private List<String> remarks(Finding finding) {
    boolean isPending = finding.at(now) == Verdict.PENDING;
    return finding.remarks().stream()
        .filter(remark -> !(isPending && remark == Remark.READING_OVERDUE))
        .map(Remark::key)
        .toList();
  }

  public Answers.Dates dates(Keeping keeping) {
    return new Answers.Dates(
        keeping.dateMarkLastDay(),
        keeping.lastDayMissed(),
        keeping.daysLeftWhenThawed().stream().boxed().findFirst(),
        keeping.chilledLastDay(),
        keeping.discardAt().map(this::time),
        keeping.bestQualityBy(),
        keeping.qualityLimit(),
        keeping.governs().map(Governs::key),
        keeping.because());
  }

  /** How long a kind of food keeps. */
  public Answers.Keep keep(RuleBook book, Category category, KeepQuestion.Answer answer) {
    return new Answers.Keep(
        new Answers.RuleSetRef(book.id(), book.version()),
        category.key(),
        category.title(),
        dates(answer.keeping()),
        new KeepText(category, answer.keeping(), zone, now, answer.age(), answer.thawed())
            .says(answer.rules()),
        category.source(),
        category.status(),
        category.note(),
        book.defers().strip());
  }

  public Optional<String> verdict(List<Finding> findings) {
    return Assessment.verdict(findings, now).map(Verdict::text);
  }

  /** Faults as answered; also used where nothing was judged. */
  public static List<Answers.Fault> faults(List<Problem> problems) {
    return problems.stream().map(AnswerMaker::fault).toList();
  }

  private static Answers.Fault fault(Problem problem) {
    Object where =
        problem.where() instanceof Problem.Where.InFile in
            ? new Answers.InFile(in.file(), in.line(), in.column())
            : inField((Problem.Where.InField) problem.where());
    return new Answers.Fault(
        problem.code(), where, problem.given(), problem.allowed(), problem.says());
  }

  private static Answers.InField inField(Problem.Where.InField in) {
    return new Answers.InField(in.file(), in.pointer());
  }
}
