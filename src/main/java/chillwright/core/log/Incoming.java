package chillwright.core.log;

/** One row of a log file or request as it came in: either its cells could be read, or not. */
public sealed interface Incoming permits Row, Misread {}
