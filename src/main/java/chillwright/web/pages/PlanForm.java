package chillwright.web.pages;

import chillwright.core.plan.Menu;
import chillwright.core.plan.Thawing;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A part of what is to be planned, as a form: the fields are named as their places in that part.
 *
 * @param id begins the ids of its fields, so that they differ from those of other forms
 * @param base the place of the part, such as "/dishes/0"
 * @param fields what they hold
 * @param faults in words, by the place in the whole
 * @param asked what a tick answers, in the same way
 * @param isOpen whether it is unfolded
 * @param title of a dish, as it is kept; blank for a new one
 * @param rows how many rows each of its lists shows
 * @param caution beside its steps; blank for none
 */
public record PlanForm(
    String id,
    String base,
    Map<String, String> fields,
    Map<String, String> faults,
    Map<String, Question> asked,
    boolean isOpen,
    String title,
    Map<String, Integer> rows,
    String caution) {
  public PlanForm {
    fields = Map.copyOf(fields);
    faults = Map.copyOf(faults);
    asked = Map.copyOf(asked);
    rows = Map.copyOf(rows);
  }

  public String given(String name) {
    return fields.getOrDefault(name, "");
  }

  public boolean is(String name, String value) {
    return given(name).equals(value);
  }

  /** Whether a field that holds several words holds that one. */
  public boolean holds(String name, String word) {
    return List.of(given(name).split(" ", -1)).contains(word);
  }

  /** What is wrong with a field; blank for nothing. */
  public String fault(String name) {
    return faults.getOrDefault(base + "/" + name, "");
  }

  /** What the tick beside a field sends; blank where nothing is asked. */
  public String asked(String name) {
    return Optional.ofNullable(asked.get(base + "/" + name)).map(Question::name).orElse("");
  }

  /** The id of a field. */
  public String id(String name) {
    return id + "-" + name.replace('/', '-');
  }

  /** Whether a step thaws and nothing says that it does so in the refrigerator. */
  public boolean isThawedNowhere(String step) {
    String held = given(step + "uses/" + Menu.REFRIGERATOR);
    return Thawing.isNowhere(
        given(step + "step"), held.isEmpty() ? Map.of() : Map.of(Menu.REFRIGERATOR, held));
  }

  public int rows(String list) {
    return rows.getOrDefault(list, 0);
  }
}
