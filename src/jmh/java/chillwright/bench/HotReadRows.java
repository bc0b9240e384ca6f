package chillwright.bench;

import chillwright.storage.Watching;
import io.javalin.Javalin;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What is read over and over, beside an empty route of the same server library that returns the
 * same bytes. Both services and their four clients share this JVM.
 */
final class HotReadRows implements Ground.Group {
  private static final int CLIENTS = 4;
  private static final int ROUNDS = 3;

  /** Requests after which the compiler of the JVM has mostly done its work. */
  private static final int WARMING = 6_000;

  /** A slow machine is not waited for longer than this number of rounds. */
  private static final int MOST_WARMING_ROUNDS = 8;

  private static final int POLLS = 200;
  private static final String DUE = "/api/v1/due?limit=50";

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    try (InProcess served = new InProcess(ground.kitchen(ground.size().historyLots().get(0)))) {
      List<Line> lines = new ArrayList<>();
      lines.add(hot(ground, served, "one lot", "/api/v1/lots/" + KitchenLog.ON_HAND));
      lines.add(hot(ground, served, "the due list", DUE));
      lines.add(polled(served));
      return lines;
    }
  }

  private static Line hot(Ground ground, InProcess served, String what, String path)
      throws Exception {
    byte[] answer;
    try (HttpLine line = new HttpLine(served.port())) {
      answer = line.get(path).require(200).body();
    }
    Javalin empty = empty(answer, "application/json");
    try {
      warm(served.port(), path, ground.size().millis());
      warm(empty.port(), "/empty", ground.size().millis());
      double ours = 0;
      double bare = 0;
      for (int round = 0; round < ROUNDS; round++) {
        ours += rate(served.port(), path, ground.size().millis()) / ROUNDS;
        bare += rate(empty.port(), "/empty", ground.size().millis()) / ROUNDS;
      }
      return Line.what("hot read of " + what + " (" + answer.length + " bytes)")
          .measured(perSecond(ours))
          .against("empty route " + perSecond(bare))
          .atLeast(ours / bare, 0.8);
    } finally {
      empty.stop();
    }
  }

  private static void warm(int port, String path, long millis) throws Exception {
    double done = 0;
    for (int round = 0; round < MOST_WARMING_ROUNDS && done < WARMING; round++) {
      done += rate(port, path, millis) * millis / 1e3;
    }
  }

  private static String perSecond(double rate) {
    return String.format(Locale.ROOT, "%,.0f/s", rate);
  }

  /** A server with one route that returns those bytes. */
  static Javalin empty(byte[] answer, String type) {
    return Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.startup.showOldJavalinVersionWarning = false;
              config.startup.startupWatcherEnabled = false;
              config.jetty.host = "127.0.0.1";
              config.jetty.port = 0;
              config.routes.get("/empty", context -> context.contentType(type).result(answer));
            })
        .start();
  }

  private static double rate(int port, String path, long millis) throws Exception {
    AtomicLong count = new AtomicLong();
    ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
    long start = System.nanoTime();
    long end = start + TimeUnit.MILLISECONDS.toNanos(millis);
    try {
      List<Future<?>> all = new ArrayList<>();
      for (int client = 0; client < CLIENTS; client++) {
        all.add(clients.submit(() -> count.addAndGet(readUntil(port, path, end))));
      }
      for (Future<?> one : all) {
        one.get();
      }
    } finally {
      clients.shutdownNow();
    }
    return count.get() * 1e9 / (System.nanoTime() - start);
  }

  private static int readUntil(int port, String path, long end) throws IOException {
    int count = 0;
    try (HttpLine line = new HttpLine(port)) {
      byte[] request = line.getRequest(path);
      while (System.nanoTime() - end < 0) {
        line.send(request).require(200);
        count++;
      }
    }
    return count;
  }

  /** Told by SQLite itself: the steps of its machine on every connection of the kitchen. */
  private static Line polled(InProcess served) throws Exception {
    AtomicLong steps = Watching.steps(served.database());
    try (HttpLine line = new HttpLine(served.port())) {
      long asked = steps.get();
      String tag = line.get(DUE).require(200).header("ETag").orElseThrow();
      long full = steps.get() - asked;
      long before = steps.get();
      int unchanged = 0;
      for (int poll = 0; poll < POLLS; poll++) {
        HttpLine.Reply reply = line.get(DUE, "If-None-Match: " + tag);
        if (reply.status() == 304) {
          unchanged++;
        } else {
          // A minute has passed, or a limit: that answer is new, and may ask the database.
          tag = reply.header("ETag").orElseThrow();
          before = steps.get();
        }
      }
      long ran = steps.get() - before;
      return Line.what(unchanged + " unchanged polls of the due list: steps of SQL")
          .measured(Long.toString(ran))
          .against("a whole answer " + full)
          .judged("no SQL", ran == 0 && full > 0);
    }
  }
}
