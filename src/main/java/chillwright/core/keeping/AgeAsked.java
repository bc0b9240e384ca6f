package chillwright.core.keeping;

/** What is known of a food's age, where it is asked about by dates alone. */
public enum AgeAsked {
  /** The day that it was made or opened is given, or nothing hangs on it. */
  KNOWN,
  /** Not known: the days are counted from its thawing, as if it had been frozen fresh. */
  FROM_THAWING,
  /** Not known, and the rule set counts no day without it. */
  MISSING
}
