package chillwright.web.pages;

import chillwright.core.log.LotId;
import chillwright.service.LotView;
import io.javalin.http.Context;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Tells, after a lot was divided or a part put back, which lots that were, with a way to each. */
final class DividedNotice {
  private static final String DIVIDED = "divided";
  private static final String BACK = "back";

  private DividedNotice() {}

  /** The address of a page that is to tell it. */
  static String on(String page, Collection<LotId> parts) {
    String codes = parts.stream().sorted().map(LotId::text).collect(Collectors.joining(","));
    return page + (page.contains("?") ? "&" : "?") + DIVIDED + "=" + codes;
  }

  /** The address of the page of a lot that is to tell what was put back into it. */
  static String onBack(LotId whole, LotId part) {
    return "/lots/" + whole + "?" + BACK + "=" + part;
  }

  /** Nothing that did not come from this lot is told, whatever the address says. */
  static List<Frame.Notice> of(Context context, LotView view, Visitor visitor) {
    return Stream.concat(
            told(given(context, DIVIDED), "share.divided", view, visitor).stream(),
            told(given(context, BACK), "share.back.done", view, visitor).stream())
        .toList();
  }

  private static Optional<Frame.Notice> told(
      Optional<String> codes, String key, LotView view, Visitor visitor) {
    List<String> asked = List.of(codes.orElse("").split(","));
    List<String> parts =
        Stream.concat(view.descendants().stream(), Stream.of(view.state().lot()))
            .map(LotId::text)
            .filter(asked::contains)
            .toList();
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Frame.Notice(visitor.say(key), parts, Optional.empty()));
  }

  private static Optional<String> given(Context context, String name) {
    return Optional.ofNullable(context.queryParam(name));
  }
}
