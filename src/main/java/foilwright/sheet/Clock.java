package foilwright.sheet;

import foilwright.units.Minutes;
import java.time.LocalTime;
import java.util.Locale;
import java.util.Optional;

/**
 * What a clock shows at a moment of the visit: the time of day when the visit's start is known,
 * else hours and minutes since it. Seconds are left out, as on a clock.
 *
 * @param before from the start of the visit to the first parting
 */
record Clock(Minutes before, Optional<LocalTime> start) {
  private static final int MINUTES_IN_A_DAY = 24 * 60;

  /**
   * Half of a thousandth of a minute, so that sums which miss a whole minute by rounding show it.
   */
  private static final double ROUNDING_MIN = 0.0005;

  /** Minutes that the clock's reading has at the first parting. */
  double atFirstParting() {
    return before.toMinutes() + start.map(t -> t.toSecondOfDay() / 60.0).orElse(0.0);
  }

  /**
   * The reading.
   *
   * @param sinceFirstParting may be negative
   */
  String text(Minutes sinceFirstParting) {
    return text(sinceFirstParting.toMinutes());
  }

  String text(double minutesSinceFirstParting) {
    long minutes = (long) Math.floor(atFirstParting() + minutesSinceFirstParting + ROUNDING_MIN);
    if (start.isPresent()) {
      minutes = Math.floorMod(minutes, MINUTES_IN_A_DAY);
      return String.format(Locale.ROOT, "%02d:%02d", minutes / 60, minutes % 60);
    }
    String sign = minutes < 0 ? "\u2212" : "";
    long size = Math.abs(minutes);
    return String.format(Locale.ROOT, "%s%d:%02d", sign, size / 60, size % 60);
  }

  /** How the readings are to be understood. */
  String words() {
    return start.isPresent()
        ? "Times of day"
        : before.equals(Minutes.ZERO)
            ? "Hours and minutes from the first parting"
            : "Hours and minutes from the start of the visit";
  }
}
