package chillwright.paper;

import chillwright.print.CurveChart;
import java.util.List;
import java.util.Optional;

/**
 * One lot in the record, in words.
 *
 * @param verdict what the record shows of it, in a word or two
 * @param facts where it is, its dates and what it was made of, a line each
 * @param rows every entry in order of time
 */
public record LotSheet(
    String food,
    String code,
    String verdict,
    List<String> facts,
    Optional<CurveChart> curve,
    List<Found> findings,
    List<Row> rows) {
  /**
   * A finding.
   *
   * @param source its limit, and where that is printed
   * @param done what was done about it; blank where it calls for nothing
   */
  public record Found(String verdict, String says, String source, String done) {}

  /**
   * An entry.
   *
   * @param by who signed it
   * @param was what it said before it was corrected, printed struck; blank for an entry that stands
   *     as it was written
   * @param why who corrected it, when and for what reason
   */
  public record Row(String clock, String word, String text, String by, String was, String why) {}

  public LotSheet {
    facts = List.copyOf(facts);
    findings = List.copyOf(findings);
    rows = List.copyOf(rows);
  }
}
