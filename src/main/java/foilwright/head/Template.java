package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;

/**
 * The template head, before any tape: its surface, and where on it the landmarks lie that a smooth
 * surface does not show by itself.
 *
 * <p>Template frame: the head frame of an adult head about a tenth larger than the average. Surface
 * of degree 6, fitted by {@link HeadFit} to a measured head; root mean square deviation 0.5 mm over
 * the scalp, 1.3 mm over the forehead; the face below it and the neck are only roughly right.
 */
final class Template {
  /** Coefficients in millimetres; the output of {@link HeadFit}, proven by a test. */
  private static final double[] COEFFICIENTS = {
    105.14064028206658, -3.6239313198869043, 11.149019193851954, -4.557905543839689,
    0.9494975373041147, -0.8591778978766196, 0.26646943695045916, -0.7953641759567657,
    -3.022323378981209, 0.5090829712441813, 0.06362922306469049, -0.9639991724990475,
    0.6456925112327125, 6.4375335451489635, -0.38598240466488354, 1.228744966091978,
    -0.516602480303565, 0.38436181095650707, 0.38411493428460347, 0.23835991448596922,
    0.4498600457480924, 0.0061435311004416375, -0.26483353368792284, -0.16064431095160994,
    -0.05598532332487414, -0.06373251058870387, -0.18825176054360201, -0.001050795057925745
  };

  static final StarSurface SURFACE = StarSurface.of(new Vector3(0, 10, 25), COEFFICIENTS);

  /** Angle along the mid-line of the brow point: 36 mm above the ears. */
  static final double BROW_RAD = Math.toRadians(6.5);

  /** Angle along the mid-line of the usual front hairline, and how far a tape may move it. */
  static final double FRONT_RAD = Math.toRadians(42);

  static final double LEAST_FRONT_RAD = Math.toRadians(25);
  static final double MOST_FRONT_RAD = Math.toRadians(65);

  /** Angles along the mid-line between which a tape may put the nape hairline. */
  static final double LEAST_NAPE_RAD = Math.toRadians(206);

  static final double MOST_NAPE_RAD = Math.toRadians(238);

  private Template() {}

  /** Angle along the mid-line of the usual nape hairline of a height. */
  static double napeRad(NapeHeight height) {
    return Math.toRadians(
        switch (height) {
          case LOW -> 231;
          case MIDDLE -> 226;
          case HIGH -> 221;
        });
  }

  /**
   * Factors along x, y and z that make the default heads.
   *
   * <p>Woman and man agree with the survey means of head circumference, length and breadth (ANSUR
   * II, 2012) and ear-to-ear arc (ANSUR I, 1988) with the least worst deviation in standard
   * deviations, 0.58 and 0.29. Child and training head are the woman's evenly scaled to about 520
   * and 540 mm round, which is common practice and not a survey.
   */
  static Vector3 factors(HeadKind kind) {
    Vector3 woman = new Vector3(0.902, 0.929, 0.897);
    return switch (kind) {
      case WOMAN -> woman;
      case MAN -> new Vector3(0.932, 0.964, 0.952);
      case CHILD -> woman.times(0.946);
      case TRAINING_HEAD -> woman.times(0.982);
    };
  }
}
