package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Whether the words of what was done name the leave of an authority. Read with care: words that
 * deny anything give no leave. Our own, no source; a rule set asks for leave and prescribes no
 * words for it.
 */
final class Leave {
  private static final Pattern AUTHORITY =
      Pattern.compile(
          "\\b(authorit\\w*|inspector\\w*|health (department|officer)"
              + "|autoridad\\w*|autoriz\\w*|sanidad)\\b");

  private static final Pattern DENIAL =
      Pattern.compile(
          "\\b(no|not|never|without|nobody|refus\\w*|den(y|ied)|sin|nadie|neg\\w*)\\b|n['’]t\\b");

  private Leave() {}

  static boolean isNamed(LogEntry act) {
    return act.note()
        .map(note -> note.toLowerCase(Locale.ROOT))
        .filter(note -> AUTHORITY.matcher(note).find())
        .filter(note -> !DENIAL.matcher(note).find())
        .isPresent();
  }
}
