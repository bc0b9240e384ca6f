package chillwright.service;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A key that its sender gives to one request, so that it counts once however often it is sent.
 *
 * @param text 1 to 200 characters
 * @param bodyHash tells the same request from another
 */
public record OnceKey(String text, String bodyHash) {
  /** The longest key, in characters. */
  public static final int LONGEST = 200;

  /**
   * @throws Refused if the key is blank or too long
   */
  public OnceKey {
    if (text.isBlank() || text.codePointCount(0, text.length()) > LONGEST) {
      throw Refused.field(
          Refused.Why.FAULTS,
          Refused.problem(
              "bad-idempotency-key",
              "/Idempotency-Key",
              text.isBlank() ? "" : text.codePointCount(0, text.length()) + " characters",
              "1 to " + LONGEST + " characters",
              "The idempotency key is blank or too long. Make one of at most "
                  + LONGEST
                  + " characters for each request."));
    }
  }

  /** The key of a request with that body to that address. */
  public static OnceKey of(String text, String address, byte[] body) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(address.getBytes(StandardCharsets.UTF_8));
      digest.update((byte) 0);
      return new OnceKey(text, HexFormat.of().formatHex(digest.digest(body)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
