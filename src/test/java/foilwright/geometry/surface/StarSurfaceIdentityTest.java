package foilwright.geometry.surface;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import foilwright.geometry.Vector3;
import java.util.Random;
import org.junit.jupiter.api.Test;

class StarSurfaceIdentityTest {
  private static final Vector3 CENTRE = new Vector3(0, 10, 25);

  private static StarSurface bumpy() {
    Random random = new Random(7);
    double[] coefficients = new double[StarSurface.termCount(6)];
    coefficients[0] = 100;
    for (int i = 1; i < coefficients.length; i++) {
      coefficients[i] = random.nextGaussian();
    }
    return StarSurface.of(CENTRE, coefficients);
  }

  private static Vector3 direction(Random random) {
    return new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  @Test
  void oneCoefficientIsASphere() {
    StarSurface sphere = StarSurface.of(CENTRE, new double[] {90});
    Random random = new Random(1);
    for (int i = 0; i < 20; i++) {
      Vector3 u = direction(random);
      assertEquals(90, sphere.radius(u.times(3)), 1e-12);
      assertEquals(0, sphere.normal(u).distance(u), 1e-12);
    }
  }

  @Test
  void termsAreOrthogonalWithMeanSquareOne() {
    int n = StarSurface.termCount(6);
    double[][] products = new double[n][n];
    // Exact for these degrees: even spacing in azimuth, Gauss nodes replaced by many midpoints in
    // z.
    int inAzimuth = 16;
    int inZ = 20000;
    for (int i = 0; i < inZ; i++) {
      double z = -1 + (2 * i + 1.0) / inZ;
      for (int j = 0; j < inAzimuth; j++) {
        double a = 2 * Math.PI * j / inAzimuth;
        double r = Math.sqrt(1 - z * z);
        double[] t = StarSurface.terms(6, new Vector3(r * Math.sin(a), r * Math.cos(a), z));
        for (int p = 0; p < n; p++) {
          for (int q = 0; q < n; q++) {
            products[p][q] += t[p] * t[q] / inZ / inAzimuth;
          }
        }
      }
    }
    for (int p = 0; p < n; p++) {
      for (int q = 0; q < n; q++) {
        assertEquals(p == q ? 1 : 0, products[p][q], 1e-5, p + " with " + q);
      }
    }
  }

  @Test
  void termsAndRadiusAreOneSeries() {
    StarSurface surface = bumpy();
    double[] c = surface.coefficients();
    Random random = new Random(2);
    for (int i = 0; i < 20; i++) {
      Vector3 u = direction(random);
      double[] t = StarSurface.terms(6, u);
      double sum = 0;
      for (int k = 0; k < c.length; k++) {
        sum += c[k] * t[k];
      }
      assertEquals(sum, surface.radius(u), 1e-11);
    }
  }

  @Test
  void gradientAndSecondDerivativesAreThoseOfTheExcess() {
    StarSurface surface = bumpy();
    Random random = new Random(3);
    double h = 1e-3;
    for (int i = 0; i < 20; i++) {
      Vector3 p = surface.point(direction(random)).times(1.1);
      Vector3 g = surface.excessGradient(p);
      double[] second = surface.excessHessian(p);
      Vector3[] axes = {Vector3.RIGHT, Vector3.FRONT, Vector3.UP};
      double[] slopes = new double[3];
      double[] bends = new double[6];
      int at = 0;
      for (int a = 0; a < 3; a++) {
        Vector3 step = axes[a].times(h);
        slopes[a] = (surface.excess(p.plus(step)) - surface.excess(p.minus(step))) / (2 * h);
        Vector3 change =
            surface
                .excessGradient(p.plus(step))
                .minus(surface.excessGradient(p.minus(step)))
                .times(1 / (2 * h));
        for (int b = a; b < 3; b++) {
          bends[at++] = change.dot(axes[b]);
        }
      }
      assertArrayEquals(new double[] {g.x(), g.y(), g.z()}, slopes, 1e-7);
      assertArrayEquals(second, bends, 1e-8);
    }
  }

  @Test
  void mirroredDirectionsHaveTheSameRadiusToTheBit() {
    StarSurface surface = bumpy();
    Random random = new Random(4);
    for (int i = 0; i < 50; i++) {
      Vector3 u = direction(random);
      assertEquals(surface.radius(u), surface.radius(u.mirrored()));
    }
  }

  @Test
  void polesAreOrdinaryPoints() {
    StarSurface surface = bumpy();
    Vector3 beside = new Vector3(1e-7, 0, 1);
    assertEquals(surface.radius(Vector3.UP), surface.radius(beside), 1e-5);
    assertEquals(0, surface.normal(Vector3.UP).distance(surface.normal(beside)), 1e-5);
  }

  @Test
  void coefficientsMustFillADegree() {
    assertThrows(
        IllegalArgumentException.class, () -> StarSurface.of(CENTRE, new double[] {90, 1}));
    assertThrows(
        IllegalArgumentException.class,
        () -> StarSurface.of(new Vector3(1, 0, 0), new double[] {90}));
  }
}
