package chillwright.storage;

import static chillwright.storage.schema.Tables.ACCESS_KEY;
import static chillwright.storage.schema.Tables.FEED_KEY;
import static chillwright.storage.schema.Tables.IDEMPOTENCY_KEY;

import chillwright.core.log.EntryId;
import chillwright.core.log.LotId;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jooq.impl.DSL;

/** Keys of writes that were answered, and keys of those who may write. */
public final class KeyStore {
  private static final Cell<String> KEY = Cell.of(IDEMPOTENCY_KEY, IDEMPOTENCY_KEY.GIVEN_KEY);
  private static final Cell<String> BODY_HASH = Cell.of(IDEMPOTENCY_KEY, IDEMPOTENCY_KEY.BODY_HASH);
  private static final Cell<Instant> CREATED_AT =
      Cell.of(IDEMPOTENCY_KEY, IDEMPOTENCY_KEY.CREATED_AT);
  private static final Cell<String> LOT = Cell.of(IDEMPOTENCY_KEY, IDEMPOTENCY_KEY.LOT);
  private static final Cell<String> ENTRIES = Cell.of(IDEMPOTENCY_KEY, IDEMPOTENCY_KEY.ENTRIES);

  private final Session session;

  KeyStore(Session session) {
    this.session = session;
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
    List<Answered> found = new ArrayList<>(1);
    session
        .select(
            "answered requests",
            keys -> DSL.selectFrom(IDEMPOTENCY_KEY).where(IDEMPOTENCY_KEY.GIVEN_KEY.in(keys)))
        .forEach(List.of(key), row -> found.add(answered(row)));
    return found.stream().findFirst();
  }

  private static Answered answered(ResultSet row) throws SQLException {
    return new Answered(
        KEY.get(row, 0),
        BODY_HASH.get(row, 0),
        CREATED_AT.get(row, 0),
        Optional.ofNullable(LOT.get(row, 0)).map(LotId::new),
        Values.entryIds(ENTRIES.get(row, 0)));
  }

  public void remember(Answered write) {
    Object[] row = new Object[IDEMPOTENCY_KEY.fields().length];
    KEY.set(row, write.key());
    BODY_HASH.set(row, write.bodyHash());
    CREATED_AT.set(row, write.createdAt());
    LOT.set(row, write.lot().map(LotId::text).orElse(null));
    ENTRIES.set(row, Values.joined(write.entries()));
    session.insertInto(IDEMPOTENCY_KEY).addKept(List.<Object[]>of(row));
  }

  /** Forgets writes that were answered before that moment. */
  public void forgetBefore(Instant moment) {
    session
        .change(
            "old requests forgotten",
            () -> DSL.deleteFrom(IDEMPOTENCY_KEY).where(IDEMPOTENCY_KEY.CREATED_AT.lt(moment)))
        .run(moment.toEpochMilli());
  }

  public boolean hasAccessKeys() {
    return session.sql().fetchExists(ACCESS_KEY);
  }

  public boolean isAccessKey(String hash) {
    return session.sql().fetchExists(ACCESS_KEY, ACCESS_KEY.KEY_HASH.eq(hash));
  }

  public boolean hasFeedKey() {
    return session.sql().fetchExists(FEED_KEY);
  }

  public boolean isFeedKey(String hash) {
    return session.sql().fetchExists(FEED_KEY, FEED_KEY.KEY_HASH.eq(hash));
  }

  /** Ends the key that is there, and keeps another in its place if one is given. */
  public void setFeedKey(Optional<String> hash, Instant createdAt) {
    session.sql().deleteFrom(FEED_KEY).execute();
    hash.ifPresent(
        made ->
            session
                .sql()
                .insertInto(FEED_KEY)
                .set(FEED_KEY.KEY_HASH, made)
                .set(FEED_KEY.CREATED_AT, createdAt)
                .execute());
  }

  public void addAccessKey(String hash, Instant createdAt) {
    session
        .sql()
        .insertInto(ACCESS_KEY)
        .set(ACCESS_KEY.KEY_HASH, hash)
        .set(ACCESS_KEY.CREATED_AT, createdAt)
        .execute();
  }
}
