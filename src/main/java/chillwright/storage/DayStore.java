package chillwright.storage;

import static chillwright.storage.schema.Tables.DAY_SIGN;
import static chillwright.storage.schema.Tables.HANDOVER;
import static chillwright.storage.schema.Tables.LOT;

import chillwright.core.kitchen.DaySign;
import chillwright.core.kitchen.Handover;
import chillwright.core.log.LotId;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jooq.DSLContext;
import org.jooq.impl.DSL;

/** How days were handed over and closed. Rows are only ever added. */
public final class DayStore {
  private final DSLContext sql;

  DayStore(DSLContext sql) {
    this.sql = sql;
  }

  /** Adds it; the lot must be known. */
  public void add(Handover handover) {
    sql.insertInto(HANDOVER)
        .set(HANDOVER.ON_DAY, handover.day())
        .set(
            HANDOVER.LOT_ID,
            DSL.field(DSL.select(LOT.ID).from(LOT).where(LOT.CODE.eq(handover.lot().text()))))
        .set(HANDOVER.PERSON, handover.by())
        .set(HANDOVER.NOTE, handover.note().orElse(null))
        .set(HANDOVER.WRITTEN_AT, handover.writtenAt())
        .execute();
  }

  /** Those of a day in the order of writing. */
  public List<Handover> handovers(LocalDate day) {
    return sql.select(LOT.CODE, HANDOVER.PERSON, HANDOVER.NOTE, HANDOVER.WRITTEN_AT)
        .from(HANDOVER)
        .join(LOT)
        .on(LOT.ID.eq(HANDOVER.LOT_ID))
        .where(HANDOVER.ON_DAY.eq(day))
        .orderBy(HANDOVER.ID)
        .fetch(
            row ->
                new Handover(
                    day,
                    new LotId(row.get(LOT.CODE)),
                    row.get(HANDOVER.PERSON),
                    Optional.ofNullable(row.get(HANDOVER.NOTE)),
                    row.get(HANDOVER.WRITTEN_AT)));
  }

  public void add(DaySign sign) {
    sql.insertInto(DAY_SIGN)
        .set(DAY_SIGN.ON_DAY, sign.day())
        .set(DAY_SIGN.WORD, Codes.SIGNS.of(sign.word()))
        .set(DAY_SIGN.PERSON, sign.by())
        .set(DAY_SIGN.NOTE, sign.note().orElse(null))
        .set(DAY_SIGN.UNFINISHED, sign.unfinished())
        .set(DAY_SIGN.LOTS_OUT, sign.out().isPresent() ? sign.out().getAsInt() : null)
        .set(DAY_SIGN.UNREAD, sign.unread())
        .set(DAY_SIGN.WRITTEN_AT, sign.writtenAt())
        .execute();
  }

  /** Those of a day in the order of writing. */
  public List<DaySign> signs(LocalDate day) {
    return sql.selectFrom(DAY_SIGN)
        .where(DAY_SIGN.ON_DAY.eq(day))
        .orderBy(DAY_SIGN.ID)
        .fetch(
            row ->
                new DaySign(
                    day,
                    Codes.SIGNS.word(row.getWord()),
                    row.getPerson(),
                    Optional.ofNullable(row.getNote()),
                    row.getUnfinished(),
                    out(row.getLotsOut()),
                    row.getUnread(),
                    row.getWrittenAt()));
  }

  private static OptionalInt out(Integer lots) {
    return lots == null ? OptionalInt.empty() : OptionalInt.of(lots);
  }
}
