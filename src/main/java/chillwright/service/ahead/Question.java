package chillwright.service.ahead;

import chillwright.core.ahead.Ahead;
import chillwright.core.heat.Surface;
import chillwright.rulebook.Handbook;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The questions, in the order in which a cook meets them. */
public enum Question {
  COOLING(
      "How long will it cool, and how deep may the layer be?",
      "food=chili surface=moving_air surroundings=38F depth=2in",
      new CoolingQuestion()),
  PANS(
      "How many pans does the pot need, and do they fit?",
      "volume=20L pan=full-2.5 depth=2in shelves=2 shelf-length=42in shelf-width=26in",
      new PansQuestion()),
  ICE(
      "How much ice cools it?",
      "volume=20L food=chicken_stock start=203F to=41F",
      new IceQuestion()),
  FREEZING(
      "How long does it take to freeze through?",
      "food=beef_stew thickness=5cm surface=still_air air=0F",
      new FreezingQuestion()),
  FREEZER_LOAD(
      "How much new food can the freezer take in a day?",
      "freezer=15ft3 weight=60lb kind=meat",
      new FreezerLoadQuestion()),
  THAWING(
      "How long does it take to thaw, and what still makes dinner?",
      "weight=12lb cooking=4h serve-in=9h",
      new ThawingQuestion()),
  FROZEN_LIFE(
      "What did a warm freezer cost of the quality?",
      "category=soup_or_stew frozen=2026-11-01 steps=10F:7d",
      new FrozenLifeQuestion()),
  BATCHES(
      "How many batches do the orders take, and from which day on?",
      "category=bar_cookies_cut_and_wrapped portions=300 batch=48 last-day=2027-12-18 then-days=10",
      new BatchesQuestion()),
  OUTAGE(
      "How long does it stay cold without power?",
      "appliance=full-freezer without-power=6h freezer=18ft3",
      new OutageQuestion());

  /** What a question does with what was given. */
  interface Answering {
    List<Parameter> parameters();

    /**
     * The answer.
     *
     * @throws BadQuestion if anything given is at fault
     */
    Ahead answer(Given given, Setting setting) throws BadQuestion;
  }

  private final String asks;
  private final String example;
  private final Answering answering;

  Question(String asks, String example, Answering answering) {
    this.asks = asks;
    this.example = example;
    this.answering = answering;
  }

  /** As written in commands and addresses, such as "freezer-load". */
  public String key() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The question as a cook would ask it. */
  public String asks() {
    return asks;
  }

  /** Parameters of an example that is answered, name=value with blanks between. */
  public String example() {
    return example;
  }

  public List<Parameter> parameters() {
    return answering.parameters();
  }

  /** In what the food may stand; on a counter nothing freezes. */
  public List<Surface> surfaces(Handbook handbook) {
    return handbook.surfaces().stream()
        .filter(surface -> this != FREEZING || !surface.key().equals(Common.COUNTER))
        .toList();
  }

  /** The parameter of that name. */
  public Optional<Parameter> parameter(String name) {
    return parameters().stream().filter(parameter -> parameter.name().equals(name)).findFirst();
  }

  /**
   * Answers it.
   *
   * @param given values by the names of parameters
   * @throws BadQuestion with every fault of what was given
   */
  public Ahead answer(Map<String, String> given, Setting setting) throws BadQuestion {
    return answering.answer(new Given(OwnFood.withKind(given, setting)), setting);
  }
}
