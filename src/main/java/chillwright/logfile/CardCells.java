package chillwright.logfile;

import chillwright.core.log.Nearest;
import chillwright.core.log.Problem;
import chillwright.core.log.Problem.Where.InField;
import chillwright.core.measure.SaidLength;
import chillwright.core.measure.Temperature;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/**
 * Reads what is said by name and is no row of a log, such as what a kitchen says of a food, and
 * gathers all that is wrong with it. A blank cell is one that was left out. Texts are kept as
 * given, trimmed and in Unicode's normal form C.
 */
public final class CardCells {
  private final Map<String, String> given = new HashMap<>();
  private final List<Problem> problems = new ArrayList<>();

  private final Problem.Where row;

  /** Of a request. */
  public CardCells(Map<String, String> given) {
    this(given, new InField("", ""));
  }

  /**
   * @param row where it stands, such as a line of a file
   */
  public CardCells(Map<String, String> given, Problem.Where row) {
    this.row = row;
    given.forEach((name, text) -> this.given.put(name, Texts.trimmed(text)));
  }

  public List<Problem> problems() {
    return List.copyOf(problems);
  }

  /** What was given, trimmed; blank where nothing was. */
  public String given(String name) {
    return given.getOrDefault(name, "");
  }

  /** Text of one line. */
  public Optional<String> line(String name, int longest) {
    return text(name, longest, false);
  }

  /** Text in which lines may break. */
  public Optional<String> lines(String name, int longest) {
    return text(name, longest, true);
  }

  /** Text of one line that must be there; its absence is noted, and blank stands for it. */
  public String needed(String name, int longest) {
    int before = problems.size();
    Optional<String> line = line(name, longest);
    if (line.isEmpty() && problems.size() == before) {
      missing(name, "text");
    }
    return line.orElse("");
  }

  private Optional<String> text(String name, int longest, boolean breaksAllowed) {
    String text = Texts.normal(given(name));
    int length = text.codePointCount(0, text.length());
    if (Texts.hasBrokenBytes(text)) {
      refuse(name, "broken-text", "text in UTF-8", "This text holds bytes that are no letters.");
    } else if (Texts.hasControls(text, breaksAllowed)) {
      refuse(
          name,
          "control-character",
          breaksAllowed ? "text; line breaks are allowed" : "text of one line",
          "\"%s\" holds a character that cannot be shown%s. Take it out."
              .formatted(name, breaksAllowed ? "" : ", or a line break"));
    } else if (length > longest) {
      refuse(
          name,
          "too-long",
          "at most " + longest + " characters",
          "\"%s\" has %d characters; at most %d fit.".formatted(name, length, longest));
    } else {
      return Optional.of(text).filter(t -> !t.isEmpty());
    }
    return Optional.empty();
  }

  /** A whole number between two others, both allowed. */
  public OptionalInt count(String name, int least, int most) {
    String text = given(name);
    int count = text.matches("[0-9]{1,7}") ? Integer.parseInt(text) : -1;
    return within(name, count, least, most);
  }

  /** The same of days, which may be said so: "12 days", "2 weeks". */
  public OptionalInt days(String name, int least, int most) {
    return within(name, SaidLength.days(given(name)).orElse(-1), least, most);
  }

  private OptionalInt within(String name, int count, int least, int most) {
    if (given(name).isEmpty()) {
      return OptionalInt.empty();
    }
    if (count < least || count > most) {
      String allowed = "a whole number from " + least + " to " + most;
      refuse(name, "bad-number", allowed, "\"%s\" must be %s.".formatted(name, allowed));
      return OptionalInt.empty();
    }
    return OptionalInt.of(count);
  }

  /** A temperature with its scale. */
  public Optional<Temperature> temperature(String name) {
    String text = given(name);
    Optional<Temperature> read = text.isEmpty() ? Optional.empty() : Degrees.read(text);
    if (read.isEmpty() && !text.isEmpty()) {
      Degrees.Flaw flaw = Degrees.flaw(text);
      refuse(name, flaw.code(), Degrees.ALLOWED, flaw.says());
    }
    return read;
  }

  /** A word of a closed list. */
  public <T> Optional<T> choice(
      String name, List<String> words, Function<String, Optional<T>> reader) {
    return given(name).isEmpty() ? Optional.empty() : word(name, given(name), words, reader);
  }

  /** Words of a closed list, with blanks or commas between them. */
  public <T> List<T> choices(
      String name, List<String> words, Function<String, Optional<T>> reader) {
    List<T> chosen = new ArrayList<>();
    for (String text : words(name)) {
      word(name, text, words, reader).ifPresent(chosen::add);
    }
    return chosen;
  }

  /** What stands between blanks and commas. */
  public List<String> words(String name) {
    return given(name).isEmpty()
        ? List.of()
        : List.of(given(name).split("[\\s,]+")).stream().filter(w -> !w.isEmpty()).toList();
  }

  private <T> Optional<T> word(
      String name, String text, List<String> words, Function<String, Optional<T>> reader) {
    Optional<T> read = reader.apply(text);
    if (read.isEmpty()) {
      String shown = Texts.shown(text);
      refuse(
          name,
          "unknown-" + name,
          text,
          String.join(", ", words),
          "\"%s\" is not known here.%s".formatted(shown, Nearest.question(text, words)));
    }
    return read;
  }

  public void missing(String name, String allowed) {
    String says = "\"%s\" is missing: give %s.".formatted(name, allowed);
    refuse(name, "missing", "", allowed, says);
  }

  public void refuse(String name, String code, String allowed, String says) {
    refuse(name, code, given(name), allowed, says);
  }

  private void refuse(String name, String code, String text, String allowed, String says) {
    problems.add(new Problem(code, row.at(name), Texts.shown(text), allowed, says));
  }
}
