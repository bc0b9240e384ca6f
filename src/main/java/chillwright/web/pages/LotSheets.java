package chillwright.web.pages;

import chillwright.core.keeping.LotState;
import chillwright.core.keeping.LotState.JudgedBy;
import chillwright.core.keeping.LotState.Standing;
import chillwright.core.log.Corrections;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.log.Word;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Verdict;
import chillwright.paper.LotSheet;
import chillwright.print.CurveChart;
import chillwright.print.Figures;
import chillwright.print.ReportText;
import chillwright.print.Sentences;
import chillwright.print.Times;
import chillwright.rulebook.RuleBook;
import chillwright.service.LotView;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Lots in the words of the record that is printed. */
final class LotSheets {
  private final Desk desk;
  private final Visitor visitor;
  private final Instant now;

  LotSheets(Desk desk, Visitor visitor) {
    this.desk = desk;
    this.visitor = visitor;
    this.now = desk.kitchen().now();
  }

  LotSheet of(LotView view) {
    LotState state = view.state();
    Scale scale =
        view.judged().map(found -> Figures.scale(found.timeline())).orElse(visitor.scale());
    Sign sign = Sign.of(state.standing().flatMap(standing -> standing.verdicts().at(now)));
    return new LotSheet(
        state.food(),
        state.lot().text(),
        visitor.say("verdict." + sign.key()),
        facts(view),
        view.judged()
            .flatMap(
                found ->
                    CurveChart.of(found.timeline().entries(), found.findings(), times(), scale)),
        view.judged().map(found -> findings(found, view, scale)).orElse(List.of()),
        rows(view));
  }

  /** Day and time with the year, since a document is kept. */
  String moment(Instant moment) {
    return times().moment(moment);
  }

  String day(LocalDate day) {
    return times().day(day);
  }

  private Times times() {
    return Times.kept(desk.zone(), visitor.language());
  }

  private List<String> facts(LotView view) {
    LotState state = view.state();
    List<String> facts = new ArrayList<>();
    facts.add(LotLines.where(state, visitor));
    state
        .standing()
        .filter(standing -> state.isOnHand())
        .ifPresent(standing -> facts.addAll(new LotDates(desk, visitor, now).says(view)));
    if (!view.sources().isEmpty()) {
      facts.add(visitor.say("lot.sources") + " " + codes(view.sources()));
    }
    List<LotId> made = desk.kitchen().lots().withoutPutBack(view.descendants());
    if (!made.isEmpty()) {
      facts.add(visitor.say("lot.descendants") + " " + codes(made));
    }
    facts.addAll(new ProbeWords(visitor, this::moment).vouched(desk, view.entries()));
    RuleBook book = desk.kitchen().judge().book();
    state
        .standing()
        .map(Standing::judgedBy)
        .filter(by -> !by.equals(new JudgedBy(book.id(), book.version())))
        .map(by -> visitor.say("paper.other-rules", by.ruleSet(), by.version()))
        .ifPresent(facts::add);
    return facts;
  }

  private static String codes(List<LotId> lots) {
    return lots.stream().map(LotId::text).collect(Collectors.joining(", "));
  }

  private List<LotSheet.Found> findings(LotView.Judged found, LotView view, Scale scale) {
    Sentences sentences = new Sentences(desk.zone(), scale, now, visitor.language());
    return Acts.telling(found.timeline(), found.findings(), found.ruleSet(), now).stream()
        .sorted(Sentences.worstFirst(now))
        .map(
            finding ->
                new LotSheet.Found(
                    visitor.say("verdict." + finding.at(now).text()),
                    sentences.says(finding),
                    Figures.limitInBoth(finding.rule(), visitor.language())
                        + " \u00b7 "
                        + cited(finding),
                    done(finding, found, view, scale)))
        .toList();
  }

  private static String cited(Finding finding) {
    return finding.rule().citation().text().strip();
  }

  /** What was done about what was missed; of what was not, nothing need be said. */
  private String done(Finding finding, LotView.Judged found, LotView view, Scale scale) {
    if (finding.at(now) == Verdict.PENDING || !Acts.calls(finding)) {
      return "";
    }
    List<LogEntry> taken = Acts.taken(finding, found.timeline());
    boolean isOwed = found.timeline().closedAt().isEmpty();
    String none = visitor.say(isOwed ? "record.owed" : "record.closed");
    ReportText text = new ReportText(desk.zone(), scale, Instant.EPOCH);
    String done = taken.isEmpty() ? none : text.done(taken, visitor.language());
    List<LogEntry> handedOn =
        Acts.handedOn(finding, found.timeline(), found.ruleSet(), view.descendants()::contains);
    return text.done(done, handedOn, visitor.language());
  }

  private List<LotSheet.Row> rows(LotView view) {
    Entries entries = new Entries(desk, visitor, view);
    return view.entries().stream()
        .filter(entry -> entry.word() != Word.CORRECTION)
        .sorted(Comparator.comparing(LogEntry::happenedAt))
        .map(entry -> row(entry, view.entries(), entries))
        .toList();
  }

  private LotSheet.Row row(LogEntry entry, List<LogEntry> all, Entries entries) {
    Optional<LogEntry> standing = Corrections.standing(entry, all);
    List<LogEntry> corrections =
        all.stream()
            .filter(other -> other.corrects().filter(entry.id()::equals).isPresent())
            .toList();
    String late =
        entry.isLate() ? " (" + visitor.say("paper.late", moment(entry.writtenAt())) + ")" : "";
    return new LotSheet.Row(
        moment(entry.happenedAt()),
        visitor.say(entries.titled(entry)),
        standing.map(entries::unsigned).orElse(visitor.say("lot.void")) + late,
        entry.by().orElse(""),
        corrections.isEmpty() ? "" : visitor.say("lot.was", entries.unsigned(entry)),
        corrections.stream().map(entries::why).collect(Collectors.joining("; ")));
  }
}
