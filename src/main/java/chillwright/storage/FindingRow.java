package chillwright.storage;

import static chillwright.storage.schema.Tables.FINDING;

import chillwright.core.log.EntryId;
import chillwright.core.log.LogEntry;
import chillwright.core.log.LotId;
import chillwright.core.measure.Elapsed;
import chillwright.core.rules.Acts;
import chillwright.core.rules.Citation;
import chillwright.core.rules.Finding;
import chillwright.core.rules.Remark;
import chillwright.core.rules.Rule;
import chillwright.core.rules.RuleSet;
import chillwright.core.rules.Shape;
import chillwright.core.rules.Verdict;
import chillwright.storage.schema.tables.records.FindingRecord;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * A finding as it is kept: its rule by id, since the figures are the rule set's, and entries by id,
 * since a lot's log has them.
 *
 * @param rule id within the rule set that judged the lot
 * @param judged the lot whose record was judged: this one or a source
 * @param calls whether it calls for a hand once it has settled
 */
public record FindingRow(
    String rule,
    LotId judged,
    Instant opensAt,
    Instant settlesAt,
    Verdict settled,
    boolean calls,
    Optional<Instant> deadline,
    Elapsed elapsed,
    Optional<EntryId> decisive,
    List<EntryId> evidence,
    List<Remark> remarks) {
  private static final Cell<Long> LOT_ID = Cell.of(FINDING, FINDING.LOT_ID);
  private static final Cell<Long> SEQ = Cell.of(FINDING, FINDING.SEQ);
  private static final Cell<String> RULE = Cell.of(FINDING, FINDING.RULE);
  private static final Cell<String> SOURCE = Cell.of(FINDING, FINDING.SOURCE);
  private static final Cell<Instant> OPENS_AT = Cell.of(FINDING, FINDING.OPENS_AT);
  private static final Cell<Instant> SETTLES_AT = Cell.of(FINDING, FINDING.SETTLES_AT);
  private static final Cell<Integer> SETTLED = Cell.of(FINDING, FINDING.SETTLED);
  private static final Cell<Instant> DEADLINE_AT = Cell.of(FINDING, FINDING.DEADLINE_AT);
  private static final Cell<Integer> CALLS = Cell.of(FINDING, FINDING.CALLS);
  private static final Cell<Duration> SHORTEST_MS = Cell.of(FINDING, FINDING.SHORTEST_MS);
  private static final Cell<Duration> LONGEST_MS = Cell.of(FINDING, FINDING.LONGEST_MS);
  private static final Cell<Duration> ESTIMATE_MS = Cell.of(FINDING, FINDING.ESTIMATE_MS);
  private static final Cell<String> DECISIVE = Cell.of(FINDING, FINDING.DECISIVE);
  private static final Cell<String> EVIDENCE = Cell.of(FINDING, FINDING.EVIDENCE);
  private static final Cell<String> REMARKS = Cell.of(FINDING, FINDING.REMARKS);

  /** The finding with times cut to the millisecond, as they are kept. */
  static FindingRow of(Finding finding) {
    return new FindingRow(
        finding.rule().id(),
        finding.lot(),
        cut(finding.opensAt()),
        cut(finding.settlesAt()),
        finding.settled(),
        Acts.calls(finding),
        finding.deadline().map(FindingRow::cut),
        new Elapsed(
            finding.elapsed().shortest().map(FindingRow::cut),
            finding.elapsed().longest().map(FindingRow::cut),
            finding.elapsed().estimate().map(FindingRow::cut)),
        finding.decisive().map(LogEntry::id),
        finding.evidence(),
        finding.remarks());
  }

  private static Instant cut(Instant moment) {
    return Instant.ofEpochMilli(moment.toEpochMilli());
  }

  static FindingRow of(LotId lot, FindingRecord row) {
    return new FindingRow(
        row.getRule(),
        Optional.ofNullable(row.getSource()).map(LotId::new).orElse(lot),
        row.getOpensAt(),
        row.getSettlesAt(),
        Codes.VERDICTS.word(row.getSettled()),
        row.getCalls() == 1,
        Optional.ofNullable(row.getDeadlineAt()),
        new Elapsed(
            Optional.ofNullable(row.getShortestMs()),
            Optional.ofNullable(row.getLongestMs()),
            Optional.ofNullable(row.getEstimateMs())),
        Optional.ofNullable(row.getDecisive()).map(EntryId::new),
        Values.entryIds(row.getEvidence()),
        Values.split(row.getRemarks(), FindingRow::remark));
  }

  /**
   * The finding of a row that lists all columns of the table.
   *
   * @param before how many columns stand before those
   */
  static FindingRow of(LotId lot, ResultSet row, int before) throws SQLException {
    return new FindingRow(
        RULE.get(row, before),
        Optional.ofNullable(SOURCE.get(row, before)).map(LotId::new).orElse(lot),
        OPENS_AT.get(row, before),
        SETTLES_AT.get(row, before),
        Codes.VERDICTS.word(SETTLED.get(row, before)),
        CALLS.get(row, before) == 1,
        Optional.ofNullable(DEADLINE_AT.get(row, before)),
        new Elapsed(
            Optional.ofNullable(SHORTEST_MS.get(row, before)),
            Optional.ofNullable(LONGEST_MS.get(row, before)),
            Optional.ofNullable(ESTIMATE_MS.get(row, before))),
        Optional.ofNullable(DECISIVE.get(row, before)).map(EntryId::new),
        Values.entryIds(EVIDENCE.get(row, before)),
        Values.split(REMARKS.get(row, before), FindingRow::remark));
  }

  private static Remark remark(String key) {
    return Remark.ofKey(key)
        .orElseThrow(() -> new IllegalStateException("no remark has the stored key " + key));
  }

  /** The cells of a finding, to be inserted. */
  Object[] cells(long lotId, LotId lot, long seq) {
    Object[] row = new Object[FINDING.fields().length];
    LOT_ID.set(row, lotId);
    SEQ.set(row, seq);
    RULE.set(row, rule);
    SOURCE.set(row, judged.equals(lot) ? null : judged.text());
    OPENS_AT.set(row, opensAt);
    SETTLES_AT.set(row, settlesAt);
    SETTLED.set(row, Codes.VERDICTS.of(settled));
    DEADLINE_AT.set(row, deadline.orElse(null));
    CALLS.set(row, calls ? 1 : 0);
    SHORTEST_MS.set(row, elapsed.shortest().orElse(null));
    LONGEST_MS.set(row, elapsed.longest().orElse(null));
    ESTIMATE_MS.set(row, elapsed.estimate().orElse(null));
    DECISIVE.set(row, decisive.map(EntryId::text).orElse(null));
    EVIDENCE.set(row, Values.joined(evidence));
    REMARKS.set(row, Values.joined(remarks.stream().map(Remark::key).toList()));
    return row;
  }

  private static Duration cut(Duration length) {
    return Duration.ofMillis(length.toMillis());
  }

  /**
   * The finding itself.
   *
   * @param ruleSet with the figures of the lot's day
   * @param entries the lot's entries by id, corrected, those it inherited or was made of included
   */
  public Finding finding(RuleSet ruleSet, Function<EntryId, Optional<LogEntry>> entries) {
    return new Finding(
        ruleSet.rule(rule).orElseGet(() -> retired(ruleSet)),
        judged,
        opensAt,
        settlesAt,
        settled,
        deadline,
        elapsed,
        decisive.flatMap(entries),
        evidence,
        remarks);
  }

  /** A rule that judged the lot once and is gone from the rule set: recomputing will tell. */
  private Rule retired(RuleSet ruleSet) {
    return new Rule(
        rule,
        "This rule is no longer in " + ruleSet.title() + "; recompute the database.",
        Set.of(),
        new Shape.NoFigure(),
        "retired",
        new Citation("not in version " + ruleSet.version(), "none", Optional.empty()),
        List.of());
  }
}
