package chillwright.web;

import chillwright.web.answers.Answers.ProblemDocument;
import io.javalin.http.Header;
import java.nio.ByteBuffer;
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
  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    Throwable cause = (Throwable) request.getAttribute(ERROR_EXCEPTION);
    int status = cause instanceof HttpException known ? known.getCode() : response.getStatus();
    boolean isBug = status == HttpStatus.INTERNAL_SERVER_ERROR_500 && cause != null;
    ProblemDocument problem = isBug ? Problems.bug(cause) : Problems.plain(status);
    response.setStatus(status);
    HttpFields.Mutable headers = response.getHeaders();
    headers.put(Header.CONTENT_TYPE, Problems.TYPE);
    headers.put(Header.CACHE_CONTROL, "no-store");
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'");
    response.write(true, ByteBuffer.wrap(Problems.bytes(problem)), callback);
    return true;
  }
}
