package foilwright.cli;

import foilwright.service.TimeEstimate;
import foilwright.service.TimeRange;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.Locale;

/**
 * Quantities as a person reads them on a terminal; every number with its unit.
 *
 * @param inches whether lengths and areas are told in inches too
 */
record Measures(boolean inches) {
  private static final double SQUARE_INCH_MM2 = 25.4 * 25.4;

  /** To a tenth of a millimetre, and a hundredth of an inch. */
  String fine(Length length) {
    return length + (inches ? " (" + length.toInchText() + ")" : "");
  }

  /** To the millimetre, and a tenth of an inch. */
  String whole(Length length) {
    String mm = format("%.0f mm", length.toMillimetres());
    return mm + (inches ? format(" (%.1f in)", length.toInches()) : "");
  }

  String area(Area area) {
    String cm2 = format("%.1f cm2", area.toSquareCentimetres());
    return cm2
        + (inches ? format(" (%.2f sq in)", area.toSquareMillimetres() / SQUARE_INCH_MM2) : "");
  }

  String grams(Mass mass) {
    return format(mass.toGrams() < 0.1 ? "%.2f g" : "%.1f g", mass.toGrams());
  }

  String share(Share share) {
    return percent(share.toFraction());
  }

  String percent(double fraction) {
    return format("%.1f %%", 100 * fraction);
  }

  /** A count of hairs to three figures. */
  String hairs(double hairs) {
    double step = Math.pow(10, Math.max(0, Math.floor(Math.log10(Math.max(1, hairs))) - 2));
    return format("%.0f hairs", Math.rint(hairs / step) * step);
  }

  /** From the time that half of such days keep to that which nine in ten keep. */
  String range(TimeEstimate time) {
    return range(time.p50(), time.p90());
  }

  String range(Minutes from, Minutes to) {
    if (to.toMinutes() < 0.05) {
      return "0 min";
    }
    if (to.toMinutes() < 10) {
      return format("%.1f to %.1f min", from.toMinutes(), to.toMinutes());
    }
    return format("%.0f to %.0f min", from.toMinutes(), Math.ceil(to.toMinutes()));
  }

  /** Chair time: hours and minutes, and minutes. */
  String chair(TimeRange time) {
    double to = Math.ceil(time.p90().toMinutes());
    return hours(time.p50().toMinutes())
        + " to "
        + hours(to)
        + format(" (%.0f to %.0f min)", time.p50().toMinutes(), to);
  }

  /** Minutes from the start of the visit. */
  String since(Minutes time) {
    return format("minute %.0f", Math.floor(time.toMinutes()));
  }

  String minutes(Minutes time) {
    return format(time.toMinutes() < 10 ? "%.1f min" : "%.0f min", time.toMinutes());
  }

  private static String hours(double minutes) {
    long whole = Math.round(minutes);
    return whole / 60 + " h " + whole % 60 + " min";
  }

  String angle(double degrees) {
    return format("%.0f deg", degrees);
  }

  private static String format(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
