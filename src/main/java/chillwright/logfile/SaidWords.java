package chillwright.logfile;

import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes what a person says of a moment apart: a day, a part of that day, the time of day. */
final class SaidWords {
  /**
   * Parts of a day, with the hours that the words are said of at the most: what stood out "last
   * night" may have stood from the evening on. Common practice, no source.
   */
  enum Part {
    WHOLE(0, 24),
    MORNING(0, 12),
    AFTERNOON(12, 20),
    EVENING(18, 24),
    NIGHT(18, 24 + 6);

    /** Before this hour a night belongs to the day before. */
    static final int DAWN = 6;

    private final int from;
    private final int to;

    Part(int from, int to) {
      this.from = from;
      this.to = to;
    }

    int from() {
      return from;
    }

    boolean isNight() {
      return this == NIGHT;
    }

    /** Counted from the beginning of the day; above 24 it is an hour of the next. */
    int to() {
      return to;
    }
  }

  /** A day by its distance from today, by its date, or by its name. */
  record Day(int away, Optional<LocalDate> date, Optional<DayOfWeek> week) {
    static Day away(int days) {
      return new Day(days, Optional.empty(), Optional.empty());
    }

    static Day on(LocalDate date) {
      return new Day(0, Optional.of(date), Optional.empty());
    }
  }

  /** Which half of the day a time is of. */
  private enum Half {
    UNSAID,
    MORNING,
    LATER,
    NIGHT
  }

  /** A time of day as it was said: "6", "6:00", "6 pm", or midnight. */
  record Clock(int hour, Optional<Integer> minute, Half half, boolean isMidnight) {}

  /** What was said; with neither clock nor "ago" the day is there and leaves the hour open. */
  record Said(Optional<Day> day, Part part, Optional<Clock> clock, Optional<Duration> ago) {
    /** The minutes that it may mean, from the beginning of the day, those of a night go on. */
    List<Integer> minutes() {
      return clock
          .map(
              time ->
                  hours(time, part, day.isPresent()).stream()
                      .map(hour -> hour * 60 + time.minute().orElse(0))
                      .toList())
          .orElse(List.of());
    }
  }

  /** A day with a part of it, as one phrase says both. */
  private record Phrase(Day day, Part part) {}

  private static final Pattern OPENING =
      Pattern.compile(
          "^(?:(?:since|from|until|till?|desde|hasta|about|around|sobre|como|on|el|the)\\b ?)+");

  private static final Pattern CLOCK =
      Pattern.compile(
          "(?:at |a las? |las? )?(?<hour>\\d{1,2})"
              + "(?:[:.](?<minute>\\d\\d)(?::\\d\\d(?:\\.\\d+)?)?(?: ?h(?:rs?)?)?)?"
              + "(?: ?(?:o['’]clock|en punto))?"
              + " ?(?<half>[ap]\\.?(?: ?m\\.?)?|de la (?:mañana|madrugada|tarde|noche)"
              + "|in the (?:morning|afternoon|evening)|at night)?");

  private static final Pattern NOON = Pattern.compile("(?:at |al? )?(?:noon|midday|mediod[ií]a)");

  private static final Pattern MIDNIGHT =
      Pattern.compile("(?:at |a (?:la )?)?(?:midnight|medianoche)");

  private static final Pattern DATE =
      Pattern.compile("(?<date>\\d{4}-\\d\\d-\\d\\d)(?:[ t,]+(?<rest>.+))?");

  private static final String LENGTH =
      "(?<count>an?|una?|media|half an|\\d{1,4}(?:[.,]\\d{1,2})?) ?(?<unit>h|hrs?|hours?|horas?"
          + "|min|minutes?|minutos?|d|days?|d[ií]as?)";
  private static final Pattern AGO = Pattern.compile(LENGTH + " ago|hace " + named(LENGTH));

  private static final Map<String, Phrase> PHRASES = phrases();
  private static final List<String> LONGEST_FIRST =
      PHRASES.keySet().stream()
          .sorted(Comparator.comparingInt(String::length).reversed().thenComparing(s -> s))
          .toList();

  private SaidWords() {}

  /** What a text says; empty where that is no moment. */
  static Optional<Said> read(String text) {
    String said =
        Normalizer.normalize(text, Normalizer.Form.NFKC)
            .replaceAll("\\s+", " ")
            .strip()
            .toLowerCase(Locale.ROOT);
    String core = OPENING.matcher(said).replaceFirst("");
    Matcher ago = AGO.matcher(core);
    if (ago.matches()) {
      Optional<Duration> length = Optional.of(length(ago));
      return Optional.of(new Said(Optional.empty(), Part.WHOLE, Optional.empty(), length));
    }
    return clock(core)
        .map(time -> new Said(Optional.empty(), Part.WHOLE, Optional.of(time), Optional.empty()))
        .or(() -> dated(core))
        .or(() -> phrased(core));
  }

  private static String named(String length) {
    return length.replace("<count>", "<count2>").replace("<unit>", "<unit2>");
  }

  private static Duration length(Matcher ago) {
    String count = Optional.ofNullable(ago.group("count")).orElse(ago.group("count2"));
    String unit = Optional.ofNullable(ago.group("unit")).orElse(ago.group("unit2"));
    double number =
        count.startsWith("half") || count.equals("media")
            ? 0.5
            : Character.isDigit(count.charAt(0)) ? Double.parseDouble(count.replace(',', '.')) : 1;
    int minutes = unit.startsWith("m") ? 1 : unit.startsWith("d") ? 24 * 60 : 60;
    return Duration.ofMinutes(Math.round(number * minutes));
  }

  private static Optional<Said> dated(String core) {
    Matcher dated = DATE.matcher(core);
    Optional<String> rest =
        dated.matches() ? Optional.ofNullable(dated.group("rest")) : Optional.empty();
    return rest.flatMap(SaidWords::clock)
        .flatMap(time -> date(dated.group("date")).map(date -> on(date, time)));
  }

  private static Said on(LocalDate date, Clock time) {
    return new Said(Optional.of(Day.on(date)), Part.WHOLE, Optional.of(time), Optional.empty());
  }

  private static Optional<LocalDate> date(String text) {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeException noDay) {
      return Optional.empty();
    }
  }

  /** A phrase for the day alone, before the time of day, or after it. */
  private static Optional<Said> phrased(String core) {
    for (String words : LONGEST_FIRST) {
      Optional<String> rest = without(words, core);
      Optional<Clock> time = rest.flatMap(SaidWords::clock);
      if (rest.isPresent() && (rest.get().isEmpty() || time.isPresent())) {
        Phrase phrase = PHRASES.get(words);
        return Optional.of(
            new Said(Optional.of(phrase.day()), phrase.part(), time, Optional.empty()));
      }
    }
    return Optional.empty();
  }

  private static Optional<String> without(String words, String core) {
    if (core.startsWith(words)) {
      String rest = core.substring(words.length());
      boolean isWhole = rest.isEmpty() || rest.charAt(0) == ' ' || rest.charAt(0) == ',';
      return isWhole ? Optional.of(rest.replaceFirst("^[ ,]+", "")) : Optional.empty();
    }
    return core.endsWith(" " + words)
        ? Optional.of(
            core.substring(0, core.length() - words.length())
                .strip()
                .replaceFirst("(?:,| on| del?)$", ""))
        : Optional.empty();
  }

  private static Optional<Clock> clock(String text) {
    if (NOON.matcher(text).matches()) {
      return Optional.of(new Clock(12, Optional.of(0), Half.LATER, false));
    }
    if (MIDNIGHT.matcher(text).matches()) {
      return Optional.of(new Clock(0, Optional.of(0), Half.UNSAID, true));
    }
    Matcher said = CLOCK.matcher(text);
    if (!said.matches()) {
      return Optional.empty();
    }
    int hour = Integer.parseInt(said.group("hour"));
    Optional<Integer> minute = Optional.ofNullable(said.group("minute")).map(Integer::valueOf);
    Half half = Optional.ofNullable(said.group("half")).map(SaidWords::half).orElse(Half.UNSAID);
    boolean isHour = half == Half.UNSAID ? hour <= 23 : hour >= 1 && hour <= 12;
    return isHour && minute.orElse(0) <= 59
        ? Optional.of(new Clock(hour, minute, half, false))
        : Optional.empty();
  }

  private static Half half(String said) {
    if (said.startsWith("a") && !said.startsWith("at")) {
      return Half.MORNING;
    }
    boolean isMorning =
        said.endsWith("morning") || said.endsWith("mañana") || said.endsWith("madrugada");
    boolean isNight = said.endsWith("night") || said.endsWith("noche");
    return isMorning ? Half.MORNING : isNight ? Half.NIGHT : Half.LATER;
  }

  /** The hours that a time of day may mean in that part of a day. */
  private static List<Integer> hours(Clock time, Part part, boolean hasDay) {
    List<Integer> hours =
        part == Part.WHOLE || time.half() != Half.UNSAID
            ? ofAnyDay(time, hasDay)
            : ofPart(time, part);
    return hours.stream()
        .map(hour -> part.isNight() && hour < Part.DAWN ? hour + 24 : hour)
        .filter(hour -> part != Part.MORNING || hour <= 12)
        .filter(hour -> (part != Part.AFTERNOON && part != Part.EVENING) || hour >= 12)
        .filter(hour -> !part.isNight() || hour >= 17)
        .distinct()
        .toList();
  }

  private static List<Integer> ofAnyDay(Clock time, boolean hasDay) {
    int hour = time.hour();
    int midnight = hasDay ? 24 : 0;
    return switch (time.half()) {
      case MORNING -> List.of(hour % 12);
      case LATER -> List.of(hour % 12 + 12);
      // Twelve at night is the end of the evening; the first hours after it are still night.
      case NIGHT -> List.of(hour == 12 ? midnight : hour < Part.DAWN ? hour : hour + 12);
      case UNSAID -> {
        if (time.isMidnight()) {
          yield List.of(0, midnight);
        }
        if (time.minute().isPresent() || hour == 0 || hour > 12) {
          yield List.of(hour);
        }
        yield hour == 12 ? List.of(12, midnight) : List.of(hour, hour + 12);
      }
    };
  }

  private static List<Integer> ofPart(Clock time, Part part) {
    int hour = time.hour();
    if (time.isMidnight() || hour == 0) {
      return List.of(part == Part.MORNING ? 0 : 24);
    }
    if (hour > 12 || part == Part.MORNING) {
      return List.of(hour);
    }
    if (part.isNight() && hour < Part.DAWN) {
      return hour == Part.DAWN - 1 ? List.of(hour + 12, hour) : List.of(hour);
    }
    return List.of(hour == 12 && part != Part.AFTERNOON ? 24 : hour % 12 + 12);
  }

  private static Map<String, Phrase> phrases() {
    Map<String, Day> days = new HashMap<>();
    days.put("today", Day.away(0));
    days.put("hoy", Day.away(0));
    days.put("yesterday", Day.away(-1));
    days.put("ayer", Day.away(-1));
    days.put("the day before yesterday", Day.away(-2));
    days.put("day before yesterday", Day.away(-2));
    days.put("anteayer", Day.away(-2));
    days.put("antier", Day.away(-2));
    days.put("tomorrow", Day.away(1));
    days.put("mañana", Day.away(1));
    for (DayOfWeek day : DayOfWeek.values()) {
      Day named = new Day(0, Optional.empty(), Optional.of(day));
      days.put(day.getDisplayName(TextStyle.FULL, Locale.ENGLISH).toLowerCase(Locale.ROOT), named);
      days.put(day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH).toLowerCase(Locale.ROOT), named);
      days.put(day.getDisplayName(TextStyle.FULL, Locale.forLanguageTag("es")), named);
    }
    Map<String, Phrase> phrases = new HashMap<>();
    days.forEach(
        (words, day) -> {
          phrases.put(words, new Phrase(day, Part.WHOLE));
          for (String part : List.of("morning", "por la mañana", "en la mañana")) {
            phrases.put(words + " " + part, new Phrase(day, Part.MORNING));
          }
          for (String part : List.of("afternoon", "por la tarde", "en la tarde")) {
            phrases.put(words + " " + part, new Phrase(day, Part.AFTERNOON));
          }
          for (String part : List.of("por la noche", "en la noche")) {
            phrases.put(words + " " + part, new Phrase(day, Part.NIGHT));
          }
          phrases.put(words + " evening", new Phrase(day, Part.EVENING));
          phrases.put(words + " night", new Phrase(day, Part.NIGHT));
        });
    put(phrases, -1, Part.NIGHT, "last night", "overnight", "all night", "anoche");
    put(phrases, -1, Part.NIGHT, "toda la noche");
    put(phrases, 0, Part.MORNING, "this morning", "esta mañana");
    put(phrases, 0, Part.AFTERNOON, "this afternoon", "esta tarde");
    put(phrases, 0, Part.EVENING, "this evening");
    put(phrases, 0, Part.NIGHT, "tonight", "esta noche");
    return Map.copyOf(phrases);
  }

  private static void put(Map<String, Phrase> phrases, int away, Part part, String... all) {
    for (String words : all) {
      phrases.put(words, new Phrase(Day.away(away), part));
    }
  }
}
