package chillwright.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A body put aside is there while it is needed, for nobody else, and no longer. */
class PutAsideTest {
  private static final byte[] ROWS = "lot,when,entry\n".getBytes(StandardCharsets.UTF_8);

  @TempDir private Path folder;

  private PutAside aside(InputStream body, long largest) throws IOException {
    return PutAside.of(body, largest, folder);
  }

  @Test
  void it_holds_the_bytes_that_came_and_is_gone_once_closed() throws IOException {
    try (PutAside aside = aside(new ByteArrayInputStream(ROWS), ROWS.length)) {
      assertThat(aside.file()).hasBinaryContent(ROWS);
    }
    assertThat(folder).isEmptyDirectory();
  }

  /** IEEE 1003.1: a folder that its owner alone may read, write and search has the mode 0700. */
  @Test
  void nobody_else_may_look_into_its_folder() throws IOException {
    assumeThat(FileSystems.getDefault().supportedFileAttributeViews()).contains("posix");
    try (PutAside aside = aside(new ByteArrayInputStream(ROWS), ROWS.length)) {
      assertThat(Files.getPosixFilePermissions(aside.file().getParent()))
          .isEqualTo(PosixFilePermissions.fromString("rwx------"));
    }
  }

  /** RFC 9110 section 15.5.14: 413 where the content is larger than a server is willing to take. */
  @Test
  void nothing_is_left_of_a_body_too_large() {
    assertThatThrownBy(() -> aside(new ByteArrayInputStream(ROWS), ROWS.length - 1))
        .isInstanceOfSatisfying(
            RequestFault.class, fault -> assertThat(fault.status()).isEqualTo(413));
    assertThat(folder).isEmptyDirectory();
  }

  /** RFC 9112 section 8: a message that ends before its length is incomplete. */
  @Test
  void nothing_is_left_of_a_body_cut_short() {
    InputStream dead =
        new InputStream() {
          @Override
          public int read() throws IOException {
            throw new IOException("the line went dead");
          }

          @Override
          public int read(byte[] bytes, int offset, int most) throws IOException {
            throw new IOException("the line went dead");
          }
        };
    InputStream half = new SequenceInputStream(new ByteArrayInputStream(ROWS), dead);
    assertThatThrownBy(() -> aside(half, 1000))
        .isInstanceOfSatisfying(
            RequestFault.class, fault -> assertThat(fault.status()).isEqualTo(400));
    assertThat(folder).isEmptyDirectory();
  }
}
