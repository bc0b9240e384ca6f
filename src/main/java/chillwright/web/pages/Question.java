package chillwright.web.pages;

import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A question about what a form says, which only the tick beside it answers.
 *
 * @param name what the tick sends: what is asked, and of what, so that it answers nothing else
 * @param says the question in words
 * @param way to where what is asked about is mended; empty where the answer is all
 */
public record Question(String name, String says, Optional<Choice> way) {
  /** Also what stands for such a character, so that no two names are written alike. */
  private static final Pattern BLANK = Pattern.compile("[\\s\\p{Z}%]");

  /** Names are told apart by blanks, so none has one. */
  static Question of(String asked, Object subject, String says) {
    return new Question(named(asked + ":" + subject), says, Optional.empty());
  }

  private static String named(String what) {
    return BLANK
        .matcher(what)
        .replaceAll(found -> "%%%04x".formatted((int) found.group().charAt(0)));
  }

  /** The same, asked of these lots and of no other. */
  Question about(Collection<String> lots) {
    return new Question(name + ":" + named(String.join(",", lots)), says, way);
  }

  /** The same with a way to where it is mended. */
  Question with(Choice mending) {
    return new Question(name, says, Optional.of(mending));
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
