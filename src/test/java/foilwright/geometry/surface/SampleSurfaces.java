package foilwright.geometry.surface;

import foilwright.geometry.Vector3;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Meshes of closed-form surfaces for tests: a subdivided octahedron, pushed out onto an ellipsoid.
 */
public final class SampleSurfaces {
  private SampleSurfaces() {}

  /** Ellipsoid with semi-axes in mm; {@code steps} edges along each octahedron edge. */
  public static TriangleMesh ellipsoid(double a, double b, double c, int steps) {
    List<Vector3> vertices = new ArrayList<>();
    List<Integer> corners = new ArrayList<>();
    Map<Vector3, Integer> numbers = new HashMap<>();
    int[] signs = {-1, 1};
    for (int sx : signs) {
      for (int sy : signs) {
        for (int sz : signs) {
          for (int i = 0; i < steps; i++) {
            for (int j = 0; i + j < steps; j++) {
              add(sx, sy, sz, steps, corners, numbers, vertices, i, j, i + 1, j, i, j + 1);
              if (i + j + 1 < steps) {
                add(
                    sx, sy, sz, steps, corners, numbers, vertices, i + 1, j, i + 1, j + 1, i,
                    j + 1);
              }
            }
          }
        }
      }
    }
    double[] xyz = new double[3 * vertices.size()];
    for (int v = 0; v < vertices.size(); v++) {
      Vector3 u = vertices.get(v).unit();
      xyz[3 * v] = a * u.x();
      xyz[3 * v + 1] = b * u.y();
      xyz[3 * v + 2] = c * u.z();
    }
    return TriangleMesh.of(xyz, corners.stream().mapToInt(Integer::intValue).toArray());
  }

  private static void add(
      int sx,
      int sy,
      int sz,
      int n,
      List<Integer> corners,
      Map<Vector3, Integer> numbers,
      List<Vector3> vertices,
      int... ij) {
    boolean outward = sx * sy * sz > 0;
    for (int m = 0; m < 3; m++) {
      int k = outward ? m : 2 - m;
      int i = ij[2 * k];
      int j = ij[2 * k + 1];
      Vector3 p = even(sx, sy, sz, i, j, n);
      corners.add(
          numbers.computeIfAbsent(
              p,
              q -> {
                vertices.add(q);
                return vertices.size() - 1;
              }));
    }
  }

  /** Point (i, j) of an octant, spread evenly by angle. */
  private static Vector3 even(int sx, int sy, int sz, int i, int j, int n) {
    double u = Math.tan(Math.PI / 4 * i / n) + 0.0;
    double v = Math.tan(Math.PI / 4 * j / n) + 0.0;
    double w = Math.tan(Math.PI / 4 * (n - i - j) / n) + 0.0;
    return new Vector3(sx * u + 0.0, sy * v + 0.0, sz * w + 0.0);
  }
}
