package chillwright.web.pages;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The form for labels on the page of a lot, and how a refusal leads back to it. */
final class LabelsForm {
  /** Shows it again with what was entered. */
  private static final String AGAIN = "labels";

  private static final List<String> FIELDS =
      List.of(
          "sheet",
          "many",
          "count",
          "each",
          "from",
          "leaves",
          "posted",
          "net",
          "net-of",
          "language");

  /** What is shown of a field at most; more is no slip. */
  private static final int LONGEST = 200;

  private LabelsForm() {}

  /** The form as it was filled in before; nothing where it is opened anew. */
  static Filled of(Context context) {
    Map<String, String> fields = new HashMap<>();
    for (String field : FIELDS) {
      String given = context.queryParam(field);
      if (given != null && given.length() <= LONGEST && context.queryParam(AGAIN) != null) {
        fields.put(field, given.strip());
      }
    }
    return Filled.with(fields);
  }

  /** The address of the form with what was entered. */
  static String again(Context context) {
    String entered =
        FIELDS.stream()
            .filter(field -> context.queryParam(field) != null)
            .map(field -> "&" + field + "=" + encoded(context.queryParam(field)))
            .collect(Collectors.joining());
    return "/lots/" + context.pathParam("lot") + "?" + AGAIN + "=again" + entered + "#labels";
  }

  /** The address of the form as it is opened first, unfolded. */
  static String opened(String lot) {
    return "/lots/" + lot + "?" + AGAIN + "=again&count=1#labels";
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
