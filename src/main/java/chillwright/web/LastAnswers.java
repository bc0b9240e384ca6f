package chillwright.web;

import java.nio.ByteBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What was answered last at some addresses. An answer is given again only under the tag it had, so
 * never after a change; the screens of a kitchen ask the same few things all day.
 */
final class LastAnswers {
  private static final int MOST = 200;

  /** A longer answer is made anew, so that all of them stay small. */
  private static final int LONGEST = 100_000;

  private record Answered(String tag, ByteBuffer bytes) {}

  private final Map<String, Answered> byAddress =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Answered> eldest) {
          return size() > MOST;
        }
      };

  synchronized Optional<byte[]> of(String address, String tag) {
    return Optional.ofNullable(byAddress.get(address))
        .filter(answered -> answered.tag().equals(tag))
        .map(answered -> answered.bytes().array());
  }

  synchronized void keep(String address, String tag, byte[] bytes) {
    if (bytes.length <= LONGEST) {
      byAddress.put(address, new Answered(tag, ByteBuffer.wrap(bytes)));
    }
  }
}
