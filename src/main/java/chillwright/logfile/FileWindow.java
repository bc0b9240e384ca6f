package chillwright.logfile;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A part of a file in memory, moved along it as it is read. */
final class FileWindow implements Closeable {
  private static final int USUAL = 1 << 18;

  private final FileChannel channel;
  private byte[] bytes = new byte[USUAL];
  private long start;
  private int length;
  private boolean isLast;

  FileWindow(Path file) throws IOException {
    this.channel = FileChannel.open(file, StandardOpenOption.READ);
  }

  byte[] bytes() {
    return bytes;
  }

  /** How many of the bytes belong to the file. */
  int length() {
    return length;
  }

  /** Whether the file ends where the window does. */
  boolean isLast() {
    return isLast;
  }

  /** Where in the window that place of the file is, moving it there if need be. */
  int at(long position) throws IOException {
    boolean isInside = position >= start && position < start + length;
    if (!isInside) {
      load(position);
    }
    return (int) (position - start);
  }

  /** Shows more from that place on; tells whether there was more. */
  boolean more(long position) throws IOException {
    if (isLast) {
      return false;
    }
    if (position == start) {
      bytes = new byte[bytes.length * 2];
    }
    load(position);
    return true;
  }

  private void load(long position) throws IOException {
    ByteBuffer buffer = ByteBuffer.wrap(bytes);
    start = position;
    length = 0;
    isLast = false;
    while (buffer.hasRemaining()) {
      int read = channel.read(buffer, position + buffer.position());
      if (read < 0) {
        isLast = true;
        break;
      }
    }
    length = buffer.position();
  }

  @Override
  public void close() throws IOException {
    channel.close();
  }
}
