package foilwright.geometry.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.sf.geographiclib.Geodesic;
import org.junit.jupiter.api.Test;

/** Surfaces against published closed forms and a geodesic library. */
class SurfaceReferenceTest {
  /**
   * Area of an ellipsoid, Legendre's form, equal to Carlson's R_G and to quadrature (computed with
   * general libraries); the mesh lies inside the surface, so that its area is low by a share that
   * falls fourfold when the edges are halved. Richardson's extrapolation of two meshes must meet
   * the printed value.
   */
  @Test
  void ellipsoidAreas() {
    double[][] rows = {
      {76, 98, 90, 97126.0448276993},
      {70, 90, 80, 80258.9114587563},
      {90, 90, 81, 95073.7384618025},
      {80, 80, 100, 94122.2087915992}
    };
    for (double[] r : rows) {
      double coarse = SampleSurfaces.ellipsoid(r[0], r[1], r[2], 40).area();
      double fine = SampleSurfaces.ellipsoid(r[0], r[1], r[2], 80).area();
      assertTrue(fine < r[3] && (r[3] - fine) / r[3] < 5e-4);
      assertEquals(r[3], fine + (fine - coarse) / 3, 2e-6 * r[3]);
    }
  }

  /** Area of the ellipsoid 76, 98, 90 above z = 0, 20, 45 (quadrature with a general library). */
  @Test
  void ellipsoidCaps() {
    double[][] rows = {{0, 48563.0224138497}, {20, 37595.1640457223}, {45, 23965.2776268986}};
    for (double[] r : rows) {
      double coarse = cap(40, r[0]);
      double fine = cap(80, r[0]);
      assertEquals(r[1], fine + (fine - coarse) / 3, 2e-4 * r[1]);
    }
  }

  private static double cap(int steps, double z) {
    TriangleMesh mesh = SampleSurfaces.ellipsoid(76, 98, 90, steps);
    return Region.whole(mesh)
        .clip(ScalarField.compute(mesh, Vector3::z), z, Double.POSITIVE_INFINITY)
        .area();
  }

  /**
   * Plane with ellipsoid 76, 98, 90: Klein, Applied Mathematics 3 (2012) 1634; perimeters by
   * library.
   */
  @Test
  void planeCutsOfAnEllipsoid() {
    TriangleMesh mesh = SampleSurfaces.ellipsoid(76, 98, 90, 80);
    double[][] rows = {
      {0, 0, 1, 45, 84.8704895709, 65.8179306876, 475.295512395},
      {1, 2, 3, 30, 90.0801376557, 72.6121606323, 512.587011666}
    };
    for (double[] r : rows) {
      Plane plane = new Plane(new Vector3(r[0], r[1], r[2]).unit(), r[3]);
      List<Polyline> cut =
          Isolines.of(Region.whole(mesh), ScalarField.distanceFrom(mesh, plane), 0);
      assertEquals(1, cut.size());
      assertEquals(r[6], cut.get(0).length(), 4e-4 * r[6]);
      Vector3 centre = Vector3.ZERO;
      List<Vector3> points = cut.get(0).points();
      double most = 0;
      double least = Double.POSITIVE_INFINITY;
      for (Vector3 p : points) {
        assertEquals(0, plane.distance(p), 1e-9);
      }
      for (int i = 0; i + 1 < points.size(); i++) {
        Vector3 far = points.get(i);
        for (Vector3 p : points) {
          if (p.distance(points.get(i)) > far.distance(points.get(i))) {
            far = p;
          }
        }
        centre = centre.plus(points.get(i).lerp(far, 0.5));
      }
      centre = centre.times(1.0 / (points.size() - 1));
      for (Vector3 p : points) {
        most = Math.max(most, p.distance(centre));
        least = Math.min(least, p.distance(centre));
      }
      assertEquals(r[4], most, 0.15);
      assertEquals(r[5], least, 0.15);
    }
  }

  /** Distance from a circle of latitude on a sphere is radius times the difference of latitude. */
  @Test
  void distanceFromACircleOnASphere() {
    double coarse = worstFromEquator(SampleSurfaces.ellipsoid(90, 90, 90, 28));
    double fine = worstFromEquator(SampleSurfaces.ellipsoid(90, 90, 90, 56));
    assertTrue(fine < 0.01, "worst relative error " + fine);
    assertTrue(fine < 0.7 * coarse, coarse + " to " + fine);
  }

  /** Worst error relative to the distance, or to 30 mm where the distance is less. */
  private static double worstFromEquator(TriangleMesh mesh) {
    ScalarField distance = SurfaceDistance.fromVertices(mesh, v -> Math.abs(mesh.z(v)) < 1e-9);
    double worst = 0;
    for (int v = 0; v < mesh.vertexCount(); v++) {
      double exact = 90 * Math.abs(Math.asin(mesh.z(v) / 90));
      worst = Math.max(worst, Math.abs(distance.at(v) - exact) / Math.max(exact, 30));
    }
    return worst;
  }

  /** Distance from the equator of a spheroid against the meridian arc of GeographicLib. */
  @Test
  void distanceFromTheEquatorOfASpheroid() {
    double a = 90;
    for (double f : new double[] {0.1, -0.1}) {
      TriangleMesh mesh = SampleSurfaces.ellipsoid(a, a, a * (1 - f), 56);
      ScalarField distance = SurfaceDistance.fromVertices(mesh, v -> Math.abs(mesh.z(v)) < 1e-9);
      Geodesic geodesic = new Geodesic(a, f);
      for (int v = 0; v < mesh.vertexCount(); v += 37) {
        double rho = Math.hypot(mesh.x(v), mesh.y(v));
        double latitude = Math.toDegrees(Math.atan2(Math.abs(mesh.z(v)), rho * (1 - f) * (1 - f)));
        double exact = geodesic.Inverse(0, 0, latitude, 0).s12;
        assertEquals(exact, distance.at(v), Math.max(0.3, 0.01 * exact), "latitude " + latitude);
      }
    }
  }

  @Test
  void distanceFromACurveThatFollowsNoEdges() {
    TriangleMesh mesh = SampleSurfaces.ellipsoid(90, 90, 90, 56);
    Polyline circle =
        Isolines.of(Region.whole(mesh), ScalarField.compute(mesh, Vector3::z), 31.7).get(0);
    ScalarField distance = SurfaceDistance.fromCurve(mesh, circle, 5);
    for (int v = 0; v < mesh.vertexCount(); v += 11) {
      double exact = 90 * Math.abs(Math.asin(mesh.z(v) / 90) - Math.asin(31.7 / 90));
      assertEquals(exact, distance.at(v), Math.max(0.3, 0.01 * exact));
    }
  }

  /**
   * Between two points of head-sized spheroids against GeodSolve -E of GeographicLib 2.1.2 (exact
   * form) in the table, and against the library's own Java series. The front starts with straight
   * distances within 8 mm.
   */
  @Test
  void distancesBetweenPointsOfSpheroids() throws IOException {
    List<String> rows =
        Files.readAllLines(
            Path.of("src/test/resources/reference/geometry/geodesics_head_spheroid.csv"));
    assertEquals(7, rows.size());
    for (String row : rows.subList(1, rows.size())) {
      List<String> cells = List.of(row.split(",", -1));
      double a = Double.parseDouble(cells.get(0));
      double f = Double.parseDouble(cells.get(1));
      double[] at = new double[4];
      for (int i = 0; i < 4; i++) {
        at[i] = Double.parseDouble(cells.get(2 + i));
      }
      double exact = Double.parseDouble(cells.get(8));
      assertEquals(exact, new Geodesic(a, f).Inverse(at[0], at[1], at[2], at[3]).s12, 1e-6);
      TriangleMesh mesh = SampleSurfaces.ellipsoid(a, a, a * (1 - f), 56);
      Vector3 from = spheroid(a, f, at[0], at[1]);
      Vector3 to = spheroid(a, f, at[2], at[3]);
      ScalarField distance = SurfaceDistance.fromCurve(mesh, Polyline.of(List.of(from)), 8);
      SurfacePoint end = NearestOnMesh.of(mesh).nearest(to);
      assertEquals(exact, end.valueOf(distance), 0.01 * exact, row);
    }
  }

  private static Vector3 spheroid(double a, double f, double latDeg, double lonDeg) {
    double lat = Math.toRadians(latDeg);
    double lon = Math.toRadians(lonDeg);
    double e2 = f * (2 - f);
    double n = a / Math.sqrt(1 - e2 * Math.sin(lat) * Math.sin(lat));
    return new Vector3(
        n * Math.cos(lat) * Math.cos(lon),
        n * Math.cos(lat) * Math.sin(lon),
        n * (1 - e2) * Math.sin(lat));
  }
}
