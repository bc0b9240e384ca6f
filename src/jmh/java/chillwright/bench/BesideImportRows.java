package chillwright.bench;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/** A phone that goes on writing, one write every 50 ms, while the service takes in a file. */
final class BesideImportRows implements Ground.Group {
  private static final long EVERY_NANOS = TimeUnit.MILLISECONDS.toNanos(50);
  private static final double MOST_MILLIS = 250;

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    Path log = ground.log();
    Path database = ground.file("beside.db");
    ground.remove(database);
    try (Serve serve = Serve.start(ground, database);
        HttpLine line = serve.line()) {
      Phone phone = new Phone(line, "PH");
      for (int warming = 0; warming < 200; warming++) {
        phone.write();
      }
      return List.of(measured(ground, phone, sent(serve.port(), log)));
    } finally {
      ground.remove(database);
    }
  }

  private static CompletableFuture<HttpResponse<String>> sent(int port, Path log)
      throws IOException {
    URI address = URI.create("http://127.0.0.1:" + port + "/api/v1/imports");
    return HttpClient.newHttpClient()
        .sendAsync(
            HttpRequest.newBuilder(address)
                .header("Content-Type", "text/csv")
                .POST(BodyPublishers.ofFile(log))
                .build(),
            BodyHandlers.ofString());
  }

  private static Line measured(
      Ground ground, Phone phone, CompletableFuture<HttpResponse<String>> file) throws Exception {
    Line line =
        Line.what("a phone's write while " + ground.size().importRows() + " are taken in (99 %)");
    long start = System.nanoTime();
    Times times = new Times();
    int refused = writeUntil(file, phone, times);
    if (file.isCompletedExceptionally()) {
      return line.skipped("this build takes no file of that size while it serves");
    }
    int status = file.get().statusCode();
    if (status == 404 || status == 405) {
      return line.skipped("this build takes no files while it serves");
    }
    if (status / 100 != 2) {
      return line.skipped("the file was answered with " + status);
    }
    return line.measured(
            Times.text(times.at(0.99))
                + " of "
                + times.count()
                + " writes, "
                + refused
                + " refused")
        .against("the file took " + Times.text(System.nanoTime() - start))
        .judged("at most 250 ms", times.at(0.99) <= MOST_MILLIS * 1e6)
        .and("none refused", refused == 0);
  }

  /** Counted from when each write was due, so that one that is late does not hide the next. */
  private static int writeUntil(CompletableFuture<?> done, Phone phone, Times times)
      throws InterruptedException, IOException {
    int refused = 0;
    long due = System.nanoTime();
    while (!done.isDone()) {
      long wait = due - System.nanoTime();
      if (wait > 0) {
        TimeUnit.NANOSECONDS.sleep(wait);
      }
      try {
        phone.write();
      } catch (IllegalStateException refusal) {
        refused++;
      }
      times.add(System.nanoTime() - due);
      due += EVERY_NANOS;
    }
    return refused;
  }
}
