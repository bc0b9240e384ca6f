package chillwright.web.pages;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The questions that can be asked before cooking, one of them perhaps answered.
 *
 * @param asked key of the question that was asked; blank where none was
 * @param given what was given for it, by name
 * @param wrong what is wrong, by the name of its field
 * @param says the answer, sentence by sentence
 * @param small what it rests on, and what to bear in mind
 * @param foods the names of the kitchen's own foods
 * @param isHome whether limits are those of the advice for homes
 */
public record AheadView(
    String asked,
    Map<String, String> given,
    Map<String, String> wrong,
    List<Part> says,
    List<String> small,
    List<Ask> questions,
    List<String> foods,
    boolean isHome) {
  /** Before it is said which limits count. */
  AheadView(
      String asked,
      Map<String, String> given,
      Map<String, String> wrong,
      List<Part> says,
      List<String> small,
      List<Ask> questions) {
    this(asked, given, wrong, says, small, questions, List.of(), false);
  }

  /** A question with its fields. */
  public record Ask(String key, String title, List<Field> fields) {
    public Ask {
      fields = List.copyOf(fields);
    }
  }

  /**
   * One field.
   *
   * @param example a value that is taken, shown while the field is empty
   * @param choices the values to choose from; none where any may be written
   * @param isOwnFood whether it names a food of the kitchen
   */
  public record Field(
      String name,
      String says,
      boolean isNeeded,
      String example,
      List<Choice> choices,
      boolean isOwnFood) {
    public Field {
      choices = List.copyOf(choices);
    }

    /** Whether the choices are only proposals, and any word may be written. */
    public boolean isWord() {
      return name.equals("food");
    }
  }

  public AheadView {
    given = Collections.unmodifiableMap(new LinkedHashMap<>(given));
    wrong = Collections.unmodifiableMap(new LinkedHashMap<>(wrong));
    says = List.copyOf(says);
    small = List.copyOf(small);
    questions = List.copyOf(questions);
    foods = List.copyOf(foods);
  }

  AheadView at(boolean home, List<String> own) {
    return new AheadView(asked, given, wrong, says, small, questions, own, home);
  }

  public String home() {
    return isHome ? "yes" : "no";
  }

  /** The address of the same question under these limits, or under the others. */
  public String address(boolean home) {
    StringBuilder address = new StringBuilder("/ahead?home=").append(home ? "yes" : "no");
    if (!asked.isEmpty()) {
      address.append("&question=").append(asked);
    }
    given.forEach(
        (name, text) ->
            address
                .append('&')
                .append(name)
                .append('=')
                .append(URLEncoder.encode(text, StandardCharsets.UTF_8)));
    return address.append(asked.isEmpty() ? "" : "#answer").toString();
  }

  public boolean isAsked(String key) {
    return key.equals(asked);
  }

  public String given(String key, String name) {
    return isAsked(key) ? given.getOrDefault(name, "") : "";
  }

  /** What is wrong with that field; blank for nothing. */
  public String wrong(String key, String name) {
    return isAsked(key) ? wrong.getOrDefault(name, "") : "";
  }

  /** The question that this one leads to; blank for none. */
  public String next() {
    String depth = given.getOrDefault("depth", "2in");
    return isAsked("pans") && !says.isEmpty()
        ? "/ahead?home="
            + home()
            + "&question=cooling&surroundings=38F&depth="
            + URLEncoder.encode(depth, StandardCharsets.UTF_8)
            + "#answer"
        : "";
  }
}
