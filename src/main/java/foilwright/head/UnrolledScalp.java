package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.TriangleMesh;

/**
 * The scalp laid flat, equal in area: every patch of the map has the area of its patch of the head.
 *
 * <p>Each point keeps its azimuth about an axis through the form's centre; its distance from the
 * middle of the map follows by integrating area along the way from the axis. On a sphere this is
 * Lambert's azimuthal equal-area projection. Lengths and angles are not kept, worst towards the
 * edge: no length is to be measured on it; {@link #worstStretch} says by how much.
 *
 * <p>Map millimetres: x to the client's right, y to the front over the head, as seen from outside.
 * Areas agree within 0.1 %. Not for the point opposite the axis.
 */
public final class UnrolledScalp {
  private static final int AZIMUTHS = 96;
  private static final int OPENINGS = 96;
  private static final double STEP_RAD = Math.PI / OPENINGS;

  /** Nodes of Gauss's three-point rule on 0 to 1; weights 5, 8, 5 of 18. */
  private static final double[] NODES = {0.5 - Math.sqrt(0.15), 0.5, 0.5 + Math.sqrt(0.15)};

  /**
   * A point of the map.
   *
   * @param xMm to the client's right, millimetres
   * @param yMm to the front, millimetres
   */
  public record Place(double xMm, double yMm) {}

  private final HeadForm form;
  private final Vector3 axis;
  private final Vector3 ahead;
  private final Vector3 right;

  /**
   * For each azimuth (from ahead towards the right) and opening: distance from the middle of the
   * map over twice the sine of half the opening, millimetres. On a sphere that is its radius.
   */
  private final double[][] spread;

  private UnrolledScalp(HeadForm form, Vector3 axis, Vector3 ahead) {
    this.form = form;
    this.axis = axis.unit();
    this.ahead = ahead.minus(this.axis.times(ahead.dot(this.axis))).unit();
    right = this.ahead.cross(this.axis);
    spread = new double[AZIMUTHS][];
    for (int i = 0; i < AZIMUTHS; i++) {
      spread[i] = integrate(2 * Math.PI * i / AZIMUTHS);
    }
  }

  /** The scalp of a head about its area's mean direction, the front ahead. */
  public static UnrolledScalp of(Head head) {
    return about(head.form(), meanDirection(head), Vector3.FRONT);
  }

  /** A form about an axis; the y axis of the map runs from it in a direction across it. */
  static UnrolledScalp about(HeadForm form, Vector3 axis, Vector3 ahead) {
    return new UnrolledScalp(form, axis, ahead);
  }

  private static Vector3 meanDirection(Head head) {
    TriangleMesh mesh = head.mesh();
    Vector3 sum = Vector3.ZERO;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      Vector3 middle = mesh.point(t, 1.0 / 3, 1.0 / 3);
      sum = sum.plus(middle.minus(head.form().centre()).unit().times(mesh.area(t)));
    }
    return new Vector3(0, sum.y(), sum.z()).unit();
  }

  private double[] integrate(double azimuth) {
    Vector3 side = ahead.times(Math.cos(azimuth)).plus(right.times(Math.sin(azimuth)));
    double[] values = new double[OPENINGS + 1];
    double area = 0;
    values[0] = Math.sqrt(density(side, 0));
    for (int k = 1; k <= OPENINGS; k++) {
      double from = (k - 1) * STEP_RAD;
      for (int node = 0; node < 3; node++) {
        double opening = from + NODES[node] * STEP_RAD;
        area += STEP_RAD * (node == 1 ? 8 : 5) / 18 * density(side, opening) * Math.sin(opening);
      }
      values[k] = Math.sqrt(2 * area) / (2 * Math.sin(k * STEP_RAD / 2));
    }
    return values;
  }

  /** Area of surface per solid angle seen from the centre, square millimetres per steradian. */
  private double density(Vector3 side, double opening) {
    Vector3 u = axis.times(Math.cos(opening)).plus(side.times(Math.sin(opening)));
    Vector3 p = form.surfacePoint(form.centre().plus(u));
    double distance = p.distance(form.centre());
    return distance * distance / form.normal(p).dot(u);
  }

  /** The direction from the form's centre that is the middle of the map. */
  public Vector3 axis() {
    return axis;
  }

  /** Where a surface point lies on the map. */
  public Place place(Vector3 point) {
    Vector3 d = point.minus(form.centre());
    double toRight = d.dot(right);
    double toFront = d.dot(ahead);
    double across = Math.hypot(toRight, toFront);
    if (across == 0) {
      return new Place(0, 0);
    }
    double opening = Math.atan2(across, d.dot(axis));
    double turn = Math.atan2(toRight, toFront) / (2 * Math.PI);
    double i = (turn < 0 ? turn + 1 : turn) * AZIMUTHS;
    double k = opening / STEP_RAD;
    int i0 = Math.min((int) i, AZIMUTHS - 1);
    int k0 = Math.min((int) k, OPENINGS - 2);
    double[] columns = new double[4];
    for (int c = 0; c < 4; c++) {
      int azimuth = i0 + c - 1;
      columns[c] =
          smooth(
              at(azimuth, k0 - 1),
              at(azimuth, k0),
              at(azimuth, k0 + 1),
              at(azimuth, k0 + 2),
              k - k0);
    }
    double radius =
        2 * Math.sin(opening / 2) * smooth(columns[0], columns[1], columns[2], columns[3], i - i0);
    return new Place(radius * toRight / across, radius * toFront / across);
  }

  /** Table value; beyond the axis lies the opposite azimuth. */
  private double at(int azimuth, int opening) {
    int i = Math.floorMod(opening < 0 ? azimuth + AZIMUTHS / 2 : azimuth, AZIMUTHS);
    return spread[i][Math.abs(opening)];
  }

  /** Cubic through b and c with the slopes of their neighbours (Catmull-Rom). */
  private static double smooth(double a, double b, double c, double d, double t) {
    double first = (c - a) / 2;
    double last = (d - b) / 2;
    double step = c - b;
    return b + t * (first + t * (3 * step - 2 * first - last + t * (first + last - 2 * step)));
  }

  /**
   * The greatest factor by which the map lengthens or shortens anything on a mesh of the form: 1.3
   * means that a line may come out 30 % too long or as much too short.
   */
  public double worstStretch(TriangleMesh mesh) {
    Place[] places = new Place[mesh.vertexCount()];
    for (int v = 0; v < places.length; v++) {
      places[v] = place(mesh.vertex(v));
    }
    double worst = 1;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      worst = Math.max(worst, stretch(mesh, t, places));
    }
    return worst;
  }

  private static double stretch(TriangleMesh mesh, int t, Place[] places) {
    int a = mesh.corner(t, 0);
    int b = mesh.corner(t, 1);
    int c = mesh.corner(t, 2);
    Vector3 u = mesh.vertex(b).minus(mesh.vertex(a));
    Vector3 v = mesh.vertex(c).minus(mesh.vertex(a));
    double ux = u.norm();
    double vx = u.dot(v) / ux;
    double vy = u.cross(v).norm() / ux;
    double px = places[b].xMm - places[a].xMm;
    double py = places[b].yMm - places[a].yMm;
    double qx = places[c].xMm - places[a].xMm;
    double qy = places[c].yMm - places[a].yMm;
    // The linear map of the triangle, column by column, and its two principal stretches.
    double m00 = px / ux;
    double m10 = py / ux;
    double m01 = (qx - m00 * vx) / vy;
    double m11 = (qy - m10 * vx) / vy;
    double half = (m00 * m00 + m10 * m10 + m01 * m01 + m11 * m11) / 2;
    double det = m00 * m11 - m01 * m10;
    double greatest = Math.sqrt(half + Math.sqrt(Math.max(0, half * half - det * det)));
    return Math.max(greatest, greatest / Math.abs(det));
  }
}
