package foilwright.placement;

import foilwright.geometry.Vector3;

/**
 * How a person looks at a section: level from outside, or from above.
 *
 * @param view unit direction out of the head, toward the viewer
 * @param rise unit direction that is up for the viewer
 * @param across unit direction to the viewer's right
 * @param above whether the section is seen from above, so that rise points to the face
 */
record ViewFrame(Vector3 view, Vector3 rise, Vector3 across, boolean above) {
  static final ViewFrame FROM_ABOVE = new ViewFrame(Vector3.UP, Vector3.FRONT, Vector3.RIGHT, true);

  /** Looking level at a surface with an outward normal that is not vertical. */
  static ViewFrame level(Vector3 outward) {
    Vector3 view = new Vector3(outward.x(), outward.y(), 0).unit();
    return new ViewFrame(view, Vector3.UP, Vector3.UP.cross(view), false);
  }

  /**
   * The direction of a straight parting that rises to the viewer's right by an angle in radians.
   */
  Vector3 parting(double rising) {
    return across.times(Math.cos(rising)).plus(rise.times(Math.sin(rising)));
  }

  /** The direction square to such a parting, a quarter turn to the left of it. */
  Vector3 square(double rising) {
    return rise.times(Math.cos(rising)).minus(across.times(Math.sin(rising)));
  }
}
