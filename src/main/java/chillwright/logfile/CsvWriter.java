package chillwright.logfile;

import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Writes comma-separated values as in RFC 4180: lines end in CR LF, a cell is put in double quotes
 * where it has to be. For files that people open in a spreadsheet, cells that such a program would
 * run as a formula get an apostrophe in front, which makes them text there. Reading takes one off,
 * so in every file a cell that has such an apostrophe of its own gets one more.
 */
public final class CsvWriter {
  /** What begins a formula, also in full width; and blanks that a spreadsheet skips before one. */
  private static final String BEGINS_FORMULA = "=+-@\t\r\n\uff1d\uff0b\uff0d\uff20";

  /** A temperature below zero: nothing in it can be run. */
  private static final Pattern BELOW_ZERO = Pattern.compile("-\\d{1,3}(\\.\\d{1,2})? °[FC]");

  /**
   * What some programs take for the end of a line though RFC 4180 does not: U+000B, U+000C, U+0085,
   * U+2028 and U+2029 (Unicode Standard, section 5.8). Logs of today hold none of them.
   */
  private static final Pattern BREAKS = Pattern.compile("[\\x0B\\x0C\\x{85}\\x{2028}\\x{2029}]");

  private final Appendable out;
  private final boolean forSpreadsheets;

  private CsvWriter(Appendable out, boolean forSpreadsheets) {
    this.out = out;
    this.forSpreadsheets = forSpreadsheets;
  }

  /** Writes cells that no spreadsheet takes for a formula. */
  public static CsvWriter forSpreadsheets(Appendable out) {
    return new CsvWriter(out, true);
  }

  /** Writes cells as they are, for a file that is read back. */
  public static CsvWriter exact(Appendable out) {
    return new CsvWriter(out, false);
  }

  /** A cell as it was before it was made text for a spreadsheet. */
  static String unguarded(String cell) {
    return isQuotedFormula(cell) ? cell.substring(1) : cell;
  }

  /** Whether apostrophes, and nothing else, stand before a formula. */
  private static boolean isQuotedFormula(String cell) {
    int quotes = 0;
    while (quotes < cell.length() && cell.charAt(quotes) == '\'') {
      quotes++;
    }
    return quotes > 0 && isFormula(cell.substring(quotes));
  }

  /** Writes one row; it has at least one cell. */
  public void write(List<String> cells) throws IOException {
    if (cells.isEmpty()) {
      throw new IllegalArgumentException("a row needs a cell");
    }
    boolean wouldBeBlank = cells.size() == 1 && cells.get(0).isEmpty();
    Iterator<String> left = cells.iterator();
    while (left.hasNext()) {
      writeCell(left.next(), wouldBeBlank);
      out.append(left.hasNext() ? "," : "\r\n");
    }
  }

  private void writeCell(String cell, boolean quoteAnyway) throws IOException {
    String told = forSpreadsheets ? BREAKS.matcher(cell).replaceAll(" ") : cell;
    boolean isHidden = !told.equals(cell) && isFormula(told.strip());
    boolean isGuarded = (forSpreadsheets && (isFormula(cell) || isHidden)) || isQuotedFormula(cell);
    String text = isGuarded ? "'" + told : told;
    if (!quoteAnyway && !needsQuotes(text)) {
      out.append(text);
      return;
    }
    out.append('"').append(text.replace("\"", "\"\"")).append('"');
  }

  private static boolean isFormula(String cell) {
    return !cell.isEmpty()
        && BEGINS_FORMULA.indexOf(cell.charAt(0)) >= 0
        && !BELOW_ZERO.matcher(cell).matches();
  }

  private static boolean needsQuotes(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ',' || c == '"' || c == '\r' || c == '\n') {
        return true;
      }
    }
    return text.startsWith(" ") || text.endsWith(" ");
  }
}
