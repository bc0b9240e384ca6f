package chillwright.bench;

import java.util.Locale;

/**
 * One line of the table.
 *
 * @param aim what it is to be, and {@code met} whether it is
 */
record Line(String what, String measured, String baseline, String ratio, String aim, String met) {

  /** Begins a line; every column but the first is still open. */
  static Line what(String what) {
    return new Line(what, "", "", "", "", "");
  }

  Line measured(String text) {
    return new Line(what, text, baseline, ratio, aim, met);
  }

  Line against(String text) {
    return new Line(what, measured, text, ratio, aim, met);
  }

  /** The ratio of the measured figure to the baseline is to be small. */
  Line atMost(double found, double limit) {
    return judged(found, "at most " + plain(limit), found <= limit);
  }

  /** The ratio of the measured figure to the baseline is to be large. */
  Line atLeast(double found, double limit) {
    return judged(found, "at least " + plain(limit), found >= limit);
  }

  /** The measured figure itself is judged, not a ratio. */
  Line judged(String toBe, boolean isMet) {
    return new Line(what, measured, baseline, ratio, toBe, isMet ? "met" : "missed");
  }

  /** A further condition of the same aim, which holds or not. */
  Line and(String toBe, boolean isMet) {
    String both = met.equals("met") && isMet ? "met" : "missed";
    return new Line(what, measured, baseline, ratio, aim + ", " + toBe, both);
  }

  Line skipped(String why) {
    return new Line(what, "skipped: " + why, baseline, ratio, aim, "-");
  }

  private Line judged(double found, String toBe, boolean isMet) {
    String text = String.format(Locale.ROOT, "%.2f", found);
    return new Line(what, measured, baseline, text, toBe, isMet ? "met" : "missed");
  }

  private static String plain(double number) {
    return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
  }

  String markdown() {
    return "| "
        + String.join(
            " | ", dash(what), dash(measured), dash(baseline), dash(ratio), dash(aim), dash(met))
        + " |";
  }

  private static String dash(String text) {
    return text.isEmpty() ? "-" : text;
  }
}
