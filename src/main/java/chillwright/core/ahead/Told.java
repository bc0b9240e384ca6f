package chillwright.core.ahead;

import chillwright.core.heat.Reason;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * One sentence of an answer, not yet in words.
 *
 * @param key which sentence, such as "cooling.stage"
 * @param filled what is filled into it, in the order of its places
 * @param reason why there is no figure; the sentence then says what of
 */
public record Told(String key, List<Filled> filled, Optional<Reason> reason) {
  public Told {
    Objects.requireNonNull(key, "key");
    filled = List.copyOf(filled);
    Objects.requireNonNull(reason, "reason");
  }

  public static Told of(String key, Filled... filled) {
    return new Told(key, List.of(filled), Optional.empty());
  }

  /** The same with one more figure at its end. */
  public Told with(Filled more) {
    List<Filled> all = new ArrayList<>(filled);
    all.add(more);
    return new Told(key, all, reason);
  }

  /** There is no figure for this. */
  public static Told none(String key, Reason reason, Filled... filled) {
    return new Told(key, List.of(filled), Optional.of(reason));
  }
}
