package chillwright.core.rules;

import chillwright.core.log.LogEntry;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Whether the words of what was done say that an authority gave leave. Read with care: it must be
 * named and have allowed it, and words that deny anything, or speak of discarding, give no leave:
 * an inspector who was asked has allowed nothing yet. Our own, no source; a rule set asks for leave
 * and prescribes no words for it.
 */
final class Leave {
  private static final Pattern AUTHORITY =
      Pattern.compile(
          "\\b(authorit\\w*|inspector\\w*|health (department|officer)"
              + "|autoridad\\w*|sanidad)\\b");

  private static final Pattern ALLOWED =
      Pattern.compile(
          "\\b(allow(s|ed)|permit(s|ted)|approv(es|ed)|agree(s|d)|authori[sz](es|ed)"
              + "|permite|permitió|autoriza|autorizó|autorizado|aprueba|aprobó)(?!\\p{L})");

  private static final Pattern DENIAL =
      Pattern.compile(
          "\\b(no|not|never|without|nobody|refus\\w*|den(y|ied)|sin|nadie|neg\\w*|if|whether|si"
              + "|discard\\w*|throw\\w*|desech\\w*|tir(ar|e))\\b|n['’]t\\b|\\?");

  private Leave() {}

  static boolean isNamed(LogEntry act) {
    return act.note()
        .map(note -> note.toLowerCase(Locale.ROOT))
        .filter(note -> AUTHORITY.matcher(note).find() && ALLOWED.matcher(note).find())
        .filter(note -> !DENIAL.matcher(note).find())
        .isPresent();
  }
}
