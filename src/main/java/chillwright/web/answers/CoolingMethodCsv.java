package chillwright.web.answers;

import chillwright.logfile.CsvWriter;
import chillwright.web.answers.CoolingMethodAnswers.Method;
import chillwright.web.answers.CoolingMethodAnswers.Methods;
import chillwright.web.answers.CoolingMethodAnswers.Stage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** Ways of cooling as a table that a spreadsheet opens: a row for each limit of each way. */
public final class CoolingMethodCsv {
  private static final List<String> HEADER =
      List.of(
          "food",
          "container",
          "depth",
          "places",
          "standing",
          "made",
          "missed",
          "not_shown",
          "coldest_air",
          "warmest_air",
          "last_began",
          "rule",
          "limit",
          "missed_limit",
          "worst_margin_minutes",
          "median_minutes");

  private CoolingMethodCsv() {}

  public static String text(Methods methods) {
    StringBuilder text = new StringBuilder();
    CsvWriter csv = CsvWriter.forSpreadsheets(text);
    try {
      csv.write(HEADER);
      for (Method method : methods.items()) {
        if (method.stages().isEmpty()) {
          csv.write(cells(method, Optional.empty()));
        }
        for (Stage stage : method.stages()) {
          csv.write(cells(method, Optional.of(stage)));
        }
      }
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return text.toString();
  }

  private static List<String> cells(Method method, Optional<Stage> stage) {
    return List.of(
        method.food(),
        method.container().orElse(""),
        method.depth().orElse(""),
        String.join("; ", method.places()),
        method.standing(),
        Integer.toString(method.made()),
        Integer.toString(method.missed()),
        Integer.toString(method.notShown()),
        method.coldestAir().orElse(""),
        method.warmestAir().orElse(""),
        method.lastBegan().toString(),
        stage.map(Stage::rule).orElse(""),
        stage.map(Stage::limit).orElse(""),
        stage.map(of -> Integer.toString(of.missed())).orElse(""),
        minutes(stage.flatMap(Stage::worstMargin)),
        minutes(stage.flatMap(Stage::median)));
  }

  private static String minutes(Optional<Duration> time) {
    return time.map(of -> Long.toString(of.toMinutes())).orElse("");
  }
}
