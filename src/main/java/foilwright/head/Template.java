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

  /** Elevation of the brow point as seen from the centre: 37 mm above the ears. */
  static final double BROW_RAD = Math.toRadians(6.5);

  private Template() {}
}
