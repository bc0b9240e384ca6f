package chillwright.web.pages;

import java.util.Collection;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A question about what a form says, which only the tick beside it answers.
 *
 * @param name what the tick sends: what is asked, and of what, so that it answers nothing else
 * @param says the question in words
 */
public record Question(String name, String says) {
  private static final Pattern BLANKS = Pattern.compile("[\\s\\p{Z}]+");

  /** Names are told apart by blanks, so none has one. */
  static Question of(String asked, Object subject, String says) {
    return new Question(BLANKS.matcher(asked + ":" + subject).replaceAll("_"), says);
  }

  /** What the tick says: of food that is not for use it says what is done all the same. */
  public String tick(String usual) {
    boolean isUnfit = name.startsWith("unfit:") && usual.equals("entry.sure");
    return isUnfit ? "entry.sure.unfit" : usual;
  }

  /** Whether a tick is missing. */
  static boolean isOpen(Collection<Question> asked, Set<String> answered) {
    return asked.stream().anyMatch(question -> !answered.contains(question.name()));
  }
}
