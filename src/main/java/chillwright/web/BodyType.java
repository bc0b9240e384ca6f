package chillwright.web;

import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a body is said to be: text in UTF-8 of one type, sent as it is. */
final class BodyType {
  private BodyType() {}

  /**
   * @param type that the body must have, such as "application/json"
   * @param name of it, such as "JSON"
   * @throws RequestFault if it is said to be anything else
   */
  static void require(Context context, String type, String name) {
    String given = Optional.ofNullable(context.header(Header.CONTENT_TYPE)).orElse("");
    if (!isUtf8(given, type)) {
      String says = "Send " + name + ", with the content type " + type;
      throw wrong(Header.CONTENT_TYPE, given, type, says, type);
    }
    String coding = Optional.ofNullable(context.header(Header.CONTENT_ENCODING)).orElse("identity");
    if (!coding.equalsIgnoreCase("identity")) {
      throw wrong(Header.CONTENT_ENCODING, coding, "identity", "Send the body as it is", type);
    }
  }

  /** A charset other than UTF-8 is refused. */
  private static boolean isUtf8(String given, String type) {
    String[] parts = given.toLowerCase(Locale.ROOT).split(";", -1);
    if (!parts[0].strip().equals(type)) {
      return false;
    }
    for (int i = 1; i < parts.length; i++) {
      String parameter = parts[i].strip().replace("\"", "");
      if (parameter.startsWith("charset=") && !parameter.equals("charset=utf-8")) {
        return false;
      }
    }
    return true;
  }

  private static RequestFault wrong(
      String header, String given, String allowed, String says, String type) {
    return new RequestFault(
        415,
        List.of(
            new Fault(
                "wrong-content-type",
                new Answers.InHeader(header),
                Shown.text(given),
                allowed,
                says + ".")),
        Map.of("Accept-Post", type));
  }
}
