package chillwright.web.pages;

import chillwright.print.Language;
import chillwright.print.Texts;
import java.util.Set;

/** The texts of the pages, each in every language. */
final class Wording {
  static final String FILE = "/words/pages.properties";

  private static final Texts TEXTS = new Texts(FILE);

  private Wording() {}

  /** The keys of the file, each with its language. */
  static Set<String> keys() {
    return TEXTS.keys();
  }

  static String text(Language language, String key, Object... filled) {
    return TEXTS.text(language, key, filled);
  }
}
