package chillwright.web;

import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Takes every request as plain HTTP. A wish for a WebSocket is not seen further on, where it would
 * pass by the guard; a server may always answer as if it were not there (RFC 9110 section 7.8).
 */
final class PlainHttp extends Handler.Wrapper {
  private static final String WISH = "Sec-WebSocket-Version";

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    boolean isWish = request.getHeaders().contains(WISH);
    return super.handle(isWish ? new WithoutWish(request) : request, response, callback);
  }

  private static final class WithoutWish extends Request.Wrapper {
    private final HttpFields headers;

    WithoutWish(Request request) {
      super(request);
      HttpFields.Mutable kept = HttpFields.build();
      for (HttpField field : request.getHeaders()) {
        if (!field.is(WISH)) {
          kept.add(field);
        }
      }
      this.headers = kept.asImmutable();
    }

    @Override
    public HttpFields getHeaders() {
      return headers;
    }
  }
}
