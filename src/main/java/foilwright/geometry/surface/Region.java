package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * A part of a triangle mesh: a set of convex fragments of triangles that do not overlap.
 *
 * <p>A fragment is a polygon in the weights (w1, w2) of the second and third corner of its
 * triangle. Clipping cuts fragments exactly where a field, linear in each triangle, crosses a
 * bound; the parts of a cut add up to the whole in area to rounding (about 1e-13 relative).
 * Fragments smaller than 1e-12 of their triangle are dropped.
 */
public final class Region {
  private static final double LEAST_SHARE = 1e-12;

  private final TriangleMesh mesh;
  private final int[] triangles;
  private final int[] starts;
  private final double[] w1;
  private final double[] w2;

  private Region(TriangleMesh mesh, int[] triangles, int[] starts, double[] w1, double[] w2) {
    this.mesh = mesh;
    this.triangles = triangles;
    this.starts = starts;
    this.w1 = w1;
    this.w2 = w2;
  }

  public static Region whole(TriangleMesh mesh) {
    return ofTriangles(mesh, t -> true);
  }

  public static Region empty(TriangleMesh mesh) {
    return new Builder(mesh).build();
  }

  /** The triangles that a test accepts, whole. */
  public static Region ofTriangles(TriangleMesh mesh, IntPredicate accepted) {
    Builder builder = new Builder(mesh);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      if (accepted.test(t)) {
        builder.addTriangle(t);
      }
    }
    return builder.build();
  }

  public TriangleMesh mesh() {
    return mesh;
  }

  public int fragmentCount() {
    return triangles.length;
  }

  /** The triangle that a fragment belongs to. */
  public int triangle(int fragment) {
    return triangles[fragment];
  }

  /** Number of vertices of a fragment, at least three, counter-clockwise seen from outside. */
  public int size(int fragment) {
    return starts[fragment + 1] - starts[fragment];
  }

  /** Vertex {@code i} of a fragment in the head frame, millimetres. */
  public Vector3 vertex(int fragment, int i) {
    int j = starts[fragment] + i;
    return mesh.point(triangles[fragment], w1[j], w2[j]);
  }

  /** Weight of the second corner of the triangle at vertex {@code i} of a fragment. */
  double weight1(int fragment, int i) {
    return w1[starts[fragment] + i];
  }

  /** Weight of the third corner of the triangle at vertex {@code i} of a fragment. */
  double weight2(int fragment, int i) {
    return w2[starts[fragment] + i];
  }

  /** Whether a fragment holds the point of its triangle with these weights, border included. */
  public boolean holds(int fragment, double weight1, double weight2) {
    int to = starts[fragment + 1];
    for (int i = starts[fragment], j = to - 1; i < to; j = i++) {
      double turn = (w1[i] - w1[j]) * (weight2 - w2[j]) - (w2[i] - w2[j]) * (weight1 - w1[j]);
      if (turn < 0) {
        return false;
      }
    }
    return true;
  }

  public boolean isEmpty() {
    return triangles.length == 0;
  }

  /** Area in square millimetres. */
  public double area() {
    double sum = 0;
    for (int f = 0; f < triangles.length; f++) {
      sum += fragmentArea(f);
    }
    return sum;
  }

  /** Area of one fragment in square millimetres. */
  public double fragmentArea(int fragment) {
    return 2
        * mesh.area(triangles[fragment])
        * weightArea(w1, w2, starts[fragment], starts[fragment + 1]);
  }

  /**
   * Writes the part of a convex polygon where a u + b v + c >= 0 to other arrays from an index on,
   * where there must be room for one vertex more than it has.
   *
   * @return the index after its last vertex
   */
  private static int cut(
      double[] u,
      double[] v,
      int from,
      int to,
      double a,
      double b,
      double c,
      double[] intoU,
      double[] intoV,
      int into) {
    if (from == to) {
      return into;
    }
    int at = into;
    double first = a * u[from] + b * v[from] + c;
    double here = first;
    for (int i = from; i < to; i++) {
      int j = i + 1 == to ? from : i + 1;
      double next = j == from ? first : a * u[j] + b * v[j] + c;
      if (here >= 0) {
        intoU[at] = u[i];
        intoV[at++] = v[i];
      }
      if ((here > 0 && next < 0) || (here < 0 && next > 0)) {
        double s = here / (here - next);
        intoU[at] = u[i] + s * (u[j] - u[i]);
        intoV[at++] = v[i] + s * (v[j] - v[i]);
      }
      here = next;
    }
    return at;
  }

  private static double weightArea(double[] u, double[] v, int from, int to) {
    double twice = 0;
    for (int i = from + 1; i + 1 < to; i++) {
      twice += (u[i] - u[from]) * (v[i + 1] - v[from]) - (u[i + 1] - u[from]) * (v[i] - v[from]);
    }
    return twice / 2;
  }

  /**
   * Integral of a field over the region: the field's unit times square millimetres; exact for the
   * field.
   */
  public double integrate(LinearValues field) {
    double sum = 0;
    for (int f = 0; f < triangles.length; f++) {
      int t = triangles[f];
      double a = field.at(t, 0);
      double b = field.at(t, 1) - a;
      double c = field.at(t, 2) - a;
      int from = starts[f];
      for (int i = from + 1; i + 1 < starts[f + 1]; i++) {
        double mean =
            a + (b * (w1[from] + w1[i] + w1[i + 1]) + c * (w2[from] + w2[i] + w2[i + 1])) / 3;
        sum += mesh.area(t) * fanTwice(from, i) * mean;
      }
    }
    return sum;
  }

  private double fanTwice(int from, int i) {
    return (w1[i] - w1[from]) * (w2[i + 1] - w2[from])
        - (w1[i + 1] - w1[from]) * (w2[i] - w2[from]);
  }

  /**
   * The mean position by area, millimetres; inside the head, not on the surface.
   *
   * @throws IllegalArgumentException when the region is empty
   */
  public Vector3 areaCentroid() {
    double area = 0;
    Vector3 sum = Vector3.ZERO;
    for (int f = 0; f < triangles.length; f++) {
      int from = starts[f];
      for (int i = from + 1; i + 1 < starts[f + 1]; i++) {
        double part = mesh.area(triangles[f]) * fanTwice(from, i);
        Vector3 p =
            mesh.point(
                triangles[f],
                (w1[from] + w1[i] + w1[i + 1]) / 3,
                (w2[from] + w2[i] + w2[i + 1]) / 3);
        area += part;
        sum = sum.plus(p.times(part));
      }
    }
    if (!(area > 0)) {
      throw new IllegalArgumentException("an empty region has no centre");
    }
    return sum.times(1 / area);
  }

  /** Least value of a field over the region; positive infinity when it is empty. */
  public double least(LinearValues field) {
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < triangles.length; f++) {
      int t = triangles[f];
      double a = field.at(t, 0);
      double b = field.at(t, 1) - a;
      double c = field.at(t, 2) - a;
      for (int i = starts[f]; i < starts[f + 1]; i++) {
        least = Math.min(least, a + b * w1[i] + c * w2[i]);
      }
    }
    return least;
  }

  /** Greatest value of a field over the region; negative infinity when it is empty. */
  public double greatest(LinearValues field) {
    return -least((t, k) -> -field.at(t, k));
  }

  /** The part where {@code from <= field <= to}; an infinite bound leaves that side open. */
  public Region clip(LinearValues field, double from, double to) {
    Builder builder = new Builder(mesh);
    for (int f = 0; f < triangles.length; f++) {
      int t = triangles[f];
      double a = field.at(t, 0);
      double b = field.at(t, 1) - a;
      double c = field.at(t, 2) - a;
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int i = starts[f]; i < starts[f + 1]; i++) {
        double value = a + b * w1[i] + c * w2[i];
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
      if (least >= from && most <= to) {
        builder.add(this, f);
      } else if (most > from && least < to) {
        builder.addBetween(
            this,
            f,
            a,
            b,
            c,
            least < from ? from : Double.NEGATIVE_INFINITY,
            most > to ? to : Double.POSITIVE_INFINITY);
      }
    }
    return builder.build();
  }

  /**
   * Cuts the region at ascending levels of a field in one pass.
   *
   * @return one more part than levels: below the first, between each two, above the last
   * @throws IllegalArgumentException when the levels do not ascend
   */
  public List<Region> bands(LinearValues field, double[] levels) {
    for (int i = 1; i < levels.length; i++) {
      if (!(levels[i] >= levels[i - 1])) {
        throw new IllegalArgumentException("levels must ascend: " + Arrays.toString(levels));
      }
    }
    int[] first = new int[triangles.length];
    int[] last = new int[triangles.length];
    int[] bucketStarts = new int[levels.length + 2];
    for (int f = 0; f < triangles.length; f++) {
      int t = triangles[f];
      double a = field.at(t, 0);
      double b = field.at(t, 1) - a;
      double c = field.at(t, 2) - a;
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int i = starts[f]; i < starts[f + 1]; i++) {
        double value = a + b * w1[i] + c * w2[i];
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
      int band = Arrays.binarySearch(levels, least);
      band = band < 0 ? -band - 1 : band;
      while (band < levels.length && levels[band] <= least) {
        band++;
      }
      first[f] = band;
      bucketStarts[band + 1]++;
      while (band < levels.length && levels[band] < most) {
        band++;
        bucketStarts[band + 1]++;
      }
      last[f] = band;
    }
    for (int band = 0; band <= levels.length; band++) {
      bucketStarts[band + 1] += bucketStarts[band];
    }
    int[] bucket = new int[bucketStarts[levels.length + 1]];
    int[] at = bucketStarts.clone();
    for (int f = 0; f < triangles.length; f++) {
      for (int band = first[f]; band <= last[f]; band++) {
        bucket[at[band]++] = f;
      }
    }
    List<Region> bands = new ArrayList<>(levels.length + 1);
    Builder builder = new Builder(mesh);
    for (int band = 0; band <= levels.length; band++) {
      builder.clear();
      for (int i = bucketStarts[band]; i < bucketStarts[band + 1]; i++) {
        int f = bucket[i];
        if (first[f] == last[f]) {
          builder.add(this, f);
          continue;
        }
        double a = field.at(triangles[f], 0);
        builder.addBetween(
            this,
            f,
            a,
            field.at(triangles[f], 1) - a,
            field.at(triangles[f], 2) - a,
            band > first[f] ? levels[band - 1] : Double.NEGATIVE_INFINITY,
            band < last[f] ? levels[band] : Double.POSITIVE_INFINITY);
      }
      bands.add(builder.build());
    }
    return bands;
  }

  /** The point of the region that is nearest to a point of space, head frame in millimetres. */
  public Vector3 nearest(Vector3 point) {
    if (isEmpty()) {
      throw new IllegalArgumentException("an empty region has no nearest point");
    }
    double[] corners = new double[triangles.length];
    double reach = Double.POSITIVE_INFINITY;
    for (int f = 0; f < triangles.length; f++) {
      corners[f] = vertex(f, 0).distance(point);
      reach = Math.min(reach, corners[f]);
    }
    reach += mesh.longestEdge();
    Vector3 best = null;
    double least = Double.POSITIVE_INFINITY;
    for (int f = 0; f < triangles.length; f++) {
      if (corners[f] > reach) {
        continue;
      }
      Vector3 found = nearestInFragment(f, point);
      double d = found.minus(point).dot(found.minus(point));
      if (d < least) {
        least = d;
        best = found;
      }
    }
    return best;
  }

  private Vector3 nearestInFragment(int f, Vector3 point) {
    Vector3 normal = mesh.normal(triangles[f]);
    Vector3 foot = point.minus(normal.times(normal.dot(point.minus(vertex(f, 0)))));
    Vector3 best = foot;
    double least = Double.POSITIVE_INFINITY;
    boolean inside = true;
    int size = size(f);
    for (int i = 0; i < size; i++) {
      Vector3 a = vertex(f, i);
      Vector3 edge = vertex(f, i + 1 == size ? 0 : i + 1).minus(a);
      if (edge.cross(foot.minus(a)).dot(normal) < 0) {
        inside = false;
      }
      double square = edge.dot(edge);
      double s = square > 0 ? Math.min(1, Math.max(0, foot.minus(a).dot(edge) / square)) : 0;
      Vector3 q = a.plus(edge.times(s));
      double d = q.minus(point).dot(q.minus(point));
      if (d < least) {
        least = d;
        best = q;
      }
    }
    return inside ? foot : best;
  }

  /** The fragments that a test of the fragment's number accepts. */
  public Region fragments(IntPredicate accepted) {
    Builder builder = new Builder(mesh);
    for (int f = 0; f < triangles.length; f++) {
      if (accepted.test(f)) {
        builder.add(this, f);
      }
    }
    return builder.build();
  }

  /** The part that also belongs to another region of the same mesh. */
  public Region intersect(Region other) {
    return combine(other, true);
  }

  /** The part that does not belong to another region of the same mesh. */
  public Region subtract(Region other) {
    return combine(other, false);
  }

  private Region combine(Region other, boolean inside) {
    if (other.mesh != mesh) {
      throw new IllegalArgumentException("the regions belong to different meshes");
    }
    // The other region's fragments by triangle, plus one: the first of each, and the next.
    int[] first = new int[mesh.triangleCount()];
    int[] next = new int[other.triangles.length + 1];
    for (int g = other.triangles.length - 1; g >= 0; g--) {
      next[g + 1] = first[other.triangles[g]];
      first[other.triangles[g]] = g + 1;
    }
    Builder builder = new Builder(mesh);
    for (int f = 0; f < triangles.length; f++) {
      if (first[triangles[f]] == 0) {
        if (!inside) {
          builder.add(this, f);
        }
        continue;
      }
      List<Polygon> rest = new ArrayList<>();
      rest.add(new Polygon().set(w1, w2, starts[f], starts[f + 1]));
      for (int n = first[triangles[f]]; n > 0; n = next[n]) {
        int g = n - 1;
        List<Polygon> left = new ArrayList<>();
        for (Polygon p : rest) {
          Polygon common =
              p.splitBy(other.w1, other.w2, other.starts[g], other.starts[g + 1], left);
          if (inside) {
            builder.add(triangles[f], common);
          }
        }
        rest = left;
      }
      if (!inside) {
        for (Polygon p : rest) {
          builder.add(triangles[f], p);
        }
      }
    }
    return builder.build();
  }

  /**
   * Square millimetres that a fragment shares with a fragment of another region in the same
   * triangle.
   */
  double sharedArea(int fragment, Region other, int otherFragment) {
    Polygon rest = new Polygon().set(w1, w2, starts[fragment], starts[fragment + 1]);
    int from = other.starts[otherFragment];
    int to = other.starts[otherFragment + 1];
    for (int i = from; i < to && rest.size >= 3; i++) {
      int j = i + 1 == to ? from : i + 1;
      double a = other.w2[i] - other.w2[j];
      double b = other.w1[j] - other.w1[i];
      rest.clip(a, b, -(a * other.w1[i] + b * other.w2[i]));
    }
    return rest.size < 3
        ? 0
        : 2 * mesh.area(triangles[fragment]) * weightArea(rest.u, rest.v, 0, rest.size);
  }

  /**
   * The fragments of several regions of one mesh together; the caller knows that they do not
   * overlap.
   */
  public static Region join(TriangleMesh mesh, List<Region> parts) {
    Builder builder = new Builder(mesh);
    for (Region part : parts) {
      for (int f = 0; f < part.triangles.length; f++) {
        builder.add(part, f);
      }
    }
    return builder.build();
  }

  /**
   * The border as polylines with the region on their left, seen from outside. Loops are closed; a
   * border that touches itself in a point may come as several.
   */
  public List<Polyline> outline() {
    return RegionBorders.outline(this);
  }

  /** The connected parts, largest first; parts that touch in a point only are apart. */
  public List<Region> components() {
    return RegionBorders.components(this);
  }

  /** Grows a region fragment by fragment. */
  static final class Builder {
    private final TriangleMesh mesh;
    private int[] triangles = new int[64];
    private int[] starts = new int[65];
    private double[] w1 = new double[256];
    private double[] w2 = new double[256];
    private int count;
    private final Polygon half = new Polygon();

    Builder(TriangleMesh mesh) {
      this.mesh = mesh;
    }

    void clear() {
      count = 0;
    }

    /**
     * Adds the part of a fragment where {@code from <= a + b u + c v <= to}; an infinite bound cuts
     * nothing off.
     */
    void addBetween(Region region, int f, double a, double b, double c, double from, double to) {
      double[] u = region.w1;
      double[] v = region.w2;
      int start = region.starts[f];
      int end = region.starts[f + 1];
      if (from > Double.NEGATIVE_INFINITY && to < Double.POSITIVE_INFINITY) {
        half.reserve(end - start + 1);
        end = cut(u, v, start, end, b, c, a - from, half.u, half.v, 0);
        start = 0;
        u = half.u;
        v = half.v;
      }
      reserve(end - start + 1);
      int at = starts[count];
      int stop =
          to < Double.POSITIVE_INFINITY
              ? cut(u, v, start, end, -b, -c, to - a, w1, w2, at)
              : cut(u, v, start, end, b, c, a - from, w1, w2, at);
      if (stop - at >= 3 && 2 * weightArea(w1, w2, at, stop) >= LEAST_SHARE) {
        triangles[count++] = region.triangles[f];
        starts[count] = stop;
      }
    }

    void addTriangle(int t) {
      int at = open(t, 3);
      w1[at] = 0;
      w2[at] = 0;
      w1[at + 1] = 1;
      w2[at + 1] = 0;
      w1[at + 2] = 0;
      w2[at + 2] = 1;
    }

    void add(Region region, int f) {
      int from = region.starts[f];
      int size = region.starts[f + 1] - from;
      int at = open(region.triangles[f], size);
      for (int i = 0; i < size; i++) {
        w1[at + i] = region.w1[from + i];
        w2[at + i] = region.w2[from + i];
      }
    }

    void add(int t, Polygon polygon) {
      if (polygon.size < 3 || 2 * weightArea(polygon.u, polygon.v, 0, polygon.size) < LEAST_SHARE) {
        return;
      }
      int at = open(t, polygon.size);
      System.arraycopy(polygon.u, 0, w1, at, polygon.size);
      System.arraycopy(polygon.v, 0, w2, at, polygon.size);
    }

    private int open(int t, int size) {
      reserve(size);
      int at = starts[count];
      triangles[count++] = t;
      starts[count] = at + size;
      return at;
    }

    /** Makes room for one more fragment. */
    private void reserve(int size) {
      if (count == triangles.length) {
        triangles = Arrays.copyOf(triangles, 2 * count);
        starts = Arrays.copyOf(starts, 2 * count + 1);
      }
      if (starts[count] + size > w1.length) {
        w1 = Arrays.copyOf(w1, 2 * w1.length);
        w2 = Arrays.copyOf(w2, 2 * w2.length);
      }
    }

    Region build() {
      int end = starts[count];
      return new Region(
          mesh,
          Arrays.copyOf(triangles, count),
          Arrays.copyOf(starts, count + 1),
          Arrays.copyOf(w1, end),
          Arrays.copyOf(w2, end));
    }
  }

  /** A convex polygon in weight space, clipped by half-planes a u + b v + c >= 0. */
  static final class Polygon {
    private double[] u = new double[12];
    private double[] v = new double[12];
    private double[] spareU = new double[12];
    private double[] spareV = new double[12];
    private int size;

    Polygon set(double[] fromU, double[] fromV, int from, int to) {
      size = to - from;
      reserve(size);
      System.arraycopy(fromU, from, u, 0, size);
      System.arraycopy(fromV, from, v, 0, size);
      return this;
    }

    private void reserve(int capacity) {
      if (u.length < capacity) {
        u = Arrays.copyOf(u, 2 * capacity);
        v = Arrays.copyOf(v, 2 * capacity);
      }
      if (spareU.length < capacity) {
        spareU = new double[2 * capacity];
        spareV = new double[2 * capacity];
      }
    }

    void clip(double a, double b, double c) {
      reserve(size + 2);
      size = cut(u, v, 0, size, a, b, c, spareU, spareV, 0);
      double[] swap = u;
      u = spareU;
      spareU = swap;
      swap = v;
      v = spareV;
      spareV = swap;
    }

    /** Cuts by a convex polygon: returns the common part and adds the parts outside to a list. */
    Polygon splitBy(double[] cu, double[] cv, int from, int to, List<Polygon> outside) {
      Polygon rest = new Polygon().set(u, v, 0, size);
      for (int i = from; i < to && rest.size >= 3; i++) {
        int j = i + 1 == to ? from : i + 1;
        double a = cv[i] - cv[j];
        double b = cu[j] - cu[i];
        double c = -(a * cu[i] + b * cv[i]);
        Polygon beyond = new Polygon().set(rest.u, rest.v, 0, rest.size);
        beyond.clip(-a, -b, -c);
        if (beyond.size >= 3 && 2 * weightArea(beyond.u, beyond.v, 0, beyond.size) >= LEAST_SHARE) {
          outside.add(beyond);
        }
        rest.clip(a, b, c);
      }
      return rest;
    }
  }
}
