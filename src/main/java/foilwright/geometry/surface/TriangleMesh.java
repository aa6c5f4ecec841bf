package foilwright.geometry.surface;

import foilwright.geometry.Vector3;
import java.util.Arrays;

/**
 * An immutable triangle mesh in the head frame, millimetres; corners run counter-clockwise seen
 * from outside.
 *
 * <p>Every edge belongs to one or two triangles. Edge {@code k} of a triangle lies opposite its
 * corner {@code k}, from corner {@code k+1} to corner {@code k+2} (modulo 3).
 */
public final class TriangleMesh {
  private final double[] xyz;
  private final int[] corners;
  private final int[] neighbours;
  private final int[] fanStarts;
  private final int[] fans;
  private final double[] areas;
  private final double area;
  private final double longestEdge;

  private TriangleMesh(double[] xyz, int[] corners) {
    this.xyz = xyz;
    this.corners = corners;
    neighbours = findNeighbours(corners, xyz.length / 3);
    fanStarts = new int[xyz.length / 3 + 1];
    fans = new int[corners.length];
    gatherFans();
    areas = new double[corners.length / 3];
    double sum = 0;
    for (int t = 0; t < areas.length; t++) {
      areas[t] = doubleNormal(t).norm() / 2;
      sum += areas[t];
    }
    area = sum;
    double longest = 0;
    for (int t = 0; t < areas.length; t++) {
      for (int k = 0; k < 3; k++) {
        longest = Math.max(longest, vertex(corner(t, k)).distance(vertex(corner(t, (k + 1) % 3))));
      }
    }
    longestEdge = longest;
  }

  /**
   * A mesh of vertices (x, y, z one after another) and triangles (three vertex numbers one after
   * another).
   *
   * @throws IllegalArgumentException when an index is out of range, a coordinate is not finite, or
   *     an edge has more than two triangles
   */
  public static TriangleMesh of(double[] xyz, int[] corners) {
    if (xyz.length % 3 != 0 || corners.length % 3 != 0 || corners.length == 0) {
      throw new IllegalArgumentException(
          "vertices and triangles come in threes, at least one triangle");
    }
    for (double value : xyz) {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a vertex is not finite");
      }
    }
    for (int v : corners) {
      if (v < 0 || v >= xyz.length / 3) {
        throw new IllegalArgumentException("vertex " + v + " of " + xyz.length / 3);
      }
    }
    return new TriangleMesh(xyz.clone(), corners.clone());
  }

  private static int[] findNeighbours(int[] corners, int vertexCount) {
    int[] head = new int[vertexCount];
    Arrays.fill(head, -1);
    int[] next = new int[corners.length];
    int[] result = new int[corners.length];
    Arrays.fill(result, -1);
    for (int h = 0; h < corners.length; h++) {
      int t = h / 3;
      int a = corners[3 * t + (h + 1) % 3];
      int b = corners[3 * t + (h + 2) % 3];
      int low = Math.min(a, b);
      int high = Math.max(a, b);
      boolean found = false;
      for (int g = head[low]; g >= 0; g = next[g]) {
        int s = g / 3;
        if (Math.max(corners[3 * s + (g + 1) % 3], corners[3 * s + (g + 2) % 3]) == high) {
          if (result[g] >= 0 || found) {
            throw new IllegalArgumentException(
                "edge " + a + "-" + b + " has more than two triangles");
          }
          result[g] = t;
          result[h] = s;
          found = true;
        }
      }
      next[h] = head[low];
      head[low] = h;
    }
    return result;
  }

  private void gatherFans() {
    for (int v : corners) {
      fanStarts[v + 1]++;
    }
    for (int v = 0; v + 1 < fanStarts.length; v++) {
      fanStarts[v + 1] += fanStarts[v];
    }
    int[] at = fanStarts.clone();
    for (int c = 0; c < corners.length; c++) {
      fans[at[corners[c]]++] = c / 3;
    }
  }

  public int vertexCount() {
    return xyz.length / 3;
  }

  public int triangleCount() {
    return areas.length;
  }

  public double x(int vertex) {
    return xyz[3 * vertex];
  }

  public double y(int vertex) {
    return xyz[3 * vertex + 1];
  }

  public double z(int vertex) {
    return xyz[3 * vertex + 2];
  }

  public Vector3 vertex(int vertex) {
    return new Vector3(xyz[3 * vertex], xyz[3 * vertex + 1], xyz[3 * vertex + 2]);
  }

  /** Vertex number at corner 0, 1 or 2 of a triangle. */
  public int corner(int triangle, int corner) {
    return corners[3 * triangle + corner];
  }

  /** The triangle across the edge opposite a corner, or -1 at the border. */
  public int neighbour(int triangle, int corner) {
    return neighbours[3 * triangle + corner];
  }

  /** How many triangles meet at a vertex. */
  public int fanSize(int vertex) {
    return fanStarts[vertex + 1] - fanStarts[vertex];
  }

  /** The {@code i}-th triangle at a vertex, in the order of the triangles' numbers. */
  public int fan(int vertex, int i) {
    return fans[fanStarts[vertex] + i];
  }

  /** Area of a triangle in square millimetres. */
  public double area(int triangle) {
    return areas[triangle];
  }

  /** Area of the whole mesh in square millimetres. */
  public double area() {
    return area;
  }

  /** Outward unit normal of a triangle. */
  public Vector3 normal(int triangle) {
    return doubleNormal(triangle).unit();
  }

  private Vector3 doubleNormal(int t) {
    Vector3 a = vertex(corners[3 * t]);
    return vertex(corners[3 * t + 1]).minus(a).cross(vertex(corners[3 * t + 2]).minus(a));
  }

  /** The point of a triangle with weights 1 - w1 - w2, w1, w2 of its corners. */
  public Vector3 point(int triangle, double w1, double w2) {
    int a = 3 * corners[3 * triangle];
    int b = 3 * corners[3 * triangle + 1];
    int c = 3 * corners[3 * triangle + 2];
    return new Vector3(
        xyz[a] + w1 * (xyz[b] - xyz[a]) + w2 * (xyz[c] - xyz[a]),
        xyz[a + 1] + w1 * (xyz[b + 1] - xyz[a + 1]) + w2 * (xyz[c + 1] - xyz[a + 1]),
        xyz[a + 2] + w1 * (xyz[b + 2] - xyz[a + 2]) + w2 * (xyz[c + 2] - xyz[a + 2]));
  }

  /** Length of the longest edge in millimetres. */
  public double longestEdge() {
    return longestEdge;
  }

  /** Mean length of the edges in millimetres, each counted once for each of its triangles. */
  public double meanEdge() {
    double sum = 0;
    for (int t = 0; t < areas.length; t++) {
      for (int k = 0; k < 3; k++) {
        sum += vertex(corner(t, k)).distance(vertex(corner(t, (k + 1) % 3)));
      }
    }
    return sum / (3 * areas.length);
  }

  /** The coordinates themselves, for this package's loops, which never write them. */
  double[] coordinates() {
    return xyz;
  }

  /** The corner numbers themselves, for this package's loops, which never write them. */
  int[] corners() {
    return corners;
  }
}
