package chillwright.bench;

import java.util.List;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicLong;

/** Judging every lot of the imported file, in a JVM that has done little yet. */
final class AssessRows implements Ground.Group {
  private final AtomicLong importNanos;

  AssessRows(AtomicLong importNanos) {
    this.importNanos = importNanos;
  }

  @Override
  public List<Line> lines(Ground ground) throws Exception {
    Stages.Costs costs = Stages.measure(ground.log());
    String each =
        String.format(
            Locale.ROOT,
            "%s; %.1f us and %,.0f bytes a lot",
            Times.text(costs.assessNanos()),
            costs.assessNanos() / 1e3 / costs.lots(),
            (double) costs.assessBytes() / costs.lots());
    Line line = Line.what("assessing all lots").measured(each);
    long whole = importNanos.get();
    return List.of(
        whole == 0
            ? line
            : line.against("clean import " + Times.text(whole))
                .atMost((double) costs.assessNanos() / whole, 0.1));
  }
}
