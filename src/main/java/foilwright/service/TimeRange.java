package foilwright.service;

import foilwright.units.Minutes;

/**
 * A time that is told as two.
 *
 * @param p50 on half of such days it is no longer
 * @param p90 on nine days in ten it is no longer; not less than {@code p50}
 */
public record TimeRange(Minutes p50, Minutes p90) {
  public TimeRange {
    if (p50.compareTo(Minutes.ZERO) < 0 || p90.compareTo(p50) < 0) {
      throw new IllegalArgumentException(
          p50 + " and " + p90 + " must be 0 or more and in rising order");
    }
  }

  /** A range of two times in either order. */
  public static TimeRange between(Minutes a, Minutes b) {
    return a.compareTo(b) <= 0 ? new TimeRange(a, b) : new TimeRange(b, a);
  }
}
