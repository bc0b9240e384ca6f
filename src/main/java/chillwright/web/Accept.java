package chillwright.web;

import chillwright.web.answers.Answers;
import chillwright.web.answers.Answers.Fault;
import io.javalin.http.Context;
import io.javalin.http.Header;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** Which of several forms of an answer the client would rather have (RFC 9110 section 12.5.1). */
final class Accept {
  static final String JSON = "application/json";
  static final String CSV = "text/csv";
  static final String HTML = "text/html";

  private Accept() {}

  /** One range of the header; a more exact one overrides a wider one. */
  private record Range(String type, double weight, int exactness) {
    boolean holds(String offered) {
      return type.equals("*/*")
          || type.equals(offered)
          || (type.endsWith("/*") && offered.startsWith(type.substring(0, type.length() - 1)));
    }
  }

  /**
   * The best of the offered types; the first of equals.
   *
   * @throws RequestFault if none will do
   */
  static String best(Context context, String... offered) {
    List<Range> ranges = ranges(Collections.list(context.req().getHeaders(Header.ACCEPT)));
    String best = "";
    double most = 0;
    for (String type : offered) {
      double weight = weight(type, ranges);
      if (weight > most) {
        most = weight;
        best = type;
      }
    }
    if (best.isEmpty()) {
      throw notAcceptable(context, String.join(", ", offered));
    }
    return best;
  }

  /** Whether a person sees the answer: browsers name HTML when they open an address. */
  static boolean wantsPage(Context context) {
    return wantsPage(Collections.list(context.req().getHeaders(Header.ACCEPT)));
  }

  /** The same of the lines of that header. */
  static boolean wantsPage(List<String> accept) {
    List<Range> ranges = ranges(accept);
    return weight(HTML, ranges) > weight(Problems.TYPE, ranges);
  }

  private static List<Range> ranges(List<String> headers) {
    List<Range> ranges = new ArrayList<>();
    for (String part : String.join(",", headers).split(",", -1)) {
      if (!part.isBlank()) {
        ranges.add(range(part.strip().toLowerCase(Locale.ROOT)));
      }
    }
    return ranges.isEmpty() ? List.of(new Range("*/*", 1, 0)) : ranges;
  }

  private static Range range(String part) {
    String[] pieces = part.split(";", -1);
    String type = pieces[0].strip();
    double weight = 1;
    for (int i = 1; i < pieces.length; i++) {
      if (pieces[i].strip().startsWith("q=")) {
        weight = weight(pieces[i].strip().substring(2));
      }
    }
    return new Range(type, weight, type.equals("*/*") ? 0 : type.endsWith("/*") ? 1 : 2);
  }

  private static double weight(String text) {
    return text.matches("[01](\\.\\d{0,3})?") ? Double.parseDouble(text) : 0;
  }

  private static double weight(String offered, List<Range> ranges) {
    int exactness = -1;
    double weight = 0;
    for (Range range : ranges) {
      if (range.exactness() > exactness && range.holds(offered)) {
        exactness = range.exactness();
        weight = range.weight();
      }
    }
    return weight;
  }

  private static RequestFault notAcceptable(Context context, String offered) {
    return new RequestFault(
        406,
        new Fault(
            "not-acceptable",
            new Answers.InHeader(Header.ACCEPT),
            Shown.text(
                String.join(", ", Collections.list(context.req().getHeaders(Header.ACCEPT)))),
            offered,
            "This address answers with " + offered + " only."));
  }
}
