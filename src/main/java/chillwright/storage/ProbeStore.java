package chillwright.storage;

import static chillwright.storage.schema.Tables.PROBE;
import static chillwright.storage.schema.Tables.PROBE_CHECK;

import chillwright.core.kitchen.KnownProbe;
import chillwright.core.kitchen.ProbeCheck;
import chillwright.storage.schema.tables.records.ProbeCheckRecord;
import chillwright.storage.schema.tables.records.ProbeRecord;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jooq.DSLContext;

/** Thermometers, each as it was said last, and their checks, which are only ever added. */
public final class ProbeStore {
  private final DSLContext sql;

  ProbeStore(DSLContext sql) {
    this.sql = sql;
  }

  /** Those in use, by name. */
  public List<KnownProbe> probes() {
    return sql.selectFrom(PROBE)
        .where(PROBE.RETIRED_AT.isNull())
        .orderBy(PROBE.NAME)
        .fetch(ProbeStore::probe);
  }

  /** Retired or not. */
  public Optional<KnownProbe> probe(String name) {
    return sql.selectFrom(PROBE).where(PROBE.NAME.eq(name)).fetchOptional(ProbeStore::probe);
  }

  public void save(KnownProbe probe, Instant now) {
    ProbeRecord row = new ProbeRecord();
    row.setName(probe.name());
    row.setScales(Codes.PROBE_SCALES.of(probe.scales()));
    row.setNote(probe.note().orElse(null));
    row.setSaidAt(now);
    row.setRetiredAt(null);
    sql.insertInto(PROBE).set(row).onConflict(PROBE.NAME).doUpdate().set(row).execute();
  }

  public Retiring inUse() {
    return new Retiring(sql, PROBE, PROBE.NAME, PROBE.RETIRED_AT);
  }

  private static KnownProbe probe(ProbeRecord row) {
    return new KnownProbe(
        row.getName(),
        Codes.PROBE_SCALES.word(row.getScales()),
        Optional.ofNullable(row.getNote()));
  }

  public void add(ProbeCheck check) {
    sql.insertInto(PROBE_CHECK)
        .set(PROBE_CHECK.PROBE, check.probe())
        .set(PROBE_CHECK.METHOD, Codes.CHECK_METHODS.of(check.method()))
        .set(PROBE_CHECK.READING, Values.hundredths(check.shown()))
        .set(PROBE_CHECK.READING_SCALE, Values.scale(check.shown()))
        .set(PROBE_CHECK.PASSED, check.passed() ? 1 : 0)
        .set(PROBE_CHECK.PERSON, check.by())
        .set(PROBE_CHECK.NOTE, check.note().orElse(null))
        .set(PROBE_CHECK.CHECKED_AT, check.at())
        .execute();
  }

  /** The checks of a probe, the newest first. */
  public List<ProbeCheck> checks(String probe, int most) {
    return sql.selectFrom(PROBE_CHECK)
        .where(PROBE_CHECK.PROBE.eq(probe))
        .orderBy(PROBE_CHECK.CHECKED_AT.desc(), PROBE_CHECK.ID.desc())
        .limit(most)
        .fetch(ProbeStore::check);
  }

  /** The last check of a probe at that moment or before it. */
  public Optional<ProbeCheck> lastBefore(String probe, Instant moment) {
    return sql.selectFrom(PROBE_CHECK)
        .where(PROBE_CHECK.PROBE.eq(probe))
        .and(PROBE_CHECK.CHECKED_AT.le(moment))
        .orderBy(PROBE_CHECK.CHECKED_AT.desc(), PROBE_CHECK.ID.desc())
        .limit(1)
        .fetchOptional(ProbeStore::check);
  }

  /** The first check of a probe after that moment. */
  public Optional<ProbeCheck> firstAfter(String probe, Instant moment) {
    return sql.selectFrom(PROBE_CHECK)
        .where(PROBE_CHECK.PROBE.eq(probe))
        .and(PROBE_CHECK.CHECKED_AT.gt(moment))
        .orderBy(PROBE_CHECK.CHECKED_AT, PROBE_CHECK.ID)
        .limit(1)
        .fetchOptional(ProbeStore::check);
  }

  private static ProbeCheck check(ProbeCheckRecord row) {
    return new ProbeCheck(
        row.getProbe(),
        Codes.CHECK_METHODS.word(row.getMethod()),
        Values.temperature(row.getReading(), row.getReadingScale()),
        row.getPassed() == 1,
        row.getPerson(),
        Optional.ofNullable(row.getNote()),
        row.getCheckedAt());
  }
}
