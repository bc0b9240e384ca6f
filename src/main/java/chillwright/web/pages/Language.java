package chillwright.web.pages;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A language that the pages speak. */
public enum Language {
  ENGLISH("en", "English"),
  SPANISH("es", "Español");

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

  /** The language so written; empty if the pages do not speak it. */
  static Optional<Language> ofTag(String tag) {
    return Arrays.stream(values()).filter(language -> language.tag.equals(tag)).findFirst();
  }

  /** The first of an Accept-Language header that the pages speak; English where none is. */
  static Language ofHeader(String header) {
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
