package foilwright.pattern;

import foilwright.units.Angle;
import foilwright.units.Length;

/** Limits that hold for any pattern; a breach is the caller's mistake. */
final class Require {
  private Require() {}

  static String text(String text, String what) {
    if (text.isBlank()) {
      throw new IllegalArgumentException(what + " must not be empty");
    }
    return text;
  }

  static Length positive(Length length, String what) {
    if (!(length.toMillimetres() > 0)) {
      throw new IllegalArgumentException(what + " must be more than 0 mm, not " + length);
    }
    return length;
  }

  static Length notNegative(Length length, String what) {
    if (!(length.toMillimetres() >= 0)) {
      throw new IllegalArgumentException(what + " must not be negative, not " + length);
    }
    return length;
  }

  static Extent positive(Extent extent, String what) {
    if (!(extent.amount() > 0)) {
      throw new IllegalArgumentException(what + " must be more than nothing, not " + extent.text());
    }
    return extent;
  }

  static Extent notNegative(Extent extent, String what) {
    if (!(extent.amount() >= 0)) {
      throw new IllegalArgumentException(what + " must not be negative, not " + extent.text());
    }
    return extent;
  }

  static Angle within(Angle angle, double leastDegrees, double mostDegrees, String what) {
    double degrees = angle.toDegrees();
    if (degrees < leastDegrees - 1e-9 || degrees > mostDegrees + 1e-9) {
      throw new IllegalArgumentException(
          what + " must be from " + leastDegrees + " to " + mostDegrees + " deg, not " + angle);
    }
    return angle;
  }
}
