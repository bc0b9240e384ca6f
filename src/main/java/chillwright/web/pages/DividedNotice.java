package chillwright.web.pages;

import chillwright.core.log.LotId;
import chillwright.service.LotView;
import io.javalin.http.Context;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Tells, after a lot was divided, into which lots, with a way to each. */
final class DividedNotice {
  private static final String DIVIDED = "divided";

  private DividedNotice() {}

  /** The address of a page that is to tell it. */
  static String on(String page, Collection<LotId> parts) {
    String codes = parts.stream().sorted().map(LotId::text).collect(Collectors.joining(","));
    return page + (page.contains("?") ? "&" : "?") + DIVIDED + "=" + codes;
  }

  /** Nothing that did not come from this lot is told, whatever the address says. */
  static Optional<Frame.Notice> of(Context context, LotView view, Visitor visitor) {
    List<String> asked =
        List.of(Optional.ofNullable(context.queryParam(DIVIDED)).orElse("").split(","));
    List<String> parts =
        Stream.concat(view.descendants().stream(), Stream.of(view.state().lot()))
            .map(LotId::text)
            .filter(asked::contains)
            .toList();
    return parts.isEmpty()
        ? Optional.empty()
        : Optional.of(new Frame.Notice(visitor.say("share.divided"), parts, Optional.empty()));
  }
}
