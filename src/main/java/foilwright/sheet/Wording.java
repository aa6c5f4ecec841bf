package foilwright.sheet;

import foilwright.units.Length;
import java.util.Locale;

/**
 * How a sheet speaks.
 *
 * @param inches lengths in inches too, also where millimetres are enough
 * @param leftHanded the order and side of a left-handed person
 */
public record Wording(boolean inches, boolean leftHanded) {
  /** Millimetres, right-handed. */
  public static final Wording USUAL = new Wording(false, false);

  /** Whole millimetres, with inches when they are asked for. */
  String distance(double millimetres) {
    return inches ? both(millimetres) : plain(millimetres) + " mm";
  }

  /** Millimetres and inches. */
  static String both(double millimetres) {
    return plain(millimetres) + " mm (" + inch(millimetres) + " in)";
  }

  /** A length that may run from one value to another, in millimetres and inches. */
  static String both(double leastMm, double mostMm) {
    if (Math.abs(leastMm - mostMm) < 0.75) {
      return both((leastMm + mostMm) / 2);
    }
    return plain(leastMm)
        + " to "
        + plain(mostMm)
        + " mm ("
        + inch(leastMm)
        + " to "
        + inch(mostMm)
        + " in)";
  }

  /** A length in millimetres to half a millimetre, without a needless zero. */
  static String plain(double millimetres) {
    double half = Math.rint(millimetres * 2) / 2;
    return half == Math.rint(half)
        ? String.format(Locale.ROOT, "%.0f", half)
        : String.format(Locale.ROOT, "%.1f", half);
  }

  private static String inch(double millimetres) {
    return String.format(Locale.ROOT, "%.2f", Length.ofMillimetres(millimetres).toInches());
  }
}
