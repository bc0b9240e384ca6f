package chillwright.web.pages;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.Optional;
import java.util.Set;

/**
 * Whether a person opened an address, by what browsers say of their requests (W3C, Fetch Metadata
 * Request Headers). A program that says nothing is taken at its word.
 */
final class Opening {
  private static final Set<String> SHOWN = Set.of("document", "iframe", "embed", "object", "empty");

  private Opening() {}

  static boolean isByHand(Context context) {
    boolean isAhead = said(context, "Sec-Purpose").or(() -> said(context, "Purpose")).isPresent();
    boolean isInPage =
        said(context, "Sec-Fetch-Dest").filter(to -> !SHOWN.contains(to)).isPresent();
    boolean isElsewhere = said(context, "Sec-Fetch-Site").filter("cross-site"::equals).isPresent();
    boolean isTouched = said(context, "Sec-Fetch-User").isPresent();
    return !HandlerType.HEAD.equals(context.method())
        && !isAhead
        && !isInPage
        && (!isElsewhere || isTouched);
  }

  private static Optional<String> said(Context context, String header) {
    return Optional.ofNullable(context.header(header));
  }
}
