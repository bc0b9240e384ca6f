package chillwright.web;

import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A body too large to hold: a file in a folder that only we may open, gone once it is closed. */
final class PutAside implements Closeable {
  private static final int AT_ONCE = 1 << 16;
  private static final int NO_ROOM = 507;

  private final Path folder;
  private final Path file;

  private PutAside(Path folder) {
    this.folder = folder;
    this.file = folder.resolve("body");
    // If the service is stopped meanwhile, nobody comes to close it; what was told last goes first.
    folder.toFile().deleteOnExit();
    file.toFile().deleteOnExit();
  }

  Path file() {
    return file;
  }

  /**
   * Takes the body of a request, to its end.
   *
   * @param largest the most bytes it may have
   * @throws RequestFault if it is larger or does not arrive whole; nothing of it is left then
   */
  static PutAside of(Context context, long largest) throws IOException {
    boolean isAsking = context.header(Header.EXPECT) != null;
    if (isAsking && context.req().getContentLengthLong() > largest) {
      throw tooLarge(largest);
    }
    Path within = Path.of(System.getProperty("java.io.tmpdir"));
    return of(context.req().getInputStream(), largest, within);
  }

  static PutAside of(InputStream body, long largest, Path within) throws IOException {
    PutAside aside = new PutAside(Files.createTempDirectory(within, "chillwright-"));
    try {
      aside.take(body, largest);
      return aside;
    } catch (IOException | RuntimeException e) {
      aside.close();
      throw e;
    }
  }

  private void take(InputStream body, long largest) throws IOException {
    byte[] bytes = new byte[AT_ONCE];
    long taken = 0;
    try (OutputStream out = Files.newOutputStream(file)) {
      for (int read = next(body, bytes); read >= 0; read = next(body, bytes)) {
        taken += read;
        if (taken > largest) {
          Body.throwAway(body);
          throw tooLarge(largest);
        }
        write(out, bytes, read);
      }
    }
  }

  private static int next(InputStream body, byte[] bytes) {
    try {
      return body.read(bytes);
    } catch (IOException e) {
      throw Body.cutShort(e, "Nothing of it was stored. Send it again.");
    }
  }

  private static void write(OutputStream out, byte[] bytes, int length) {
    try {
      out.write(bytes, 0, length);
    } catch (IOException e) {
      throw new RequestFault(
          NO_ROOM,
          new Fault(
              "no-room",
              new Answers.InRequest("service"),
              "",
              "room for the file in the service's temporary folder",
              "The file could not be put aside while it came in, so nothing of it was stored. Make"
                  + " room on the disk of the service's temporary folder and send it again."));
    }
  }

  private static RequestFault tooLarge(long largest) {
    return new RequestFault(
        413,
        new Fault(
            "too-large",
            new Answers.InRequest("body"),
            "more than " + largest + " bytes",
            "at most " + largest + " bytes",
            "The file is too large, and nothing of it was stored. Send it in parts, each with a"
                + " header row and whole lots."));
  }

  @Override
  public void close() throws IOException {
    Files.deleteIfExists(file);
    Files.deleteIfExists(folder);
  }
}
