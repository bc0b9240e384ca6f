package chillwright.web.pages;

import chillwright.core.rules.Verdict;
import java.util.Optional;

/**
 * How a verdict stands on a page: a word, and the line of the frame around it.
 *
 * @param key of its word in {@link Wording}, and its class in the style
 */
public record Sign(String key) {
  static final Sign NONE = new Sign("none");

  static Sign of(Verdict verdict) {
    return new Sign(verdict.text());
  }

  static Sign of(Optional<Verdict> verdict) {
    return verdict.map(Sign::of).orElse(NONE);
  }
}
