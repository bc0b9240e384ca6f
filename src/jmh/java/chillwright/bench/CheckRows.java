package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.tools.ToolProvider;

/** A small file checked from the command line, and the size of what is shipped. */
final class CheckRows implements Ground.Group {
  private static final int ROUNDS = 9;
  private static final long MOST_MEGABYTES = 30;

  @Override
  public List<Line> lines(Ground ground) throws IOException, InterruptedException {
    return List.of(check(ground), jar(ground));
  }

  private static Line check(Ground ground) throws IOException, InterruptedException {
    Line line = Line.what("check of 20 rows (" + ground.program().startedAs() + ")");
    Path log = BenchLog.write(ground.file("one.csv"), 1, 0);
    if (!isHelloMade(ground)) {
      return line.skipped("there is no Java compiler here");
    }
    Times ours = new Times();
    Times hello = new Times();
    for (int round = 0; round < ground.size().samples(ROUNDS); round++) {
      ours.add(
          Run.of(ground.program().command("check", log.toString()), ground.folder())
              .requireCode(0)
              .nanos());
      hello.add(
          Run.of(List.of(Program.java(), "-cp", ".", "Hello"), ground.folder())
              .requireCode(0)
              .nanos());
    }
    return line.measured(Times.text(ours.median()))
        .against("java Hello " + Times.text(hello.median()))
        .atMost((double) ours.median() / hello.median(), 6);
  }

  private static boolean isHelloMade(Ground ground) throws IOException {
    Path source = ground.file("Hello.java");
    Files.writeString(
        source,
        "class Hello { public static void main(String[] a) { System.out.println(\"Hello\"); } }");
    javax.tools.JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    return compiler != null && compiler.run(null, null, null, source.toString()) == 0;
  }

  private static Line jar(Ground ground) throws IOException {
    long bytes = ground.program().jarBytes();
    return Line.what("jar")
        .measured(String.format(Locale.ROOT, "%.1f MB", bytes / 1e6))
        .judged("at most " + MOST_MEGABYTES + " MB", bytes <= MOST_MEGABYTES * 1_000_000);
  }
}
