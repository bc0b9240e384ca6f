package chillwright.rulebook;

import chillwright.core.heat.Composition;
import chillwright.core.heat.LifeModel;
import chillwright.core.heat.Outage;
import chillwright.core.heat.OutageFood;
import chillwright.core.heat.Practice;
import chillwright.core.heat.PrintedFood;
import chillwright.core.heat.PrintedLife;
import chillwright.core.heat.Surface;
import chillwright.core.heat.Thawing;
import chillwright.core.portions.Measure;
import chillwright.core.portions.Pan;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The tables that questions ahead are worked out with, each figure with its source: foods,
 * surfaces, pans, measures, kitchen figures, frozen lives, and foods after a power failure.
 * Immutable.
 */
public final class Handbook {
  private final List<PrintedFood> foods = new ArrayList<>();
  private final List<Surface> surfaces = new ArrayList<>();
  private final List<Pan> pans = new ArrayList<>();
  private final List<Measure> measures = new ArrayList<>();
  private final List<PrintedLife> lives = new ArrayList<>();
  private final List<OutageFood> outageFoods = new ArrayList<>();
  private final Map<String, Practice> figures = new LinkedHashMap<>();

  /** What this jar holds, read with the first question. */
  private static final class OfThisJar {
    static final Handbook READ = new Handbook(Shipped.handbook());
  }

  private Handbook(List<TextFile> files) {
    Faults faults = new Faults();
    for (TextFile file : files) {
      YamlText.read(file, faults)
          .ifPresent(
              document -> {
                faults.addAll(SchemaCheck.HANDBOOK.faults(document));
                read(Spot.whole(document));
              });
    }
    if (!faults.isEmpty()) {
      throw new IllegalStateException("the jar was built with a broken handbook");
    }
  }

  /** The shipped tables. */
  public static Handbook shipped() {
    return OfThisJar.READ;
  }

  private void read(Spot whole) {
    each(whole.at("foods"), (key, spot) -> foods.add(food(key, spot)));
    each(whole.at("surfaces"), (key, spot) -> surfaces.add(surface(key, spot)));
    each(whole.at("pans"), (key, spot) -> pans.add(pan(key, spot)));
    each(whole.at("figures"), (key, spot) -> figures.put(key, figure(key, spot)));
    each(whole.at("outage-foods"), (key, spot) -> outageFoods.add(outageFood(key, spot)));
    each(whole.at("lives"), (key, spot) -> lives.add(life(key, spot)));
    numbers(whole.at("scoops"), Measure::scoop);
    numbers(whole.at("ladles"), Measure::ladle);
  }

  /** Takes what stands under a key. */
  private interface Taker {
    void take(String key, Spot spot);
  }

  /** Makes a measure of its number, source and status. */
  private interface Maker {
    Measure make(int number, String source, String status);
  }

  private static void each(Spot mapping, Taker taker) {
    for (String key : mapping.keys()) {
      taker.take(key, mapping.at(key));
    }
  }

  private void numbers(Spot spot, Maker maker) {
    for (Spot number : spot.at("numbers").items()) {
      measures.add(maker.make(number.node().intValue(), spot.text("source"), spot.text("status")));
    }
  }

  private static double number(Spot spot, String key) {
    return spot.at(key).node().doubleValue();
  }

  private static PrintedFood food(String key, Spot spot) {
    Spot grams = spot.at("grams");
    Composition composition =
        Composition.printed(
            number(grams, "water"),
            number(grams, "protein"),
            number(grams, "fat"),
            number(grams, "carbohydrate"),
            number(grams, "fibre"),
            number(grams, "ash"));
    return new PrintedFood(
        key, spot.text("title"), composition, spot.text("source"), spot.text("status"));
  }

  private static Surface surface(String key, Spot spot) {
    return new Surface(
        key,
        spot.text("title"),
        number(spot, "coefficient"),
        spot.text("source"),
        spot.text("status"),
        spot.has("note") ? Optional.of(spot.text("note")) : Optional.empty());
  }

  private static Pan pan(String key, Spot spot) {
    Spot inches = spot.at("inches");
    return new Pan(
        key,
        spot.text("title"),
        number(inches, "length"),
        number(inches, "width"),
        number(inches, "depth"),
        number(spot, "fluid-ounces"),
        spot.text("source"),
        spot.text("status"));
  }

  private static Practice figure(String key, Spot spot) {
    return new Practice(
        key,
        number(spot, "low"),
        number(spot, "high"),
        spot.text("unit"),
        spot.text("source"),
        spot.text("status"));
  }

  private static OutageFood outageFood(String key, Spot spot) {
    return new OutageFood(
        key,
        OutageFood.Place.valueOf(spot.text("place").toUpperCase(Locale.ROOT)),
        OutageFood.Then.valueOf(spot.text("then").toUpperCase(Locale.ROOT)),
        number(spot, "above"),
        number(spot, "hours"),
        spot.text("source"),
        spot.text("status"));
  }

  private static PrintedLife life(String key, Spot spot) {
    Spot months = spot.at("months");
    TreeMap<Double, Double> lives = new TreeMap<>();
    for (String at : months.keys()) {
      lives.put(Double.valueOf(at.substring("at".length())), number(months, at));
    }
    return new PrintedLife(
        key,
        spot.text("title"),
        new LifeModel.Table(lives),
        spot.text("source"),
        spot.text("status"));
  }

  public List<PrintedFood> foods() {
    return List.copyOf(foods);
  }

  public List<Surface> surfaces() {
    return List.copyOf(surfaces);
  }

  public List<Pan> pans() {
    return List.copyOf(pans);
  }

  /** Scoops and ladles. */
  public List<Measure> measures() {
    return List.copyOf(measures);
  }

  public List<PrintedLife> lives() {
    return List.copyOf(lives);
  }

  /** Every kitchen figure. */
  public List<Practice> figures() {
    return List.copyOf(figures.values());
  }

  /**
   * A kitchen figure.
   *
   * @throws IllegalArgumentException if there is none of that key
   */
  public Practice figure(String key) {
    return Optional.ofNullable(figures.get(key))
        .orElseThrow(() -> new IllegalArgumentException("no figure " + key));
  }

  /** The rules of thumb for thawing. */
  public Thawing.Figures thawing() {
    return new Thawing.Figures(
        figure("thaw-refrigerator"),
        figure("thaw-water-small"),
        figure("thaw-water-middle"),
        figure("thaw-water-large"),
        figure("from-frozen"),
        figure("from-frozen-casserole"));
  }

  /** What is kept and what is discarded after a power failure. */
  public List<OutageFood> outageFoods() {
    return List.copyOf(outageFoods);
  }

  /** How long closed appliances stay cold. */
  public Outage outage() {
    return new Outage(
        figure("outage-refrigerator"),
        figure("outage-freezer-full"),
        figure("outage-freezer-half"),
        figure("dry-ice"));
  }
}
