package chillwright.web;

import chillwright.service.AccessKeys;
import chillwright.service.FeedKey;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import chillwright.web.pages.DeadlinesFeed;
import chillwright.web.pages.EnterPage;
import chillwright.web.pages.PageRoutes;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.Header;
import io.javalin.http.HttpStatus;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Who may: looked at before anything else of a request. */
final class Guard {
  private static final Set<String> METHODS =
      Set.of("GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE", "CONNECT");
  private static final Set<HandlerType> READING = Set.of(HandlerType.GET, HandlerType.HEAD);
  private static final Pattern BEARER =
      Pattern.compile("Bearer +([A-Za-z0-9._~+/=-]{1,200})", Pattern.CASE_INSENSITIVE);

  private final OwnNames names;
  private final Optional<AccessKeys> keys;
  private final FeedKey feedKey;

  /**
   * @param keys empty where no key is asked for
   */
  Guard(OwnNames names, Optional<AccessKeys> keys, FeedKey feedKey) {
    this.names = names;
    this.keys = keys;
    this.feedKey = feedKey;
  }

  /**
   * @throws RequestFault if the request is not to be answered
   */
  void check(Context context) throws UnknownHostException {
    safeHeaders(context);
    requireKnownMethod(context.req().getMethod());
    requireOwnNames(context);
    boolean isOpen =
        context.path().equals(Routes.HEALTH) || PageRoutes.OPEN.contains(context.path());
    if (!isOpen && !isFeed(context)) {
      requireKey(context);
    }
  }

  /** Whether whoever uses the service must have a key. */
  boolean needsKey() {
    return keys.isPresent();
  }

  /** A calendar program brings its own key in the address, which opens calendars and no more. */
  private boolean isFeed(Context context) {
    return PageRoutes.isCalendar(context.path())
        && READING.contains(context.method())
        && Optional.ofNullable(context.queryParam(DeadlinesFeed.KEY))
            .filter(feedKey::isKey)
            .isPresent();
  }

  private static void safeHeaders(Context context) {
    context.header("X-Content-Type-Options", "nosniff");
    context.header("X-Frame-Options", "DENY");
    context.header("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
    // With "no-referrer" browsers would hide the origin of our own forms, too.
    context.header("Referrer-Policy", "same-origin");
    context.header("Cross-Origin-Resource-Policy", "same-origin");
    context.header(Header.CACHE_CONTROL, "no-store");
  }

  private static void requireKnownMethod(String method) {
    if (!METHODS.contains(method)) {
      throw new RequestFault(
          501,
          new Fault(
              "unknown-method",
              new Answers.InRequest("method"),
              Shown.text(method),
              "GET, HEAD, POST, PUT, DELETE",
              "There is no method of that name here."));
    }
  }

  private void requireOwnNames(Context context) throws UnknownHostException {
    InetSocketAddress reached =
        new InetSocketAddress(
            InetAddress.getByName(context.req().getLocalAddr()), context.req().getLocalPort());
    String host = Optional.ofNullable(context.header(Header.HOST)).orElse("");
    if (!names.isOwn(host, reached)) {
      throw foreign(Header.HOST, host, "Give it to the service with --name if it is right.");
    }
    Optional<String> origin = Optional.ofNullable(context.header(Header.ORIGIN));
    if (origin.filter(given -> !names.isOwnOrigin(given, reached)).isPresent()) {
      throw foreign(Header.ORIGIN, origin.get(), "Pages elsewhere may not use it.");
    }
  }

  private static RequestFault foreign(String header, String given, String more) {
    return new RequestFault(
        403,
        new Fault(
            "foreign-" + header.toLowerCase(Locale.ROOT),
            new Answers.InHeader(header),
            Shown.text(given),
            "the service's own name and port",
            "This service is not called that. " + more));
  }

  private void requireKey(Context context) {
    if (keys.isEmpty()) {
      return;
    }
    Optional<String> entered = Optional.ofNullable(context.cookie(EnterPage.COOKIE));
    if (entered.filter(keys.get()::isKey).isPresent()) {
      return;
    }
    Optional<String> given = Optional.ofNullable(context.header(Header.AUTHORIZATION));
    if (given.isEmpty() && isPage(context)) {
      context.redirect(EnterPage.ADDRESS, HttpStatus.SEE_OTHER);
      context.result("");
      context.skipRemainingHandlers();
      return;
    }
    if (given.isEmpty()) {
      throw noKey("Bearer realm=\"chillwright\"", "missing-key");
    }
    Matcher bearer = BEARER.matcher(given.get());
    if (!bearer.matches() || !keys.get().isKey(bearer.group(1))) {
      throw noKey("Bearer realm=\"chillwright\", error=\"invalid_token\"", "unknown-key");
    }
  }

  /** A person who opens a page is shown where to give the key. */
  private static boolean isPage(Context context) {
    return READING.contains(context.method()) && !context.path().startsWith("/api/");
  }

  /** What was given is not repeated: it may be a key with a slip in it. */
  private static RequestFault noKey(String challenge, String code) {
    return new RequestFault(
        401,
        List.of(
            new Fault(
                code,
                new Answers.InHeader(Header.AUTHORIZATION),
                "",
                "Bearer and the access key",
                "Send the access key that was printed when the service first started here.")),
        Map.of(Header.WWW_AUTHENTICATE, challenge));
  }
}
