package chillwright.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The lists a kitchen looks at all day, whatever its history. */
final class ListRows implements Ground.Group {
  /** To warm up with, and to measure. */
  private static final int REQUESTS = 300;

  @Override
  public List<Line> lines(Ground ground) throws IOException, InterruptedException {
    Map<Integer, Serve> serving = new LinkedHashMap<>();
    try {
      for (int lots : ground.size().historyLots()) {
        serving.put(lots, Serve.start(ground, ground.kitchen(lots)));
      }
      List<Line> lines = new ArrayList<>();
      int requests = ground.size().samples(REQUESTS);
      lines.addAll(
          ask(serving, requests, "out now, first 50", "/api/v1/lots?verdict=out&limit=50"));
      lines.addAll(ask(serving, requests, "due next, first 50", "/api/v1/due?limit=50"));
      return lines;
    } finally {
      serving.values().forEach(Serve::close);
    }
  }

  /** All are asked in turn, so that a slow moment of the machine meets every one. */
  private static List<Line> ask(Map<Integer, Serve> serving, int requests, String what, String path)
      throws IOException {
    Map<Integer, HttpLine> lines = new LinkedHashMap<>();
    Map<Integer, Times> times = new LinkedHashMap<>();
    try {
      for (Map.Entry<Integer, Serve> one : serving.entrySet()) {
        lines.put(one.getKey(), one.getValue().line());
        times.put(one.getKey(), new Times());
      }
      for (int round = -requests; round < requests; round++) {
        for (Map.Entry<Integer, HttpLine> one : lines.entrySet()) {
          long start = System.nanoTime();
          one.getValue().get(path).require(200);
          if (round >= 0) {
            times.get(one.getKey()).add(System.nanoTime() - start);
          }
        }
      }
    } finally {
      for (HttpLine line : lines.values()) {
        line.close();
      }
    }
    return compared(what, times);
  }

  private static List<Line> compared(String what, Map<Integer, Times> times) {
    List<Integer> sizes = List.copyOf(times.keySet());
    long least = times.get(sizes.get(0)).median();
    return sizes.stream()
        .skip(1)
        .map(
            lots ->
                Line.what("%s, of %,d lots".formatted(what, lots))
                    .measured(Times.text(times.get(lots).median()))
                    .against("of %,d lots %s".formatted(sizes.get(0), Times.text(least)))
                    .atMost((double) times.get(lots).median() / least, 1.25))
        .toList();
  }
}
