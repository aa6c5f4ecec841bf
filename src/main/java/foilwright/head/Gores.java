package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * The scalp in flat gores at true size, like the peel of an orange: cut out and joined at their
 * edges they wrap the head.
 *
 * <p>The gores meet at the {@link UnrolledScalp#axis axis} of the unrolled scalp, the first two at
 * the front of the centre line, and follow each other towards the client's left, the back and the
 * right. A gore keeps the width of the surface at every distance from the axis, and its length
 * along its middle. Its edges then come out too long by the excess, which falls with the square of
 * the number of gores. Neighbours share one length for their common edge, step by step, so that
 * they join exactly. Areas agree within 1 %, a length of 10 mm within 0.4 mm.
 *
 * <p>Map millimetres of each gore: y from the axis towards the hairline, x to the right as the gore
 * is seen from outside with the axis at the top of the sheet. Not for points far outside the scalp.
 */
public final class Gores {
  /** More than this and the paper would crease at its edges. */
  public static final double MOST_EXCESS = 0.02;

  private static final int FEWEST = 8;
  private static final int MOST = 40;
  private static final double STEP_RAD = Math.toRadians(2.5);
  private static final int PARTS = 8;

  /**
   * A point of a gore.
   *
   * @param xMm to the right, millimetres
   * @param yMm away from the axis, millimetres
   */
  public record Place(double xMm, double yMm) {
    private double distance(Place other) {
      return Math.hypot(xMm - other.xMm, yMm - other.yMm);
    }

    private Place towards(Place other, double share) {
      return new Place(xMm + share * (other.xMm - xMm), yMm + share * (other.yMm - yMm));
    }
  }

  private final HeadForm form;
  private final Vector3 axis;
  private final Vector3 ahead;
  private final Vector3 left;
  private final int count;
  private final int steps;

  /** For each gore and step from the axis: its left and right corner. */
  private final Place[][] lefts;

  private final Place[][] rights;

  /** For each gore, step and part of its width: the share of the width up to there. */
  private final double[][][] shares;

  private final double excess;
  private final List<ScalarField> besideEdge;

  private Gores(Head head, int count) {
    this.form = head.form();
    this.count = count;
    axis = UnrolledScalp.of(head).axis();
    ahead = Vector3.FRONT.minus(axis.times(Vector3.FRONT.dot(axis))).unit();
    left = axis.cross(ahead);
    double[] ends = ends(head.mesh());
    steps = (int) Math.ceil(DoubleStream.of(ends).max().orElseThrow() / STEP_RAD) + 1;
    lefts = new Place[count][steps + 1];
    rights = new Place[count][steps + 1];
    shares = new double[count][steps + 1][];
    excess = lay(ends);
    List<ScalarField> fields = new ArrayList<>();
    for (int edge = 0; edge < count; edge++) {
      int number = edge;
      fields.add(ScalarField.compute(head.mesh(), p -> besideEdge(number, p)));
    }
    besideEdge = List.copyOf(fields);
  }

  /** As few gores as keep the excess of every edge under 2 %, an even number. */
  public static Gores of(Head head) {
    for (int n = FEWEST; n < MOST; n += 2) {
      Gores gores = new Gores(head, n);
      if (gores.excess < MOST_EXCESS) {
        return gores;
      }
    }
    return new Gores(head, MOST);
  }

  /** A given number of gores, 6 to 60. */
  public static Gores of(Head head, int count) {
    if (count < 6 || count > 60) {
      throw new IllegalArgumentException("6 to 60 gores can be laid, not " + count);
    }
    return new Gores(head, count);
  }

  private double azimuth(double edge) {
    return 2 * Math.PI * edge / count;
  }

  /** For each edge, how far from the axis scalp lies within half a gore of it, radians. */
  private double[] ends(TriangleMesh mesh) {
    double[] ends = new double[count];
    for (int v = 0; v < mesh.vertexCount(); v++) {
      Vector3 d = mesh.vertex(v).minus(form.centre());
      int edge = (int) Math.floorMod(Math.round(turns(d) * count), (long) count);
      ends[edge] = Math.max(ends[edge], opening(d));
    }
    return ends;
  }

  /** Azimuth in turns, from 0 to 1. */
  private double turns(Vector3 d) {
    double turns = Math.atan2(d.dot(left), d.dot(ahead)) / (2 * Math.PI);
    return turns < 0 ? turns + 1 : turns;
  }

  private double opening(Vector3 d) {
    return Math.atan2(Math.hypot(d.dot(ahead), d.dot(left)), d.dot(axis));
  }

  private Vector3 point(double azimuth, double opening) {
    Vector3 side = ahead.times(Math.cos(azimuth)).plus(left.times(Math.sin(azimuth)));
    return form.surfacePoint(
        form.centre().plus(axis.times(Math.cos(opening))).plus(side.times(Math.sin(opening))));
  }

  /** Length along the surface between two openings at one azimuth. */
  private double along(double azimuth, int step) {
    double sum = 0;
    Vector3 before = point(azimuth, step * STEP_RAD);
    for (int i = 1; i <= 2; i++) {
      Vector3 here = point(azimuth, (step + i / 2.0) * STEP_RAD);
      sum += here.distance(before);
      before = here;
    }
    return sum;
  }

  /** Lays all gores and returns the greatest excess of an edge. */
  private double lay(double[] ends) {
    double[][] edges = new double[count][steps];
    double[][] widths = new double[count][steps + 1];
    double[][] leans = new double[count][steps];
    for (int g = 0; g < count; g++) {
      for (int k = 0; k < steps; k++) {
        edges[g][k] = along(azimuth(g), k);
      }
      for (int k = 0; k <= steps; k++) {
        widths[g][k] = measureWidth(g, k);
      }
      for (int k = 0; k < steps; k++) {
        Vector3 a = point(azimuth(g), k * STEP_RAD);
        Vector3 b = point(azimuth(g + 1), k * STEP_RAD);
        Vector3 c = point(azimuth(g), (k + 1) * STEP_RAD);
        Vector3 d = point(azimuth(g + 1), (k + 1) * STEP_RAD);
        leans[g][k] = a.distance(d) - b.distance(c);
      }
    }
    double[][] factors = new double[count][steps];
    for (int g = 0; g < count; g++) {
      for (int k = 0; k < steps; k++) {
        Quad quad =
            Quad.of(
                widths[g][k],
                widths[g][k + 1],
                edges[g][k],
                edges[(g + 1) % count][k],
                leans[g][k]);
        factors[g][k] = along(azimuth(g + 0.5), k) / quad.middleLength();
      }
    }
    double worst = 0;
    double[][] flat = new double[count][steps];
    for (int g = 0; g < count; g++) {
      double longer = 0;
      double length = 0;
      for (int k = 0; k < steps; k++) {
        double factor = (factors[g][k] + factors[(g + count - 1) % count][k]) / 2;
        flat[g][k] = edges[g][k] * factor;
        if (k * STEP_RAD < ends[g]) {
          longer += flat[g][k];
          length += edges[g][k];
        }
      }
      worst = Math.max(worst, longer / length - 1);
    }
    for (int g = 0; g < count; g++) {
      layOne(g, widths[g], flat[g], flat[(g + 1) % count], leans[g]);
    }
    return worst;
  }

  private double measureWidth(int gore, int step) {
    double[] share = new double[PARTS + 1];
    Vector3 before = point(azimuth(gore), step * STEP_RAD);
    for (int i = 1; i <= PARTS; i++) {
      Vector3 here = point(azimuth(gore + (double) i / PARTS), step * STEP_RAD);
      share[i] = share[i - 1] + here.distance(before);
      before = here;
    }
    double width = share[PARTS];
    for (int i = 1; i <= PARTS; i++) {
      share[i] = width > 0 ? share[i] / width : (double) i / PARTS;
    }
    shares[gore][step] = share;
    return width;
  }

  /** Puts the quadrilaterals of a gore one below another, then turns it to hang straight. */
  private void layOne(int gore, double[] width, double[] left, double[] right, double[] lean) {
    Place[] a = lefts[gore];
    Place[] b = rights[gore];
    a[0] = new Place(0, 0);
    b[0] = a[0];
    double turn = 0;
    for (int k = 0; k < steps; k++) {
      Quad quad = Quad.of(width[k], width[k + 1], left[k], right[k], lean[k]);
      double cos = Math.cos(turn);
      double sin = Math.sin(turn);
      a[k + 1] =
          new Place(
              a[k].xMm + cos * quad.ax() - sin * quad.ay(),
              a[k].yMm + sin * quad.ax() + cos * quad.ay());
      b[k + 1] =
          new Place(
              a[k].xMm + cos * quad.bx() - sin * quad.by(),
              a[k].yMm + sin * quad.bx() + cos * quad.by());
      turn = Math.atan2(b[k + 1].yMm - a[k + 1].yMm, b[k + 1].xMm - a[k + 1].xMm);
    }
    Place end = a[steps].towards(b[steps], 0.5);
    double off = Math.atan2(end.xMm, end.yMm);
    for (int k = 0; k <= steps; k++) {
      a[k] = turned(a[k], off);
      b[k] = turned(b[k], off);
    }
  }

  private static Place turned(Place p, double angle) {
    double cos = Math.cos(angle);
    double sin = Math.sin(angle);
    return new Place(cos * p.xMm - sin * p.yMm, sin * p.xMm + cos * p.yMm);
  }

  /**
   * A flat quadrilateral below a level side from (0, 0) to (width, 0): its lower corners.
   *
   * @param ax of the corner below (0, 0)
   */
  private record Quad(double width, double ax, double ay, double bx, double by) {
    /**
     * The one with four given sides whose diagonals differ by a given length.
     *
     * @param lean how much longer the diagonal from (0, 0) is than the other
     */
    static Quad of(double width, double lower, double left, double right, double lean) {
      double reach = Math.max(-0.9, Math.min(0.9, (lower - width) / 2 / left));
      double t0 = Math.asin(reach);
      double t1 = t0 + 1e-3;
      double f0 = at(t0, width, lower, left, right).lean() - lean;
      for (int i = 0; i < 30; i++) {
        double f1 = at(t1, width, lower, left, right).lean() - lean;
        if (Math.abs(f1) < 1e-11 || f1 == f0) {
          break;
        }
        double next = t1 - f1 * (t1 - t0) / (f1 - f0);
        t0 = t1;
        f0 = f1;
        t1 = Math.max(-1.2, Math.min(1.2, next));
      }
      return at(t1, width, lower, left, right);
    }

    /** Left side leaning outwards by an angle; the fourth corner lies where two circles meet. */
    private static Quad at(double angle, double width, double lower, double left, double right) {
      double ax = -left * Math.sin(angle);
      double ay = left * Math.cos(angle);
      double dx = width - ax;
      double dy = -ay;
      double d = Math.hypot(dx, dy);
      double s = (d * d + lower * lower - right * right) / (2 * d);
      double h = Math.sqrt(Math.max(0, lower * lower - s * s));
      double bx = ax + (s * dx - h * dy) / d;
      double by = ay + (s * dy + h * dx) / d;
      return new Quad(width, ax, ay, bx, by);
    }

    double lean() {
      return Math.hypot(bx, by) - Math.hypot(ax - width, ay);
    }

    double middleLength() {
      return Math.hypot((ax + bx - width) / 2, (ay + by) / 2);
    }
  }

  public int count() {
    return count;
  }

  /** The greatest share by which an edge is longer than the surface under it. */
  public double worstExcess() {
    return excess;
  }

  /**
   * Which side of an edge a point lies on: distance in millimetres from its plane through the axis,
   * more than 0 on the side of the gore of the same number.
   *
   * @param edge from 0; edge i is the left edge of gore i
   */
  public ScalarField besideEdge(int edge) {
    return besideEdge.get(Math.floorMod(edge, count));
  }

  /** The same for any point, not only of the mesh. */
  public double besideEdge(int edge, Vector3 point) {
    double a = azimuth(Math.floorMod(edge, count));
    Vector3 onwards = ahead.times(-Math.sin(a)).plus(left.times(Math.cos(a)));
    return point.minus(form.centre()).dot(onwards);
  }

  /** What a gore holds of a region. */
  public Region part(Region region, int gore) {
    return region
        .clip(besideEdge(gore), 0, Double.POSITIVE_INFINITY)
        .clip(besideEdge(gore + 1), Double.NEGATIVE_INFINITY, 0);
  }

  /**
   * The surface point at an edge, or between two, and at an angle from the axis seen from the
   * form's centre.
   *
   * @param edge from 0; i + 0.5 is the middle of gore i
   */
  public Vector3 at(double edge, double opening) {
    return point(azimuth(edge), opening);
  }

  /** The gore in whose sector a point lies. */
  public int holding(Vector3 point) {
    return Math.min(count - 1, (int) (turns(point.minus(form.centre())) * count));
  }

  /** Where a point of the surface lies on a gore that holds it, or on its edge. */
  public Place place(int gore, Vector3 point) {
    Vector3 d = point.minus(form.centre());
    double opening = opening(d) / STEP_RAD;
    int k = Math.min((int) opening, steps - 1);
    double t = Math.min(1, opening - k);
    double aside = Math.IEEEremainder(turns(d) - (gore + 0.5) / count, 1);
    double across = aside * count + 0.5;
    Place upper = at(gore, k, across);
    Place lower = at(gore, k + 1, across);
    return upper.towards(lower, t);
  }

  private Place at(int gore, int step, double across) {
    double at = Math.max(0, Math.min(1, across)) * PARTS;
    int i = Math.min((int) at, PARTS - 1);
    double[] share = shares[gore][step];
    double u = share[i] + (at - i) * (share[i + 1] - share[i]);
    return lefts[gore][step].towards(rights[gore][step], u);
  }

  /** Length of the flat edge of a gore between two points of the surface that lie on it. */
  double edgeLength(int gore, List<Vector3> edge) {
    double sum = 0;
    for (int i = 1; i < edge.size(); i++) {
      sum += place(gore, edge.get(i - 1)).distance(place(gore, edge.get(i)));
    }
    return sum;
  }
}
