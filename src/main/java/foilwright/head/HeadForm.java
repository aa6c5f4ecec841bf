package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;
import java.util.Optional;

/**
 * The form of one head: a star-shaped surface stretched along the three axes about the origin.
 *
 * <p>Head frame, millimetres. A point given to {@link #surfacePoint}, {@link #normal} and the like
 * stands for the surface point on its ray from the {@link #centre}; a point of the surface stands
 * for itself. Position, normal and curvature are analytic.
 */
public final class HeadForm {
  private static final double SOLVED_MM = 1e-10;
  private static final double STEP_MM = 2;
  private static final double WALK_MM = 1;

  /**
   * Directions and sizes of the surface's bending at a point.
   *
   * @param least signed, per millimetre; positive where the surface bulges outwards
   * @param greatest the same for the direction across
   */
  public record Curvature(double least, double greatest) {}

  private final StarSurface template;
  private final Vector3 factors;
  private final Vector3 inverse;
  private final Vector3 centre;

  private HeadForm(StarSurface template, Vector3 factors) {
    this.template = template;
    this.factors = factors;
    inverse = new Vector3(1 / factors.x(), 1 / factors.y(), 1 / factors.z());
    centre = template.centre().scaled(factors);
  }

  /**
   * The template stretched by a factor along each axis, about the origin.
   *
   * @throws IllegalArgumentException when a factor is not positive
   */
  public static HeadForm of(StarSurface template, Vector3 factors) {
    if (!(factors.x() > 0 && factors.y() > 0 && factors.z() > 0)) {
      throw new IllegalArgumentException("factors " + factors + " must be more than 0");
    }
    return new HeadForm(template, factors);
  }

  public StarSurface template() {
    return template;
  }

  /** The factors along x, y and z. */
  public Vector3 factors() {
    return factors;
  }

  /** The point inside from which every ray meets the surface once. */
  public Vector3 centre() {
    return centre;
  }

  /** The template's own direction, of any length, for a point of this head's frame. */
  Vector3 templateDirection(Vector3 point) {
    return point.scaled(inverse).minus(template.centre());
  }

  /** The surface point for one of the template's own directions. */
  Vector3 fromTemplate(Vector3 direction) {
    return template.point(direction).scaled(factors);
  }

  /** The surface point on the ray from the centre through a point other than the centre. */
  public Vector3 surfacePoint(Vector3 through) {
    return fromTemplate(templateDirection(through));
  }

  /** Outward unit normal of the surface on the ray through a point. */
  public Vector3 normal(Vector3 through) {
    return template.normal(templateDirection(through)).scaled(inverse).unit();
  }

  /** Angle of the outward normal above the horizontal, radians, on the ray through a point. */
  public double normalElevation(Vector3 through) {
    return Math.asin(Math.max(-1, Math.min(1, normal(through).z())));
  }

  /** Curvature of the surface on the ray through a point. */
  public Curvature curvature(Vector3 through) {
    Vector3 p = template.point(templateDirection(through));
    Vector3 gradient = template.excessGradient(p).scaled(inverse);
    double[] h = template.excessHessian(p);
    double a = inverse.x();
    double b = inverse.y();
    double c = inverse.z();
    double[][] second = {
      {h[0] * a * a, h[1] * a * b, h[2] * a * c},
      {h[1] * a * b, h[3] * b * b, h[4] * b * c},
      {h[2] * a * c, h[4] * b * c, h[5] * c * c}
    };
    double size = gradient.norm();
    Vector3 n = gradient.times(1 / size);
    Vector3 e = tangent(n);
    Vector3 f = n.cross(e);
    double ee = form(second, e, e) / size;
    double ef = form(second, e, f) / size;
    double ff = form(second, f, f) / size;
    double mean = (ee + ff) / 2;
    double spread = Math.hypot((ee - ff) / 2, ef);
    return new Curvature(mean - spread, mean + spread);
  }

  private static Vector3 tangent(Vector3 normal) {
    Vector3 other = Math.abs(normal.x()) < 0.7 ? Vector3.RIGHT : Vector3.UP;
    return other.minus(normal.times(other.dot(normal))).unit();
  }

  private static double form(double[][] m, Vector3 p, Vector3 q) {
    return p.dot(
        new Vector3(
            m[0][0] * q.x() + m[0][1] * q.y() + m[0][2] * q.z(),
            m[1][0] * q.x() + m[1][1] * q.y() + m[1][2] * q.z(),
            m[2][0] * q.x() + m[2][1] * q.y() + m[2][2] * q.z()));
  }

  /** Whether a point lies inside the surface. */
  public boolean contains(Vector3 point) {
    return template.excess(point.scaled(inverse)) < 0;
  }

  /**
   * The nearest point of the surface to a point within some centimetres of it, to 1e-9 mm. Not for
   * points near the middle of the head, which have no single nearest point.
   */
  public Vector3 nearest(Vector3 point) {
    Vector3 at = surfacePoint(point);
    for (int i = 0; i < 60; i++) {
      Vector3 n = normal(at);
      Vector3 off = point.minus(at);
      double height = off.dot(n);
      Vector3 slide = off.minus(n.times(height));
      // Moving along the surface turns the normal: the step shrinks outside and grows inside.
      Curvature bend = curvature(at);
      double turn = 1 + height * (bend.least() + bend.greatest()) / 2;
      at = surfacePoint(at.plus(slide.times(1 / Math.max(0.3, turn))));
      if (slide.norm() < SOLVED_MM) {
        break;
      }
    }
    return at;
  }

  /**
   * Where one arrives who leaves a surface point in a direction and walks straight on along the
   * surface: a geodesic, to about 1e-3 mm in 100 mm.
   *
   * @param direction of any length; only its part along the surface counts
   */
  public Vector3 straightOn(Vector3 from, Vector3 direction, double lengthMm) {
    int steps = (int) Math.ceil(lengthMm / WALK_MM);
    Vector3 p = surfacePoint(from);
    Vector3 heading = direction;
    for (int i = 0; i < steps; i++) {
      Vector3 n = normal(p);
      heading = heading.minus(n.times(heading.dot(n))).unit();
      p = settled(p.plus(heading.times(lengthMm / steps)));
    }
    return p;
  }

  /** A point close to the surface moved onto it along the normal. */
  private Vector3 settled(Vector3 near) {
    Vector3 p = near;
    for (int i = 0; i < 2; i++) {
      Vector3 q = p.scaled(inverse);
      Vector3 gradient = template.excessGradient(q).scaled(inverse);
      p = p.minus(gradient.times(template.excess(q) / gradient.dot(gradient)));
    }
    return p;
  }

  /** Where the ray from a point inside leaves the surface; the direction has any length. */
  public Vector3 exit(Vector3 inside, Vector3 direction) {
    return inside.plus(direction.times(exitAt(inside, direction, 0)));
  }

  /** The multiple of the direction at which it leaves, solved from a first guess. */
  double exitAt(Vector3 inside, Vector3 direction, double guess) {
    Vector3 start = inside.scaled(inverse);
    Vector3 d = direction.scaled(inverse);
    double length = d.norm();
    double t = guess > 0 ? guess : 3 * template.coefficients()[0] / length;
    for (int i = 0; i < 100; i++) {
      Vector3 p = start.plus(d.times(t));
      double slope = template.excessGradient(p).dot(d);
      // Where the ray grazes, walk towards the surface at no more than its full length.
      double step = template.excess(p) / Math.max(slope, 0.2 * length);
      t = Math.max(t - step, 0);
      if (Math.abs(step) * length < SOLVED_MM) {
        break;
      }
    }
    return t;
  }

  /** The first point at which a ray that starts outside meets the surface, if it does. */
  public Optional<Vector3> hit(Vector3 outside, Vector3 direction) {
    Vector3 start = outside.scaled(inverse);
    Vector3 d = direction.scaled(inverse).unit();
    double reach = 2 * template.coefficients()[0];
    double middle = template.centre().minus(start).dot(d);
    double from = Math.max(0, middle - reach);
    double before = template.excess(start.plus(d.times(from)));
    if (before < 0) {
      return Optional.empty();
    }
    for (double t = from + STEP_MM; t < middle + reach; t += STEP_MM) {
      double here = template.excess(start.plus(d.times(t)));
      if (here <= 0) {
        double low = t - STEP_MM;
        double high = t;
        while (high - low > SOLVED_MM) {
          double mid = (low + high) / 2;
          if (mid <= low || mid >= high) {
            break;
          }
          if (template.excess(start.plus(d.times(mid))) > 0) {
            low = mid;
          } else {
            high = mid;
          }
        }
        return Optional.of(start.plus(d.times(high)).scaled(factors));
      }
    }
    return Optional.empty();
  }

  /**
   * Length of the plane cut through the centre from one surface point to another, the short way
   * round, millimetres: a tape laid straight between them. Within 1e-3 mm of the smooth curve; 0
   * for points on one ray, and not for points on opposite rays.
   */
  public double straightTape(Vector3 from, Vector3 to) {
    Vector3 a = templateDirection(from).unit();
    Vector3 b = templateDirection(to).unit();
    double angle = Math.atan2(a.cross(b).norm(), a.dot(b));
    if (angle < 1e-12) {
      return 0;
    }
    return cutLength(a, b.minus(a.times(a.dot(b))).unit(), angle);
  }

  /**
   * Length of the plane cut through the centre from one of the template's directions, turning
   * towards another at a right angle to it, through an angle in radians; both of length 1.
   */
  double cutLength(Vector3 from, Vector3 towards, double angle) {
    int steps = Math.max(2, (int) Math.ceil(angle / 0.05));
    double sum = 0;
    Vector3 before = fromTemplate(from);
    for (int i = 1; i <= 2 * steps; i += 2) {
      double t = angle * i / (2 * steps);
      double u = angle * (i + 1) / (2 * steps);
      Vector3 middle = fromTemplate(from.times(Math.cos(t)).plus(towards.times(Math.sin(t))));
      Vector3 next = fromTemplate(from.times(Math.cos(u)).plus(towards.times(Math.sin(u))));
      double halves = before.distance(middle) + middle.distance(next);
      // Two chords and one over the same arc: the error falls with the square (Richardson).
      sum += halves + (halves - before.distance(next)) / 3;
      before = next;
    }
    return sum;
  }
}
