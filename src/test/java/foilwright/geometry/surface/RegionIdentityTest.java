package foilwright.geometry.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Closed forms of the sphere and additivity of cuts. */
class RegionIdentityTest {
  private static final double R = 90;
  private static final TriangleMesh SPHERE = SampleSurfaces.ellipsoid(R, R, R, 60);

  /** A flat triangle of edge e lies at most e^2 / (6 R) inside its sphere; a rim moves as much. */
  @Test
  void capsHaveTheAreaOfTheSphereToTheMeshError() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    double longest = 0;
    for (int t = 0; t < SPHERE.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        Vector3 a = SPHERE.vertex(SPHERE.corner(t, k));
        longest = Math.max(longest, a.distance(SPHERE.vertex(SPHERE.corner(t, (k + 1) % 3))));
      }
    }
    double inside = longest * longest / (6 * R);
    for (double degrees : new double[] {10, 30, 60, 90, 130}) {
      double cos = Math.cos(Math.toRadians(degrees));
      double exact = 2 * Math.PI * R * R * (1 - cos);
      double area = Region.whole(SPHERE).clip(height, R * cos, Double.POSITIVE_INFINITY).area();
      assertEquals(exact, area, 2 * Math.PI * R * inside * (2 - cos), degrees + " deg");
    }
  }

  @Test
  void refiningTheMeshClosesInOnTheSphere() {
    double exact = 4 * Math.PI * R * R;
    double coarse = 1 - SampleSurfaces.ellipsoid(R, R, R, 20).area() / exact;
    double fine = 1 - SampleSurfaces.ellipsoid(R, R, R, 40).area() / exact;
    assertTrue(coarse > 0 && fine > 0);
    assertEquals(4, coarse / fine, 0.1, "second order");
  }

  @Test
  void partsOfACutAddUpToTheWhole() {
    long seed = 20261124;
    Random random = new Random(seed);
    for (int n = 0; n < 20; n++) {
      Region region = Region.whole(SPHERE);
      ScalarField f = plane(random);
      ScalarField g = plane(random);
      double bound = 40 * random.nextDouble();
      Region in = region.clip(f, -bound, bound);
      Region above = region.clip(f, bound, Double.POSITIVE_INFINITY);
      Region below = region.clip(f, Double.NEGATIVE_INFINITY, -bound);
      assertEquals(
          region.area(),
          in.area() + above.area() + below.area(),
          1e-12 * region.area(),
          "seed " + seed);
      Region crossed = region.clip(g, -20, 35);
      double common = in.intersect(crossed).area();
      double rest = in.subtract(crossed).area();
      assertEquals(in.area(), common + rest, 1e-10 * region.area(), "seed " + seed);
      assertEquals(in.clip(g, -20, 35).area(), common, 1e-10 * region.area(), "seed " + seed);
    }
  }

  private static ScalarField plane(Random random) {
    Vector3 normal =
        new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    return ScalarField.distanceFrom(SPHERE, new Plane(normal, 5 * random.nextDouble()));
  }

  @Test
  void outlineOfABandIsItsTwoCirclesAndBoundsItOnTheLeft() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    List<Polyline> outline = Region.whole(SPHERE).clip(height, 10.3, 40.7).outline();
    assertEquals(2, outline.size());
    for (Polyline loop : outline) {
      assertTrue(loop.closed());
      double z = loop.first().z();
      double exact = 2 * Math.PI * Math.sqrt(R * R - z * z);
      assertEquals(1, loop.length() / exact, 2e-3);
      Vector3 turn = loop.first().cross(loop.points().get(1));
      assertTrue(z < 20 ? turn.z() > 0 : turn.z() < 0, "region on the left");
    }
  }

  @Test
  void outlineAndPartsSurviveCutsThatDoNotMeetAcrossAnEdge() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    ScalarField across = ScalarField.compute(SPHERE, Vector3::x);
    Region band = Region.whole(SPHERE).clip(height, 10.3, 40.7);
    Region window = band.clip(across, -15.2, 12.1);
    Region holed = band.subtract(window);
    assertEquals(2, band.clip(across, -15.2, 12.1).components().size(), "front and back window");
    assertEquals(2, holed.components().size(), "left and right rest");
    Region joined = Region.join(SPHERE, List.of(window, holed));
    assertEquals(1, joined.components().size());
    double length = joined.outline().stream().mapToDouble(Polyline::length).sum();
    double plain = band.outline().stream().mapToDouble(Polyline::length).sum();
    assertEquals(plain, length, 1e-6);
  }

  @Test
  void bandsOfOnePassAreTheBandsOfManyCuts() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    Region region = Region.whole(SPHERE).clip(ScalarField.compute(SPHERE, Vector3::y), -31, 77);
    double[] levels = {-120, -41.3, -41.3, 0, 0.4, 2.9, 60.2, 95};
    List<Region> bands = region.bands(height, levels);
    for (int i = 0; i < bands.size(); i++) {
      double low = i == 0 ? Double.NEGATIVE_INFINITY : levels[i - 1];
      double high = i == levels.length ? Double.POSITIVE_INFINITY : levels[i];
      assertEquals(region.clip(height, low, high).area(), bands.get(i).area(), 1e-8, "band " + i);
    }
    assertEquals(
        region.area(), bands.stream().mapToDouble(Region::area).sum(), 1e-12 * region.area());
  }

  @Test
  void nearestPointOfACapIsOnItsRim() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    Region cap = Region.whole(SPHERE).clip(height, 50, Double.POSITIVE_INFINITY);
    Vector3 below = new Vector3(60, 70, -20);
    Vector3 found = cap.nearest(below);
    assertEquals(50, found.z(), 1e-9);
    assertEquals(60.0 / 70, found.x() / found.y(), 0.03);
    assertEquals(0, cap.nearest(found).distance(found), 1e-9);
  }

  @Test
  void scalarFittedToAGradientIsTheScalar() {
    Region part = Region.whole(SPHERE).clip(ScalarField.compute(SPHERE, Vector3::x), -40, 70);
    boolean[] taken = new boolean[SPHERE.triangleCount()];
    for (int f = 0; f < part.fragmentCount(); f++) {
      taken[part.triangle(f)] = true;
    }
    ScalarField wanted =
        ScalarField.compute(SPHERE, p -> p.z() + 0.002 * p.x() * p.y() - 0.3 * p.y());
    LinearValues found = PotentialFit.fit(DirectionField.gradient(SPHERE, wanted), t -> taken[t]);
    int first = part.triangle(0);
    double shift = wanted.at(first, 0) - found.at(first, 0);
    for (int f = 0; f < part.fragmentCount(); f++) {
      int t = part.triangle(f);
      assertEquals(wanted.at(t, 1), found.at(t, 1) + shift, 1e-7);
    }
  }

  @Test
  void integralOfHeightOverAHalfSphereIsExactForTheMesh() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    Region half = Region.whole(SPHERE).clip(height, 0, Double.POSITIVE_INFINITY);
    // Mean height of a half sphere is R / 2 (Archimedes).
    assertEquals(R / 2, half.integrate(height) / half.area(), 0.02);
    assertEquals(half.areaCentroid().z(), half.integrate(height) / half.area(), 1e-9);
  }

  @Test
  void isolinesOfAPlaneAreLevelClosedAndAsLongAsTheCircle() {
    ScalarField height = ScalarField.compute(SPHERE, Vector3::z);
    for (double z : new double[] {-80, -33.3, 0, 45, 85}) {
      List<Polyline> lines = Isolines.of(Region.whole(SPHERE), height, z);
      assertEquals(1, lines.size(), "z " + z);
      Polyline line = lines.get(0);
      assertTrue(line.closed());
      assertTrue(line.points().stream().allMatch(p -> Math.abs(p.z() - z) < 1e-9));
      assertEquals(1, line.length() / (2 * Math.PI * Math.sqrt(R * R - z * z)), 3e-3, "z " + z);
    }
  }
}
