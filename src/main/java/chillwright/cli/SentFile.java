package chillwright.cli;

import chillwright.service.Progress;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** A file on its way over the wire, read as it is sent. */
final class SentFile {
  /** So many bytes more are worth a word. */
  private static final long STEP = 1_000_000;

  private final Path file;
  private final long length;
  private final Progress progress;

  /** Why it could not be read to its end, if so: the client tells of a broken line only. */
  private final AtomicReference<Optional<IOException>> broken =
      new AtomicReference<>(Optional.empty());

  private volatile boolean isBegun;

  SentFile(Path file, Progress progress) throws IOException {
    this.file = file;
    this.length = Files.size(file);
    this.progress = progress;
  }

  long length() {
    return length;
  }

  /** Sends as many bytes as it has now; there must be some. */
  BodyPublisher publisher() {
    return BodyPublishers.fromPublisher(BodyPublishers.ofInputStream(this::open), length);
  }

  /** Whether anything was sent, or there is nothing to send: the other side has agreed then. */
  boolean isBegun() {
    return isBegun || length == 0;
  }

  private InputStream open() {
    isBegun = true;
    try {
      return new Counted(Files.newInputStream(file));
    } catch (IOException e) {
      broken.set(Optional.of(e));
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @throws IOException if it was the file that could not be read
   */
  void requireRead() throws IOException {
    Optional<IOException> known = broken.get();
    if (known.isPresent()) {
      throw known.get();
    }
  }

  private final class Counted extends FilterInputStream {
    private long sent;
    private long told;

    Counted(InputStream in) {
      super(in);
    }

    @Override
    public int read() throws IOException {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] bytes, int offset, int most) throws IOException {
      try {
        int read = super.read(bytes, offset, most);
        count(Math.max(0, read));
        return read;
      } catch (IOException e) {
        broken.set(Optional.of(e));
        throw e;
      }
    }

    private void count(int read) {
      sent += read;
      if (read > 0 && sent >= length) {
        progress.done("bytes sent, now being checked and stored", sent);
      } else if (sent >= told + STEP) {
        told = sent;
        progress.done("bytes sent", sent);
      }
    }
  }
}
