package chillwright.core.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import chillwright.core.portions.Pan;
import chillwright.core.portions.Portion;
import chillwright.rulebook.Handbook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Runs every row of {@code src/test/resources/cases/ahead}: worked examples that others published,
 * and figures derived from published data. A new case is a new row.
 */
class HeatCasesTest {
  private static final Path CASES =
      Path.of(System.getProperty("basedir", System.getProperty("user.dir")))
          .resolve("src/test/resources/cases/ahead");
  private static final Handbook HANDBOOK = Handbook.shipped();
  private static final double HOUR = 3600;

  private static final Map<String, ToDoubleFunction<HeatCase>> FORMULAS = new TreeMap<>();

  static {
    conduction();
    foods();
    freezing();
    lives();
    kitchen();
  }

  @TestFactory
  Stream<DynamicContainer> every_case_comes_out_as_its_source_says() {
    return files().stream()
        .map(
            file ->
                DynamicContainer.dynamicContainer(
                    file.getFileName().toString(),
                    HeatCase.of(file).stream()
                        .map(row -> DynamicTest.dynamicTest(row.name(), () -> run(row)))));
  }

  private static void run(HeatCase row) {
    ToDoubleFunction<HeatCase> formula = FORMULAS.get(row.formula());
    assertThat(formula).as("formula " + row.formula()).isNotNull();
    assertThat(formula.applyAsDouble(row))
        .as("%s%nsource: %s", row.name(), row.source())
        .isCloseTo(row.expected(), within(row.tolerance()));
  }

  @Test
  void no_formula_is_left_without_a_case() {
    Set<String> used = new HashSet<>();
    files().forEach(file -> HeatCase.of(file).forEach(row -> used.add(row.formula())));
    assertThat(used).isEqualTo(FORMULAS.keySet());
  }

  private static List<Path> files() {
    try (Stream<Path> files = Files.list(CASES)) {
      return files.filter(file -> file.toString().endsWith(".csv")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void conduction() {
    FORMULAS.put("j0", row -> Bessel.j0(row.number("x")));
    FORMULAS.put("j1", row -> Bessel.j1(row.number("x")));
    FORMULAS.put("root", row -> solid(row).root(1, row.number("biot")));
    FORMULAS.put(
        "coefficient", row -> solid(row).coefficient(solid(row).root(1, row.number("biot"))));
    FORMULAS.put("f", HeatCasesTest::slope);
    FORMULAS.put("j", row -> cooling(row).lag());
    FORMULAS.put(
        "surfaceSeconds", row -> secondsUntil(row, seconds -> cooling(row).surfaceShare(seconds)));
    FORMULAS.put("centreSeconds", row -> centreHours(row) * HOUR);
    FORMULAS.put("centreHours", HeatCasesTest::centreHours);
    FORMULAS.put(
        "centreShare", row -> new Series(solid(row), row.number("biot")).centre(row.number("fo")));
    FORMULAS.put(
        "centreAfter",
        row ->
            row.number("surroundings")
                + (row.number("start") - row.number("surroundings"))
                    * cooling(row).centreShare(row.number("seconds")));
  }

  private static Solid solid(HeatCase row) {
    return row.has("solid")
        ? Solid.valueOf(row.text("solid").toUpperCase(Locale.ROOT))
        : Solid.SLAB;
  }

  /** Hours, or without a dimension f alpha / L2. */
  private static double slope(HeatCase row) {
    double hours = cooling(row).tenfoldHours();
    if (row.text("unit").equals("hours")) {
      return hours;
    }
    double half = row.number("half");
    return hours * HOUR * row.number("diffusivity") / (half * half);
  }

  private static double centreHours(HeatCase row) {
    Cooling.Course course =
        new Cooling.Course(row.number("start"), row.number("surroundings"), -100);
    Duration time = cooling(row).reaches(course, row.number("target")).value().orElseThrow();
    return time.toMillis() / 1000.0 / HOUR;
  }

  private static double secondsUntil(HeatCase row, DoubleUnaryOperator share) {
    double wanted =
        (row.number("target") - row.number("surroundings"))
            / (row.number("start") - row.number("surroundings"));
    double low = 0;
    double high = 1e6;
    for (int i = 0; i < 80; i++) {
      double middle = (low + high) / 2;
      if (share.applyAsDouble(middle) > wanted) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  private static Cooling cooling(HeatCase row) {
    double conductivity = row.number("conductivity", 1);
    double diffusivity = row.number("diffusivity", 1e-7);
    // Any density and heat that give this diffusivity will do.
    Properties food = new Properties(1000, conductivity, conductivity / diffusivity / 1000 / 1000);
    double coefficient =
        row.has("biot")
            ? row.number("biot") * conductivity / row.number("half", 1)
            : row.number("coefficient");
    return new Cooling(body(row), food, coefficient);
  }

  private static Body body(HeatCase row) {
    if (row.has("brick")) {
      double[] sides = row.numbers("brick");
      return Body.brick(sides[0], sides[1], sides[2]);
    }
    if (row.has("cylinder")) {
      double[] sizes = row.numbers("cylinder");
      return Body.pot(sizes[0], sizes[1], true);
    }
    return new Body(List.of(new Body.Direction(solid(row), row.number("half", 1))));
  }

  private static void foods() {
    FORMULAS.put("density", row -> properties(row).density());
    FORMULAS.put("conductivity", row -> properties(row).conductivity());
    FORMULAS.put("specificHeat", row -> properties(row).specificHeat());
    FORMULAS.put("diffusivity", row -> properties(row).diffusivity());
    FORMULAS.put("iceTchigeov", row -> wet(row).ice(row.number("celsius"), row.number("freezing")));
    FORMULAS.put(
        "iceMiles", row -> wet(row).iceByMiles(row.number("celsius"), row.number("freezing")));
    FORMULAS.put(
        "heatContentKilocalories",
        row -> wet(row).heatContent(row.number("celsius"), row.number("freezing")) / 4.184);
  }

  private static Properties properties(HeatCase row) {
    double[] p = row.numbers("printed");
    return Composition.printed(p[0], p[1], p[2], p[3], p[4], p[5])
        .unfrozen(row.number("celsius"), FreezingFood.USUAL_POINT)
        .value()
        .orElseThrow();
  }

  /** Food of which only the water and the protein are told; the rest counts as carbohydrate. */
  private static Composition wet(HeatCase row) {
    double water = row.number("water");
    double protein = row.number("protein");
    return new Composition(water, protein, 0, 1 - water - protein, 0, 0);
  }

  private static void freezing() {
    FORMULAS.put("logMean", row -> Freezing.logMean(row.number("a"), row.number("b")));
    FORMULAS.put(
        "endAverage",
        row -> Freezing.endAverage(row.number("centre"), row.number("air"), row.number("biot")));
    FORMULAS.put(
        "heat",
        row -> row.number("mass") * freezingFood(row).heat(row.number("start"), row.number("end")));
    FORMULAS.put("plankHours", row -> freezingOf(row).plankHours(row.number("difference")));
    FORMULAS.put("pham1984Hours", row -> freezingOf(row).pham1984Hours(course(row)));
    FORMULAS.put("pham1986Hours", row -> freezingOf(row).pham1986Hours(course(row)));
  }

  private static Freezing.Course course(HeatCase row) {
    return new Freezing.Course(row.number("start"), row.number("end"), row.number("air"));
  }

  private static Freezing freezingOf(HeatCase row) {
    return new Freezing(
        freezingFood(row), solid(row), row.number("thickness"), row.number("coefficient"));
  }

  private static FreezingFood freezingFood(HeatCase row) {
    double density = row.number("density", 1000);
    double conductivity = row.number("conductivity", 0.5);
    return new FreezingFood(
        new Properties(density, conductivity, row.number("unfrozenHeat", 3.6)),
        new Properties(
            row.number("frozenDensity", density),
            row.number("frozenConductivity", conductivity),
            row.number("frozenHeat", 1.9)),
        row.number("latent"),
        row.number("freezing", -1));
  }

  private static void lives() {
    FORMULAS.put("usedPercent", row -> 100 * history(row).used(model(row)).value().orElseThrow());
    FORMULAS.put("daysLeft", row -> history(row).left(model(row)).value().orElseThrow());
    FORMULAS.put("life", row -> model(row).life(row.number("celsius")).value().orElseThrow());
  }

  private static FrozenHistory history(HeatCase row) {
    return new FrozenHistory(
        row.pairs("steps").stream().map(step -> new FrozenHistory.Step(step[0], step[1])).toList());
  }

  private static LifeModel model(HeatCase row) {
    if (row.has("table")) {
      TreeMap<Double, Double> lives = new TreeMap<>();
      row.pairs("table").forEach(pair -> lives.put(pair[0], pair[1]));
      return new LifeModel.Table(lives);
    }
    if (row.has("q10")) {
      return new LifeModel.Factor(row.numbers("q10")[0], row.numbers("q10")[1]);
    }
    return new LifeModel.Arrhenius(row.numbers("arrhenius")[0], row.numbers("arrhenius")[1]);
  }

  private static void kitchen() {
    FORMULAS.put("portionsPerPan", row -> pan(row).portions(row.number("portion")));
    FORMULAS.put("portions", row -> new Portion(row.number("portion")).in(row.number("ounces")));
    FORMULAS.put(
        "scoops",
        row ->
            HANDBOOK.measures().stream()
                .filter(scoop -> scoop.key().equals("scoop-" + row.text("scoop")))
                .findFirst()
                .orElseThrow()
                .in(row.number("ounces")));
    FORMULAS.put(
        "pans",
        row ->
            pan(row)
                .count(row.number("litres") * 1000 / Portion.MILLILITRES, row.number("depth"))
                .value()
                .orElseThrow());
    FORMULAS.put("freezerLoadPounds", row -> load(row).poundsPerDay());
    FORMULAS.put("freezerDays", row -> load(row).days(row.number("pounds")));
    FORMULAS.put("coldWaterHours", row -> thawing(row).coldWater().shortest());
    FORMULAS.put("coldWaterHoursLongest", row -> thawing(row).coldWater().longest());
    FORMULAS.put("refrigeratorHours", row -> thawing(row).refrigerator().shortest());
    FORMULAS.put("refrigeratorHoursLongest", row -> thawing(row).refrigerator().longest());
    FORMULAS.put(
        "fromFrozenHours",
        row ->
            new Thawing(1, HANDBOOK.thawing())
                .fromFrozen(row.number("hours"), row.has("casserole"))
                .longest());
    FORMULAS.put("dryIcePounds", row -> HANDBOOK.outage().dryIcePounds(row.number("cubicFeet")));
    FORMULAS.put(
        "iceKilograms",
        row ->
            new IceBath(row.number("kilograms"), row.number("heat"), 0, 0)
                .kilograms(row.number("start"), row.number("end"))
                .value()
                .orElseThrow());
  }

  private static Pan pan(HeatCase row) {
    return HANDBOOK.pans().stream()
        .filter(pan -> pan.key().equals(row.text("pan")))
        .findFirst()
        .orElseThrow();
  }

  private static FreezerLoad load(HeatCase row) {
    return new FreezerLoad(
        row.number("cubicFeet"), HANDBOOK.figure("freezer-load-" + row.text("kind")));
  }

  private static Thawing thawing(HeatCase row) {
    return new Thawing(row.number("pounds"), HANDBOOK.thawing());
  }
}
