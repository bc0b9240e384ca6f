package chillwright.service;

import chillwright.storage.PlanStore.Said;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What plans were asked for before they were changed, for a day, so that whoever opens one reads
 * what the last change moved. Not stored: the plan itself is.
 */
final class LastPlans {
  private static final int MOST = 100;
  private static final Duration TOLD_FOR = Duration.ofDays(1);

  private record Change(Said before, Instant at) {}

  private final Map<String, Change> changes =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Change> eldest) {
          return size() > MOST;
        }
      };

  synchronized void changed(Said before, Instant at) {
    changes.remove(before.code());
    changes.put(before.code(), new Change(before, at));
  }

  synchronized Optional<Said> before(String code, Instant now) {
    return Optional.ofNullable(changes.get(code))
        .filter(change -> now.isBefore(change.at().plus(TOLD_FOR)))
        .map(Change::before);
  }

  synchronized void forget(String code) {
    changes.remove(code);
  }
}
