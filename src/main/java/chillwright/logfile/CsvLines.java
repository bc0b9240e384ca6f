package chillwright.logfile;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.util.ArrayList;
import java.util.List;

/** Gathers the cells of a record with its line, and still knows how far it came when one breaks. */
final class CsvLines extends AbstractBaseCsvCallbackHandler<CsvLines.Line> {
  private List<String> cells = new ArrayList<>();

  /**
   * One record.
   *
   * @param number line of the file in which it begins; the first is 1
   */
  record Line(long number, List<String> cells) {
    boolean isBlank() {
      return cells.stream().allMatch(cell -> Texts.trimmed(cell).isEmpty());
    }
  }

  @Override
  protected void handleBegin(long line) {
    cells = new ArrayList<>(cells.size());
  }

  @Override
  protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
    cells.add(CsvWriter.unguarded(new String(buffer, offset, length)));
  }

  @Override
  protected Line buildRecord() {
    return new Line(getStartingLineNumber(), cells);
  }

  /** The line in which the record that is being read begins. */
  long line() {
    return getStartingLineNumber();
  }

  /** How many cells of the record that is being read are complete. */
  int complete() {
    return cells.size();
  }
}
