package chillwright.service;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Optional;

/** Keys of those who use the kitchen from another machine; only their hashes are kept. */
public final class AccessKeys {
  private static final int BYTES = 32;

  private final Kitchen kitchen;

  AccessKeys(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Makes the first key and tells it, this once; empty where there is one already. */
  public Optional<String> makeFirst() {
    byte[] random = new byte[BYTES];
    new SecureRandom().nextBytes(random);
    String key = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
    return kitchen
        .database()
        .write(
            session -> {
              if (session.keys().hasAccessKeys()) {
                return Optional.empty();
              }
              session.keys().addAccessKey(hash(key), kitchen.now());
              return Optional.of(key);
            });
  }

  /** Whether that is a key of this kitchen. */
  public boolean isKey(String given) {
    // Compared by hash: how long it takes tells nothing of the key, which is 256 random bits.
    return kitchen.database().read(session -> session.keys().isAccessKey(hash(given)));
  }

  private static String hash(String key) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(key.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
