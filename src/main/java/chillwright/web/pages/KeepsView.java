package chillwright.web.pages;

import java.util.List;
import java.util.Map;

/**
 * The home cook's questions, and the answers to those that were asked.
 *
 * @param wrong what is wrong with a field, by its name
 * @param kinds addresses that ask the same of the kinds that the food may be
 * @param isWithoutCold whether any of them needs no cold
 * @param note what to mind of that kind of food; blank for nothing
 * @param hotAir warmer air than that shortens the time outside
 * @param power what to do when the power was out
 * @param foods what becomes of each food then
 * @param isHome whether the advice for homes answers, not the rules of this kitchen
 */
public record KeepsView(
    Filled form,
    Map<String, String> wrong,
    List<Choice> categories,
    List<Choice> kinds,
    boolean isWithoutCold,
    String about,
    List<String> answer,
    List<String> because,
    String note,
    SourceNames source,
    String hotAir,
    String leftOut,
    List<String> refreezing,
    List<String> power,
    List<Part> foods,
    boolean isHome) {
  public KeepsView {
    wrong = Map.copyOf(wrong);
  }

  /** What is wrong, by the id of its field. */
  public List<Choice> faults() {
    return wrong.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(fault -> new Choice(fault.getKey(), fault.getValue()))
        .toList();
  }

  /** What is wrong with that field; blank where nothing is. */
  public String wrong(String field) {
    return wrong.getOrDefault(field, "");
  }
}
