package chillwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Measures the program beside bare baselines and prints the table: BUILD-FOLDER short|full, and
 * after a comma the groups that are wanted, if not all. It fails nothing: a group that cannot be
 * measured says why in its line.
 */
final class Bench {
  private Bench() {}

  public static void main(String[] args) throws IOException {
    Path built = Path.of(args[0]).toAbsolutePath();
    List<String> asked = List.of(args[1].split(","));
    Size size = Size.of(asked.get(0));
    String machine = Machine.words();
    Path folder = Files.createTempDirectory(built, "bench");
    long start = System.nanoTime();
    List<Line> lines;
    try {
      lines = measure(new Ground(folder, new Program(built), size), wanted(asked));
    } finally {
      Ground.clear(folder);
    }
    System.out.println();
    System.out.println("Machine: " + machine + ".");
    print(lines, size, System.nanoTime() - start);
  }

  private static Map<String, Ground.Group> wanted(List<String> asked) {
    Map<String, Ground.Group> groups = groups();
    if (asked.size() > 1) {
      groups.keySet().retainAll(asked);
    }
    return groups;
  }

  /** Processes of their own first, while this JVM still holds little. */
  private static Map<String, Ground.Group> groups() {
    AtomicLong importNanos = new AtomicLong();
    Map<String, Ground.Group> groups = new LinkedHashMap<>();
    groups.put("import", new ImportRows(importNanos));
    groups.put("large", new LargeRows(importNanos));
    groups.put("assess", new AssessRows(importNanos));
    groups.put("beside-import", new BesideImportRows());
    groups.put("lists", new ListRows());
    groups.put("writes", new WriteRows());
    groups.put("load", new LoadRows());
    groups.put("start", new StartRows());
    groups.put("check", new CheckRows());
    groups.put("crowd", new CrowdRows());
    groups.put("hot-reads", new HotReadRows());
    groups.put("pages", new PageRows());
    groups.put("ahead", new AheadRows());
    return groups;
  }

  private static List<Line> measure(Ground ground, Map<String, Ground.Group> groups) {
    List<Line> lines = new ArrayList<>();
    groups.forEach((name, group) -> lines.addAll(measure(ground, name, group)));
    return lines;
  }

  private static List<Line> measure(Ground ground, String name, Ground.Group group) {
    long start = System.nanoTime();
    System.out.print("Measuring " + name + " ... ");
    System.out.flush();
    try {
      return group.lines(ground);
    } catch (Exception e) {
      if (e instanceof InterruptedException) {
        Thread.currentThread().interrupt();
      }
      return List.of(Line.what(name).skipped(oneLine(e)));
    } finally {
      System.out.println(Times.text(System.nanoTime() - start));
    }
  }

  private static String oneLine(Exception e) {
    String text = e.toString().replaceAll("\\s+", " ").replace("|", "/");
    return text.substring(0, Math.min(200, text.length()));
  }

  private static void print(List<Line> lines, Size size, long nanos) {
    System.out.println(
        "Measured in " + Times.text(nanos) + (size.isFull() ? ", full form." : ", short form."));
    System.out.println();
    System.out.println("| what | measured | baseline | ratio | aim | met |");
    System.out.println("|---|---|---|---|---|---|");
    lines.forEach(line -> System.out.println(line.markdown()));
  }
}
