package chillwright.service.ahead;

import java.util.OptionalDouble;

/** Volumes as people say them, with their unit: "10 gal", "40 qt", "2 cu ft", "60 L". */
public final class SaidVolume {
  private SaidVolume() {}

  /** In litres; empty where the text is none, or names no unit. */
  public static OptionalDouble litres(String text) {
    return Measured.VOLUME.read(text);
  }
}
