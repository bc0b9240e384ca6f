package chillwright.web.answers;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
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
      RuleSetRef ruleSet,
      OffsetDateTime checkedAt,
      List<Lot> lots,
      List<Fault> problems,
      String defers) {}

  /**
   * One lot of a check, with what the rules say of it; {@code verdict} is null without findings.
   */
  public record Lot(
      String lot,
      String food,
      String category,
      Optional<String> verdict,
      List<Finding> findings,
      List<ForecastLine> forecast,
      Dates keeping) {}

  /**
   * One finding.
   *
   * @param lot whose record was judged: the lot itself or one it came from
   * @param corrected those of the evidence that were corrected, so do not stand as first written
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
      List<String> corrected,
      List<String> remarks,
      @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<Boolean> changed) {}

  /** The dates of a lot; {@code governs} names one of the other keys. */
  public record Dates(
      Optional<LocalDate> dateMarkLastDay,
      Optional<LocalDate> lastDayMissed,
      Optional<Integer> daysLeftWhenThawed,
      Optional<LocalDate> chilledLastDay,
      Optional<OffsetDateTime> discardAt,
      Optional<LocalDate> bestQualityBy,
      Optional<LocalDate> qualityLimit,
      Optional<String> governs,
      List<String> because) {
    /** Of a lot of which nothing is written yet. */
    public static final Dates NONE =
        new Dates(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of());
  }

  /**
   * How long a kind of food keeps, asked by dates alone.
   *
   * @param says the dates in words, as of today: what has passed is said to have passed
   */
  public record Keep(
      RuleSetRef ruleSet,
      String category,
      String food,
      Dates keeping,
      List<String> says,
      String source,
      String status,
      Optional<String> note,
      String defers) {}

  /**
   * A part of a list.
   *
   * @param next the cursor to ask for the part after this one; null at the end
   */
  public record Listing<T>(List<T> items, Optional<String> next) {}

  /** A list with verdicts in it, which says by what rules and who decides. */
  public record JudgedListing<T>(
      List<T> items, Optional<String> next, OffsetDateTime at, RuleSetRef ruleSet, String defers) {}

  /** Portions of a lot; null where they were not counted. */
  public record Portions(Optional<Integer> made, Optional<Integer> left) {}

  /**
   * A lot as a list shows it. All from {@code phase} on is null, or without dates, until its first
   * entry is written.
   *
   * @param lastDay its last day of safety
   */
  public record LotLine(
      String lot,
      String food,
      String category,
      Optional<String> note,
      boolean onHand,
      Portions portions,
      Optional<String> phase,
      Optional<String> place,
      Optional<String> verdict,
      Optional<OffsetDateTime> beganAt,
      Optional<OffsetDateTime> closedAt,
      Optional<LocalDate> lastDay,
      Dates keeping,
      Optional<RuleSetRef> ruleSet) {}

  /**
   * All that is known of a lot, but its entries.
   *
   * @param from the lots it came from
   * @param madeInto the lots that came from it, directly or not
   * @param earlierCoolings how coolings went that began as its own; null where none runs, or did
   * @param placeReadings what was read in its places while it was inside, the newest first:
   *     evidence without a verdict
   * @param frozenLife what the readings of its freezer cost of its quality; never of safety
   * @param contents allergens and ingredients of all that went into it
   */
  public record LotDetail(
      @JsonUnwrapped LotLine line,
      List<String> from,
      List<String> madeInto,
      List<Finding> findings,
      Optional<Due> due,
      List<ForecastLine> forecast,
      Optional<CoolingMethodAnswers.Earlier> earlierCoolings,
      List<Entry> placeReadings,
      List<AheadAnswers.Line> frozenLife,
      ContentsAnswer contents,
      String defers) {}

  /** What must happen next, and the last moment for it. */
  public record Due(String says, OffsetDateTime deadline, String rule) {}

  /** What an entry measures and describes. A temperature reads as it was written: "128.5 °F". */
  public record Cells(
      Optional<String> food,
      Optional<String> category,
      Optional<String> temperature,
      Optional<String> how,
      Optional<String> place,
      Optional<String> air,
      Optional<Integer> portions,
      List<String> from,
      Optional<String> to,
      Optional<String> until,
      Optional<String> probe,
      Optional<String> container,
      Optional<String> depth) {}

  /**
   * One entry as it was written.
   *
   * @param late whether it was written down noticeably later than it happened
   * @param state {@code stands}, {@code corrected} or {@code voided}
   * @param correctedBy the entries that correct it
   * @param corrections these with their reasons, and the corrections of them
   * @param corrected what holds instead, where it is corrected
   */
  public record Entry(
      String id,
      String entry,
      OffsetDateTime when,
      OffsetDateTime writtenAt,
      boolean late,
      @JsonUnwrapped Cells written,
      Optional<String> by,
      Optional<String> note,
      Optional<String> corrects,
      String state,
      List<String> correctedBy,
      List<Correction> corrections,
      Optional<Cells> corrected) {}

  /**
   * Who corrected an entry, when and why.
   *
   * @param corrects the entry, or another correction of it
   * @param reason empty only where it was written before a reason was asked for
   * @param stands whether it was not voided itself
   */
  public record Correction(
      String id,
      String corrects,
      OffsetDateTime when,
      OffsetDateTime writtenAt,
      Optional<String> by,
      Optional<String> reason,
      boolean stands) {}

  /**
   * What entries of a lot did.
   *
   * @param repeats how many of them were known already
   * @param replayed whether the same request was answered before, and nothing was written now
   * @param judgedAlso the lots that came from this one and were judged again
   */
  public record EntriesWritten(
      List<Entry> entries,
      int repeats,
      boolean replayed,
      String lot,
      Optional<String> verdict,
      List<Finding> findings,
      Dates keeping,
      Optional<Due> due,
      List<ForecastLine> forecast,
      List<String> judgedAlso,
      OffsetDateTime at,
      RuleSetRef ruleSet,
      String defers) {}

  /** Readings of places that were written. */
  public record ReadingsWritten(List<Entry> entries, int repeats, boolean replayed) {}

  /**
   * What came of a file that was sent.
   *
   * @param rows how many rows it has
   * @param entries how many new entries of lots were stored
   * @param readings how many new readings of places were stored
   * @param repeats how many rows were known already
   * @param lots how many lots grew
   * @param problems what kept lots out, where only the good ones were asked for
   */
  public record Imported(
      long rows,
      long entries,
      long readings,
      long repeats,
      long lots,
      boolean stored,
      List<Fault> problems,
      OffsetDateTime at,
      RuleSetRef ruleSet,
      String defers) {}

  /** What falls due next of one lot. */
  public record DueLine(
      String lot,
      String food,
      String category,
      Optional<String> phase,
      Optional<String> place,
      OffsetDateTime deadline,
      String says,
      String rule,
      String limit,
      String citation,
      String status,
      List<String> offered,
      Optional<ForecastLine> forecast,
      RuleSetRef ruleSet) {}

  /**
   * A limit that was missed, or a reading that was not taken in time.
   *
   * @param outSince when it went out of compliance, or when the reading was overdue
   * @param judgedLot whose record was judged: the lot itself or one it came from
   * @param evidence the entries it rests on, as written, with what became of them
   * @param corrected those of the evidence that were corrected
   * @param taken what was done about it since
   * @param handedOn what was handed on of it after that, before anything mended it
   * @param owed whether a corrective action is still owed
   * @param offered the corrective actions of the rule set
   */
  public record TroubleLine(
      OffsetDateTime outSince,
      String lot,
      String food,
      String category,
      boolean onHand,
      String verdict,
      String rule,
      String limit,
      String citation,
      String status,
      Optional<Duration> shortest,
      Optional<Duration> longest,
      Optional<Duration> estimate,
      Optional<OffsetDateTime> deadline,
      String says,
      String judgedLot,
      List<Entry> evidence,
      List<String> corrected,
      List<Entry> taken,
      List<Entry> handedOn,
      boolean owed,
      List<String> offered,
      RuleSetRef ruleSet) {}

  /**
   * The kitchen; the code on its labels leads to {@code address}, and {@code olderVersion} of the
   * rules may still have judged some of its lots.
   */
  public record Kitchen(
      Optional<String> name,
      String zone,
      String scale,
      Optional<String> address,
      RuleSetLine ruleSet,
      Optional<String> olderVersion,
      OffsetDateTime time) {}

  /** That the service runs and can read its database. */
  public record Health(String status) {}

  /** A rule set in short. */
  public record RuleSetLine(
      String id,
      String version,
      String title,
      String status,
      @JsonProperty("extends") Optional<String> extendsId,
      LocalDate lastChecked,
      boolean inUse,
      String defers) {}

  /** One fault of an input, the same shape everywhere. */
  public record Fault(String code, Object where, String given, String allowed, String says) {}

  /** Place of a fault in a file. */
  public record InFile(String file, long line, String column) {}

  /** Place of a fault in a request body or a rule file: a JSON pointer. */
  public record InField(
      @JsonInclude(JsonInclude.Include.NON_EMPTY) String file,
      @JsonProperty("pointer") String pointer) {}

  /** Place of a fault in a body that is no JSON. */
  public record InBody(int line, int column) {}

  /** A parameter of the address, in its path or its query. */
  public record InParameter(String parameter) {}

  /** A header of the request. */
  public record InHeader(String header) {}

  /** A whole part of the request: its address, method or body. */
  public record InRequest(String request) {}

  /** An error as RFC 9457 has it; {@code number} is that of a line in the service's own log. */
  public record ProblemDocument(
      String type,
      String title,
      int status,
      String detail,
      @JsonInclude(JsonInclude.Include.NON_ABSENT) Optional<String> number,
      List<Fault> problems) {}
}
