package foilwright.head;

import foilwright.geometry.Vector3;

/**
 * What a tape reads on a head form, millimetres.
 *
 * <p>Each reading is a sum of chords, corrected where the curve is not bridged; within 0.01 mm of
 * the smooth curve on a head. Angles along the mid-line are the template's own, radians, seen from
 * the centre: 0 to the front, a quarter turn straight up, a half turn to the back.
 */
final class Tapes {
  private static final int HALF_STEPS = 180;

  private Tapes() {}

  /** The template's direction of an angle along the mid-line. */
  static Vector3 midDirection(double rad) {
    return new Vector3(0, Math.cos(rad), Math.sin(rad));
  }

  static Vector3 midPoint(HeadForm form, double rad) {
    return form.fromTemplate(midDirection(rad));
  }

  /** Angle along the mid-line of the highest point. */
  static double apexAngle(HeadForm form) {
    double low = Math.toRadians(60);
    double high = Math.toRadians(130);
    while (high - low > 1e-12) {
      double mid = (low + high) / 2;
      if (form.template().normal(midDirection(mid)).y() > 0) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return (low + high) / 2;
  }

  /** Angle along the mid-line of the most prominent point at the back. */
  static double backAngle(HeadForm form) {
    double low = Math.toRadians(150);
    double high = Math.toRadians(200);
    while (high - low > 1e-12) {
      double mid = (low + high) / 2;
      if (form.template().normal(midDirection(mid)).z() > 0) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return (low + high) / 2;
  }

  /** The right preauricular point, where the ear-to-ear axis leaves the surface. */
  static Vector3 rightEar(HeadForm form) {
    return form.exit(Vector3.ZERO, Vector3.RIGHT);
  }

  /** Along the mid-line from one angle to a greater one. */
  static double alongMidLine(HeadForm form, double fromRad, double toRad) {
    if (toRad <= fromRad) {
      return 0;
    }
    return form.cutLength(
        midDirection(fromRad), midDirection(fromRad + Math.PI / 2), toRad - fromRad);
  }

  /** The angle at which a tape laid along the mid-line from a point has used up its length. */
  static double midAngleAfter(HeadForm form, double fromRad, double lengthMm) {
    double rad = fromRad + lengthMm / midPoint(form, fromRad).distance(form.centre());
    for (int i = 0; i < 60; i++) {
      double off = alongMidLine(form, fromRad, rad) - lengthMm;
      if (Math.abs(off) < 1e-9) {
        break;
      }
      rad -= off / speed(form, rad);
    }
    return rad;
  }

  private static double speed(HeadForm form, double rad) {
    double h = 1e-5;
    return midPoint(form, rad + h).distance(midPoint(form, rad - h)) / (2 * h);
  }

  /** From one preauricular point over the apex to the other. */
  static double earToEar(HeadForm form) {
    Vector3 up = midPoint(form, apexAngle(form)).unit();
    double sum = 0;
    double guess = 0;
    Vector3 before = null;
    for (int i = 0; i <= HALF_STEPS / 2; i++) {
      double t = Math.PI * i / HALF_STEPS;
      Vector3 d = up.times(Math.cos(t)).plus(Vector3.RIGHT.times(Math.sin(t)));
      guess = form.exitAt(Vector3.ZERO, d, guess);
      Vector3 p = d.times(guess);
      if (before != null) {
        sum += p.distance(before);
      }
      before = p;
    }
    return 2 * sum;
  }

  /**
   * Round the brow point and the most prominent point at the back: the perimeter of the convex hull
   * of the plane cut.
   */
  static double around(HeadForm form) {
    Vector3 brow = midPoint(form, Template.BROW_RAD);
    Vector3 back = midPoint(form, backAngle(form));
    Vector3 middle = brow.lerp(back, 0.5);
    Vector3 front = brow.minus(back).unit();
    double[] along = new double[HALF_STEPS + 1];
    double[] aside = new double[HALF_STEPS + 1];
    int kept = 0;
    double guess = 0;
    for (int i = 0; i <= HALF_STEPS; i++) {
      double t = Math.PI * i / HALF_STEPS;
      Vector3 d = front.times(Math.cos(t)).plus(Vector3.RIGHT.times(Math.sin(t)));
      guess = form.exitAt(middle, d, guess);
      double a = guess * Math.cos(t);
      double b = i == 0 || i == HALF_STEPS ? 0 : guess * Math.sin(t);
      // A point that would make a hollow is bridged.
      while (kept > 1
          && (aside[kept - 1] - aside[kept - 2]) * (a - along[kept - 2])
              >= (b - aside[kept - 2]) * (along[kept - 1] - along[kept - 2])) {
        kept--;
      }
      along[kept] = a;
      aside[kept++] = b;
    }
    double sum = 0;
    for (int i = 1; i < kept; i++) {
      sum += Math.hypot(along[i] - along[i - 1], aside[i] - aside[i - 1]);
    }
    return 2 * sum;
  }
}
