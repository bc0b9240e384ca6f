package chillwright.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was answered last at some addresses. An answer is given again only while the state that it
 * was made in lasts, so never after a change; the screens of a kitchen ask the same few things all
 * day.
 */
final class LastAnswers {
  private static final int MOST = 200;

  /** A longer answer is made anew, so that all of them stay small. */
  private static final int LONGEST = 100_000;

  /** An answer, and what was known when it was made. */
  static final class Answered {
    private final String state;
    private final String tag;
    private final byte[] bytes;

    private Answered(String state, String tag, byte[] bytes) {
      this.state = state;
      this.tag = tag;
      this.bytes = bytes;
    }

    /** Made of address and state once: a hash costs more than all else here. */
    String tag() {
      return tag;
    }

    byte[] bytes() {
      return bytes;
    }
  }

  private final Map<String, Answered> byAddress =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Answered> eldest) {
          return size() > MOST;
        }
      };

  synchronized Optional<Answered> of(String address, String state) {
    return Optional.ofNullable(byAddress.get(address))
        .filter(answered -> answered.state.equals(state));
  }

  synchronized void keep(String address, String state, String tag, byte[] bytes) {
    if (bytes.length <= LONGEST) {
      byAddress.put(address, new Answered(state, tag, bytes));
    }
  }
}
