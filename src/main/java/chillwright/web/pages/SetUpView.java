package chillwright.web.pages;

import java.util.List;

/** What the kitchen says of itself, with a form for each kind of thing. */
public record SetUpView(
    Filled name, People people, Places places, Foods foods, Probes probes, Filled statement) {
  /** Who works here. */
  public record People(List<Line> items, Filled form) {}

  /** The places, and the kinds to choose from. */
  public record Places(List<Line> items, List<Choice> kinds, Filled form) {}

  /** The foods, and what to choose from. */
  public record Foods(
      List<Line> items,
      List<Choice> categories,
      List<Choice> allergens,
      List<String> places,
      Filled form) {
    /** Whether an allergen is ticked. */
    public boolean isTicked(String key) {
      return List.of(form.given("allergens").split(" ")).contains(key);
    }
  }

  /** The thermometers, with a form to describe one and a form to note a check. */
  public record Probes(
      List<Line> items, List<Choice> scales, Filled form, List<Choice> methods, Filled check) {}

  /**
   * One of a list.
   *
   * @param change address of the page with its form filled in
   * @param kind person, place, food or probe
   */
  public record Line(String name, String says, String change, String kind) {
    /** The list it stands in. */
    public String list() {
      return kind.equals("person") ? "people" : kind + "s";
    }
  }
}
