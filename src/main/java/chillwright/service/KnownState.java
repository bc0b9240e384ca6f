package chillwright.service;

import java.time.Instant;

/**
 * A name for what a kitchen knows at a moment: it changes when something is written, when a limit
 * passes, and with the minutes that answers count. What was made under one name may be given again
 * as long as the name lasts.
 */
public final class KnownState {
  private static final long MINUTE_MILLIS = 60_000;

  private final Kitchen kitchen;
  private String revision = "";
  private Instant nextLimit = Instant.MIN;
  private String change = "";

  public KnownState(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  /** Names what is known now; two moments with one name have the same answers. */
  public String name() {
    Instant now = kitchen.now();
    // The last moment that complies is counted to the minute before: a limit passes right after it.
    long minute = Math.floorDiv(now.toEpochMilli() - 1, MINUTE_MILLIS);
    return change(now) + " " + minute;
  }

  /** Names the time between two changes of what is known; asks the database once for each. */
  private synchronized String change(Instant now) {
    String current = kitchen.revision();
    if (!current.equals(revision) || !now.isBefore(nextLimit)) {
      nextLimit =
          kitchen.reports().dueNext(Page.Wanted.first(1)).items().stream()
              .map(due -> due.finding().settlesAt())
              .findFirst()
              .orElse(Instant.MAX);
      revision = current;
      change = revision + " " + nextLimit;
    }
    return change;
  }
}
