package chillwright.core.log;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What is asked instead, where words that should name a food tell what became of it. No days in the
 * refrigerator answer that. The words are common practice, no source; in both languages.
 */
public enum OtherQuestion {
  /** It stood without cold: "rice left in the pot", "chili out since noon". */
  LEFT_OUT(
      "\\bleft (?!over|of|from)|\\bleft$|\\bforgot(ten)?\\b(?! cookie)"
          + "|\\b(sat|sitting|stood|standing) (out|in|on|at|over|all|for|since)"
          + "|\\bout (all|since|for|overnight|of the (fridge|refrigerator))\\b|\\bovernight$"
          + "|\\bon the (counter|table|stove|bench)\\b|\\bat room temperature\\b"
          + "|\\bdej(e|ado|ada|ados|adas|amos)\\b|\\bfuera\\b|\\btoda la noche\\b"
          + "|\\b(en|sobre) la (mesa|estufa|encimera)\\b|\\bolvid(e|ado|ada|ados|adas)\\b"
          + "|\\ba temperatura ambiente\\b"),
  /** It thawed: "refreeze soup". */
  FREEZE_AGAIN(
      "\\bre ?fr(eez|oze)|\\bfr(eeze|ozen) (it |them )?again\\b|\\brecongel"
          + "|\\b(volver a|otra vez|de nuevo).*congel|\\bcongel.*(otra vez|de nuevo)\\b"),
  /** The cold failed: "meat after a power cut". */
  POWER_OUT(
      "\\bpower (cut|out|off|fail|loss|went|was|is)|\\b(no|without|lost) power\\b"
          + "|\\boutage\\b|\\bblackout\\b|\\bapagon|\\bsin (luz|corriente)\\b");

  private final Pattern words;

  OtherQuestion(String words) {
    this.words = Pattern.compile(words);
  }

  /** The question that words ask; empty where they only name a food. */
  public static Optional<OtherQuestion> of(String given) {
    String plain = FoodWords.spelled(given);
    return Arrays.stream(values()).filter(one -> one.words.matcher(plain).find()).findFirst();
  }
}
