package chillwright.core.rules;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a reader should know beside the verdict of a finding. */
public enum Remark {
  /** The time passed without a reading that shows the limit was met. */
  READING_OVERDUE,
  /** The record does not show when the clock started, so it can never be {@code in}. */
  START_NOT_SHOWN,
  /** It rose over a limit it had passed before. */
  ROSE_AGAIN,
  /** A reheat in time closed this cooling and opened a new one. */
  CLOSED_BY_REHEAT,
  /** A reheat was begun while this clock ran; it closes the cooling if it is done in time. */
  REHEAT_BEGUN,
  /** A reheat came after a limit of this cooling had passed, so it does not close it. */
  REHEAT_TOO_LATE,
  /** Food was reheated again, more often than the rule set lets a cooling start anew. */
  REHEATED_TOO_OFTEN,
  /** The estimate is read off a straight line between two readings. */
  STRAIGHT_LINE,
  /** The estimate follows a cooling curve towards the logged surroundings. */
  LOG_LINEAR,
  /** No reading was taken in this phase. */
  NO_READING,
  /** The stretch still went on after the last entry. */
  STILL_GOES_ON,
  /** Reached, but nothing shows that it stood the time the method needs. */
  STANDING_NOT_SHOWN,
  /** The time or date marked on the food is later than the rule allows. */
  MARKED_TOO_LATE,
  /** A reading above the ceiling ended it at once. */
  ABOVE_CEILING,
  /** Found soft. */
  FOUND_SOFT,
  /** Surroundings above the hot-air limit shortened the time. */
  HOT_AIR,
  /** It came to the freezer after its last day. */
  FROZEN_TOO_LATE,
  /** No days are left: use at once when thawed. */
  USE_AT_ONCE,
  /** The lot was closed (served or discarded) in time. */
  CLOSED_IN_TIME,
  /** The lot was closed, so no further reading can tell. */
  CLOSED_UNREAD,
  /** The limit was missed by a lot this one came from. */
  FROM_SOURCE,
  /** The lot this one came from was used while it still waited for this limit. */
  USED_COOLING,
  /** The time that a lot this one came from was out counts here too. */
  COUNTS_SOURCE;

  /** As stored and answered: lower case with hyphens. */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public static Optional<Remark> ofKey(String key) {
    return Arrays.stream(values()).filter(remark -> remark.key().equals(key)).findFirst();
  }
}
