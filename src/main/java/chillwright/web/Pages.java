package chillwright.web;

import chillwright.service.Page;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Parts of lists. */
final class Pages {
  private static final Pattern CURSOR = Pattern.compile("([a-z]+)-(\\d{1,9})");

  private Pages() {}

  static <T, R> Page<R> map(Page<T> page, Function<T, R> shown) {
    return new Page<>(page.items().stream().map(shown).toList(), page.next());
  }

  /** A part of a list that is in memory as a whole and only ever grows at its end. */
  static <T> Answers.Listing<T> listing(List<T> all, String name, Page.Wanted wanted) {
    int start = wanted.cursor().map(cursor -> start(cursor, name, all.size())).orElse(0);
    int end = Math.min(all.size(), start + wanted.limit());
    Optional<String> next = end < all.size() ? Optional.of(name + "-" + end) : Optional.empty();
    return new Answers.Listing<>(all.subList(start, end), next);
  }

  private static int start(String cursor, String name, int size) {
    Matcher matcher = CURSOR.matcher(cursor);
    if (matcher.matches() && matcher.group(1).equals(name)) {
      return Math.min(size, Integer.parseInt(matcher.group(2)));
    }
    throw new RequestFault(
        RequestFault.WRONG,
        new Fault(
            "unknown-cursor",
            new Answers.InParameter(Query.CURSOR),
            Shown.text(cursor),
            "the \"next\" of a page of the same list",
            "This cursor is not of this list. Begin again without one."));
  }
}
