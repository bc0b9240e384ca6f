package chillwright.storage;

import static chillwright.storage.schema.Tables.LOT;

import chillwright.core.keeping.LotOrder;
import chillwright.core.keeping.LotState;
import chillwright.core.log.Phase;
import chillwright.core.rules.Verdict;
import chillwright.storage.Slice.Position;
import chillwright.storage.schema.tables.records.LotRecord;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.Condition;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.impl.DSL;

/**
 * One way through the lots: a column to go along, upwards, or the order of arrival, the newest
 * first. It is chosen so that an index leads along it and little is met that is not wanted.
 *
 * @param along empty for the order of arrival
 * @param wanted what every lot of the list meets
 */
record LotList(Optional<Field<Long>> along, List<Condition> wanted) {
  LotList {
    wanted = List.copyOf(wanted);
  }

  static LotList of(LotFilter filter) {
    List<Condition> wanted = new ArrayList<>();
    boolean leads = filter.order().isEmpty() && filter.goodOn().isEmpty();
    filter.phase().ifPresent(phase -> wanted.add(phase(leads).eq(Codes.PHASES.of(phase))));
    filter.place().ifPresent(place -> wanted.add(place(leads).eq(place)));
    filter.lastDayBefore().ifPresent(day -> wanted.add(LOT.LAST_DAY.lt(day)));
    filter.bestQualityBefore().ifPresent(day -> wanted.add(LOT.BEST_QUALITY_DAY.lt(day)));
    filter.verdict().ifPresent(verdict -> wanted.addAll(isNow(verdict, filter.now())));
    filter.goodOn().ifPresent(day -> wanted.addAll(isGood(day, filter.now())));
    if (filter.order().filter(LotOrder.OWED::equals).isPresent()) {
      wanted.add(LOT.OWED_FROM_AT.le(filter.now()));
    }
    if (isOnHandOnly(filter)) {
      wanted.add(LOT.CLOSED_AT.isNull());
    }
    return new LotList(along(filter), wanted);
  }

  /** Made unfit for an index where another one leads, or SQLite would sort all it finds. */
  private static Field<Integer> phase(boolean leads) {
    return leads ? LOT.PHASE : LOT.PHASE.plus(0);
  }

  private static Field<String> place(boolean leads) {
    return leads ? LOT.PLACE : LOT.PLACE.concat("");
  }

  private static boolean isOnHandOnly(LotFilter filter) {
    boolean closes = filter.phase().filter(Phase::isEnd).isPresent();
    boolean more =
        filter.place().isPresent()
            || filter.verdict().isPresent()
            || filter.lastDayBefore().isPresent()
            || filter.bestQualityBefore().isPresent()
            || filter.goodOn().isPresent();
    return filter.order().isPresent() || (more && !closes);
  }

  private static Optional<Field<Long>> along(LotFilter filter) {
    if (!isOnHandOnly(filter)) {
      return Optional.empty();
    }
    if (filter.order().isPresent()) {
      return filter.order().map(LotList::column);
    }
    if (filter.goodOn().isPresent()) {
      return Optional.of(column(LotOrder.USE_FIRST));
    }
    Optional<Field<Long>> changes = filter.verdict().flatMap(LotList::changes);
    if (changes.isPresent()) {
      return changes;
    }
    return filter
        .lastDayBefore()
        .map(day -> number(LOT.LAST_DAY))
        .or(() -> filter.bestQualityBefore().map(day -> number(LOT.BEST_QUALITY_DAY)));
  }

  private static Field<Long> column(LotOrder order) {
    return switch (order) {
      case OLDEST -> number(LOT.BEGAN_AT);
      case OWED -> number(LOT.OWED_FROM_AT);
      case USE_FIRST -> number(LOT.USE_FIRST);
    };
  }

  /** When a lot comes to that verdict, or leaves it; empty for one that it keeps for good. */
  private static Optional<Field<Long>> changes(Verdict verdict) {
    return switch (verdict) {
      case OUT -> Optional.of(number(LOT.OUT_FROM_AT));
      case NOT_SHOWN -> Optional.of(number(LOT.NOT_SHOWN_FROM_AT));
      case PENDING -> Optional.of(number(LOT.SETTLED_AT));
      case IN, NO_RULE -> Optional.empty();
    };
  }

  /** Nothing against it now, and life left on that day. */
  private static List<Condition> isGood(LocalDate day, Instant now) {
    Condition lasts =
        LOT.LAST_DAY
            .ge(day)
            .or(
                LOT.LAST_DAY
                    .isNull()
                    .and(LOT.BEST_QUALITY_DAY.ge(day))
                    .and(LOT.PHASE.eq(Codes.PHASES.of(Phase.FROZEN))));
    return List.of(
        lasts,
        LOT.OUT_FROM_AT.isNull().or(LOT.OUT_FROM_AT.gt(now)),
        LOT.OWED_FROM_AT.isNull().or(LOT.OWED_FROM_AT.gt(now)));
  }

  /** That the verdict of a lot is this one now, as {@code Verdicts.at} tells it. */
  private static List<Condition> isNow(Verdict verdict, Instant now) {
    Condition notOut = LOT.OUT_FROM_AT.isNull().or(LOT.OUT_FROM_AT.gt(now));
    return switch (verdict) {
      case OUT -> List.of(LOT.OUT_FROM_AT.le(now));
      case NOT_SHOWN -> List.of(LOT.NOT_SHOWN_FROM_AT.le(now), notOut);
      case PENDING ->
          List.of(
              LOT.SETTLED_AT.gt(now),
              notOut,
              LOT.NOT_SHOWN_FROM_AT.isNull().or(LOT.NOT_SHOWN_FROM_AT.gt(now)));
      case IN, NO_RULE -> List.of(LOT.WORST.eq(Codes.VERDICTS.of(verdict)), LOT.SETTLED_AT.le(now));
    };
  }

  private static Field<Long> number(Field<?> column) {
    return column.coerce(Long.class);
  }

  Slice<LotState> slice(DSLContext sql, int limit, Optional<Position> after) {
    List<LotRecord> rows =
        sql.selectFrom(LOT)
            .where(DSL.and(wanted))
            .and(after.map(this::isAfter).orElseGet(this::fromTheStart))
            .orderBy(
                along
                    .map(column -> List.of(column.asc(), LOT.ID.asc()))
                    .orElse(List.of(LOT.ID.desc())))
            .limit(limit + 1)
            .fetch();
    return Slice.of(rows, limit, LotRow::state, this::position);
  }

  /** Says what is always true, where that shows SQLite that the rows come by their key. */
  private Condition fromTheStart() {
    return along.map(column -> column.ge(Long.MIN_VALUE)).orElse(LOT.ID.lt(Long.MAX_VALUE));
  }

  private Condition isAfter(Position last) {
    if (along.isEmpty()) {
      return LOT.ID.lt(last.row());
    }
    // Written so that an index can go straight to the place.
    Field<Long> column = along.get();
    return column.ge(last.order()).and(column.gt(last.order()).or(LOT.ID.gt(last.row())));
  }

  private Position position(LotRecord row) {
    return new Position(along.map(column -> keptValue(row, column)).orElse(0L), row.getId(), 0);
  }

  private static long keptValue(LotRecord row, Field<Long> column) {
    Field<?> typed = row.field(column.getName());
    return (Long) kept(typed, row);
  }

  private static <T> Object kept(Field<T> field, LotRecord row) {
    return field.getConverter().to(row.get(field));
  }
}
