package chillwright.storage;

import static chillwright.storage.schema.Tables.ACCESS_KEY;
import static chillwright.storage.schema.Tables.IDEMPOTENCY_KEY;

import chillwright.core.log.EntryId;
import chillwright.core.log.LotId;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jooq.DSLContext;

/** Keys of writes that were answered, and keys of those who may write. */
public final class KeyStore {
  private final DSLContext sql;

  KeyStore(DSLContext sql) {
    this.sql = sql;
  }

  /**
   * A write that was answered.
   *
   * @param bodyHash tells the same request from another one with the same key
   * @param lot the lot it made, if it made one
   * @param entries the entries it made
   */
  public record Answered(
      String key, String bodyHash, Instant createdAt, Optional<LotId> lot, List<EntryId> entries) {
    public Answered {
      entries = List.copyOf(entries);
    }
  }

  public Optional<Answered> answered(String key) {
    return sql.selectFrom(IDEMPOTENCY_KEY)
        .where(IDEMPOTENCY_KEY.GIVEN_KEY.eq(key))
        .fetchOptional(
            row ->
                new Answered(
                    row.getGivenKey(),
                    row.getBodyHash(),
                    row.getCreatedAt(),
                    Optional.ofNullable(row.getLot()).map(LotId::new),
                    Values.entryIds(row.getEntries())));
  }

  public void remember(Answered write) {
    sql.insertInto(IDEMPOTENCY_KEY)
        .set(IDEMPOTENCY_KEY.GIVEN_KEY, write.key())
        .set(IDEMPOTENCY_KEY.BODY_HASH, write.bodyHash())
        .set(IDEMPOTENCY_KEY.CREATED_AT, write.createdAt())
        .set(IDEMPOTENCY_KEY.LOT, write.lot().map(LotId::text).orElse(null))
        .set(IDEMPOTENCY_KEY.ENTRIES, Values.joined(write.entries()))
        .execute();
  }

  /** Forgets writes that were answered before that moment. */
  public void forgetBefore(Instant moment) {
    sql.deleteFrom(IDEMPOTENCY_KEY).where(IDEMPOTENCY_KEY.CREATED_AT.lt(moment)).execute();
  }

  public boolean hasAccessKeys() {
    return sql.fetchExists(ACCESS_KEY);
  }

  public boolean isAccessKey(String hash) {
    return sql.fetchExists(ACCESS_KEY, ACCESS_KEY.KEY_HASH.eq(hash));
  }

  public void addAccessKey(String hash, Instant createdAt) {
    sql.insertInto(ACCESS_KEY)
        .set(ACCESS_KEY.KEY_HASH, hash)
        .set(ACCESS_KEY.CREATED_AT, createdAt)
        .execute();
  }
}
