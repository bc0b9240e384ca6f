package chillwright.web.pages;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.plan.Menu;
import chillwright.print.Volumes;
import chillwright.service.ahead.SaidVolume;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Room for food in the forms of a plan: whoever reads Fahrenheit reads and writes quarts. What is
 * kept is litres.
 */
record PlanVolumes(boolean isQuarts) {
  /** The field of a form that says in which unit its bare figures are; litres without it. */
  static final String FIELD = "volumes";

  static final String QUARTS = "quarts";

  private static final List<String> ROOM = List.of(Menu.REFRIGERATOR, Menu.FREEZER, Menu.WARM);
  private static final Pattern NAMED =
      Pattern.compile("(.*/)?(has|keeps|uses)/(" + String.join("|", ROOM) + ")");
  private static final Pattern BARE = Pattern.compile("\\d{1,9}([.,]\\d{1,6})?");

  static PlanVolumes of(Visitor visitor) {
    return new PlanVolumes(visitor.scale() == Scale.FAHRENHEIT);
  }

  /** What such a form sends beside its fields; blank for litres. */
  String sent() {
    return isQuarts ? QUARTS : "";
  }

  /** The word for a thing of a kitchen in this unit. */
  String key(String thing) {
    String key = "plans.thing." + thing;
    return isQuarts && ROOM.contains(thing) ? key + ".quarts" : key;
  }

  /** The fields of a form as they are read. */
  Map<String, String> shown(Map<String, String> fields) {
    Map<String, String> shown = new HashMap<>(fields);
    if (isQuarts) {
      shown.replaceAll(
          (name, text) ->
              NAMED.matcher(name).matches() && BARE.matcher(text).matches()
                  ? Volumes.figure(Double.parseDouble(text.replace(',', '.')) / Volumes.QUART)
                  : text);
    }
    return shown;
  }

  /** A form as it is kept; what is no amount stays as it was typed, and is found at fault later. */
  static Form kept(Form sent) {
    boolean isQuarts = sent.text(FIELD).equals(QUARTS);
    Form kept = sent;
    for (Map.Entry<String, String> field : sent.all().entrySet()) {
      boolean isBare = BARE.matcher(field.getValue()).matches();
      if (NAMED.matcher(field.getKey()).matches() && (isQuarts || !isBare)) {
        OptionalDouble litres =
            SaidVolume.litres(isBare ? field.getValue() + " qt" : field.getValue());
        if (litres.isPresent()) {
          kept = kept.with(field.getKey(), Volumes.figure(litres.getAsDouble()));
        }
      }
    }
    return kept;
  }
}
