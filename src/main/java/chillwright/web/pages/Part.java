package chillwright.web.pages;

import chillwright.core.ahead.OutageFoods;
import chillwright.core.ahead.Told;
import chillwright.core.heat.OutageFood.Place;
import chillwright.print.AheadText;
import chillwright.rulebook.Handbook;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A sentence of an answer, with the list that it opens.
 *
 * @param listed mostly none
 */
public record Part(String says, List<String> listed) {
  public Part {
    listed = List.copyOf(listed);
  }

  /** Sentences in their order, foods under the sentence before them. */
  static List<Part> of(List<Told> told, AheadText text) {
    List<Part> parts = new ArrayList<>();
    for (Told one : told) {
      if (OutageFoods.isFood(one) && !parts.isEmpty()) {
        Part last = parts.remove(parts.size() - 1);
        List<String> longer =
            Stream.concat(last.listed.stream(), Stream.of(text.says(one))).toList();
        parts.add(new Part(last.says, longer));
      } else {
        parts.add(new Part(text.says(one), List.of()));
      }
    }
    return parts;
  }

  /** What becomes of food after a power failure, and where that is printed. */
  static List<Part> afterOutage(Visitor visitor) {
    Handbook handbook = Handbook.shipped();
    AheadText text = new AheadText(visitor.language(), visitor.scale());
    List<Part> parts = new ArrayList<>();
    for (Place place : Place.values()) {
      parts.addAll(of(OutageFoods.told(handbook.outageFoods(), place), text));
    }
    List<String> sources =
        handbook.outageFoods().stream().map(food -> food.source()).distinct().toList();
    parts.add(new Part(visitor.say("power.sources", String.join("; ", sources)), List.of()));
    return parts;
  }
}
