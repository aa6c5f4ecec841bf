package foilwright.geometry.surface;

import foilwright.geometry.Vector3;

/**
 * Finds the nearest point of a mesh, exactly, with the help of a grid of cells; fast for points
 * near the mesh (a few microseconds), slower far away. Of several nearest points it gives one,
 * always the same.
 */
public final class NearestOnMesh {
  private final TriangleMesh mesh;
  private final Vector3 low;
  private final double cellMm;
  private final int nx;
  private final int ny;
  private final int nz;

  /** Where the triangles of each cell start in {@link #triangles}. */
  private final int[] starts;

  private final int[] triangles;

  private NearestOnMesh(TriangleMesh mesh) {
    this.mesh = mesh;
    double[] xyz = mesh.coordinates();
    double[] least = {xyz[0], xyz[1], xyz[2]};
    double[] most = least.clone();
    for (int i = 0; i < xyz.length; i++) {
      least[i % 3] = Math.min(least[i % 3], xyz[i]);
      most[i % 3] = Math.max(most[i % 3], xyz[i]);
    }
    low = new Vector3(least[0], least[1], least[2]);
    double size = Math.max(Math.max(most[0] - least[0], most[1] - least[1]), most[2] - least[2]);
    cellMm = Math.max(2 * mesh.meanEdge(), size / 60);
    nx = (int) ((most[0] - least[0]) / cellMm) + 1;
    ny = (int) ((most[1] - least[1]) / cellMm) + 1;
    nz = (int) ((most[2] - least[2]) / cellMm) + 1;
    starts = new int[nx * ny * nz + 1];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int[] box = box(t);
      for (int i = box[0]; i <= box[3]; i++) {
        for (int j = box[1]; j <= box[4]; j++) {
          for (int k = box[2]; k <= box[5]; k++) {
            starts[cell(i, j, k) + 1]++;
          }
        }
      }
    }
    for (int c = 0; c < nx * ny * nz; c++) {
      starts[c + 1] += starts[c];
    }
    triangles = new int[starts[nx * ny * nz]];
    int[] filled = new int[nx * ny * nz];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int[] box = box(t);
      for (int i = box[0]; i <= box[3]; i++) {
        for (int j = box[1]; j <= box[4]; j++) {
          for (int k = box[2]; k <= box[5]; k++) {
            int c = cell(i, j, k);
            triangles[starts[c] + filled[c]++] = t;
          }
        }
      }
    }
  }

  public static NearestOnMesh of(TriangleMesh mesh) {
    return new NearestOnMesh(mesh);
  }

  private int cell(int i, int j, int k) {
    return (i * ny + j) * nz + k;
  }

  /** Least and greatest cell indices of a triangle's bounding box. */
  private int[] box(int t) {
    int[] box = {nx, ny, nz, 0, 0, 0};
    for (int c = 0; c < 3; c++) {
      int v = mesh.corner(t, c);
      int i = index(mesh.x(v) - low.x(), nx);
      int j = index(mesh.y(v) - low.y(), ny);
      int k = index(mesh.z(v) - low.z(), nz);
      box[0] = Math.min(box[0], i);
      box[1] = Math.min(box[1], j);
      box[2] = Math.min(box[2], k);
      box[3] = Math.max(box[3], i);
      box[4] = Math.max(box[4], j);
      box[5] = Math.max(box[5], k);
    }
    return box;
  }

  private int index(double offset, int count) {
    return (int) Math.min(Math.max(offset / cellMm, 0), count - 1);
  }

  /** The nearest point of the mesh to a point anywhere. */
  public SurfacePoint nearest(Vector3 p) {
    Search search = new Search(p);
    int i = index(p.x() - low.x(), nx);
    int j = index(p.y() - low.y(), ny);
    int k = index(p.z() - low.z(), nz);
    // How far p lies from the nearest point of the grid: cells of shell s are at least that far.
    double outside = outside(p);
    int shells = Math.max(nx, Math.max(ny, nz));
    for (int s = 0; s <= shells; s++) {
      double free = Math.max((s - 1) * cellMm, outside);
      if (search.square <= free * free) {
        break;
      }
      shell(search, i, j, k, s);
    }
    return new SurfacePoint(
        search.triangle, search.w1, search.w2, mesh.point(search.triangle, search.w1, search.w2));
  }

  private double outside(Vector3 p) {
    double x = beyond(p.x() - low.x(), nx * cellMm);
    double y = beyond(p.y() - low.y(), ny * cellMm);
    double z = beyond(p.z() - low.z(), nz * cellMm);
    return Math.sqrt(x * x + y * y + z * z);
  }

  private static double beyond(double offset, double extent) {
    return Math.max(0, Math.max(-offset, offset - extent));
  }

  private void shell(Search search, int i, int j, int k, int s) {
    for (int a = Math.max(0, i - s); a <= Math.min(nx - 1, i + s); a++) {
      for (int b = Math.max(0, j - s); b <= Math.min(ny - 1, j + s); b++) {
        boolean side = a == i - s || a == i + s || b == j - s || b == j + s;
        int step = side ? 1 : Math.max(1, 2 * s);
        for (int c = k - s; c <= k + s; c += step) {
          if (c >= 0 && c < nz) {
            int cell = cell(a, b, c);
            for (int n = starts[cell]; n < starts[cell + 1]; n++) {
              search.offer(triangles[n]);
            }
          }
        }
      }
    }
  }

  /** The best point so far. */
  private final class Search {
    private final Vector3 p;
    private double square = Double.POSITIVE_INFINITY;
    private int triangle = -1;
    private double w1;
    private double w2;

    Search(Vector3 p) {
      this.p = p;
    }

    void offer(int t) {
      Vector3 a = mesh.vertex(mesh.corner(t, 0));
      Vector3 u = mesh.vertex(mesh.corner(t, 1)).minus(a);
      Vector3 v = mesh.vertex(mesh.corner(t, 2)).minus(a);
      Vector3 d = p.minus(a);
      double uu = u.dot(u);
      double uv = u.dot(v);
      double vv = v.dot(v);
      double du = d.dot(u);
      double dv = d.dot(v);
      double det = uu * vv - uv * uv;
      double s = (vv * du - uv * dv) / det;
      double r = (uu * dv - uv * du) / det;
      if (s >= 0 && r >= 0 && s + r <= 1) {
        take(t, s, r, d, u, v);
      } else {
        if (r < 0) {
          take(t, held(du / uu), 0, d, u, v);
        }
        if (s < 0) {
          take(t, 0, held(dv / vv), d, u, v);
        }
        if (s + r > 1) {
          double along = held((dv - du + uu - uv) / (uu - 2 * uv + vv));
          take(t, 1 - along, along, d, u, v);
        }
      }
    }

    private double held(double share) {
      return Math.min(Math.max(share, 0), 1);
    }

    private void take(int t, double s, double r, Vector3 d, Vector3 u, Vector3 v) {
      double x = d.x() - s * u.x() - r * v.x();
      double y = d.y() - s * u.y() - r * v.y();
      double z = d.z() - s * u.z() - r * v.z();
      double here = x * x + y * y + z * z;
      if (here < square) {
        square = here;
        triangle = t;
        w1 = s;
        w2 = r;
      }
    }
  }
}
