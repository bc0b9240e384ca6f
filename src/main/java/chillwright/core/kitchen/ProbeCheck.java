package chillwright.core.kitchen;

import chillwright.core.measure.Temperature;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * A probe that was held against a known temperature. Never changed.
 *
 * @param shown what it showed
 * @param passed whether it may be used as it is
 * @param by initials
 */
public record ProbeCheck(
    String probe,
    Method method,
    Optional<Temperature> shown,
    boolean passed,
    String by,
    Optional<String> note,
    Instant at) {
  /** What it was held against. */
  public enum Method {
    ICE_POINT,
    /** Which depends on how high the kitchen lies, and on the weather. */
    BOILING_POINT,
    /** Another thermometer, known to be right. */
    REFERENCE;

    /** As it is written in requests, such as "ice-point". */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static Optional<Method> ofKey(String key) {
      return Arrays.stream(values()).filter(method -> method.key().equals(key)).findFirst();
    }
  }

  public ProbeCheck {
    Objects.requireNonNull(probe, "probe");
    Objects.requireNonNull(method, "method");
    Objects.requireNonNull(shown, "shown");
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(note, "note");
    Objects.requireNonNull(at, "at");
  }
}
