package chillwright.web.pages;

import chillwright.paper.Words;
import chillwright.print.Language;
import java.util.Locale;

/** The texts of the pages, for paper. */
record PaperWords(Language language) implements Words {
  @Override
  public String say(String key, Object... filled) {
    return Wording.text(language, key, filled);
  }

  @Override
  public Locale locale() {
    return language.locale();
  }
}
