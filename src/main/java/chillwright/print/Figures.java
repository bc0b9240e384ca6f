package chillwright.print;

import chillwright.core.log.LogEntry;
import chillwright.core.log.Timeline;
import chillwright.core.measure.Limit;
import chillwright.core.measure.Temperature;
import chillwright.core.measure.Temperature.Scale;
import chillwright.core.rules.Rule;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Limits and durations as a cook reads them. */
public final class Figures {
  private static final Pattern FAHRENHEIT = Pattern.compile("\\b(\\d{2,3}) °F");

  /** Of 3-501.14 and .16 (41, 70, 135), 3-401.11 (145, 155) and 3-403.11 (165). */
  private static final Map<String, String> CELSIUS_PRINTED =
      Map.of("41", "5", "70", "21", "135", "57", "145", "63", "155", "68", "165", "74");

  private Figures() {}

  /** The scale most readings of a lot were taken in; Fahrenheit where it has none. */
  public static Scale scale(Timeline timeline) {
    int celsius = 0;
    int all = 0;
    for (LogEntry entry : timeline.entries()) {
      Optional<Temperature> reading = entry.temperature();
      if (reading.isPresent()) {
        all++;
        celsius += reading.get().scale() == Scale.CELSIUS ? 1 : 0;
      }
    }
    return 2 * celsius > all ? Scale.CELSIUS : Scale.FAHRENHEIT;
  }

  /** A rule's limit in short: "70 °F within 2 h". */
  public static String limit(Rule rule, Scale scale) {
    return limit(rule, scale, Language.ENGLISH);
  }

  static String limit(Rule rule, Scale scale, Language language) {
    return new LimitText(language, limit -> limit.text(scale)).of(rule);
  }

  /** The same with both printed figures: "70 °F (21 °C) within 2 h". */
  public static String limitInBoth(Rule rule) {
    return limitInBoth(rule, Language.ENGLISH);
  }

  public static String limitInBoth(Rule rule, Language language) {
    return new LimitText(language, Limit::text).of(rule);
  }

  /** "1 h 45 min"; seconds only where there is nothing longer. */
  public static String duration(Duration time) {
    if (time.compareTo(Duration.ofMinutes(1)) < 0) {
      return time.toSeconds() + " s";
    }
    long hours = time.toHours();
    int minutes = time.toMinutesPart();
    if (hours == 0) {
      return minutes + " min";
    }
    return minutes == 0 ? hours + " h" : hours + " h " + minutes + " min";
  }

  /** What an entry read: its temperature, or the state it was found in. */
  static String reading(LogEntry entry, Scale scale, Language language) {
    Optional<String> read = entry.temperature().map(each -> each.text(scale));
    return read.or(() -> entry.details().how().flatMap(how -> language.said(how.text())))
        .orElseGet(() -> language.say("no-reading"));
  }

  /**
   * Words of a rule set for somebody who reads Celsius: a figure that the FDA Food Code 2022 prints
   * in both scales is told in both, as printed there and never converted.
   */
  static String asPrinted(String words, Scale scale) {
    return scale == Scale.FAHRENHEIT
        ? words
        : FAHRENHEIT
            .matcher(words)
            .replaceAll(
                figure ->
                    CELSIUS_PRINTED.containsKey(figure.group(1))
                        ? CELSIUS_PRINTED.get(figure.group(1)) + " °C ($0)"
                        : "$0");
  }
}
