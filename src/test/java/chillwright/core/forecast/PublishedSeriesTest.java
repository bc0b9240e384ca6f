package chillwright.core.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import chillwright.core.forecast.CoolingCurve.Point;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * How many crossings of published cooling series fall inside the window forecast from the readings
 * before them. Each series and its source stand in {@code cases/cooling-series.csv}; the times are
 * hours, the temperatures °C. The count is printed, so that it can be told as it is.
 */
class PublishedSeriesTest {
  private record Series(String id, double surroundings, List<Point> readings) {}

  private static final class Tally {
    private int tried;
    private int inside;
    private int early;
    private int untold;

    private void add(Optional<CurveForecast> window, double actual) {
      if (window.isEmpty()) {
        untold++;
        return;
      }
      tried++;
      if (actual < window.get().earliest()) {
        early++;
      } else if (actual <= window.get().latest().orElse(Double.MAX_VALUE)) {
        inside++;
      }
    }

    private String text() {
      return String.format(
          Locale.ROOT,
          "%d of %d inside, %d before it, %d after it, %d not told",
          inside,
          tried,
          early,
          tried - inside - early,
          untold);
    }
  }

  @Test
  void crossings_fall_inside_the_window() throws IOException {
    Tally next = new Tally();
    Tally farther = new Tally();
    for (Series series : series()) {
      for (int known = 2; known < series.readings().size(); known++) {
        for (int later = known; later < series.readings().size(); later++) {
          Point target = series.readings().get(later);
          Optional<CurveForecast> window =
              CurveForecast.fit(
                      CurveForecast.apart(series.readings().subList(0, known)),
                      series.surroundings())
                  .flatMap(fit -> fit.crossing(target.celsius()));
          (later == known ? next : farther).add(window, target.hours());
        }
      }
    }
    System.out.println("Published cooling series, the next reading: " + next.text());
    System.out.println("Published cooling series, later readings: " + farther.text());
    assertThat(next.inside).isGreaterThanOrEqualTo(next.tried * 8 / 10);
    assertThat(farther.inside).isGreaterThanOrEqualTo(farther.tried * 8 / 10);
  }

  private static List<Series> series() throws IOException {
    try (InputStream in =
            PublishedSeriesTest.class.getResourceAsStream("/cases/cooling-series.csv");
        CsvReader<NamedCsvRecord> rows = CsvReader.builder().ofNamedCsvRecord(in)) {
      return rows.stream().map(PublishedSeriesTest::series).toList();
    }
  }

  private static Series series(NamedCsvRecord row) {
    List<Point> readings =
        Arrays.stream(row.getField("readings").split(" "))
            .map(text -> text.split(":"))
            .map(pair -> new Point(Double.parseDouble(pair[0]), Double.parseDouble(pair[1])))
            .toList();
    return new Series(
        row.getField("id"), Double.parseDouble(row.getField("surroundings")), readings);
  }
}
