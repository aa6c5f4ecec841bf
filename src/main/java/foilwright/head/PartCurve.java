package foilwright.head;

import foilwright.geometry.Vector3;

/**
 * A side part: the curve at a set distance along the surface from the centre line, on the client's
 * right, as template directions.
 *
 * <p>Each of its points is where one arrives who leaves the centre line at a right angle and walks
 * the distance straight on. It is kept as the angle from the mid-plane for each angle along the
 * mid-line.
 */
final class PartCurve {
  private static final int STEPS = 64;

  private final double[] along;
  private final double[] aside;
  private final double endRad;

  private PartCurve(double[] along, double[] aside, double endRad) {
    this.along = along;
    this.aside = aside;
    this.endRad = endRad;
  }

  /**
   * @param frontRad template angle along the mid-line of the front hairline
   * @param endRad the same of the point of the centre line beside which the part ends
   */
  static PartCurve of(HeadForm form, double frontRad, double endRad, double fromCentreMm) {
    double from = frontRad - 0.35;
    double to = endRad + 0.35;
    double[] along = new double[STEPS + 1];
    double[] aside = new double[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      Vector3 foot = Tapes.midPoint(form, from + (to - from) * i / STEPS);
      Vector3 u = form.templateDirection(form.straightOn(foot, Vector3.RIGHT, fromCentreMm)).unit();
      along[i] = fan(u);
      aside[i] = Math.asin(u.x());
    }
    Vector3 last = form.straightOn(Tapes.midPoint(form, endRad), Vector3.RIGHT, fromCentreMm);
    return new PartCurve(along, aside, fan(form.templateDirection(last)));
  }

  /** Angle about the ear-to-ear axis of a template direction. */
  static double fan(Vector3 direction) {
    double rad = Math.atan2(direction.z(), direction.y());
    return rad < -Math.PI / 2 ? rad + 2 * Math.PI : rad;
  }

  /**
   * Angle by which a template direction lies farther to the client's right than the part or its
   * prolongation, radians.
   */
  double excess(Vector3 direction) {
    double rad = fan(direction);
    double place = (rad - along[0]) / (along[STEPS] - along[0]) * STEPS;
    int i = (int) Math.min(Math.max(place, 0), STEPS - 1);
    while (i > 0 && along[i] > rad) {
      i--;
    }
    while (i < STEPS - 1 && along[i + 1] < rad) {
      i++;
    }
    double t = Math.min(Math.max((rad - along[i]) / (along[i + 1] - along[i]), 0), 1);
    return Math.asin(direction.x() / direction.norm()) - (aside[i] + t * (aside[i + 1] - aside[i]));
  }

  /** Whether the part itself, not only its prolongation, reaches the fan plane of a direction. */
  boolean reaches(Vector3 direction) {
    return fan(direction) <= endRad;
  }
}
