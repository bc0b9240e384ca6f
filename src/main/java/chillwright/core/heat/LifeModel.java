package chillwright.core.heat;

import java.util.Collections;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How long frozen food keeps its quality at a temperature, in any unit of time. Quality, never
 * safety. Range: -5 °C and colder; warmer food is thawing, which is a rule of its own.
 */
public sealed interface LifeModel {
  /** The storage temperature that lives are printed for, °C (0 °F). */
  double REFERENCE = -18;

  /** Warmest temperature told of: measured lives go up to it. */
  double WARMEST = -5;

  /** Life at a temperature; a reason where it is too warm to be told. */
  default Answer<Double> life(double celsius) {
    return celsius > WARMEST ? Answer.beyond(Reason.NOT_FROZEN) : Answer.known(lifeFrozen(celsius));
  }

  /** Life at a temperature of at most {@link #WARMEST}. */
  double lifeFrozen(double celsius);

  /**
   * A life at -18 °C that is shorter by the factor {@code q10} for ten degrees more, with no gain
   * below -18 °C. Published factors go from 1.6 to 3.9, and there is no single one; 3 is our
   * choice.
   */
  record Factor(double lifeAtReference, double q10) implements LifeModel {
    public Factor {
      if (!(lifeAtReference > 0 && q10 >= 1)) {
        throw new IllegalArgumentException("life " + lifeAtReference + ", Q10 " + q10);
      }
    }

    @Override
    public double lifeFrozen(double celsius) {
      double warmer = Math.max(0, celsius - REFERENCE);
      return lifeAtReference * Math.pow(q10, -warmer / 10);
    }
  }

  /**
   * Printed lives at several temperatures: log-linear between them and warmer than the warmest, no
   * gain below the coldest.
   */
  record Table(NavigableMap<Double, Double> lives) implements LifeModel {
    public Table {
      lives = Collections.unmodifiableNavigableMap(new TreeMap<>(lives));
      if (lives.size() < 2 || lives.values().stream().anyMatch(life -> !(life > 0))) {
        throw new IllegalArgumentException("a table of lives needs two at least, above 0");
      }
    }

    @Override
    public double lifeFrozen(double celsius) {
      Optional<Map.Entry<Double, Double>> colder = Optional.ofNullable(lives.floorEntry(celsius));
      if (colder.isEmpty()) {
        return lives.firstEntry().getValue();
      }
      Map.Entry<Double, Double> low =
          celsius >= lives.lastKey() ? lives.lowerEntry(lives.lastKey()) : colder.get();
      Map.Entry<Double, Double> high = lives.higherEntry(low.getKey());
      double way = (celsius - low.getKey()) / (high.getKey() - low.getKey());
      return low.getValue() * Math.pow(high.getValue() / low.getValue(), way);
    }
  }

  /**
   * A life at -18 °C and an activation energy: {@code life(Tref) exp((Ea/R)(1/T - 1/Tref))},
   * kelvin.
   *
   * @param kilojoules activation energy, kJ/mol
   */
  record Arrhenius(double lifeAtReference, double kilojoules) implements LifeModel {
    private static final double GAS = 8.314e-3;
    private static final double ZERO = 273.15;

    public Arrhenius {
      if (!(lifeAtReference > 0 && kilojoules > 0)) {
        throw new IllegalArgumentException("life " + lifeAtReference + ", Ea " + kilojoules);
      }
    }

    @Override
    public double lifeFrozen(double celsius) {
      double reciprocal = 1 / (celsius + ZERO) - 1 / (REFERENCE + ZERO);
      return lifeAtReference * Math.exp(kilojoules / GAS * reciprocal);
    }
  }
}
