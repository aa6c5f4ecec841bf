package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.Arrays;
import java.util.function.IntPredicate;

/**
 * Distance along a surface from a curve or from points, by fast marching: a front of equal distance
 * is carried from vertex to vertex, straight within each triangle (Kimmel and Sethian, <i>Computing
 * geodesic paths on manifolds</i>, Proc. Natl. Acad. Sci. 95 (1998) 8431). Along the edge that the
 * front crosses, distance is interpolated by a cubic with the front's own slopes, which takes out
 * most of the first-order error of the plain method.
 *
 * <p>From a curve, on a head-sized sphere or spheroid at edges of 2.5 mm, within 1 % of the exact
 * distance; from single points the error is larger near the point.
 */
public final class SurfaceDistance {
  private SurfaceDistance() {}

  /** Distance in millimetres from the vertices that a test accepts; infinite where no way leads. */
  public static ScalarField fromVertices(TriangleMesh mesh, IntPredicate source) {
    double[] start = new double[mesh.vertexCount()];
    for (int v = 0; v < start.length; v++) {
      start[v] = source.test(v) ? 0 : Double.POSITIVE_INFINITY;
    }
    return march(mesh, start);
  }

  /**
   * Distance in millimetres from a curve that lies on the surface but need not follow edges.
   * Vertices within {@code reachMm} of the curve start with their straight distance from it.
   *
   * @param reachMm at least the length of the longest edge, and small beside the radius of the
   *     surface
   */
  public static ScalarField fromCurve(TriangleMesh mesh, Polyline curve, double reachMm) {
    double[] start = new double[mesh.vertexCount()];
    Vector3 low = bound(curve, -1);
    Vector3 high = bound(curve, 1);
    for (int v = 0; v < start.length; v++) {
      start[v] = Double.POSITIVE_INFINITY;
      if (outside(mesh.x(v), low.x(), high.x(), reachMm)
          || outside(mesh.y(v), low.y(), high.y(), reachMm)
          || outside(mesh.z(v), low.z(), high.z(), reachMm)) {
        continue;
      }
      Vector3 p = mesh.vertex(v);
      double d = p.distance(curve.at(curve.nearestArc(p)));
      if (d <= reachMm) {
        start[v] = d;
      }
    }
    return march(mesh, start);
  }

  private static boolean outside(double value, double low, double high, double reach) {
    return value < low - reach || value > high + reach;
  }

  private static Vector3 bound(Polyline curve, int sign) {
    double x = Double.NEGATIVE_INFINITY;
    double y = x;
    double z = x;
    for (Vector3 p : curve.points()) {
      x = Math.max(x, sign * p.x());
      y = Math.max(y, sign * p.y());
      z = Math.max(z, sign * p.z());
    }
    return new Vector3(sign * x, sign * y, sign * z);
  }

  /**
   * Carries starting distances over the mesh.
   *
   * @param start a distance in millimetres for each vertex; infinite where it is to be found
   */
  public static ScalarField march(TriangleMesh mesh, double[] start) {
    if (start.length != mesh.vertexCount()) {
      throw new IllegalArgumentException(
          start.length + " distances for " + mesh.vertexCount() + " vertices");
    }
    return ScalarField.of(mesh, new Front(mesh, start).run());
  }

  /** The moving front: a binary heap of vertices by distance. */
  private static final class Front {
    private final TriangleMesh mesh;
    private final double[] xyz;
    private final int[] corners;
    private final double[] distance;
    private final double[] way;
    private final boolean[] done;
    private final int[] heap;
    private final int[] place;
    private int size;

    Front(TriangleMesh mesh, double[] start) {
      this.mesh = mesh;
      xyz = mesh.coordinates();
      corners = mesh.corners();
      distance = start.clone();
      way = new double[3 * start.length];
      Arrays.fill(way, Double.NaN);
      done = new boolean[start.length];
      heap = new int[start.length];
      place = new int[start.length];
      Arrays.fill(place, -1);
    }

    double[] run() {
      for (int v = 0; v < distance.length; v++) {
        if (distance[v] < Double.POSITIVE_INFINITY) {
          push(v);
        }
      }
      while (size > 0) {
        int v = pop();
        done[v] = true;
        int fan = mesh.fanSize(v);
        for (int i = 0; i < fan; i++) {
          int t = mesh.fan(v, i);
          int a = corners[3 * t];
          int b = corners[3 * t + 1];
          int c = corners[3 * t + 2];
          if (a != v && !done[a]) {
            reach(t, a, b, c);
          }
          if (b != v && !done[b]) {
            reach(t, b, c, a);
          }
          if (c != v && !done[c]) {
            reach(t, c, a, b);
          }
        }
      }
      return distance;
    }

    /** Offers corner {@code c} of a triangle what its other corners know. */
    private void reach(int t, int c, int a, int b) {
      if (done[a]) {
        offer(c, distance[a] + length(a, c), a, a, 0);
      }
      if (done[b]) {
        offer(c, distance[b] + length(b, c), b, b, 0);
      }
      if (done[a] && done[b]) {
        across(t, c, a, b);
      }
    }

    private double length(int from, int to) {
      double x = xyz[3 * to] - xyz[3 * from];
      double y = xyz[3 * to + 1] - xyz[3 * from + 1];
      double z = xyz[3 * to + 2] - xyz[3 * from + 2];
      return Math.sqrt(x * x + y * y + z * z);
    }

    /**
     * Takes a distance if it is less; the way to it comes from the point at {@code share} of a-b.
     */
    private void offer(int v, double d, int a, int b, double share) {
      if (d < distance[v]) {
        distance[v] = d;
        double x = xyz[3 * v] - xyz[3 * a] - share * (xyz[3 * b] - xyz[3 * a]);
        double y = xyz[3 * v + 1] - xyz[3 * a + 1] - share * (xyz[3 * b + 1] - xyz[3 * a + 1]);
        double z = xyz[3 * v + 2] - xyz[3 * a + 2] - share * (xyz[3 * b + 2] - xyz[3 * a + 2]);
        double n = Math.sqrt(x * x + y * y + z * z);
        way[3 * v] = x / n;
        way[3 * v + 1] = y / n;
        way[3 * v + 2] = z / n;
        push(v);
      }
    }

    /** Offers {@code c} the arrival of the front between {@code a} and {@code b}. */
    private void across(int t, int c, int a, int b) {
      double ax = xyz[3 * a] - xyz[3 * c];
      double ay = xyz[3 * a + 1] - xyz[3 * c + 1];
      double az = xyz[3 * a + 2] - xyz[3 * c + 2];
      double bx = xyz[3 * b] - xyz[3 * c];
      double by = xyz[3 * b + 1] - xyz[3 * c + 1];
      double bz = xyz[3 * b + 2] - xyz[3 * c + 2];
      double aa = ax * ax + ay * ay + az * az;
      double bb = bx * bx + by * by + bz * bz;
      double ab = ax * bx + ay * by + az * bz;
      double share = crossing(aa, bb, ab, distance[a], distance[b]);
      if (share >= 0) {
        double x = ax + share * (bx - ax);
        double y = ay + share * (by - ay);
        double z = az + share * (bz - az);
        offer(c, between(a, b, share) + Math.sqrt(x * x + y * y + z * z), a, b, share);
      } else if (ab < 0) {
        unfold(t, c, a, b, aa, bb, ab);
      }
    }

    /**
     * Distance at a point of the edge a-b: the cubic through both distances and their slopes, or
     * the straight line where a slope is unknown because the vertex is a source.
     */
    private double between(int a, int b, double s) {
      double da = distance[a];
      double db = distance[b];
      double straight = da + s * (db - da);
      if (Double.isNaN(way[3 * a]) || Double.isNaN(way[3 * b])) {
        return straight;
      }
      double slopeA = slope(a, a, b) - (db - da);
      double slopeB = slope(b, a, b) - (db - da);
      return straight + s * (1 - s) * ((1 - s) * slopeA - s * slopeB);
    }

    private double slope(int at, int a, int b) {
      return way[3 * at] * (xyz[3 * b] - xyz[3 * a])
          + way[3 * at + 1] * (xyz[3 * b + 1] - xyz[3 * a + 1])
          + way[3 * at + 2] * (xyz[3 * b + 2] - xyz[3 * a + 2]);
    }

    /**
     * For an obtuse corner: lays the triangle beyond the edge a-b into the plane of this one and
     * carries the front over the longer, acute triangles that its far corner makes.
     */
    private void unfold(int t, int c, int a, int b, double aa, double bb, double ab) {
      int s = mesh.neighbour(t, cornerApart(t, a, b));
      int far = s < 0 ? -1 : corners[3 * s + cornerApart(s, a, b)];
      if (far < 0 || !done[far]) {
        return;
      }
      double edge = Math.sqrt(aa + bb - 2 * ab);
      double cx = (aa - ab) / edge;
      double cy = Math.sqrt(Math.max(0, aa - cx * cx));
      double ux = xyz[3 * far] - xyz[3 * a];
      double uy = xyz[3 * far + 1] - xyz[3 * a + 1];
      double uz = xyz[3 * far + 2] - xyz[3 * a + 2];
      double dx =
          (ux * (xyz[3 * b] - xyz[3 * a])
                  + uy * (xyz[3 * b + 1] - xyz[3 * a + 1])
                  + uz * (xyz[3 * b + 2] - xyz[3 * a + 2]))
              / edge;
      double dy = -Math.sqrt(Math.max(0, ux * ux + uy * uy + uz * uz - dx * dx));
      overFar(c, a, b, a, 0, far, dx, dy, cx, cy, edge);
      overFar(c, a, b, b, edge, far, dx, dy, cx, cy, edge);
    }

    /**
     * In the plane with a at the origin and b at (edge, 0): from the side (px, 0) - (dx, dy) to
     * (cx, cy).
     */
    private void overFar(
        int c,
        int a,
        int b,
        int near,
        double px,
        int far,
        double dx,
        double dy,
        double cx,
        double cy,
        double edge) {
      double share =
          crossing(
              (px - cx) * (px - cx) + cy * cy,
              (dx - cx) * (dx - cx) + (dy - cy) * (dy - cy),
              (px - cx) * (dx - cx) - cy * (dy - cy),
              distance[near],
              distance[far]);
      if (share >= 0) {
        double x = px + share * (dx - px);
        double y = share * dy;
        double through = (x + (cx - x) * y / (y - cy)) / edge;
        if (through >= 0 && through <= 1) {
          offer(c, between(near, far, share) + Math.hypot(cx - x, cy - y), a, b, through);
        }
      }
    }

    private int cornerApart(int t, int a, int b) {
      int k = 0;
      while (corners[3 * t + k] == a || corners[3 * t + k] == b) {
        k++;
      }
      return k;
    }

    /**
     * Where on the opposite side, as a share of the way from a to b, a straight front passes on its
     * way to a corner; -1 when it does not come from between them.
     *
     * @param aa squared length from the corner to a
     * @param bb squared length from the corner to b
     * @param ab scalar product of the two
     */
    private static double crossing(double aa, double bb, double ab, double da, double db) {
      double det = aa * bb - ab * ab;
      double qaa = bb / det;
      double qbb = aa / det;
      double qab = -ab / det;
      double p = qaa + 2 * qab + qbb;
      double q = qaa * da + qab * (da + db) + qbb * db;
      double r = qaa * da * da + 2 * qab * da * db + qbb * db * db - 1;
      double t = (q + Math.sqrt(q * q - p * r)) / p;
      double fromA = qaa * (da - t) + qab * (db - t);
      double fromB = qab * (da - t) + qbb * (db - t);
      return fromA < 0 && fromB < 0 && t >= da && t >= db ? fromB / (fromA + fromB) : -1;
    }

    private void push(int v) {
      int i = place[v];
      if (i < 0) {
        i = size++;
      }
      while (i > 0) {
        int up = (i - 1) >> 1;
        if (distance[heap[up]] <= distance[v]) {
          break;
        }
        heap[i] = heap[up];
        place[heap[i]] = i;
        i = up;
      }
      heap[i] = v;
      place[v] = i;
    }

    private int pop() {
      int top = heap[0];
      int v = heap[--size];
      int i = 0;
      while (true) {
        int down = 2 * i + 1;
        if (down >= size) {
          break;
        }
        if (down + 1 < size && distance[heap[down + 1]] < distance[heap[down]]) {
          down++;
        }
        if (distance[v] <= distance[heap[down]]) {
          break;
        }
        heap[i] = heap[down];
        place[heap[i]] = i;
        i = down;
      }
      heap[i] = v;
      place[v] = i;
      return top;
    }
  }
}
