package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;

/**
 * Finds which edges of a region's fragments are its border and which join two of its fragments.
 *
 * <p>An edge is a directed interval of a line: of a mesh edge, or of a cut within a triangle. Where
 * two fragments cover the same interval from opposite sides they are joined; what is covered once
 * is border.
 */
final class RegionBorders {
  private static final double SAME = 1e-9;

  /** Interval [low, high] of a line, covered by a fragment; {@code along} tells its direction. */
  private record Side(int fragment, double low, double high, boolean along) {
    /** Whether the other covers just the same from the opposite side. */
    boolean joins(Side other) {
      return along != other.along
          && Math.abs(low - other.low) < SAME
          && Math.abs(high - other.high) < SAME;
    }
  }

  /** A line: two points that fix its parameter, and the sides that lie on it. */
  private static final class Line {
    private final Vector3 start;
    private final Vector3 end;
    private final List<Side> sides = new ArrayList<>(2);

    Line(Vector3 start, Vector3 end) {
      this.start = start;
      this.end = end;
    }
  }

  private final Region region;
  private final List<Line> lines = new ArrayList<>();
  private final int[] parent;

  private RegionBorders(Region region, boolean joinsMatter) {
    this.region = region;
    parent = new int[region.fragmentCount()];
    Arrays.setAll(parent, f -> f);
    gather(joinsMatter);
  }

  /** The border of a region. */
  static List<Polyline> outline(Region region) {
    return new RegionBorders(region, false).outline();
  }

  /** The connected parts of a region. */
  static List<Region> components(Region region) {
    return new RegionBorders(region, true).components();
  }

  /** The triangles that the region holds as one whole fragment. */
  private BitSet wholeTriangles() {
    BitSet whole = new BitSet(region.mesh().triangleCount());
    for (int f = 0; f < region.fragmentCount(); f++) {
      if (isWhole(f)) {
        whole.set(region.triangle(f));
      }
    }
    return whole;
  }

  private boolean isWhole(int f) {
    return region.size(f) == 3
        && region.weight1(f, 0) == 0
        && region.weight2(f, 0) == 0
        && region.weight1(f, 1) == 1
        && region.weight2(f, 2) == 1;
  }

  /**
   * @param joinsMatter whether edges between two whole triangles are wanted; they are never border
   */
  private void gather(boolean joinsMatter) {
    TriangleMesh mesh = region.mesh();
    BitSet whole = joinsMatter ? new BitSet() : wholeTriangles();
    Map<Long, Line> edges = new HashMap<>();
    Map<Integer, List<double[]>> cuts = new HashMap<>();
    Map<Integer, List<Line>> cutLines = new HashMap<>();
    for (int f = 0; f < region.fragmentCount(); f++) {
      int t = region.triangle(f);
      int size = region.size(f);
      for (int i = 0; i < size; i++) {
        int j = i + 1 == size ? 0 : i + 1;
        double u = region.weight1(f, i);
        double v = region.weight2(f, i);
        double p = region.weight1(f, j);
        double q = region.weight2(f, j);
        int side = sideOf(u, v, p, q);
        if (side >= 0 && whole.get(t) && isJoined(whole, mesh.neighbour(t, side))) {
          continue;
        }
        if (side >= 0) {
          int a = mesh.corner(t, (side + 1) % 3);
          int b = mesh.corner(t, (side + 2) % 3);
          double from = weight((side + 2) % 3, u, v);
          double to = weight((side + 2) % 3, p, q);
          boolean forward = a < b;
          long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
          Line line =
              edges.computeIfAbsent(
                  key, k -> new Line(mesh.vertex(Math.min(a, b)), mesh.vertex(Math.max(a, b))));
          put(line, f, forward ? from : 1 - from, forward ? to : 1 - to);
        } else {
          putCut(
              cuts.computeIfAbsent(t, k -> new ArrayList<>(2)),
              cutLines.computeIfAbsent(t, k -> new ArrayList<>(2)),
              f,
              new double[] {u, v, p, q});
        }
      }
    }
    edges.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(entry -> lines.add(entry.getValue()));
    cutLines.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(entry -> lines.addAll(entry.getValue()));
  }

  private static boolean isJoined(BitSet whole, int neighbour) {
    return neighbour >= 0 && whole.get(neighbour);
  }

  private void putCut(List<double[]> known, List<Line> its, int f, double[] edge) {
    for (int n = 0; n < known.size(); n++) {
      double[] line = known.get(n);
      double du = line[2] - line[0];
      double dv = line[3] - line[1];
      double square = du * du + dv * dv;
      double root = Math.sqrt(square);
      if (Math.abs((edge[0] - line[0]) * dv - (edge[1] - line[1]) * du) < SAME * root
          && Math.abs((edge[2] - line[0]) * dv - (edge[3] - line[1]) * du) < SAME * root) {
        put(
            its.get(n),
            f,
            ((edge[0] - line[0]) * du + (edge[1] - line[1]) * dv) / square,
            ((edge[2] - line[0]) * du + (edge[3] - line[1]) * dv) / square);
        return;
      }
    }
    if (Math.hypot(edge[2] - edge[0], edge[3] - edge[1]) < SAME) {
      return;
    }
    int t = region.triangle(f);
    known.add(edge);
    Line line =
        new Line(
            region.mesh().point(t, edge[0], edge[1]), region.mesh().point(t, edge[2], edge[3]));
    its.add(line);
    put(line, f, 0, 1);
  }

  private static void put(Line line, int f, double from, double to) {
    line.sides.add(new Side(f, Math.min(from, to), Math.max(from, to), from < to));
  }

  private static int sideOf(double u, double v, double p, double q) {
    if (Math.abs(1 - u - v) < SAME && Math.abs(1 - p - q) < SAME) {
      return 0;
    }
    if (Math.abs(u) < SAME && Math.abs(p) < SAME) {
      return 1;
    }
    return Math.abs(v) < SAME && Math.abs(q) < SAME ? 2 : -1;
  }

  private static double weight(int corner, double u, double v) {
    return corner == 0 ? 1 - u - v : corner == 1 ? u : v;
  }

  /**
   * The border as polylines with the region on their left, seen from outside; whole loops are
   * closed.
   */
  private List<Polyline> outline() {
    Chains chains = new Chains();
    for (Line line : lines) {
      if (line.sides.size() == 1) {
        addTo(chains, line, line.sides.get(0));
        continue;
      }
      if (line.sides.size() == 2 && line.sides.get(0).joins(line.sides.get(1))) {
        continue;
      }
      double[] cuts =
          line.sides.stream()
              .flatMapToDouble(s -> DoubleStream.of(s.low, s.high))
              .sorted()
              .toArray();
      for (int i = 0; i + 1 < cuts.length; i++) {
        double low = cuts[i];
        double high = cuts[i + 1];
        if (high - low < SAME) {
          continue;
        }
        double middle = (low + high) / 2;
        int net = 0;
        for (Side side : line.sides) {
          if (side.low <= middle && middle <= side.high) {
            net += side.along ? 1 : -1;
          }
        }
        if (net != 0) {
          Vector3 a = line.start.lerp(line.end, low);
          Vector3 b = line.start.lerp(line.end, high);
          chains.add(net > 0 ? a : b, net > 0 ? b : a);
        }
      }
    }
    return chains.toPolylines();
  }

  private static void addTo(Chains chains, Line line, Side side) {
    if (side.high - side.low >= SAME) {
      Vector3 a = line.start.lerp(line.end, side.low);
      Vector3 b = line.start.lerp(line.end, side.high);
      chains.add(side.along ? a : b, side.along ? b : a);
    }
  }

  /** The connected parts, largest first; parts that touch in a point only are apart. */
  private List<Region> components() {
    for (Line line : lines) {
      List<Side> sides = line.sides;
      for (int i = 0; i < sides.size(); i++) {
        for (int j = i + 1; j < sides.size(); j++) {
          Side a = sides.get(i);
          Side b = sides.get(j);
          if (a.along != b.along && Math.min(a.high, b.high) - Math.max(a.low, b.low) > SAME) {
            parent[root(a.fragment)] = root(b.fragment);
          }
        }
      }
    }
    Map<Integer, List<Integer>> groups = new HashMap<>();
    for (int f = 0; f < parent.length; f++) {
      groups.computeIfAbsent(root(f), r -> new ArrayList<>()).add(f);
    }
    boolean[] member = new boolean[parent.length];
    List<Region> parts = new ArrayList<>();
    List<List<Integer>> ordered = new ArrayList<>(groups.values());
    ordered.sort(Comparator.comparingInt((List<Integer> g) -> g.get(0)));
    for (List<Integer> group : ordered) {
      Arrays.fill(member, false);
      group.forEach(f -> member[f] = true);
      parts.add(region.fragments(f -> member[f]));
    }
    parts.sort(Comparator.comparingDouble(Region::area).reversed());
    return List.copyOf(parts);
  }

  private int root(int f) {
    int r = f;
    while (parent[r] != r) {
      r = parent[r];
    }
    while (parent[f] != r) {
      int next = parent[f];
      parent[f] = r;
      f = next;
    }
    return r;
  }
}
