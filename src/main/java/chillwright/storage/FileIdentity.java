package chillwright.storage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Objects;
import java.util.Optional;

/**
 * Which file a path named when it was opened. A file that is deleted or replaced while it is open
 * goes on taking writes that nobody will ever find again.
 *
 * @param key empty where the file system gives no such thing
 */
record FileIdentity(Path path, Optional<Object> key) {
  static FileIdentity of(Path path) throws IOException {
    return new FileIdentity(path, keyOf(path));
  }

  private static Optional<Object> keyOf(Path path) throws IOException {
    return Optional.ofNullable(Files.readAttributes(path, BasicFileAttributes.class).fileKey());
  }

  /** Whether the path still names that file. */
  boolean isStillThere() {
    try {
      return Objects.equals(key, keyOf(path));
    } catch (IOException gone) {
      return false;
    }
  }

  /** Whether the file has a second name, by which another program could open it unseen. */
  static boolean hasSecondName(Path path) throws IOException {
    try {
      return (int) Files.getAttribute(path, "unix:nlink") > 1;
    } catch (UnsupportedOperationException | IllegalArgumentException unknown) {
      return false;
    }
  }
}
