package foilwright.web;

import foilwright.service.TimeRange;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.Locale;

/** Quantities as a page tells them; every number with its unit. */
final class Measure {
  /** Less than this before a whole minute is that minute. */
  private static final double ROUNDING_MIN = 0.0005;

  private Measure() {}

  /** From the time that half of such days keep to that which nine in ten keep. */
  static String range(Minutes half, Minutes nineInTen) {
    return format(
        "%.0f to %.0f min", half.toMinutes(), Math.max(0, Math.ceil(nineInTen.toMinutes() - 1e-6)));
  }

  static String hours(TimeRange time) {
    return hours(Math.round(time.p50().toMinutes()))
        + " to "
        + hours((long) Math.ceil(time.p90().toMinutes() - 1e-6));
  }

  private static String hours(long minutes) {
    return minutes / 60 + " h " + minutes % 60 + " min";
  }

  /** A moment as a clock reads, counted from the start of the visit: the minute that has begun. */
  static String at(Minutes time) {
    long minutes = (long) Math.floor(time.toMinutes() + ROUNDING_MIN);
    return format("%d:%02d", minutes / 60, minutes % 60);
  }

  static String minutes(double minutes) {
    return format("%.0f min", minutes);
  }

  static String grams(Mass mass) {
    return format("%.1f g", mass.toGrams());
  }

  static String wholeGrams(double grams) {
    return format("%.0f g", grams);
  }

  static String share(Share share) {
    return format("%.1f %%", share.toPercent());
  }

  private static String format(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
