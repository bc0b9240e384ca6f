package chillwright.core.heat;

import java.util.List;

/**
 * Food as a shape that cools in one direction or in several. The shares of the difference left in
 * each direction multiply (ASHRAE Handbook Refrigeration, Cooling and freezing times of foods).
 *
 * @param directions at least one
 */
public record Body(List<Direction> directions) {
  /**
   * One direction in which heat leaves.
   *
   * @param halfMetres half the thickness between two cooled faces, the whole depth where one face
   *     keeps its heat, or a radius; above 0
   */
  public record Direction(Solid solid, double halfMetres) {
    public Direction {
      if (!(halfMetres > 0) || halfMetres > 10) {
        throw new IllegalArgumentException("half a thickness of " + halfMetres + " m");
      }
    }
  }

  public Body {
    directions = List.copyOf(directions);
    if (directions.isEmpty()) {
      throw new IllegalArgumentException("a body needs a direction in which heat leaves");
    }
  }

  /** A wide layer: a pan, a flat bag. With air all round both faces cool it, else only the top. */
  public static Body layer(double depthMetres, boolean isCooledFromBelow) {
    double half = isCooledFromBelow ? depthMetres / 2 : depthMetres;
    return new Body(List.of(new Direction(Solid.SLAB, half)));
  }

  /** A pot: a cylinder, cooled round its side, and from above, and from below if air gets there. */
  public static Body pot(double diameterMetres, double depthMetres, boolean isCooledFromBelow) {
    double half = isCooledFromBelow ? depthMetres / 2 : depthMetres;
    return new Body(
        List.of(
            new Direction(Solid.CYLINDER, diameterMetres / 2), new Direction(Solid.SLAB, half)));
  }

  /** A block cooled on all six faces. */
  public static Body brick(double lengthMetres, double widthMetres, double heightMetres) {
    return new Body(
        List.of(
            new Direction(Solid.SLAB, lengthMetres / 2),
            new Direction(Solid.SLAB, widthMetres / 2),
            new Direction(Solid.SLAB, heightMetres / 2)));
  }

  public static Body sphere(double diameterMetres) {
    return new Body(List.of(new Direction(Solid.SPHERE, diameterMetres / 2)));
  }
}
