package chillwright.storage;

import static chillwright.storage.schema.Tables.KITCHEN;

import chillwright.core.measure.Temperature.Scale;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.jooq.DSLContext;

/** Whose database this is. */
public final class KitchenStore {
  private static final long ONLY = 1;

  private final DSLContext sql;

  KitchenStore(DSLContext sql) {
    this.sql = sql;
  }

  /**
   * The kitchen's settings.
   *
   * @param zone day counts are local days of this zone
   * @param ruleSet id of the rule set its logs are judged by
   * @param scale the scale it prefers to see
   */
  public record Settings(
      Optional<String> name, ZoneId zone, String ruleSet, Scale scale, Instant createdAt) {}

  public Optional<Settings> find() {
    return sql.selectFrom(KITCHEN)
        .where(KITCHEN.ID.eq(ONLY))
        .fetchOptional(
            row ->
                new Settings(
                    Optional.ofNullable(row.getName()),
                    ZoneId.of(row.getZone()),
                    row.getRuleSet(),
                    Codes.SCALES.word(row.getScale()),
                    row.getCreatedAt()));
  }

  /** Sets what a new database is about; once. */
  public void create(Settings settings) {
    sql.insertInto(KITCHEN)
        .set(KITCHEN.ID, ONLY)
        .set(KITCHEN.NAME, settings.name().orElse(null))
        .set(KITCHEN.ZONE, settings.zone().getId())
        .set(KITCHEN.RULE_SET, settings.ruleSet())
        .set(KITCHEN.SCALE, Codes.SCALES.of(settings.scale()))
        .set(KITCHEN.CREATED_AT, settings.createdAt())
        .execute();
  }
}
