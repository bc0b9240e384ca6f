package chillwright.web;

import chillwright.service.OnceKey;
import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import io.javalin.http.Context;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** The key that makes a request count once, however often it is sent. */
final class OnceKeys {
  static final String HEADER = "Idempotency-Key";

  private OnceKeys() {}

  /**
   * @throws RequestFault if there are several, or it is not 1 to 200 plain characters
   */
  static Optional<OnceKey> of(Context context, Body body) {
    List<String> keys = Collections.list(context.req().getHeaders(HEADER));
    if (keys.isEmpty()) {
      return Optional.empty();
    }
    String key = keys.get(0);
    boolean isPlain = key.chars().allMatch(c -> c > 0x1f && c < 0x7f);
    if (keys.size() > 1 || key.isBlank() || key.length() > OnceKey.LONGEST || !isPlain) {
      throw new RequestFault(
          RequestFault.WRONG,
          new Fault(
              "bad-idempotency-key",
              new Answers.InHeader(HEADER),
              Shown.text(String.join(", ", keys)),
              "one key of 1 to " + OnceKey.LONGEST + " ASCII characters",
              "The idempotency key cannot be used. Make one of at most "
                  + OnceKey.LONGEST
                  + " characters for each request."));
    }
    return Optional.of(
        OnceKey.of(key, context.method().name() + " " + context.path(), body.bytes()));
  }
}
