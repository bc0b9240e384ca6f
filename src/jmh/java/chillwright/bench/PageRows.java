package chillwright.bench;

import io.javalin.Javalin;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a phone loads to see the first page, as it crosses the line, and how long a list takes to
 * make beside an empty handler that returns the same bytes.
 */
final class PageRows implements Ground.Group {
  private static final int REQUESTS = 600;
  private static final int BYTES = 1024;
  private static final String PACKED = "Accept-Encoding: gzip";
  private static final Pattern FILES =
      Pattern.compile("(?:href|src)=\"(/kitchen\\.(?:css|js)\\?v=[0-9a-f]+)\"");

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    try (InProcess served = new InProcess(ground.kitchen(Size.STARTED_LOTS));
        HttpLine line = new HttpLine(served.port())) {
      List<Line> lines = new ArrayList<>(sizes(line));
      for (String list : List.of("/", "/on-hand", "/lots")) {
        lines.add(made(ground, line, list));
      }
      return lines;
    }
  }

  private static List<Line> sizes(HttpLine line) throws IOException {
    int page = line.get("/", PACKED).require(200).body().length;
    Map<String, Integer> files = new TreeMap<>();
    Matcher found =
        FILES.matcher(new String(line.get("/").require(200).body(), StandardCharsets.UTF_8));
    while (found.find()) {
      String address = found.group(1);
      files.put(address, line.get(address, PACKED).require(200).body().length);
    }
    int all = page + files.values().stream().mapToInt(Integer::intValue).sum();
    int style =
        files.entrySet().stream()
            .filter(file -> file.getKey().contains(".css"))
            .mapToInt(Map.Entry::getValue)
            .sum();
    return List.of(
        size("first page with its style, compressed", page + style, 14),
        size("first visit in all", all, 60),
        size("each visit after it", page, 15));
  }

  private static Line size(String what, int bytes, int most) {
    return Line.what(what)
        .measured(String.format(Locale.ROOT, "%.1f KB", (double) bytes / BYTES))
        .judged("at most " + most + " KB", bytes <= most * BYTES);
  }

  /** Both are asked in turn, so that a slow moment of the machine meets each. */
  private static Line made(Ground ground, HttpLine line, String address) throws Exception {
    byte[] answer = line.get(address).require(200).body();
    Javalin empty = HotReadRows.empty(answer, "text/html; charset=utf-8");
    try (HttpLine bare = new HttpLine(empty.port())) {
      Times ours = new Times();
      Times theirs = new Times();
      int requests = ground.size().samples(REQUESTS);
      for (int round = -requests; round < requests; round++) {
        long before = System.nanoTime();
        line.get(address).require(200);
        long between = System.nanoTime();
        bare.get("/empty").require(200);
        long after = System.nanoTime();
        if (round >= 0) {
          ours.add(between - before);
          theirs.add(after - between);
        }
      }
      return Line.what(
              "page %s of %,d lots (%d KB plain)"
                  .formatted(address, Size.STARTED_LOTS, answer.length / BYTES))
          .measured(Times.text(ours.median()))
          .against("empty handler " + Times.text(theirs.median()))
          .atMost((double) ours.median() / theirs.median(), 3);
    } finally {
      empty.stop();
    }
  }
}
