package chillwright.core.log;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

/**
 * How a lot came to an end, told by what left it last.
 *
 * @param to where that went, a lot or whoever got it; blank where nobody was named
 */
public record Ending(How how, String to) {
  /** What became of the last of it. */
  public enum How {
    SERVED,
    DISCARDED,
    /** Given out or sold, to whoever the row names. */
    TAKEN,
    /** Into parts of its own. */
    DIVIDED,
    /** Into a lot that was made of it. */
    COMBINED,
    PUT_BACK,
    COUNTED_OUT;

    /** As tables have it. */
    public String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  public Ending {
    Objects.requireNonNull(how, "how");
    Objects.requireNonNull(to, "to");
  }

  /** In a word, with where it went. */
  public String says() {
    return to.isEmpty() ? how.key() : how.key() + " " + to;
  }

  /**
   * The end of a lot of which nothing is left; empty where nothing left it.
   *
   * @param outs all that left it, in order of time
   * @param made the log of a lot that came from this one
   */
  public static Optional<Ending> of(List<HandOut> outs, Function<LotId, Optional<LotLog>> made) {
    return outs.isEmpty() ? Optional.empty() : Optional.of(of(outs.get(outs.size() - 1), made));
  }

  private static Ending of(HandOut last, Function<LotId, Optional<LotLog>> made) {
    String to = last.entry().details().to().orElse("");
    How how =
        switch (last.kind()) {
          case TAKEN -> How.TAKEN;
          case SERVED -> How.SERVED;
          case DISCARDED -> How.DISCARDED;
          case PUT_BACK -> How.PUT_BACK;
          case COUNTED -> How.COUNTED_OUT;
          case OTHER_LOT ->
              made.apply(new LotId(to)).filter(LotLog::isDivided).isPresent()
                  ? How.DIVIDED
                  : How.COMBINED;
        };
    return new Ending(how, to);
  }
}
