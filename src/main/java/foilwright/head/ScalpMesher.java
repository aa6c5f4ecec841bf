package foilwright.head;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.TriangleMesh;
import java.util.Arrays;
import java.util.BitSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Meshes the scalp: one half, mirrored exactly.
 *
 * <p>Rings of equal distance about a point behind the apex are filled with points at the edge
 * length and zipped together. Then the mesh is made to follow the hairline and the part: a vertex
 * near the curve is moved onto it, an edge that still crosses it is split on it. What lies outside
 * the hairline is dropped; last, edges are flipped and free vertices are shifted to make the angles
 * better. Every vertex lies on the form; the vertices of the centre line have x = 0 exactly, and
 * the left half repeats the right half's coordinates with x negated.
 */
final class ScalpMesher {
  /** Where the rings are centred: near the middle of the scalp, so that few are wasted. */
  private static final double POLE_RAD = Math.toRadians(133);

  private static final int RAYS = 48;
  private static final double RAY_STEP_RAD = 0.02;

  /** Share of an edge within which a vertex is moved onto a curve rather than the edge split. */
  private static final double SNAP = 0.36;

  private final HeadForm form;
  private final HairlineCurve hairline;
  private final double edgeMm;

  private double[] xyz = new double[3 * 16384];
  private int vertexCount;
  private int[] corners = new int[3 * 32768];
  private int triangleCount;
  private boolean[] onPart = new boolean[0];

  /** For each vertex, its excess over the curve followed last; 0 on it. */
  private double[] excess = new double[0];

  private ScalpMesher(HeadForm form, HairlineCurve hairline, double edgeMm) {
    this.form = form;
    this.hairline = hairline;
    this.edgeMm = edgeMm;
  }

  /**
   * @param mesh the whole scalp
   * @param onPart the vertices on the side part or its mirror image
   */
  record Result(TriangleMesh mesh, BitSet onPart) {}

  /** The mesh of a scalp; the side part, on the client's right, may be null for none. */
  static Result mesh(HeadForm form, HairlineCurve hairline, PartCurve part, double edgeMm) {
    ScalpMesher mesher = new ScalpMesher(form, hairline, edgeMm);
    mesher.layRings();
    mesher.follow(hairline::excess, d -> true);
    mesher.dropOutside();
    boolean[] fixed = mesher.border();
    mesher.onPart = new boolean[mesher.vertexCount];
    if (part != null) {
      mesher.onPart = mesher.follow(part::excess, part::reaches);
      fixed = mesher.border();
    }
    mesher.improve(fixed);
    return mesher.mirrored();
  }

  // ---- Points

  private int addVertex(Vector3 p) {
    if (3 * vertexCount == xyz.length) {
      xyz = Arrays.copyOf(xyz, 2 * xyz.length);
    }
    setVertex(vertexCount, p);
    return vertexCount++;
  }

  private void setVertex(int v, Vector3 p) {
    xyz[3 * v] = p.x();
    xyz[3 * v + 1] = p.y();
    xyz[3 * v + 2] = p.z();
  }

  private Vector3 vertex(int v) {
    return new Vector3(xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]);
  }

  private void addTriangle(int a, int b, int c) {
    if (3 * triangleCount == corners.length) {
      corners = Arrays.copyOf(corners, 2 * corners.length);
    }
    corners[3 * triangleCount] = a;
    corners[3 * triangleCount + 1] = b;
    corners[3 * triangleCount + 2] = c;
    triangleCount++;
  }

  private void setTriangle(int t, int a, int b, int c) {
    corners[3 * t] = a;
    corners[3 * t + 1] = b;
    corners[3 * t + 2] = c;
  }

  // ---- Rings

  private static Vector3 ray(double azimuth, double opening) {
    double s = Math.sin(opening);
    double forward = Math.cos(azimuth) * s;
    double along = Math.cos(opening);
    double c = Math.cos(POLE_RAD);
    double d = Math.sin(POLE_RAD);
    // Azimuth 0 runs over the apex to the front.
    double x = azimuth == 0 || azimuth == Math.PI ? 0 : Math.sin(azimuth) * s;
    return new Vector3(x, along * c + forward * d, along * d - forward * c);
  }

  private void layRings() {
    int steps = (int) (Math.toRadians(150) / RAY_STEP_RAD);
    double[][] arc = new double[RAYS + 1][steps + 1];
    double reach = 0;
    for (int j = 0; j <= RAYS; j++) {
      double azimuth = Math.PI * j / RAYS;
      Vector3 before = form.fromTemplate(ray(azimuth, 0));
      for (int i = 1; i <= steps; i++) {
        Vector3 direction = ray(azimuth, i * RAY_STEP_RAD);
        Vector3 p = form.fromTemplate(direction);
        arc[j][i] = arc[j][i - 1] + p.distance(before);
        before = p;
        if (hairline.excess(direction) < 0) {
          reach = Math.max(reach, arc[j][i]);
        }
      }
    }
    double spacing = edgeMm * Math.sqrt(3) / 2;
    int rings = (int) Math.ceil(reach / spacing) + 2;
    int[] before = {addVertex(form.fromTemplate(ray(0, 0)))};
    for (int k = 1; k <= rings; k++) {
      double[] opening = new double[RAYS + 1];
      double[] length = new double[RAYS + 1];
      Vector3 last = null;
      for (int j = 0; j <= RAYS; j++) {
        opening[j] = RAY_STEP_RAD * place(arc[j], k * spacing);
        Vector3 p = form.fromTemplate(ray(Math.PI * j / RAYS, opening[j]));
        length[j] = j == 0 ? 0 : length[j - 1] + p.distance(last);
        last = p;
      }
      int count = Math.max(3, (int) Math.round(length[RAYS] / edgeMm));
      int[] ring = new int[count + 1];
      for (int i = 0; i <= count; i++) {
        double at = i == count ? RAYS : place(length, length[RAYS] * i / count);
        int j = (int) Math.min(at, RAYS - 1);
        double open = opening[j] + (at - j) * (opening[j + 1] - opening[j]);
        double azimuth = i == 0 ? 0 : i == count ? Math.PI : Math.PI * at / RAYS;
        ring[i] = addVertex(form.fromTemplate(ray(azimuth, open)));
      }
      zip(before, ring);
      before = ring;
    }
  }

  /** Where a rising sequence reaches a value, as an index with its fraction; held at the end. */
  private static double place(double[] rising, double value) {
    int i = Arrays.binarySearch(rising, value);
    if (i >= 0) {
      return i;
    }
    int next = Math.min(-i - 1, rising.length - 1);
    return Math.min(
        next - 1 + (value - rising[next - 1]) / (rising[next] - rising[next - 1]), next);
  }

  /** Fills the band between two rings with triangles, by the shorter diagonal each time. */
  private void zip(int[] inner, int[] outer) {
    int i = 0;
    int j = 0;
    while (i < inner.length - 1 || j < outer.length - 1) {
      boolean stepOuter =
          i == inner.length - 1
              || (j < outer.length - 1
                  && square(inner[i], outer[j + 1]) < square(inner[i + 1], outer[j]));
      if (stepOuter) {
        addTriangle(inner[i], outer[j + 1], outer[j]);
        j++;
      } else {
        addTriangle(inner[i], inner[i + 1], outer[j]);
        i++;
      }
    }
  }

  private double square(int v, int w) {
    double x = xyz[3 * v] - xyz[3 * w];
    double y = xyz[3 * v + 1] - xyz[3 * w + 1];
    double z = xyz[3 * v + 2] - xyz[3 * w + 2];
    return x * x + y * y + z * z;
  }

  // ---- Following a curve

  private double value(ToDoubleFunction<Vector3> curve, int v) {
    return curve.applyAsDouble(form.templateDirection(vertex(v)));
  }

  /**
   * Moves vertices and splits edges so that no edge crosses a curve, given by its signed excess,
   * where it applies; the vertices on it are returned.
   */
  private boolean[] follow(ToDoubleFunction<Vector3> curve, Predicate<Vector3> applies) {
    double[] value = new double[vertexCount];
    for (int v = 0; v < vertexCount; v++) {
      value[v] = value(curve, v);
    }
    boolean[] border = border();
    Edges edges = new Edges();
    Vector3[] goal = new Vector3[vertexCount];
    double[] shift = new double[vertexCount];
    Arrays.fill(shift, SNAP);
    for (int h = 0; h < 3 * triangleCount; h++) {
      int a = corners[h];
      int b = corners[next(h)];
      if (value[a] * value[b] < 0) {
        double t = crossing(curve, a, b, value[a]);
        Vector3 p = between(a, b, t);
        if (!applies.test(form.templateDirection(p))) {
          continue;
        }
        boolean free = edges.inside(h);
        if (t < shift[a] && (!free || !border[a])) {
          shift[a] = t;
          goal[a] = p;
        }
        if (1 - t < shift[b] && (!free || !border[b])) {
          shift[b] = 1 - t;
          goal[b] = p;
        }
      }
    }
    boolean[] on = new boolean[vertexCount];
    for (int v = 0; v < goal.length; v++) {
      if (goal[v] != null) {
        setVertex(v, goal[v]);
        value[v] = 0;
        on[v] = true;
      }
    }
    return split(curve, applies, value, on);
  }

  private boolean[] split(
      ToDoubleFunction<Vector3> curve,
      Predicate<Vector3> applies,
      double[] value,
      boolean[] moved) {
    Edges edges = new Edges();
    int[] added = new int[3 * triangleCount];
    Arrays.fill(added, -1);
    int old = vertexCount;
    for (int h = 0; h < added.length; h++) {
      int a = corners[h];
      int b = corners[next(h)];
      int twin = edges.twin(h);
      if (value[a] * value[b] < 0 && (twin < 0 || h < twin)) {
        Vector3 p = between(a, b, crossing(curve, a, b, value[a]));
        if (applies.test(form.templateDirection(p))) {
          added[h] = addVertex(p);
          if (twin >= 0) {
            added[twin] = added[h];
          }
        }
      }
    }
    int triangles = triangleCount;
    for (int t = 0; t < triangles; t++) {
      cut(t, added[3 * t], added[3 * t + 1], added[3 * t + 2]);
    }
    excess = Arrays.copyOf(value, vertexCount);
    boolean[] on = Arrays.copyOf(moved, vertexCount);
    Arrays.fill(on, old, vertexCount, true);
    return on;
  }

  /** Replaces a triangle whose edges (from corner k to k+1) have new vertices, or -1 for none. */
  private void cut(int t, int ab, int bc, int ca) {
    int a = corners[3 * t];
    int b = corners[3 * t + 1];
    int c = corners[3 * t + 2];
    int count = (ab >= 0 ? 1 : 0) + (bc >= 0 ? 1 : 0) + (ca >= 0 ? 1 : 0);
    if (count == 0) {
      return;
    }
    if (count == 1) {
      if (ab >= 0) {
        halve(t, a, b, c, ab);
      } else if (bc >= 0) {
        halve(t, b, c, a, bc);
      } else {
        halve(t, c, a, b, ca);
      }
    } else if (ab < 0) {
      slice(t, c, a, b, ca, bc);
    } else if (bc < 0) {
      slice(t, a, b, c, ab, ca);
    } else {
      slice(t, b, c, a, bc, ab);
    }
  }

  private void halve(int t, int a, int b, int c, int ab) {
    setTriangle(t, a, ab, c);
    addTriangle(ab, b, c);
  }

  /** Cuts corner a off; the rest is divided by its shorter diagonal. */
  private void slice(int t, int a, int b, int c, int ab, int ca) {
    setTriangle(t, a, ab, ca);
    if (square(ab, c) < square(b, ca)) {
      addTriangle(ab, b, c);
      addTriangle(ab, c, ca);
    } else {
      addTriangle(ab, b, ca);
      addTriangle(b, c, ca);
    }
  }

  /** The point of the form over the share {@code t} of an edge. */
  private Vector3 between(int a, int b, double t) {
    Vector3 chord = vertex(a).lerp(vertex(b), t);
    return form.surfacePoint(chord);
  }

  private double crossing(ToDoubleFunction<Vector3> curve, int a, int b, double atA) {
    double low = 0;
    double high = 1;
    Vector3 pa = vertex(a);
    Vector3 pb = vertex(b);
    for (int i = 0; i < 24; i++) {
      double middle = (low + high) / 2;
      double here = curve.applyAsDouble(form.templateDirection(pa.lerp(pb, middle)));
      if (here * atA > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private void dropOutside() {
    int kept = 0;
    for (int t = 0; t < triangleCount; t++) {
      int a = corners[3 * t];
      int b = corners[3 * t + 1];
      int c = corners[3 * t + 2];
      double sum = excess[a] + excess[b] + excess[c];
      if (sum == 0) {
        Vector3 middle = vertex(a).plus(vertex(b)).plus(vertex(c)).times(1.0 / 3);
        sum = hairline.excess(form.templateDirection(middle));
      }
      if (sum < 0) {
        setTriangle(kept++, a, b, c);
      }
    }
    triangleCount = kept;
    int[] renamed = new int[vertexCount];
    Arrays.fill(renamed, -1);
    int count = 0;
    for (int h = 0; h < 3 * triangleCount; h++) {
      renamed[corners[h]] = 0;
    }
    for (int v = 0; v < vertexCount; v++) {
      if (renamed[v] == 0) {
        System.arraycopy(xyz, 3 * v, xyz, 3 * count, 3);
        renamed[v] = count++;
      }
    }
    for (int h = 0; h < 3 * triangleCount; h++) {
      corners[h] = renamed[corners[h]];
    }
    vertexCount = count;
  }

  // ---- Edges

  private static int next(int h) {
    return h % 3 == 2 ? h - 2 : h + 1;
  }

  private static int previous(int h) {
    return h % 3 == 0 ? h + 2 : h - 1;
  }

  /** The two sides of every edge; half-edge h runs from its corner to the next. */
  private final class Edges {
    private final int[] twins = new int[3 * triangleCount];

    Edges() {
      int[] head = new int[vertexCount];
      Arrays.fill(head, -1);
      int[] chain = new int[twins.length];
      Arrays.fill(twins, -1);
      for (int h = 0; h < twins.length; h++) {
        int from = corners[h];
        int to = corners[next(h)];
        for (int g = head[to]; g >= 0; g = chain[g]) {
          if (corners[next(g)] == from) {
            twins[g] = h;
            twins[h] = g;
          }
        }
        chain[h] = head[from];
        head[from] = h;
      }
    }

    int twin(int h) {
      return twins[h];
    }

    boolean inside(int h) {
      return twins[h] >= 0;
    }
  }

  /** Vertices on the border of the half: the hairline and the centre line. */
  private boolean[] border() {
    boolean[] border = new boolean[vertexCount];
    Edges edges = new Edges();
    for (int h = 0; h < 3 * triangleCount; h++) {
      if (!edges.inside(h)) {
        border[corners[h]] = true;
        border[corners[next(h)]] = true;
      }
    }
    return border;
  }

  // ---- Better angles

  private void improve(boolean[] border) {
    boolean[] held = border.clone();
    for (int v = 0; v < held.length; v++) {
      held[v] |= onPart[v];
    }
    flip();
    for (int round = 0; round < 2; round++) {
      shift(held);
      flip();
    }
  }

  /** Flips inner edges, but never one of the part, until opposite angles sum to at most pi. */
  private void flip() {
    Edges edges = new Edges();
    int[] twins = edges.twins;
    int[] queue = new int[3 * triangleCount];
    boolean[] queued = new boolean[3 * triangleCount];
    int count = 0;
    for (int h = 0; h < twins.length; h++) {
      if (twins[h] > h) {
        queue[count++] = h;
        queued[h] = true;
      }
    }
    int work = 0;
    while (count > 0 && work++ < 20 * triangleCount) {
      int h = queue[--count];
      queued[h] = false;
      int g = twins[h];
      if (g < 0 || (onPart[corners[h]] && onPart[corners[next(h)]])) {
        continue;
      }
      if (cotangent(previous(h)) + cotangent(previous(g)) >= -1e-9) {
        continue;
      }
      // Half-edges around the pair: h a-b, n b-c, p c-a; g b-a, m a-d, q d-b.
      int n = next(h);
      int p = previous(h);
      int m = next(g);
      int q = previous(g);
      int a = corners[h];
      int b = corners[g];
      int c = corners[p];
      int d = corners[q];
      int outsideN = twins[n];
      int outsideP = twins[p];
      int outsideM = twins[m];
      int outsideQ = twins[q];
      // Triangle of h becomes c, d, b at h, next, previous; of g becomes d, c, a.
      corners[h] = c;
      corners[n] = d;
      corners[p] = b;
      corners[g] = d;
      corners[m] = c;
      corners[q] = a;
      pair(twins, n, outsideQ);
      pair(twins, p, outsideN);
      pair(twins, m, outsideP);
      pair(twins, q, outsideM);
      int[] around = {n, p, m, q};
      for (int k : around) {
        int e = twins[k] < 0 ? -1 : Math.min(k, twins[k]);
        if (e >= 0 && !queued[e] && count < queue.length) {
          queue[count++] = e;
          queued[e] = true;
        }
      }
    }
  }

  private static void pair(int[] twins, int h, int g) {
    twins[h] = g;
    if (g >= 0) {
      twins[g] = h;
    }
  }

  /** Cotangent of the angle at the corner where half-edge {@code h} begins. */
  private double cotangent(int h) {
    Vector3 at = vertex(corners[h]);
    Vector3 u = vertex(corners[next(h)]).minus(at);
    Vector3 v = vertex(corners[previous(h)]).minus(at);
    return u.dot(v) / u.cross(v).norm();
  }

  /** Moves free vertices half way to the middle of their neighbours, on the form. */
  private void shift(boolean[] held) {
    double[] sum = new double[3 * vertexCount];
    int[] count = new int[vertexCount];
    for (int h = 0; h < 3 * triangleCount; h++) {
      int from = corners[h];
      int to = corners[next(h)];
      for (int k = 0; k < 3; k++) {
        sum[3 * from + k] += xyz[3 * to + k];
      }
      count[from]++;
    }
    for (int v = 0; v < vertexCount; v++) {
      if (!held[v]) {
        Vector3 mean =
            new Vector3(sum[3 * v], sum[3 * v + 1], sum[3 * v + 2]).times(1.0 / count[v]);
        setVertex(v, form.surfacePoint(vertex(v).lerp(mean, 0.5)));
      }
    }
  }

  // ---- The whole

  private Result mirrored() {
    int[] image = new int[vertexCount];
    int count = vertexCount;
    for (int v = 0; v < vertexCount; v++) {
      image[v] = xyz[3 * v] == 0 ? v : count++;
    }
    double[] all = Arrays.copyOf(xyz, 3 * count);
    BitSet part = new BitSet(count);
    for (int v = 0; v < vertexCount; v++) {
      int w = image[v];
      part.set(v, onPart[v]);
      part.set(w, onPart[v]);
      if (w != v) {
        all[3 * w] = -xyz[3 * v];
        all[3 * w + 1] = xyz[3 * v + 1];
        all[3 * w + 2] = xyz[3 * v + 2];
      }
    }
    int[] both = Arrays.copyOf(corners, 6 * triangleCount);
    for (int t = 0; t < triangleCount; t++) {
      int at = 3 * (triangleCount + t);
      both[at] = image[corners[3 * t]];
      both[at + 1] = image[corners[3 * t + 2]];
      both[at + 2] = image[corners[3 * t + 1]];
    }
    return new Result(TriangleMesh.of(all, both), part);
  }
}
