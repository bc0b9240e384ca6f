package chillwright.storage;

import static chillwright.storage.schema.Tables.CATEGORY_USED;
import static chillwright.storage.schema.Tables.KITCHEN;

import chillwright.core.measure.Temperature.Scale;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
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
   * @param rulesVersion version of the figures that once judged every lot; newer lots may have been
   *     judged by newer figures
   * @param scale the scale it prefers to see
   * @param address what the code on its labels leads to; empty for that of the browser
   */
  public record Settings(
      Optional<String> name,
      ZoneId zone,
      String ruleSet,
      String rulesVersion,
      Scale scale,
      Instant createdAt,
      Optional<String> address) {}

  public Optional<Settings> find() {
    return sql.selectFrom(KITCHEN)
        .where(KITCHEN.ID.eq(ONLY))
        .fetchOptional(
            row ->
                new Settings(
                    Optional.ofNullable(row.getName()),
                    ZoneId.of(row.getZone()),
                    row.getRuleSet(),
                    row.getRulesVersion(),
                    Codes.SCALES.word(row.getScale()),
                    row.getCreatedAt(),
                    Optional.ofNullable(row.getAddress())));
  }

  /** Sets what a new database is about; once. */
  public void create(Settings settings) {
    sql.insertInto(KITCHEN)
        .set(KITCHEN.ID, ONLY)
        .set(KITCHEN.NAME, settings.name().orElse(null))
        .set(KITCHEN.ZONE, settings.zone().getId())
        .set(KITCHEN.RULE_SET, settings.ruleSet())
        .set(KITCHEN.RULES_VERSION, settings.rulesVersion())
        .set(KITCHEN.SCALE, Codes.SCALES.of(settings.scale()))
        .set(KITCHEN.CREATED_AT, settings.createdAt())
        .set(KITCHEN.ADDRESS, settings.address().orElse(null))
        .execute();
  }

  /** Names the kitchen anew, or takes its name away. */
  public void setName(Optional<String> name) {
    sql.update(KITCHEN).set(KITCHEN.NAME, name.orElse(null)).where(KITCHEN.ID.eq(ONLY)).execute();
  }

  /** What is printed on every label. */
  public Optional<String> labelStatement() {
    return sql.select(KITCHEN.LABEL_STATEMENT)
        .from(KITCHEN)
        .where(KITCHEN.ID.eq(ONLY))
        .fetchOptional(KITCHEN.LABEL_STATEMENT);
  }

  public void setLabelStatement(Optional<String> statement) {
    sql.update(KITCHEN)
        .set(KITCHEN.LABEL_STATEMENT, statement.orElse(null))
        .where(KITCHEN.ID.eq(ONLY))
        .execute();
  }

  /** Sets what the code on labels leads to, or takes it away. */
  public void setAddress(Optional<String> address) {
    sql.update(KITCHEN)
        .set(KITCHEN.ADDRESS, address.orElse(null))
        .where(KITCHEN.ID.eq(ONLY))
        .execute();
  }

  /**
   * Notes that every lot was judged by these figures.
   *
   * @return how many rows changed
   */
  public int setRulesVersion(String version) {
    return sql.update(KITCHEN)
        .set(KITCHEN.RULES_VERSION, version)
        .where(KITCHEN.ID.eq(ONLY))
        .and(KITCHEN.RULES_VERSION.ne(version))
        .execute();
  }

  /** Keys of the storage categories that its lots have or had. */
  public List<String> categoriesUsed() {
    return sql.select(CATEGORY_USED.CATEGORY)
        .from(CATEGORY_USED)
        .orderBy(CATEGORY_USED.CATEGORY)
        .fetch(CATEGORY_USED.CATEGORY);
  }
}
