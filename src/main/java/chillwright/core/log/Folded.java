package chillwright.core.log;

import java.text.Normalizer;
import java.util.Locale;

/** Words as people look for them: capitals, accents and doubled blanks make no difference. */
public final class Folded {
  private Folded() {}

  /** Small letters without accents, each gap one blank. */
  public static String of(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD)
        .replaceAll("\\p{M}+", "")
        .toLowerCase(Locale.ROOT)
        .replaceAll("\\s+", " ")
        .strip();
  }

  /** Whether the one stands anywhere in the other; nothing but blanks stands nowhere. */
  public static boolean isIn(String part, String whole) {
    String folded = of(part);
    return !folded.isEmpty() && of(whole).contains(folded);
  }
}
