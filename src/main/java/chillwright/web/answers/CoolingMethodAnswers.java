package chillwright.web.answers;

import chillwright.core.learning.Likewise;
import chillwright.core.learning.MethodRecord;
import chillwright.core.learning.MethodRecord.StageRecord;
import chillwright.core.measure.Depth;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.print.CoolingMethodText;
import chillwright.print.Figures;
import chillwright.print.Language;
import chillwright.rulebook.RuleBook;
import chillwright.service.CoolingMethods.Shown;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** What a log shows of ways of cooling, as JSON. */
public final class CoolingMethodAnswers {
  private final RuleBook book;
  private final ZoneId zone;
  private final CoolingMethodText text = new CoolingMethodText(Scale.FAHRENHEIT, Language.ENGLISH);

  public CoolingMethodAnswers(RuleBook book, ZoneId zone) {
    this.book = book;
    this.zone = zone;
  }

  /**
   * The ways of a period.
   *
   * @param enough coolings in time without a miss from which on a way is called made-every-time
   * @param cut whether only the newest coolings of the period were looked at
   */
  public record Methods(
      OffsetDateTime from,
      OffsetDateTime to,
      int enough,
      boolean cut,
      List<Method> items,
      String caution,
      String defers) {}

  /** One way. */
  public record Method(
      String food,
      Optional<String> container,
      Optional<String> depth,
      List<String> places,
      String standing,
      int made,
      int missed,
      int notShown,
      Optional<String> coldestAir,
      Optional<String> warmestAir,
      OffsetDateTime lastBegan,
      List<Stage> stages,
      List<String> says) {}

  /** One limit of a way; a negative margin is late. */
  public record Stage(
      String rule,
      String limit,
      int missed,
      Optional<Duration> worstMargin,
      Optional<Duration> median) {}

  /** How coolings went that began as one that runs. */
  public record Earlier(
      int made, int missed, int notShown, Optional<Duration> worstMargin, String says) {}

  static Earlier earlier(Likewise earlier) {
    return new Earlier(
        earlier.made(),
        earlier.missed(),
        earlier.notShown(),
        earlier.worstMargin(),
        new CoolingMethodText(Scale.FAHRENHEIT, Language.ENGLISH).says(earlier));
  }

  public Methods answer(Shown shown) {
    return new Methods(
        time(shown.from()),
        time(shown.to()),
        MethodRecord.ENOUGH,
        shown.isCut(),
        shown.methods().stream().map(this::method).toList(),
        text.caution(),
        book.defers().strip());
  }

  private Method method(MethodRecord found) {
    List<String> air = found.air().stream().map(Temperature::text).toList();
    return new Method(
        found.method().food(),
        found.method().container(),
        found.method().depth().map(Depth::text),
        found.method().places(),
        found.standing().key(),
        found.made(),
        found.missed(),
        found.notShown(),
        air.stream().findFirst(),
        air.stream().skip(1).findFirst(),
        time(found.lastBegan()),
        found.stages().stream().map(CoolingMethodAnswers::stage).toList(),
        text.says(found));
  }

  private static Stage stage(StageRecord stage) {
    return new Stage(
        stage.rule().id(),
        Figures.limitInBoth(stage.rule()),
        stage.missed(),
        stage.worstMargin(),
        stage.median());
  }

  private OffsetDateTime time(Instant moment) {
    return OffsetDateTime.ofInstant(moment, zone);
  }
}
