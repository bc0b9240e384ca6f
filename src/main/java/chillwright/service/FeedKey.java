package chillwright.service;

import java.util.Optional;

/**
 * The key that stands in the address of the calendar feed. A calendar program can send neither a
 * header nor a cookie, and keeps the address on a machine elsewhere; so the key opens the feed
 * alone, and may be ended without touching the access key.
 */
public final class FeedKey {
  private final Kitchen kitchen;

  FeedKey(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Makes the key and tells it, this once; one that was made before ends. */
  public String make() {
    String key = Secret.random();
    replace(Optional.of(Secret.hash(key)));
    return key;
  }

  /** Ends the key: whoever has it can read the feed no longer. */
  public void end() {
    replace(Optional.empty());
  }

  private void replace(Optional<String> hash) {
    kitchen
        .database()
        .write(
            session -> {
              session.keys().setFeedKey(hash, kitchen.now());
              return hash;
            });
  }

  /** Whether there is one. */
  public boolean isMade() {
    return kitchen.database().read(session -> session.keys().hasFeedKey());
  }

  /** Whether that is the key. */
  public boolean isKey(String given) {
    return kitchen.database().read(session -> session.keys().isFeedKey(Secret.hash(given)));
  }
}
