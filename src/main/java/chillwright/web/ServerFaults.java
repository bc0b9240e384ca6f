package chillwright.web;

import chillwright.print.Language;
import chillwright.web.answers.Answers.ProblemDocument;
import chillwright.web.pages.FaultPage;
import io.javalin.http.Header;
import java.nio.ByteBuffer;
import java.util.Optional;
import org.eclipse.jetty.http.HttpException;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/**
 * Errors that the server under us finds before our code is asked: an address or header it cannot
 * read, or that is too large. They are told like all others, and without any trace of the code.
 */
final class ServerFaults extends ErrorHandler {
  private final FaultPage page;

  ServerFaults(FaultPage page) {
    this.page = page;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    Throwable cause = (Throwable) request.getAttribute(ERROR_EXCEPTION);
    int status = cause instanceof HttpException known ? known.getCode() : response.getStatus();
    boolean isBug = status == HttpStatus.INTERNAL_SERVER_ERROR_500 && cause != null;
    ProblemDocument problem = isBug ? Problems.bug(cause) : Problems.plain(status);
    response.setStatus(status);
    HttpFields.Mutable headers = response.getHeaders();
    headers.put("X-Frame-Options", "DENY");
    headers.put("Referrer-Policy", "same-origin");
    headers.put("Cross-Origin-Resource-Policy", "same-origin");
    headers.put(Header.CACHE_CONTROL, "no-store");
    headers.put("X-Content-Type-Options", "nosniff");
    byte[] body;
    if (wantsPage(request)) {
      headers.put(Header.CONTENT_TYPE, "text/html; charset=utf-8");
      headers.put("Content-Security-Policy", FaultPage.POLICY);
      body = page.bare(language(request), Problems.trouble(problem));
    } else {
      headers.put(Header.CONTENT_TYPE, Problems.TYPE);
      headers.put("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
      body = Problems.bytes(problem);
    }
    response.write(true, ByteBuffer.wrap(body), callback);
    return true;
  }

  /** What could not be read has no headers, and is told as to a program. */
  private static boolean wantsPage(Request request) {
    String path = Optional.ofNullable(request.getHttpURI().getPath()).orElse("/");
    return !path.startsWith("/api/")
        && Accept.wantsPage(request.getHeaders().getValuesList(Header.ACCEPT));
  }

  private static Language language(Request request) {
    return Language.ofHeader(
        Optional.ofNullable(request.getHeaders().get(Header.ACCEPT_LANGUAGE)).orElse(""));
  }
}
