package chillwright.service;

import java.util.Optional;

/** Keys of those who use the kitchen from another machine; only their hashes are kept. */
public final class AccessKeys {
  private final Kitchen kitchen;

  AccessKeys(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Makes the first key and tells it, this once; empty where there is one already. */
  public Optional<String> makeFirst() {
    String key = Secret.random();
    return kitchen
        .database()
        .write(
            session -> {
              if (session.keys().hasAccessKeys()) {
                return Optional.empty();
              }
              session.keys().addAccessKey(Secret.hash(key), kitchen.now());
              return Optional.of(key);
            });
  }

  /** Whether that is a key of this kitchen. */
  public boolean isKey(String given) {
    return kitchen.database().read(session -> session.keys().isAccessKey(Secret.hash(given)));
  }
}
