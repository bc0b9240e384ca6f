package chillwright.storage;

import static chillwright.storage.schema.Tables.LABEL_PRINT;

import chillwright.core.kitchen.Allergen;
import chillwright.core.kitchen.LabelsMade;
import chillwright.core.log.LotId;
import chillwright.storage.schema.tables.records.LabelPrintRecord;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.impl.DSL;

/** Labels that were made of lots. */
public final class LabelStore {
  private static final Cell<String> LOT = Cell.of(LABEL_PRINT, LABEL_PRINT.LOT);
  private static final Cell<Instant> MADE_AT = Cell.of(LABEL_PRINT, LABEL_PRINT.MADE_AT);
  private static final Cell<Integer> LABELS = Cell.of(LABEL_PRINT, LABEL_PRINT.LABELS);
  private static final Cell<Integer> LEAVES = Cell.of(LABEL_PRINT, LABEL_PRINT.LEAVES);
  private static final Cell<String> ALLERGENS = Cell.of(LABEL_PRINT, LABEL_PRINT.ALLERGENS);
  private static final Cell<String> OTHERS = Cell.of(LABEL_PRINT, LABEL_PRINT.OTHER_ALLERGENS);

  private final Session session;

  LabelStore(Session session) {
    this.session = session;
  }

  /** What was made of each of these lots, the earliest first; nothing of those without any. */
  public Map<LotId, List<LabelsMade>> of(Collection<LotId> lots) {
    Map<LotId, List<LabelsMade>> found = new HashMap<>();
    session
        .select(
            "labels made",
            keys ->
                DSL.selectFrom(LABEL_PRINT)
                    .where(LABEL_PRINT.LOT.in(keys))
                    .orderBy(LABEL_PRINT.LOT, LABEL_PRINT.MADE_AT, LABEL_PRINT.ID))
        .forEach(
            lots.stream().map(LotId::text).toList(),
            row ->
                found
                    .computeIfAbsent(new LotId(LOT.get(row, 0)), lot -> new ArrayList<>())
                    .add(made(row)));
    return found;
  }

  private static LabelsMade made(ResultSet row) throws SQLException {
    return new LabelsMade(
        MADE_AT.get(row, 0),
        LABELS.get(row, 0),
        LEAVES.get(row, 0) == 1,
        Values.split(ALLERGENS.get(row, 0), key -> Allergen.ofKey(key).orElseThrow()),
        Optional.ofNullable(OTHERS.get(row, 0)));
  }

  /** Keeps one more document. */
  public void add(LotId lot, LabelsMade made) {
    int before = of(List.of(lot)).getOrDefault(lot, List.of()).size();
    LabelPrintRecord row = new LabelPrintRecord();
    row.setLot(lot.text());
    row.setMadeAt(made.at());
    row.setLabels(made.labels());
    row.setLeaves(made.leaves() ? 1 : 0);
    row.setAllergens(Values.joined(made.allergens().stream().map(Allergen::key).toList()));
    row.setOtherAllergens(made.others().orElse(null));
    session.sql().insertInto(LABEL_PRINT).set(row).execute();
    forget(lot, before + 1 - LabelsMade.MOST);
  }

  private void forget(LotId lot, int tooMany) {
    if (tooMany > 0) {
      List<Long> oldest =
          session
              .sql()
              .select(LABEL_PRINT.ID)
              .from(LABEL_PRINT)
              .where(LABEL_PRINT.LOT.eq(lot.text()))
              .orderBy(LABEL_PRINT.MADE_AT, LABEL_PRINT.ID)
              .limit(tooMany)
              .fetch(LABEL_PRINT.ID);
      session.sql().deleteFrom(LABEL_PRINT).where(LABEL_PRINT.ID.in(oldest)).execute();
    }
  }
}
