package chillwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;

/** The start of the service and what it then holds, beside the bare jar without shared classes. */
final class StartRows implements Ground.Group {
  private static final int ROUNDS = 5;
  private static final int SETTLING_MILLIS = 300;
  private static final long MOST_MEGABYTES = 150;

  /** Starts of one kind. */
  private static final class Starts {
    private final Times answered = new Times();
    private final Times cpu = new Times();
    private final Times resident = new Times();

    void add(List<String> command) throws IOException, InterruptedException {
      long start = System.nanoTime();
      try (Serve serve = Serve.start(command);
          HttpLine line = serve.line()) {
        line.get("/api/v1/health").require(200);
        answered.add(System.nanoTime() - start);
        cpu.add(serve.cpuNanos());
        use(line);
        OptionalLong bytes = serve.residentBytes();
        bytes.ifPresent(resident::add);
      }
    }

    /** The page and both lists are asked for, as a kitchen does that opens it. */
    private static void use(HttpLine line) throws IOException, InterruptedException {
      line.get("/").require(200);
      line.get("/api/v1/lots?limit=50").require(200);
      line.get("/api/v1/due?limit=50").require(200);
      Thread.sleep(SETTLING_MILLIS);
    }
  }

  @Override
  public List<Line> lines(Ground ground) throws IOException, InterruptedException {
    Path database = ground.kitchen(Size.STARTED_LOTS);
    String[] words = Serve.words(database);
    Starts ours = new Starts();
    Starts bare = new Starts();
    for (int round = 0; round < ground.size().samples(ROUNDS); round++) {
      ours.add(ground.program().command(words));
      bare.add(ground.program().unshared(words));
    }
    String as = " (" + ground.program().startedAs() + ")";
    return List.of(
        compared("serve, start to first answer" + as, ours.answered, bare.answered, 0.6),
        compared("serve, CPU time to first answer" + as, ours.cpu, bare.cpu, 0.45),
        resident(ours, bare));
  }

  private static Line compared(String what, Times ours, Times bare, double limit) {
    return Line.what(what)
        .measured(Times.text(ours.median()))
        .against("-Xshare:off " + Times.text(bare.median()))
        .atMost((double) ours.median() / bare.median(), limit);
  }

  private static Line resident(Starts ours, Starts bare) {
    Line line = Line.what("serve, resident memory with %,d lots".formatted(Size.STARTED_LOTS));
    if (ours.resident.count() == 0) {
      return line.skipped("this system does not tell");
    }
    long bytes = ours.resident.median();
    return line.measured(megabytes(bytes))
        .against("-Xshare:off " + megabytes(bare.resident.median()))
        .judged("at most " + MOST_MEGABYTES + " MB", bytes <= MOST_MEGABYTES * 1_000_000);
  }

  private static String megabytes(long bytes) {
    return String.format(Locale.ROOT, "%.0f MB", bytes / 1e6);
  }
}
