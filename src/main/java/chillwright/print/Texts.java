package chillwright.print;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Texts from one file that holds each in every language: the line {@code now.title.es} is the
 * Spanish of {@code now.title}. {0}, {1} … stand for what is filled in, and are left for a script
 * to fill in where nothing is given.
 */
public final class Texts {
  private static final Pattern PLACE = Pattern.compile("\\{[0-9]}");

  /** What this room says. */
  static final Texts PRINT = new Texts("/words/print.properties");

  /** Keys of words that are not ours: those of the log, and of the shipped rule sets. */
  private static final String SAID = "said.";

  /** Keys of lines of arithmetic, which are kept in English with their figures. */
  static final String BECAUSE = "because.";

  /** Keys of what is wrong with an input, which is told in English where it is found. */
  static final String PROBLEM = "problem.";

  private final String file;
  private final Properties texts = new Properties();
  private final Map<String, String> keyOfSaid = new HashMap<>();
  private final Map<String, Pattern> lines = new TreeMap<>();

  /**
   * @param file a resource of the program
   */
  public Texts(String file) {
    this.file = file;
    try (InputStream bytes = Texts.class.getResourceAsStream(file);
        Reader reader = new InputStreamReader(bytes, StandardCharsets.UTF_8)) {
      texts.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    String english = "." + Language.ENGLISH.tag();
    for (String key : keys()) {
      if (key.startsWith(SAID) && key.endsWith(english)) {
        keyOfSaid.put(texts.getProperty(key), key.substring(0, key.length() - english.length()));
      }
      boolean isLine = key.startsWith(BECAUSE) || key.startsWith(PROBLEM);
      if (isLine && key.endsWith(english)) {
        String name = key.substring(0, key.length() - english.length());
        lines.put(name, pattern(texts.getProperty(key)));
      }
    }
  }

  /** The keys of the file, each with its language. */
  public Set<String> keys() {
    return texts.stringPropertyNames();
  }

  /**
   * One text, filled in.
   *
   * @throws IllegalStateException if the file has no such text, which a test keeps from happening
   */
  public String text(Language language, String key, Object... filled) {
    String text = texts.getProperty(key + "." + language.tag());
    if (text == null) {
      throw new IllegalStateException("no " + key + "." + language.tag() + " in " + file);
    }
    return filled(text, filled);
  }

  /** The translation of exactly those words: one that nearly fits could change a figure. */
  Optional<String> said(Language language, String english) {
    return Optional.ofNullable(keyOfSaid.get(english)).map(key -> text(language, key));
  }

  /** A text that stands for lines with anything in its places. */
  private static Pattern pattern(String text) {
    return Pattern.compile(
        PLACE
            .splitAsStream(text + " ")
            .map(part -> Pattern.quote(part))
            .collect(Collectors.joining("(.+?)")));
  }

  /**
   * A line of a kind with its figures as they are; the text that leaves the least to be filled in
   * is taken, so that no words of English are taken for a figure.
   *
   * @param kind what its key begins with
   */
  Optional<String> retold(Language language, String kind, String english) {
    Optional<Map.Entry<String, List<String>>> found = Optional.empty();
    for (Map.Entry<String, Pattern> line : lines.entrySet()) {
      Matcher matcher = line.getValue().matcher(english + " ");
      if (line.getKey().startsWith(kind) && matcher.matches()) {
        List<String> figures =
            IntStream.rangeClosed(1, matcher.groupCount()).mapToObj(matcher::group).toList();
        if (found.isEmpty() || length(figures) < length(found.get().getValue())) {
          found = Optional.of(Map.entry(line.getKey(), figures));
        }
      }
    }
    boolean isProblem = kind.equals(PROBLEM);
    return found.map(
        of ->
            text(
                language,
                of.getKey(),
                of.getValue().stream()
                    .map(word -> isProblem ? said(language, word).orElse(word) : word)
                    .toArray()));
  }

  private static int length(List<String> figures) {
    return figures.stream().mapToInt(String::length).sum();
  }

  /** In one pass, so that braces in a name that is filled in stay as they are. */
  private static String filled(String text, Object... filled) {
    StringBuilder whole = new StringBuilder();
    int from = 0;
    for (int at = text.indexOf('{'); at >= 0; at = text.indexOf('{', from)) {
      int which = text.charAt(at + 1) - '0';
      int end = at + "{0}".length();
      whole.append(text, from, at);
      whole.append(which < filled.length ? filled[which] : text.substring(at, end));
      from = end;
    }
    return whole.append(text, from, text.length()).toString();
  }
}
