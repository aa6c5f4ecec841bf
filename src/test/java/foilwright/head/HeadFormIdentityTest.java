package foilwright.head;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HeadFormIdentityTest {
  private static final HeadForm ELLIPSOID =
      HeadForm.of(StarSurface.of(Vector3.ZERO, new double[] {1}), new Vector3(76, 98, 90));
  private static final HeadForm HEAD =
      HeadForm.of(Template.SURFACE, new Vector3(0.90, 0.925, 0.915));

  private static Vector3 direction(Random random) {
    return new Vector3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
  }

  @Test
  void anEllipsoidHasItsClosedFormNormalAndCurvature() {
    Random random = new Random(5);
    for (int i = 0; i < 30; i++) {
      Vector3 p = ELLIPSOID.surfacePoint(direction(random));
      double a2 = 76 * 76;
      double b2 = 98 * 98;
      double c2 = 90 * 90;
      assertEquals(1, p.x() * p.x() / a2 + p.y() * p.y() / b2 + p.z() * p.z() / c2, 1e-12);
      Vector3 gradient = new Vector3(p.x() / a2, p.y() / b2, p.z() / c2);
      assertEquals(0, ELLIPSOID.normal(p).distance(gradient.unit()), 1e-12);
      // Support distance h: Gaussian curvature h^4 / (abc)^2, mean h^3 (a2+b2+c2-|p|^2) / 2(abc)^2.
      double h = 1 / gradient.norm();
      HeadForm.Curvature bend = ELLIPSOID.curvature(p);
      assertEquals(Math.pow(h, 4) / (a2 * b2 * c2), bend.least() * bend.greatest(), 1e-14);
      assertEquals(
          Math.pow(h, 3) * (a2 + b2 + c2 - p.dot(p)) / (a2 * b2 * c2),
          bend.least() + bend.greatest(),
          1e-12);
    }
  }

  @Test
  void aRayMeetsTheSurfaceWhereItLeavesComingFromInside() {
    Random random = new Random(6);
    for (int i = 0; i < 100; i++) {
      Vector3 inside = new Vector3(0, 0, 40).plus(direction(random).times(30));
      Vector3 d = direction(random);
      Vector3 p = HEAD.exit(inside, d);
      assertEquals(0, HEAD.surfacePoint(p).distance(p), 1e-8);
      if (d.z() > 0.2) {
        Vector3 back = HEAD.hit(p.plus(d.times(150)), d.negated()).orElseThrow();
        assertEquals(0, back.distance(p), 1e-7);
      }
    }
  }

  @Test
  void aRayThatPassesBesideTheHeadMeetsNothing() {
    assertTrue(HEAD.hit(new Vector3(200, 0, 300), new Vector3(0, 0, -1)).isEmpty());
    assertTrue(HEAD.hit(new Vector3(0, 0, 300), Vector3.UP).isEmpty());
  }

  @Test
  void theNearestPointLiesUnderTheNormal() {
    Random random = new Random(8);
    for (int i = 0; i < 100; i++) {
      Vector3 foot = HEAD.surfacePoint(new Vector3(0, 0, 60).plus(direction(random)));
      double height = random.nextDouble() * 20 - 5;
      Vector3 p = foot.plus(HEAD.normal(foot).times(height));
      assertEquals(0, HEAD.nearest(p).distance(foot), 1e-7);
      assertEquals(height < 0, HEAD.contains(p));
    }
  }

  @Test
  void aStraightTapeOnASphereIsAGreatCircle() {
    HeadForm sphere =
        HeadForm.of(StarSurface.of(Vector3.ZERO, new double[] {90}), new Vector3(1, 1, 1));
    Random random = new Random(9);
    for (int i = 0; i < 20; i++) {
      Vector3 a = direction(random);
      Vector3 b = direction(random);
      assertEquals(90 * Math.acos(a.dot(b)), sphere.straightTape(a, b), 1e-3);
    }
    assertEquals(0, sphere.straightTape(Vector3.UP, Vector3.UP));
  }
}
