package chillwright.logfile;

import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads temperatures as cooks write them: a number with at most two decimals and the letter of its
 * scale, "128.5F", "53.6 C", "41°F", "-4 °C". Read by hand, as {@link Times} are.
 */
public final class Degrees {
  public static final String ALLOWED =
      "a number with at most two decimals and F or C, -100 to 600 °F";

  /** Any number, comma or dot, with whatever stands after it: to tell what is wrong with it. */
  private static final Pattern LOOSE =
      Pattern.compile("([+\\-\u2212]?\\d+)([.,]?)(\\d*)[\\s\u00a0\u202f]*([°º]?)\\s*(.*)");

  private static final int MOST_DIGITS = 7;

  /** Common practice, no source: it only chooses between two things to suggest. */
  private static final double HOTTEST_CELSIUS = 121;

  private Degrees() {}

  /** What is wrong with a text that is no temperature. */
  public record Flaw(String code, String says) {}

  /** The temperature; empty if the text is none or is out of range. */
  public static Optional<Temperature> read(String text) {
    int last = text.length() - 1;
    Optional<Scale> scale = last < 1 ? Optional.empty() : scaleOf(text.charAt(last));
    if (scale.isEmpty()) {
      return Optional.empty();
    }
    int end = numberEnd(text, last);
    boolean signed = isMinus(text.charAt(0)) || text.charAt(0) == '+';
    int size = hundredths(text, signed ? 1 : 0, end);
    int hundredths = isMinus(text.charAt(0)) ? -size : size;
    return size >= 0 && Temperature.isAccepted(hundredths, scale.get())
        ? Optional.of(new Temperature(hundredths, scale.get()))
        : Optional.empty();
  }

  private static Optional<Scale> scaleOf(char letter) {
    return switch (letter) {
      case 'F', 'f', '\u2109' -> Optional.of(Scale.FAHRENHEIT);
      case 'C', 'c', '\u2103' -> Optional.of(Scale.CELSIUS);
      default -> Optional.empty();
    };
  }

  /** Where the number ends, before a degree sign and blanks. */
  private static int numberEnd(String text, int letter) {
    int end = blanksBefore(text, letter);
    if (end > 0 && (text.charAt(end - 1) == '°' || text.charAt(end - 1) == 'º')) {
      end = blanksBefore(text, end - 1);
    }
    return end;
  }

  private static int blanksBefore(String text, int end) {
    int start = end;
    while (start > 0 && Texts.isBlank(text.charAt(start - 1))) {
      start--;
    }
    return start;
  }

  private static boolean isMinus(char c) {
    return c == '-' || c == '\u2212';
  }

  /** Digits, and after a dot one or two more; -1 if that is not what stands there. */
  private static int hundredths(String text, int start, int end) {
    int number = 0;
    int dot = -1;
    if (end - start < 1 || end - start > MOST_DIGITS) {
      return -1;
    }
    for (int i = start; i < end; i++) {
      char c = text.charAt(i);
      if (c == '.' && dot < 0 && i > start) {
        dot = i;
      } else if (c >= '0' && c <= '9') {
        number = number * 10 + (c - '0');
      } else {
        return -1;
      }
    }
    int decimals = dot < 0 ? 0 : end - dot - 1;
    return switch (decimals) {
      case 0 -> dot < 0 ? number * 100 : -1;
      case 1 -> number * 10;
      case 2 -> number;
      default -> -1;
    };
  }

  /** What is wrong with a text that is no temperature. */
  public static Flaw flaw(String text) {
    Matcher loose = LOOSE.matcher(text);
    if (!loose.matches() || loose.group(2).isEmpty() != loose.group(3).isEmpty()) {
      return new Flaw(
          "bad-temperature", "This is not a temperature. Write it like 128.5F or 53.6 C.");
    }
    String number = loose.group(1) + (loose.group(3).isEmpty() ? "" : "." + loose.group(3));
    String letter = loose.group(5);
    if (letter.isEmpty()) {
      return new Flaw(
          "no-scale", "The scale is missing. Write " + number + "F or " + number + "C.");
    }
    if (letter.length() > 1 || scaleOf(letter.charAt(0)).isEmpty()) {
      return new Flaw(
          "bad-temperature",
          "After the number goes F or C and nothing else. Write it like 128.5F or 53.6 C.");
    }
    if (loose.group(2).equals(",")) {
      return new Flaw(
          "decimal-comma",
          "Write the decimals after a dot: " + number + " " + letter + ", not with a comma.");
    }
    if (loose.group(3).length() > 2) {
      return new Flaw("too-many-decimals", "A reading has at most two decimals, such as 128.55F.");
    }
    return outOfRange(number, letter);
  }

  private static Flaw outOfRange(String number, String letter) {
    return new Flaw(
        "out-of-range",
        "%s °%s is outside what a kitchen's probe reads, -100 to 600 °F (-73 to 315 °C).%s"
            .formatted(number, letter, meant(number, letter)));
  }

  /**
   * "1650F" was meant as 165 °F and "4100F" as 41 °F: the dot was left out, and food with water in
   * it gets no hotter than some 250 °F.
   */
  private static String meant(String number, String letter) {
    if (number.contains(".") || number.length() > MOST_DIGITS) {
      return "";
    }
    Scale scale = scaleOf(letter.charAt(0)).orElseThrow();
    int digits = new BigDecimal(number.replace('\u2212', '-')).intValueExact();
    boolean twoDecimals =
        !Temperature.isAccepted(digits * 10, scale)
            || new Temperature(digits * 10, scale).celsiusDegrees() > HOTTEST_CELSIUS;
    int hundredths = twoDecimals ? digits : digits * 10;
    if (!Temperature.isAccepted(hundredths, scale)) {
      return "";
    }
    return " Did you mean " + new Temperature(hundredths, scale).text() + "?";
  }
}
