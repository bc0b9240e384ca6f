package chillwright.web.answers;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.time.Duration;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** The records that answers are made of. Times carry the kitchen's offset (RFC 3339). */
public final class Answers {
  private Answers() {}

  /** Which rules judged. */
  public record RuleSetRef(String id, String version) {}

  /** A stateless check of a log. */
  public record Check(
      RuleSetRef ruleSet, OffsetDateTime checkedAt, List<Lot> lots, List<Fault> problems) {}

  /**
   * One lot of a check, with what the rules say of it; {@code verdict} is null without findings.
   */
  public record Lot(
      String lot,
      String food,
      String category,
      Optional<String> verdict,
      List<Finding> findings,
      Dates keeping) {}

  /**
   * One finding.
   *
   * @param lot whose record was judged: the lot itself or one it came from
   * @param changed whether the entries just written changed it; absent where nothing was written
   */
  public record Finding(
      String rule,
      String verdict,
      String citation,
      String status,
      String limit,
      Optional<Duration> shortest,
      Optional<Duration> longest,
      Optional<Duration> estimate,
      OffsetDateTime since,
      Optional<OffsetDateTime> deadline,
      String says,
      List<String> actions,
      String lot,
      List<String> evidence,
      List<String> remarks,
      @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<Boolean> changed) {}

  /** The dates of a lot; {@code governs} names one of the other keys. */
  public record Dates(
      Optional<LocalDate> dateMarkLastDay,
      Optional<Integer> daysLeftWhenThawed,
      Optional<LocalDate> chilledLastDay,
      Optional<OffsetDateTime> discardAt,
      Optional<LocalDate> bestQualityBy,
      Optional<LocalDate> qualityLimit,
      Optional<String> governs,
      List<String> because) {}

  /** How long a kind of food keeps, asked by dates alone. */
  public record Keep(
      RuleSetRef ruleSet,
      String category,
      String food,
      Dates keeping,
      String source,
      String status,
      Optional<String> note,
      String defers) {}

  /** One fault of an input, the same shape everywhere. */
  public record Fault(String code, Object where, String given, String allowed, String says) {}

  /** Place of a fault in a file. */
  public record InFile(String file, long line, String column) {}

  /** Place of a fault in a request body or a rule file: a JSON pointer. */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record InField(String file, @JsonProperty("pointer") String pointer) {}
}
