package foilwright.benchmark;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.apache.commons.geometry.core.partitioning.Split;
import org.apache.commons.geometry.euclidean.threed.Plane;
import org.apache.commons.geometry.euclidean.threed.PlaneConvexSubset;
import org.apache.commons.geometry.euclidean.threed.Planes;
import org.apache.commons.geometry.euclidean.threed.Triangle3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.numbers.core.Precision;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A scalp of about 20 thousand triangles cut into 80 bands, kept as regions, with their areas.
 * Target: 1.5 ms.
 *
 * <p>Beside it the same bands of height are cut with Apache Commons Geometry, which is handed its
 * own triangles and planes ready made, and each triangle only the planes that cross it. Both must
 * give the same areas.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
public class BandsBenchmark {
  private static final int BANDS = 80;

  private Region scalp;
  private ScalarField height;
  private double[] heights;
  private ScalarField fromHairline;
  private double[] distances;
  private final List<Triangle3D> triangles = new ArrayList<>();
  private final List<Plane> planes = new ArrayList<>();

  @Setup
  public void prepare() {
    Head head = Shipped.head();
    TriangleMesh mesh = head.mesh();
    scalp = head.scalp();
    height = ScalarField.compute(mesh, Vector3::z);
    heights = levels(scalp, height);
    fromHairline = head.distanceFromHairline();
    distances = levels(scalp, fromHairline);
    Precision.DoubleEquivalence precision = Precision.doubleEquivalenceOfEpsilon(1e-10);
    for (int t = 0; t < mesh.triangleCount(); t++) {
      triangles.add(
          Planes.triangleFromVertices(
              vertex(mesh, t, 0), vertex(mesh, t, 1), vertex(mesh, t, 2), precision));
    }
    for (double level : heights) {
      planes.add(
          Planes.fromPointAndNormal(Vector3D.of(0, 0, level), Vector3D.Unit.PLUS_Z, precision));
    }
    requireSame(heightBands(), heightBandsByCommonsGeometry());
  }

  /** Levels that divide the range of a field over a region evenly. */
  static double[] levels(Region region, ScalarField field) {
    double least = region.least(field);
    double most = region.greatest(field);
    double[] levels = new double[BANDS - 1];
    for (int i = 0; i < levels.length; i++) {
      levels[i] = least + (i + 1) * (most - least) / BANDS;
    }
    return levels;
  }

  private static Vector3D vertex(TriangleMesh mesh, int triangle, int corner) {
    int v = mesh.corner(triangle, corner);
    return Vector3D.of(mesh.x(v), mesh.y(v), mesh.z(v));
  }

  private void requireSame(double[] ours, double[] theirs) {
    for (int i = 0; i < BANDS; i++) {
      if (!(Math.abs(ours[i] - theirs[i]) <= 1e-9 * ours[i])) {
        throw new IllegalStateException(
            "band " + i + ": " + ours[i] + " mm2 against " + theirs[i] + " mm2");
      }
    }
  }

  @Benchmark
  public double[] distanceBands() {
    return areas(scalp.bands(fromHairline, distances));
  }

  @Benchmark
  public double[] heightBands() {
    return areas(scalp.bands(height, heights));
  }

  private static double[] areas(List<Region> bands) {
    return bands.stream().mapToDouble(Region::area).toArray();
  }

  @Benchmark
  public double[] heightBandsByCommonsGeometry() {
    List<List<PlaneConvexSubset>> bands = new ArrayList<>();
    for (int i = 0; i < BANDS; i++) {
      bands.add(new ArrayList<>());
    }
    for (Triangle3D triangle : triangles) {
      double least =
          Math.min(
              triangle.getPoint1().getZ(),
              Math.min(triangle.getPoint2().getZ(), triangle.getPoint3().getZ()));
      int band = 0;
      while (band < heights.length && heights[band] <= least) {
        band++;
      }
      PlaneConvexSubset rest = triangle;
      while (rest != null && band < heights.length) {
        Split<PlaneConvexSubset> split = rest.split(planes.get(band));
        if (split.getMinus() != null) {
          bands.get(band).add(split.getMinus());
        }
        rest = split.getPlus();
        band++;
      }
      if (rest != null) {
        bands.get(band).add(rest);
      }
    }
    return bands.stream()
        .mapToDouble(band -> band.stream().mapToDouble(PlaneConvexSubset::getSize).sum())
        .toArray();
  }
}
