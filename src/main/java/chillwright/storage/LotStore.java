package chillwright.storage;

import static chillwright.storage.schema.Tables.CATEGORY_USED;
import static chillwright.storage.schema.Tables.LOT;
import static chillwright.storage.schema.Tables.LOT_SOURCE;

import chillwright.core.keeping.LotState;
import chillwright.core.log.LotId;
import chillwright.storage.Slice.Position;
import chillwright.storage.schema.tables.records.LotRecord;
import chillwright.storage.schema.tables.records.LotSourceRecord;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jooq.Field;
import org.jooq.Query;
import org.jooq.impl.DSL;

/** The lots of the kitchen, each with what was last found of it. */
public final class LotStore {
  private final Session session;

  LotStore(Session session) {
    this.session = session;
  }

  public Optional<LotState> find(LotId lot) {
    return Optional.ofNullable(find(List.of(lot)).get(lot));
  }

  /** Those of the lots that are known. */
  public Map<LotId, LotState> find(Collection<LotId> lots) {
    Map<LotId, LotState> found = new LinkedHashMap<>();
    rows(lots).forEach((lot, row) -> found.put(lot, LotRow.state(row)));
    return found;
  }

  /** The lots that one came from, in the order they were named. */
  public List<LotId> sources(LotId lot) {
    return sources(List.of(lot)).getOrDefault(lot, List.of());
  }

  /** A part of the lots that the filter lets through; which order depends on the filter. */
  public Slice<LotState> list(LotFilter filter, int limit, Optional<Position> after) {
    return LotList.of(filter).slice(session.sql(), limit, after);
  }

  /** Every lot, in the order of arrival. */
  public Slice<LotId> all(int limit, Optional<Position> after) {
    List<LotRecord> rows =
        session
            .sql()
            .selectFrom(LOT)
            .where(LOT.ID.gt(after.map(Position::row).orElse(0L)))
            .orderBy(LOT.ID)
            .limit(limit + 1)
            .fetch();
    return Slice.of(
        rows, limit, row -> new LotId(row.getCode()), row -> new Position(0, row.getId(), 0));
  }

  /** The lots that came last, the newest first, each with its food. */
  public Map<LotId, String> newestFoods(int most) {
    Map<LotId, String> foods = new LinkedHashMap<>();
    session
        .sql()
        .select(LOT.CODE, LOT.FOOD)
        .from(LOT)
        .where(LOT.ID.gt(0L))
        .orderBy(LOT.ID.desc())
        .limit(most)
        .forEach(row -> foods.put(new LotId(row.value1()), row.value2()));
    return foods;
  }

  /** The codes in use that begin with that text. */
  public Set<String> codesBeginning(String text) {
    // A code holds ASCII characters only, and none of them comes after '~'.
    return new LinkedHashSet<>(
        session
            .sql()
            .select(LOT.CODE)
            .from(LOT)
            .where(LOT.CODE.ge(text))
            .and(LOT.CODE.lt(text + "~"))
            .fetch(LOT.CODE));
  }

  /**
   * Keeps these lots with their sources and findings in place of what was kept of them. Lots not
   * known yet are made; a source must be known or stand before the lots made from it.
   *
   * @return how many rows were made, changed or taken out
   */
  public int save(List<Assessed> lots, Instant now) {
    int changed = 0;
    for (List<Assessed> some : Chunks.of(lots)) {
      changed += saveSome(some, now);
    }
    return changed;
  }

  private int saveSome(List<Assessed> lots, Instant now) {
    Map<LotId, LotRecord> known = rows(lots.stream().map(Assessed::lot).toList());
    List<Assessed> unknown = lots.stream().filter(lot -> !known.containsKey(lot.lot())).toList();
    int changed = insert(unknown, now) + update(lots, known);
    noteCategories(lots);
    Map<LotId, Long> keys = keys(unknown.stream().map(Assessed::lot).toList());
    known.forEach((lot, row) -> keys.put(lot, row.getId()));
    return changed
        + saveSources(lots, known.keySet(), keys)
        + session.findings().save(lots, known.keySet(), keys);
  }

  private void noteCategories(List<Assessed> lots) {
    Set<String> categories = new LinkedHashSet<>();
    lots.forEach(lot -> categories.add(lot.state().category()));
    Change noted =
        session.change(
            "category noted",
            () ->
                DSL.insertInto(CATEGORY_USED)
                    .set(CATEGORY_USED.CATEGORY, "")
                    .onConflictDoNothing());
    categories.forEach(noted::run);
  }

  private int insert(List<Assessed> lots, Instant now) {
    List<LotRecord> rows = new ArrayList<>();
    for (Assessed lot : lots) {
      LotRecord row = new LotRecord();
      row.setCreatedAt(now);
      LotRow.fill(row, lot.state());
      rows.add(row);
    }
    session.insertInto(LOT).add(rows);
    return rows.size();
  }

  private int update(List<Assessed> lots, Map<LotId, LotRecord> known) {
    int changed = 0;
    for (Assessed lot : lots) {
      LotRecord row = known.get(lot.lot());
      if (row == null) {
        continue;
      }
      LotState state = lot.state().withNote(Optional.ofNullable(row.getNote()));
      if (!LotRow.state(row).equals(state)) {
        LotRecord filled = new LotRecord();
        LotRow.fill(filled, state);
        update(row, filled);
        changed++;
      }
    }
    return changed;
  }

  /** Writes the columns that differ: the others' indexes are then left alone. */
  private void update(LotRecord row, LotRecord filled) {
    List<Field<?>> differing = new ArrayList<>();
    for (Field<?> field : LOT.fields()) {
      boolean isSet = filled.changed(field);
      if (isSet && !Objects.equals(row.get(field), filled.get(field))) {
        differing.add(field);
      }
    }
    if (differing.isEmpty()) {
      return;
    }
    Object[] values = new Object[differing.size() + 1];
    for (int i = 0; i < differing.size(); i++) {
      values[i] = BulkInsert.kept(differing.get(i), filled);
    }
    values[differing.size()] = row.getId();
    session.change("lot changed in " + differing, () -> updateOf(differing)).run(values);
  }

  private static Query updateOf(List<Field<?>> fields) {
    Map<Field<?>, Object> blanks = new LinkedHashMap<>();
    fields.forEach(field -> blanks.put(field, null));
    return DSL.update(LOT).set(blanks).where(LOT.ID.eq(0L));
  }

  private int saveSources(List<Assessed> lots, Set<LotId> known, Map<LotId, Long> keys) {
    Map<LotId, List<LotId>> kept = sources(known);
    List<Assessed> changed =
        lots.stream()
            .filter(lot -> !lot.sources().equals(kept.getOrDefault(lot.lot(), List.of())))
            .toList();
    Set<LotId> sources = new LinkedHashSet<>();
    changed.forEach(lot -> sources.addAll(lot.sources()));
    Map<LotId, Long> sourceKeys = keys(sources);
    List<LotSourceRecord> rows = new ArrayList<>();
    for (Assessed lot : changed) {
      long lotId = keys.get(lot.lot());
      if (kept.containsKey(lot.lot())) {
        session
            .change(
                "sources of a lot taken out",
                () -> DSL.deleteFrom(LOT_SOURCE).where(LOT_SOURCE.LOT_ID.eq(lotId)))
            .run(lotId);
      }
      for (int i = 0; i < lot.sources().size(); i++) {
        rows.add(new LotSourceRecord(lotId, i + 1, sourceKeys.get(lot.sources().get(i))));
      }
    }
    session.insertInto(LOT_SOURCE).add(rows);
    return rows.size();
  }

  private Map<LotId, List<LotId>> sources(Collection<LotId> lots) {
    Map<LotId, List<LotId>> sources = new HashMap<>();
    session
        .log()
        .sources(
            lots, (lot, from) -> sources.computeIfAbsent(lot, l -> new ArrayList<>()).add(from));
    return sources;
  }

  private Map<LotId, LotRecord> rows(Collection<LotId> lots) {
    Map<LotId, LotRecord> rows = new LinkedHashMap<>();
    session
        .select("lots", keys -> DSL.selectFrom(LOT).where(LOT.CODE.in(keys)))
        .forEach(
            LogStore.texts(lots),
            row -> {
              LotRecord lot = LotRow.record(row);
              rows.put(new LotId(lot.getCode()), lot);
            });
    return rows;
  }

  /** The keys of the lots that are known. */
  Map<LotId, Long> keys(Collection<LotId> lots) {
    Map<LotId, Long> keys = new HashMap<>();
    session
        .select(
            "keys of lots",
            asked -> DSL.select(LOT.CODE, LOT.ID).from(LOT).where(LOT.CODE.in(asked)))
        .forEach(
            LogStore.texts(lots), row -> keys.put(new LotId(row.getString(1)), row.getLong(2)));
    return keys;
  }
}
