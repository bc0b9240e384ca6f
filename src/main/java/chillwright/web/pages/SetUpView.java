package chillwright.web.pages;

import java.util.List;

/** What the kitchen says of itself, with a form for each kind of thing. */
public record SetUpView(
    Filled name,
    Reach reach,
    People people,
    Places places,
    Foods foods,
    Probes probes,
    Filled statement) {
  /**
   * How phones and calendars find the kitchen.
   *
   * @param leadsTo what the code on labels leads to now
   * @param isLoopback whether that leads every machine to itself
   * @param needsKey whether a calendar program must bring a key
   * @param made the address of the feed with the key just made; blank for none
   * @param plainFeed its address where no key is needed
   */
  public record Reach(
      Filled form,
      String leadsTo,
      boolean isLoopback,
      boolean needsKey,
      boolean hasKey,
      String made,
      String plainFeed) {}

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
   * @param change address of the page with its form filled in; blank for what is offered no more
   * @param kind person, place, food or probe
   * @param warning what to look at again; blank for nothing
   */
  public record Line(String name, String says, String change, String kind, String warning) {
    /** Whether it is offered no more. */
    public boolean isRetired() {
      return change.isEmpty();
    }

    /** The list it stands in. */
    public String list() {
      return kind.equals("person") ? "people" : kind + "s";
    }
  }
}
