package foilwright.head;

import foilwright.anatomy.HairlineStretch;
import foilwright.geometry.Vector3;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The hairline as a smooth closed curve of template directions, mirror-symmetric, through named
 * points.
 *
 * <p>Centripetal Catmull-Rom spline, so that a point that moves changes only its neighbourhood.
 * Seen from the centre it goes once round an axis tilted 8 degrees back of vertical, so that each
 * azimuth about that axis has one hairline and inside and outside are a comparison of two angles.
 */
final class HairlineCurve {
  private static final double TILT_RAD = Math.toRadians(8);
  private static final Vector3 AXIS = new Vector3(0, -Math.sin(TILT_RAD), Math.cos(TILT_RAD));
  private static final Vector3 FORWARD = new Vector3(0, Math.cos(TILT_RAD), Math.sin(TILT_RAD));
  private static final int STEPS = 12;

  /**
   * A named point of the usual hairline: where on the template (millimetres, client's right), which
   * stretch of hairline begins there, and how far it follows when the front or the nape centre
   * moves.
   */
  private record Knot(
      String name, Vector3 at, HairlineStretch stretch, double withFront, double withNape) {}

  private static final List<Knot> KNOTS =
      List.of(
          knot("front centre", 0, 93, 98, HairlineStretch.FRONT, 1, 0),
          knot("front corner", 37, 81, 97, HairlineStretch.RECESSION, 1, 0),
          knot("recession", 52, 63, 98, HairlineStretch.RECESSION, 0, 0),
          knot("temple", 71, 58, 64, HairlineStretch.TEMPLE, 0.3, 0),
          knot("above sideburn", 77, 44, 40, HairlineStretch.TEMPLE, 0, 0),
          knot("sideburn front", 79, 33, 19, HairlineStretch.SIDEBURN, 0, 0),
          knot("sideburn low front", 79, 28, -7, HairlineStretch.SIDEBURN, 0, 0),
          knot("sideburn low back", 79, 17, -14, HairlineStretch.SIDEBURN, 0, 0),
          knot("sideburn back", 80, 13, -3, HairlineStretch.SIDEBURN, 0, 0),
          knot("before ear", 82, 7, 18, HairlineStretch.OVER_EAR, 0, 0),
          knot("over ear front", 83, -4, 34, HairlineStretch.OVER_EAR, 0, 0),
          knot("over ear", 82, -20, 41, HairlineStretch.OVER_EAR, 0, 0),
          knot("over ear back", 78, -36, 34, HairlineStretch.BEHIND_EAR, 0, 0),
          knot("behind ear", 72, -45, 9, HairlineStretch.BEHIND_EAR, 0, 0),
          knot("behind ear low", 63, -48, -16, HairlineStretch.BEHIND_EAR, 0, 0.3),
          knot("nape side", 57, -51, -37, HairlineStretch.BEHIND_EAR, 0, 0.7),
          knot("nape corner", 43, -59, -51, HairlineStretch.NAPE, 0, 1),
          knot("nape centre", 0, -69, -57, HairlineStretch.NAPE, 0, 1));
  private static final int FRONT_CORNER = 1;
  private static final int RECESSION = 2;
  private static final int TEMPLE = 3;
  private static final int EAR_LINE_END = 12;
  private static final int LAST = KNOTS.size() - 1;

  private static Knot knot(
      String name,
      double x,
      double y,
      double z,
      HairlineStretch stretch,
      double withFront,
      double withNape) {
    return new Knot(name, new Vector3(x, y, z), stretch, withFront, withNape);
  }

  private static final int BINS = 256;

  private final Vector3[] knots;

  /** Azimuth about the axis, 0 to pi from the front, of points along the client's right half. */
  private final double[] azimuth;

  /** Angle from the axis of the same points. */
  private final double[] opening;

  /** For each bin of azimuth, the pieces of the curve (each from its point to the next) in it. */
  private final int[][] pieces;

  private HairlineCurve(Vector3[] knots) {
    this.knots = knots;
    azimuth = new double[LAST * STEPS + 1];
    opening = new double[azimuth.length];
    for (int i = 0; i < azimuth.length; i++) {
      int span = Math.min(i / STEPS, LAST - 1);
      Vector3 u = spline(span, (i - span * STEPS) / (double) STEPS);
      azimuth[i] = i == 0 ? 0 : i == azimuth.length - 1 ? Math.PI : azimuthOf(u);
      opening[i] = openingOf(u);
    }
    pieces = new int[BINS][];
    for (int bin = 0; bin < BINS; bin++) {
      double from = Math.PI * bin / BINS;
      double to = Math.PI * (bin + 1) / BINS;
      pieces[bin] =
          IntStream.range(0, azimuth.length - 1)
              .filter(
                  i ->
                      Math.min(azimuth[i], azimuth[i + 1]) <= to
                          && Math.max(azimuth[i], azimuth[i + 1]) >= from)
              .toArray();
    }
  }

  static HairlineCurve of(
      HeadForm form, double frontRad, double napeRad, HairlineSettings settings) {
    Vector3[] knots = new Vector3[LAST + 1];
    for (int i = 0; i <= LAST; i++) {
      Knot knot = KNOTS.get(i);
      double turn =
          knot.withFront * (frontRad - Template.FRONT_RAD)
              + knot.withNape * (napeRad - Template.napeRad(NapeHeight.MIDDLE));
      knots[i] = turned(knot.at.minus(Template.SURFACE.centre()), turn).unit();
    }
    knots[0] = Tapes.midDirection(frontRad);
    knots[LAST] = Tapes.midDirection(napeRad);
    knots[RECESSION] =
        recession(
            form, knots[FRONT_CORNER], knots[TEMPLE], settings.recessionDepth().toMillimetres());
    return new HairlineCurve(knots);
  }

  /** Turned about the ear-to-ear axis, front up for positive angles. */
  private static Vector3 turned(Vector3 u, double rad) {
    double c = Math.cos(rad);
    double s = Math.sin(rad);
    return new Vector3(u.x(), c * u.y() - s * u.z(), s * u.y() + c * u.z());
  }

  /** A depth away, square to and behind the straight line from the front corner to the temple. */
  private static Vector3 recession(HeadForm form, Vector3 corner, Vector3 temple, double depthMm) {
    Vector3 foot = corner.lerp(temple, 0.4).unit();
    Vector3 back = temple.cross(corner).unit();
    Vector3 from = form.fromTemplate(foot);
    double rad = 0;
    for (int i = 0; i < 8; i++) {
      double tried = rad > 0 ? rad : 0.1;
      Vector3 p = form.fromTemplate(inward(foot, back, tried));
      rad = tried * depthMm / form.straightTape(from, p);
      if (rad == 0) {
        break;
      }
    }
    return inward(foot, back, rad);
  }

  private static Vector3 inward(Vector3 foot, Vector3 back, double rad) {
    return foot.times(Math.cos(rad)).plus(back.times(Math.sin(rad)));
  }

  private Vector3 knot(int i) {
    return i < 0 ? knots[-i].mirrored() : i > LAST ? knots[2 * LAST - i].mirrored() : knots[i];
  }

  private Vector3 spline(int span, double t) {
    Vector3 a = knot(span - 1);
    Vector3 b = knot(span);
    Vector3 c = knot(span + 1);
    Vector3 d = knot(span + 2);
    double t1 = Math.sqrt(a.distance(b));
    double t2 = t1 + Math.sqrt(b.distance(c));
    double t3 = t2 + Math.sqrt(c.distance(d));
    double s = t1 + t * (t2 - t1);
    Vector3 ab = a.lerp(b, s / t1);
    Vector3 bc = b.lerp(c, (s - t1) / (t2 - t1));
    Vector3 cd = c.lerp(d, (s - t2) / (t3 - t2));
    Vector3 abc = ab.lerp(bc, s / t2);
    Vector3 bcd = bc.lerp(cd, (s - t1) / (t3 - t1));
    return abc.lerp(bcd, (s - t1) / (t2 - t1)).unit();
  }

  private static double azimuthOf(Vector3 u) {
    return Math.atan2(Math.abs(u.x()), u.dot(FORWARD));
  }

  private static double openingOf(Vector3 u) {
    return Math.atan2(Math.hypot(u.x(), u.dot(FORWARD)), u.dot(AXIS));
  }

  /**
   * Angle from a template direction to the hairline along its way from the axis, radians; positive
   * outside the hairline, negative inside. Only its sign is continuous where the curve folds.
   */
  double excess(Vector3 direction) {
    double angle = azimuthOf(direction);
    double open = openingOf(direction);
    boolean outside = false;
    double least = Math.PI;
    for (int i : pieces[bin(angle)]) {
      // Half-open, so that a point between two pieces counts once.
      if ((azimuth[i] <= angle) != (azimuth[i + 1] <= angle)
          || (angle == Math.PI && i == azimuth.length - 2)) {
        double off = open - openingAt(i, angle);
        outside ^= off > 0;
        least = Math.min(least, Math.abs(off));
      }
    }
    return outside ? least : -least;
  }

  private static int bin(double angle) {
    return Math.min((int) (angle / Math.PI * BINS), BINS - 1);
  }

  private double openingAt(int piece, double angle) {
    double span = azimuth[piece + 1] - azimuth[piece];
    double t = Math.abs(span) > 1e-15 ? (angle - azimuth[piece]) / span : 0;
    return opening[piece] + Math.min(Math.max(t, 0), 1) * (opening[piece + 1] - opening[piece]);
  }

  /** The stretch of hairline that is nearest to a template direction close to the curve. */
  HairlineStretch stretchAt(Vector3 direction) {
    double angle = azimuthOf(direction);
    double open = openingOf(direction);
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i : pieces[bin(angle)]) {
      double beyond =
          Math.max(
              0,
              Math.max(
                  Math.min(azimuth[i], azimuth[i + 1]) - angle,
                  angle - Math.max(azimuth[i], azimuth[i + 1])));
      double off = Math.hypot(beyond * Math.sin(open), open - openingAt(i, angle));
      if (off < least) {
        least = off;
        best = i;
      }
    }
    return KNOTS.get(best / STEPS).stretch;
  }

  /** The template direction of the front corner on the client's right. */
  Vector3 frontCorner() {
    return knots[FRONT_CORNER];
  }

  /** The template direction of the deepest point of the recession on the client's right. */
  Vector3 recession() {
    return knots[RECESSION];
  }

  /** The template direction behind the right ear, where the ear line ends. */
  Vector3 behindEar() {
    return knots[EAR_LINE_END];
  }
}
