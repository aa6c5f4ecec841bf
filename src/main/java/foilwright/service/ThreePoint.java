package foilwright.service;

import foilwright.units.Minutes;

/**
 * A time as a quick, a usual and a slow value, in that order, none negative.
 *
 * <p>Mean and spread follow the three-point (PERT) formula, (a + 4 m + b) / 6 and ((b - a) / 6)^2;
 * they are not those of the beta distribution through the same three points, whose variance
 * differs, and must not be mixed with it. 30, 45 and 75 min give 47.5 min and 56.25 min2.
 */
public record ThreePoint(Minutes quick, Minutes usual, Minutes slow) {
  public static final ThreePoint NONE = same(Minutes.ZERO);

  public ThreePoint {
    if (quick.compareTo(Minutes.ZERO) < 0
        || usual.compareTo(quick) < 0
        || slow.compareTo(usual) < 0) {
      throw new IllegalArgumentException(
          "quick "
              + quick
              + ", usual "
              + usual
              + ", slow "
              + slow
              + " must be 0 or more and in rising order");
    }
  }

  public static ThreePoint ofMinutes(double quick, double usual, double slow) {
    return new ThreePoint(
        Minutes.ofMinutes(quick), Minutes.ofMinutes(usual), Minutes.ofMinutes(slow));
  }

  /** A time that is always the same. */
  public static ThreePoint same(Minutes always) {
    return new ThreePoint(always, always, always);
  }

  /** (quick + 4 usual + slow) / 6. */
  public Minutes mean() {
    return quick.plus(usual.times(4)).plus(slow).times(1.0 / 6);
  }

  /** (slow - quick) / 6. */
  public Minutes deviation() {
    return slow.minus(quick).times(1.0 / 6);
  }

  /** ((slow - quick) / 6)^2, square minutes. */
  public double varianceSquareMinutes() {
    double sd = deviation().toMinutes();
    return sd * sd;
  }

  /** Value by value: all quick together, all usual, all slow. */
  public ThreePoint plus(ThreePoint other) {
    return new ThreePoint(quick.plus(other.quick), usual.plus(other.usual), slow.plus(other.slow));
  }

  /** All three values times a factor of 0 or more. */
  public ThreePoint times(double factor) {
    return new ThreePoint(quick.times(factor), usual.times(factor), slow.times(factor));
  }
}
