package chillwright.core.log;

import java.text.Normalizer;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Names of places as people type them: capitals, the kind of hyphen (phones and word processors put
 * in others) and doubled blanks make no other place.
 */
public final class PlaceName {
  /** Hyphens and dashes, U+2010 to U+2015, and the minus sign. */
  private static final Pattern HYPHEN = Pattern.compile("[\u2010-\u2015\u2212]");

  private static final Pattern BLANKS = Pattern.compile("[\\s\u00a0\u202f]+");

  private PlaceName() {}

  /** What two spellings of one name have in common. */
  public static String key(String name) {
    String hyphens = HYPHEN.matcher(name).replaceAll("-");
    String plain = Normalizer.normalize(hyphens, Normalizer.Form.NFKC);
    return BLANKS.matcher(plain).replaceAll(" ").strip().toLowerCase(Locale.ROOT);
  }

  /** The one of the known names that is meant, exactly so written or else; empty for none. */
  public static Optional<String> among(Collection<String> known, String given) {
    if (known.contains(given)) {
      return Optional.of(given);
    }
    String key = key(given);
    return known.stream().filter(name -> key(name).equals(key)).findFirst();
  }
}
