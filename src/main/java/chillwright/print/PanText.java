package chillwright.print;

import chillwright.core.measure.Temperature.Scale;
import chillwright.core.plan.Dish;
import chillwright.core.plan.Filling;
import chillwright.core.plan.Menu;
import chillwright.core.portions.Measure;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Portions of a planned dish as pans, in words.
 *
 * @param scale of whoever reads; without one, volumes are told in litres
 */
public record PanText(Language language, Optional<Scale> scale) {
  /** In litres. */
  public PanText(Language language) {
    this(language, Optional.empty());
  }

  /** How many pans, whether they fit, and what serves a portion; empty without a portion's size. */
  public Optional<String> says(Dish dish, Menu menu) {
    return dish.filling().map(filling -> says(dish, filling, menu));
  }

  private String says(Dish dish, Filling filling, Menu menu) {
    PlanText text = new PlanText(menu, language);
    int portions = dish.portions();
    String pans = pans(dish, filling, portions);
    Stream<String> room =
        room(dish, menu).entrySet().stream()
            .map(
                of ->
                    language.say(
                        of.getValue() ? "plan.fits" : "plan.fits.not", text.thing(of.getKey())));
    Stream<String> own =
        room(dish, menu).keySet().stream()
            .filter(thing -> Math.abs(dish.keeps().get(thing) - filling.room(portions)) >= 0.05)
            .map(
                thing ->
                    language.say(
                        "plan.pans.own",
                        volumes().says(dish.keeps().get(thing)),
                        text.thing(thing)));
    Stream<String> tools = filling.tools().stream().map(this::tool);
    return Stream.of(Stream.of(pans), own, room, tools)
        .flatMap(part -> part)
        .collect(Collectors.joining(" "));
  }

  /** Into how many pans some portions of a dish go; empty without a portion's size. */
  public Optional<String> pans(Dish dish, int portions) {
    return dish.filling().map(filling -> pans(dish, filling, portions));
  }

  private String pans(Dish dish, Filling filling, int portions) {
    return language.say(
        "plan.pans",
        dish.name(),
        portions,
        volumes().says(filling.litres(portions)),
        filling.pans(portions),
        language.named(filling.pan().title()),
        PlanText.amount(filling.depthInches()),
        volumes().says(filling.room(portions)));
  }

  private Volumes volumes() {
    return new Volumes(language, scale);
  }

  private String tool(Measure tool) {
    String number = tool.key().substring(tool.key().indexOf('-') + 1);
    return language.say(tool.key().startsWith("ladle") ? "plan.ladle" : "plan.scoop", number);
  }

  /** Whether a dish alone fits where it is kept, by the name of what the kitchen has. */
  public static Map<String, Boolean> room(Dish dish, Menu menu) {
    List<String> kept =
        switch (dish.route()) {
          case FRESH -> List.of();
          case CHILLED -> List.of(Menu.REFRIGERATOR);
          case FROZEN -> List.of(Menu.REFRIGERATOR, Menu.FREEZER);
        };
    Map<String, Boolean> room = new TreeMap<>();
    for (String thing : kept) {
      Double there = menu.has().get(thing);
      if (there != null && dish.keeps().containsKey(thing)) {
        room.put(thing, dish.keeps().get(thing) <= there);
      }
    }
    return room;
  }
}
