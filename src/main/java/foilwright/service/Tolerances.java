package foilwright.service;

import foilwright.units.Angle;
import foilwright.units.Length;

/**
 * What a teacher lets pass when practice work is compared with the plan; allowances for hands, none
 * negative.
 *
 * @param partingStraight how far a parting may wander from a straight line
 * @param slice on a slice's thickness, either way
 * @param background on a background's width, either way
 * @param angle on a parting's angle, either way
 * @param foilsBetweenSides difference in number between left and right
 */
public record Tolerances(
    Length partingStraight, Length slice, Length background, Angle angle, int foilsBetweenSides) {
  /** Common practice: 5 mm, 1 mm, 3 mm, 10 deg, 1 foil. */
  public static final Tolerances USUAL =
      new Tolerances(
          Length.ofMillimetres(5),
          Length.ofMillimetres(1),
          Length.ofMillimetres(3),
          Angle.ofDegrees(10),
          1);

  public Tolerances {
    if (partingStraight.compareTo(Length.ZERO) < 0
        || slice.compareTo(Length.ZERO) < 0
        || background.compareTo(Length.ZERO) < 0
        || angle.compareTo(Angle.ZERO) < 0
        || foilsBetweenSides < 0) {
      throw new IllegalArgumentException("a marking tolerance cannot be less than 0");
    }
  }
}
