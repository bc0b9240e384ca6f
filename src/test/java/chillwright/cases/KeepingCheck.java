package chillwright.cases;

import chillwright.core.keeping.Keeping;
import chillwright.core.keeping.Keeping.Governs;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Compares the dates of a lot with those a case names; null where there must be none. */
final class KeepingCheck {
  private static final String NONE = "null";
  private static final String BECAUSE = "because";

  private KeepingCheck() {}

  static List<String> differences(String lot, Node expected, Keeping keeping) {
    Map<String, String> given = given(keeping);
    List<String> keys = new ArrayList<>(given.keySet());
    keys.add(BECAUSE);
    expected.allow(keys.toArray(String[]::new));
    List<String> differences = new ArrayList<>();
    given.forEach(
        (key, value) -> {
          String wanted = expected.optionalText(key).orElse(NONE);
          if (expected.has(key) && !wanted.equals(value)) {
            differences.add(lot + " " + key + ": expected " + wanted + ", came out " + value);
          }
        });
    for (String part : expected.texts(BECAUSE)) {
      if (keeping.because().stream().noneMatch(line -> line.contains(part))) {
        differences.add(lot + " because: no \"" + part + "\" in " + keeping.because());
      }
    }
    return differences;
  }

  /** Every date by its name in answers, as text. */
  private static Map<String, String> given(Keeping keeping) {
    Map<String, String> given = new LinkedHashMap<>();
    given.put("dateMarkLastDay", text(keeping.dateMarkLastDay()));
    given.put("lastDayMissed", text(keeping.lastDayMissed()));
    given.put("daysLeftWhenThawed", days(keeping));
    given.put("chilledLastDay", text(keeping.chilledLastDay()));
    given.put("discardAt", text(keeping.discardAt()));
    given.put("bestQualityBy", text(keeping.bestQualityBy()));
    given.put("qualityLimit", text(keeping.qualityLimit()));
    given.put("governs", keeping.governs().map(Governs::key).orElse(NONE));
    return given;
  }

  private static String days(Keeping keeping) {
    return keeping.daysLeftWhenThawed().isPresent()
        ? Integer.toString(keeping.daysLeftWhenThawed().getAsInt())
        : NONE;
  }

  private static String text(Optional<?> value) {
    return value.map(Object::toString).orElse(NONE);
  }
}
