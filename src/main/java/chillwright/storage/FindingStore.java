package chillwright.storage;

import static chillwright.storage.schema.Tables.FINDING;
import static chillwright.storage.schema.Tables.LOT;
import static org.jooq.impl.DSL.inline;
import static org.jooq.impl.DSL.notExists;
import static org.jooq.impl.DSL.selectOne;

import chillwright.core.log.LotId;
import chillwright.storage.Slice.Position;
import chillwright.storage.schema.tables.Finding;
import chillwright.storage.schema.tables.records.FindingRecord;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jooq.Condition;
import org.jooq.Field;
import org.jooq.Record2;
import org.jooq.impl.DSL;

/** What was found of each lot when it was last assessed. */
public final class FindingStore {
  /** Rules that count days; a rule is named by its topic first. */
  private static final String DAY_COUNTS = "date-mark.%";

  private final Session session;

  FindingStore(Session session) {
    this.session = session;
  }

  /** Rules of cooling; as in the index that finds their findings. */
  private static final String COOLINGS = "cooling.%";

  /** A finding of a list over many lots. */
  public record OfLot(LotId lot, FindingRow row) {}

  /** The findings of each lot that has any, in the order of the assessment. */
  public Map<LotId, List<FindingRow>> of(Collection<LotId> lots) {
    Map<LotId, List<FindingRow>> found = new LinkedHashMap<>();
    List<Field<?>> columns = new ArrayList<>(List.of(LOT.CODE));
    columns.addAll(List.of(FINDING.fields()));
    session
        .select(
            "findings of lots",
            keys ->
                DSL.select(columns)
                    .from(LOT)
                    .join(FINDING)
                    .on(FINDING.LOT_ID.eq(LOT.ID))
                    .where(LOT.CODE.in(keys))
                    .orderBy(FINDING.LOT_ID, FINDING.SEQ))
        .forEach(
            LogStore.texts(lots),
            row -> {
              LotId lot = new LotId(row.getString(1));
              found.computeIfAbsent(lot, l -> new ArrayList<>()).add(FindingRow.of(lot, row, 1));
            });
    return found;
  }

  /**
   * Puts the findings of these lots in place of those they had.
   *
   * @param known those of the lots that may have findings
   * @return how many rows were made or taken out
   */
  int save(List<Assessed> lots, Set<LotId> known, Map<LotId, Long> keys) {
    Map<LotId, List<FindingRow>> kept = of(known);
    List<Object[]> rows = new ArrayList<>();
    int changed = 0;
    for (Assessed lot : lots) {
      List<FindingRow> found = lot.findings();
      List<FindingRow> before = kept.getOrDefault(lot.lot(), List.of());
      if (!found.equals(before)) {
        long lotId = keys.get(lot.lot());
        changed += before.isEmpty() ? 0 : delete(lotId);
        addRows(rows, lotId, lot.lot(), found);
      }
    }
    session.insertInto(FINDING).addKept(rows);
    return changed + rows.size();
  }

  private int delete(long lotId) {
    return session
        .change(
            "findings of a lot taken out",
            () -> DSL.deleteFrom(FINDING).where(FINDING.LOT_ID.eq(lotId)))
        .run(lotId);
  }

  private static void addRows(List<Object[]> rows, long lotId, LotId lot, List<FindingRow> found) {
    for (int i = 0; i < found.size(); i++) {
      rows.add(found.get(i).cells(lotId, lot, i + 1L));
    }
  }

  /**
   * What falls due next: of each lot on hand the first finding that settles badly after now unless
   * something is done, the most urgent lot first. Of lots to which an action is owed no day count
   * is among them: no date mends that. Nor does one mend what is not for use, which the record
   * tells.
   */
  public Slice<OfLot> due(Instant now, int limit, Optional<Position> after) {
    Finding earlier = FINDING.as("earlier");
    Condition isFirst =
        notExists(
            selectOne()
                .from(earlier)
                .where(earlier.LOT_ID.eq(FINDING.LOT_ID))
                .and(dueAfter(earlier, now))
                .and(isBefore(earlier)));
    return slice(dueAfter(FINDING, now).and(LOT.CLOSED_AT.isNull()).and(isFirst), limit, after);
  }

  private static Condition isBefore(Finding earlier) {
    Condition atOnce = earlier.SETTLES_AT.eq(FINDING.SETTLES_AT).and(earlier.SEQ.lt(FINDING.SEQ));
    return earlier.SETTLES_AT.lt(FINDING.SETTLES_AT).or(atOnce);
  }

  private static Condition dueAfter(Finding finding, Instant now) {
    return finding
        .SETTLES_AT
        .gt(now)
        .and(finding.CALLS.eq(inline(1)))
        .and(finding.DEADLINE_AT.isNotNull())
        .and(mendsSomething(finding, now));
  }

  /** Whether nothing is owed to a lot, or the finding counts no days. */
  private static Condition mendsSomething(Finding finding, Instant now) {
    Condition nothingOwed = LOT.OWED_FROM_AT.isNull().or(LOT.OWED_FROM_AT.gt(now));
    return nothingOwed.or(finding.RULE.notLike(DAY_COUNTS));
  }

  /**
   * Findings that settled {@code out}, or {@code not-shown} where that calls for a hand, from one
   * moment to another, both included; the oldest first. Closed lots are among them.
   */
  public Slice<OfLot> trouble(Instant from, Instant to, int limit, Optional<Position> after) {
    Condition inTrouble = FINDING.CALLS.eq(inline(1));
    return slice(
        FINDING.SETTLES_AT.ge(from).and(FINDING.SETTLES_AT.le(to)).and(inTrouble), limit, after);
  }

  /**
   * Lots with a cooling that settled from one moment to another, both included; the newest first,
   * and once for each finding, which are about two a cooling.
   */
  public List<LotId> cooled(Instant from, Instant to, int limit) {
    return cooled(DSL.noCondition(), from, to, limit);
  }

  /** The same of one food, however it is capitalized. */
  public List<LotId> cooled(String food, Instant from, Instant to, int limit) {
    return cooled(LOT.FOOD.equalIgnoreCase(food), from, to, limit);
  }

  private List<LotId> cooled(Condition wanted, Instant from, Instant to, int limit) {
    return session
        .sql()
        .select(LOT.CODE)
        .from(FINDING)
        .join(LOT)
        .on(LOT.ID.eq(FINDING.LOT_ID))
        .where(FINDING.RULE.like(inline(COOLINGS)))
        .and(FINDING.SETTLES_AT.ge(from))
        .and(FINDING.SETTLES_AT.le(to))
        .and(wanted)
        .orderBy(FINDING.SETTLES_AT.desc(), FINDING.LOT_ID.desc())
        .limit(limit)
        .fetch(row -> new LotId(row.value1()));
  }

  private Slice<OfLot> slice(Condition wanted, int limit, Optional<Position> after) {
    List<Record2<String, FindingRecord>> rows =
        session
            .sql()
            .select(LOT.CODE, FINDING)
            .from(FINDING)
            .join(LOT)
            .on(LOT.ID.eq(FINDING.LOT_ID))
            .where(wanted)
            .and(after.map(FindingStore::isAfter).orElse(DSL.noCondition()))
            .orderBy(FINDING.SETTLES_AT, FINDING.LOT_ID, FINDING.SEQ)
            .limit(limit + 1)
            .fetch();
    return Slice.of(
        rows,
        limit,
        row -> {
          LotId lot = new LotId(row.value1());
          return new OfLot(lot, FindingRow.of(lot, row.value2()));
        },
        row -> position(row.value2()));
  }

  private static Condition isAfter(Position last) {
    Instant moment = Instant.ofEpochMilli(last.order());
    return FINDING
        .SETTLES_AT
        .ge(moment)
        .and(
            FINDING
                .SETTLES_AT
                .gt(moment)
                .or(FINDING.LOT_ID.gt(last.row()))
                .or(FINDING.LOT_ID.eq(last.row()).and(FINDING.SEQ.gt(last.seq()))));
  }

  private static Position position(FindingRecord row) {
    return new Position(row.getSettlesAt().toEpochMilli(), row.getLotId(), row.getSeq());
  }
}
