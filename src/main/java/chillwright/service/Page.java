package chillwright.service;

import java.util.List;
import java.util.Optional;

/**
 * A part of a list.
 *
 * @param next the cursor to ask for the part after this one; empty at the end of the list
 */
public record Page<T>(List<T> items, Optional<String> next) {
  /** The most items of one page. */
  public static final int MOST = 200;

  /** How much of a list is wanted. */
  public record Wanted(int limit, Optional<String> cursor) {
    /**
     * @throws Refused if the limit is not from 1 to {@link #MOST}
     */
    public Wanted {
      if (limit < 1 || limit > MOST) {
        throw Refused.field(
            Refused.Why.FAULTS,
            Refused.problem(
                "bad-limit",
                "/limit",
                Integer.toString(limit),
                "1 to " + MOST,
                "A page has 1 to " + MOST + " items."));
      }
    }

    /** The first items, at most so many. */
    public static Wanted first(int limit) {
      return new Wanted(limit, Optional.empty());
    }
  }

  public Page {
    items = List.copyOf(items);
  }
}
