package chillwright.rulebook;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * A short mark of what a set of figures says. People edit a file and forget its version; the mark
 * changes all the same, so that lots judged by the old figures are noticed.
 */
final class Fingerprint {
  /** Eight hex digits: enough to tell the few states of a folder apart. */
  private static final int BYTES = 4;

  private Fingerprint() {}

  static String of(List<String> parts) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (String part : parts) {
        digest.update(part.getBytes(StandardCharsets.UTF_8));
        digest.update((byte) 0);
      }
      return HexFormat.of().formatHex(digest.digest(), 0, BYTES);
    } catch (NoSuchAlgorithmException e) {
      // Every Java platform has to support SHA-256.
      throw new IllegalStateException(e);
    }
  }
}
