package chillwright.web.pages;

import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * An entry that a phone kept while the line was dead and that was refused later: its link brings
 * what had been filled in, so that the form opens with all of it. Nothing is stored by that.
 */
final class KeptEntry {
  private static final String KEPT = "kept";

  private KeptEntry() {}

  /** The form as it was filled in; empty where the address brings none. */
  static Optional<Form> of(Context context) {
    Map<String, List<String>> fields = context.queryParamMap();
    return fields.containsKey(KEPT)
        ? Optional.of(new Form(fields).without("sure"))
        : Optional.empty();
  }

  /** Its fields, with the moment that was noted as a time of the kitchen. */
  static Map<String, String> fields(Form form, ZoneId zone, Instant now) {
    Map<String, String> fields = new HashMap<>(form.all());
    String noted = fields.remove("at");
    if (noted != null && !form.has("when")) {
      fields.put("when", local(noted, zone, now));
    }
    return fields;
  }

  private static String local(String noted, ZoneId zone, Instant now) {
    try {
      Instant at = Instant.parse(noted);
      Instant taken = at.isAfter(now) ? now : at;
      return LocalDateTime.ofInstant(taken, zone).truncatedTo(ChronoUnit.MINUTES).toString();
    } catch (DateTimeException e) {
      return "";
    }
  }
}
