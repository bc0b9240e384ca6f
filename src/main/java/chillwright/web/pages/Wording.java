package chillwright.web.pages;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Properties;
import java.util.Set;

/**
 * The texts of the pages, from one file that holds each in every language: the line {@code
 * now.title.es} is the Spanish of {@code now.title}. {0}, {1} … stand for what is filled in.
 */
final class Wording {
  static final String FILE = "/words/pages.properties";

  private static final Properties TEXTS = read();

  private Wording() {}

  private static Properties read() {
    Properties texts = new Properties();
    try (InputStream file = Wording.class.getResourceAsStream(FILE);
        Reader reader = new InputStreamReader(file, StandardCharsets.UTF_8)) {
      texts.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return texts;
  }

  /** The keys of the file, each with its language. */
  static Set<String> keys() {
    return TEXTS.stringPropertyNames();
  }

  /**
   * @throws IllegalStateException if the file has no such text, which a test keeps from happening
   */
  static String text(Language language, String key, Object... filled) {
    String text = TEXTS.getProperty(key + "." + language.tag());
    if (text == null) {
      throw new IllegalStateException("no text of the pages: " + key + "." + language.tag());
    }
    for (int i = 0; i < filled.length; i++) {
      text = text.replace("{" + i + "}", String.valueOf(filled[i]));
    }
    return text;
  }
}
