package chillwright.web.pages;

import chillwright.service.KnownState;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What pages showed last, before it was drawn for one visitor. A wall of screens asks for the same
 * lists all day; they are made anew only when what is known has changed.
 */
final class LastViews {
  private static final int MOST = 50;

  private record Made(String state, Object view) {}

  private final KnownState known;
  private final Map<String, Made> byQuestion =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Made> eldest) {
          return size() > MOST;
        }
      };

  LastViews(KnownState known) {
    this.known = known;
  }

  /**
   * The view as it was made of what is known now, or made anew.
   *
   * @param question names all that the view depends on beside what is known
   * @param kind what is always asked for under that question
   */
  <V> V view(String question, Class<V> kind, Supplier<V> making) {
    String state = known.name();
    synchronized (byQuestion) {
      Made made = byQuestion.get(question);
      if (made != null && made.state().equals(state)) {
        return kind.cast(made.view());
      }
    }
    V view = making.get();
    synchronized (byQuestion) {
      byQuestion.put(question, new Made(state, view));
    }
    return view;
  }
}
