package chillwright.service.ahead;

import java.time.Duration;
import java.util.Optional;

/** Lengths of time as people say them: "3 h", "90 min", "3:30", and a bare number is hours. */
public final class SaidLength {
  private SaidLength() {}

  /** The length, to the second; empty where the text is none. */
  public static Optional<Duration> of(String text) {
    String given = text.strip();
    boolean isBare = given.matches("\\d{1,4}([.,]\\d{1,3})?");
    if (isBare && Double.parseDouble(given.replace(',', '.')) == 0) {
      return Optional.of(Duration.ZERO);
    }
    var hours = Measured.TIME.read(isBare ? given + " h" : given);
    return hours.isPresent()
        ? Optional.of(Duration.ofSeconds(Math.round(hours.getAsDouble() * 3600)))
        : Optional.empty();
  }
}
