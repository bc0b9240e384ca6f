package chillwright.core.heat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One row of a case file: what goes in, what a source says comes out, and how closely.
 *
 * @param tolerance in the unit of what is expected
 * @param source who says so
 */
record HeatCase(
    String name,
    String formula,
    Map<String, String> inputs,
    double expected,
    double tolerance,
    String source) {
  private static final int COLUMNS = 6;

  static List<HeatCase> of(Path file) {
    List<HeatCase> cases = new ArrayList<>();
    try {
      for (String line : Files.readAllLines(file)) {
        if (!line.isBlank() && !line.startsWith("#")) {
          cases.add(ofLine(line));
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return cases;
  }

  private static HeatCase ofLine(String line) {
    List<String> cells = Arrays.stream(line.split("\\|", -1)).map(String::strip).toList();
    if (cells.size() != COLUMNS || cells.get(5).isEmpty()) {
      throw new IllegalArgumentException("six columns and a source are needed: " + line);
    }
    double expected = Double.parseDouble(cells.get(3));
    Map<String, String> inputs = new LinkedHashMap<>();
    for (String input : cells.get(2).split(";", -1)) {
      int equals = input.indexOf('=');
      inputs.put(input.substring(0, equals).strip(), input.substring(equals + 1).strip());
    }
    return new HeatCase(
        cells.get(0),
        cells.get(1),
        inputs,
        expected,
        tolerance(cells.get(4), expected),
        cells.get(5));
  }

  private static double tolerance(String text, double expected) {
    return text.endsWith("%")
        ? Math.abs(expected) * Double.parseDouble(text.substring(0, text.length() - 1)) / 100
        : Double.parseDouble(text);
  }

  boolean has(String input) {
    return inputs.containsKey(input);
  }

  String text(String input) {
    return Optional.ofNullable(inputs.get(input))
        .orElseThrow(() -> new IllegalArgumentException(name + ": no input " + input));
  }

  double number(String input) {
    return Double.parseDouble(text(input));
  }

  double number(String input, double otherwise) {
    return has(input) ? number(input) : otherwise;
  }

  /** Numbers after each other with commas between. */
  double[] numbers(String input) {
    return Arrays.stream(text(input).split(",", -1)).mapToDouble(Double::parseDouble).toArray();
  }

  /** Pairs of numbers, written 1:2,3:4. */
  List<double[]> pairs(String input) {
    List<double[]> pairs = new ArrayList<>();
    for (String pair : text(input).split(",", -1)) {
      pairs.add(Arrays.stream(pair.split(":", -1)).mapToDouble(Double::parseDouble).toArray());
    }
    return pairs;
  }
}
