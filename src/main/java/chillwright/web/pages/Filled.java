package chillwright.web.pages;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a form shows when it is opened, or shown again because something in it was wrong.
 *
 * @param fields what was filled in
 * @param faults every one, in words
 * @param asked questions that the person must answer, each with its tick
 * @param answered names of those that were
 */
public record Filled(
    Map<String, String> fields, List<String> faults, List<Question> asked, Set<String> answered) {
  /** What an act brings along without any of it being folded away. */
  private static final Set<String> BESIDE_AN_ACT =
      Set.of("note", "token", "once", "at", "kept", "sure");

  /** What stands open beside an entry that takes portions. */
  private static final Set<String> TAKEN = Set.of("portions", "to");

  public Filled {
    fields = Map.copyOf(fields);
    faults = List.copyOf(faults);
    asked = List.copyOf(asked);
    answered = Set.copyOf(answered);
  }

  static Filled with(Map<String, String> fields) {
    return refused(fields, List.of());
  }

  static Filled refused(Map<String, String> fields, List<String> faults) {
    return new Filled(fields, faults, List.of(), Set.of());
  }

  public boolean isAnswered(Question question) {
    return answered.contains(question.name());
  }

  /** Where the page opens. */
  public boolean isFirstOpen(Question question) {
    Optional<Question> first = asked.stream().filter(each -> !isAnswered(each)).findFirst();
    return first.equals(Optional.of(question));
  }

  public String given(String name) {
    return fields.getOrDefault(name, "");
  }

  public boolean has(String name) {
    return !given(name).isEmpty();
  }

  public boolean isScale(String letter) {
    return given("scale").equals(letter);
  }

  /** Whether it says what was done, in a note that is then the one field it needs. */
  public boolean isAct() {
    return given("entry").equals("action");
  }

  /** Whether the part of the form that is folded away holds something. */
  public boolean isOpen() {
    return fields.entrySet().stream()
        .anyMatch(
            field ->
                !field.getValue().isEmpty()
                    && !field.getKey().equals("entry")
                    && !field.getKey().equals("temperature")
                    && !TAKEN.contains(field.getKey())
                    && !field.getKey().equals("by")
                    && !field.getKey().startsWith(ColdPlace.FIELD)
                    && !(isAct() && BESIDE_AN_ACT.contains(field.getKey()))
                    && !field.getKey().equals("scale"));
  }
}
