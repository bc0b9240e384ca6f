package chillwright.paper;

import java.util.Locale;

/** The texts of a paper, in the language of the person who prints it. */
public interface Words {
  /** The text of that key, with what is filled in for {0}, {1} … */
  String say(String key, Object... filled);

  /** For the names of days and months. */
  Locale locale();
}
