package chillwright.service;

/** Told how far long work has come. */
@FunctionalInterface
public interface Progress {
  /** Nobody watches. */
  Progress NONE = (what, count) -> {};

  /**
   * Says how far it is.
   *
   * @param what is counted, such as "rows read"
   * @param count so far
   */
  void done(String what, long count);
}
