package chillwright.print;

import chillwright.core.log.Category;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A language that findings, dates and pages are told in. */
public enum Language {
  ENGLISH("en", "English"),
  SPANISH("es", "Español");

  /** What was perhaps meant, at the end of a fault. */
  private static final Pattern MEANT =
      Pattern.compile("(.*?) (?:Did you mean|Perhaps) (.+)[?]", Pattern.DOTALL);

  private final String tag;
  private final String title;

  Language(String tag, String title) {
    this.tag = tag;
    this.title = title;
  }

  /** As BCP 47 writes it. */
  public String tag() {
    return tag;
  }

  /** What it calls itself. */
  public String title() {
    return title;
  }

  public Locale locale() {
    return Locale.forLanguageTag(tag);
  }

  /** A text of this room in this language. */
  String say(String key, Object... filled) {
    return Texts.PRINT.text(this, key, filled);
  }

  /** Words that a log or a shipped rule set has in English; empty where they have no other. */
  Optional<String> said(String english) {
    return this == ENGLISH ? Optional.of(english) : Texts.PRINT.said(this, english);
  }

  /** The title of a storage category; one that is not shipped stays as its file has it. */
  public String titled(Category category) {
    return said(category.title()).orElse(category.title());
  }

  /** A line of the arithmetic behind a date; one that we do not know stays as it is. */
  public String because(String line) {
    return this == ENGLISH ? line : Texts.PRINT.retold(this, Texts.BECAUSE, line).orElse(line);
  }

  /** What is wrong with an input; what we have no words for is marked as English. */
  public String fault(String english) {
    if (this == ENGLISH) {
      return english;
    }
    Matcher meant = MEANT.matcher(english);
    boolean isAsked = meant.matches();
    String plain = isAsked ? meant.group(1) : english;
    String told =
        Texts.PRINT.retold(this, Texts.PROBLEM, plain).orElseGet(() -> say("fault.untold", plain));
    return isAsked ? told + " " + say("fault.meant", meant.group(2).replace(" or ", ", ")) : told;
  }

  /** A word or title of a rule set; one that is not shipped stays as its file has it. */
  public String named(String english) {
    return said(english).orElse(english);
  }

  /** What a rule set says, marked as its own words where they stay English. */
  public String saidByRules(String english) {
    return said(english).orElseGet(() -> say("rules-say", english));
  }

  /** The language so written; empty if we do not speak it. */
  public static Optional<Language> ofTag(String tag) {
    return Arrays.stream(values()).filter(language -> language.tag.equals(tag)).findFirst();
  }

  /** The first of an Accept-Language header that we speak; English where none is. */
  public static Language ofHeader(String header) {
    for (String part : header.split(",", -1)) {
      String tag = part.replaceFirst("[-;].*", "").strip().toLowerCase(Locale.ROOT);
      Optional<Language> language = ofTag(tag);
      if (language.isPresent()) {
        return language.get();
      }
    }
    return ENGLISH;
  }
}
