package foilwright.fall;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Texture;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.units.Length;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The field of the fall against the hairs it is taken from. */
class SimulatedFallIdentityTest {
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final Body BODY = Body.of(HEAD);
  private static final HairOnHead HAIR =
      HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(45)));
  private static final DirectionField FIELD = SimulatedFall.over(HAIR, BODY, HairStyle.NATURAL);

  /** Another seed and uneven hair: half the hairs lie within 12 degrees of the field. */
  @Test
  void hairsLieAlongTheField() {
    Strands strands =
        Fall.of(
            HAIR,
            BODY,
            FallSettings.USUAL.withHairs(8000).withSeed(5),
            Texture.STRAIGHT,
            Watch.NOBODY);
    double[] angles = new double[strands.count()];
    for (int h = 0; h < angles.length; h++) {
      int from = strands.start(h);
      int to = strands.start(h + 1) - 1;
      Vector3 way =
          new Vector3(
              strands.x(to) - strands.x(from),
              strands.y(to) - strands.y(from),
              strands.z(to) - strands.z(from));
      int t = strands.roots().triangle(h);
      Vector3 n = HEAD.mesh().normal(t);
      Vector3 flat = way.minus(n.times(way.dot(n)));
      angles[h] = angle(flat, FIELD.at(t));
    }
    Arrays.sort(angles);
    double half = angles[angles.length / 2];
    double most = angles[angles.length * 9 / 10];
    assertTrue(half < 12, "half lie within " + half + " degrees");
    assertTrue(most < 40, "nine in ten lie within " + most + " degrees");
  }

  /** Triangles side by side differ little, but for those at the part and where it ends. */
  @Test
  void itIsContinuousButForThePart() {
    TriangleMesh mesh = HEAD.mesh();
    ScalarField part = HEAD.distanceFromPart().orElseThrow();
    ScalarField edge = HEAD.distanceFromHairline();
    Vector3 end = HEAD.partLine().orElseThrow().last();
    int over = 0;
    int seen = 0;
    int turned = 0;
    int across = 0;
    for (int t = 0; t < mesh.triangleCount(); t++) {
      for (int k = 0; k < 3; k++) {
        int n = mesh.neighbour(t, k);
        if (n < t) {
          continue;
        }
        double angle = angle(FIELD.at(t), FIELD.at(n));
        double fromPart = (part.at(t, 0) + part.at(t, 1) + part.at(t, 2)) / 3;
        double fromEdge = (edge.at(t, 0) + edge.at(t, 1) + edge.at(t, 2)) / 3;
        Vector3 middle = mesh.point(t, 1 / 3.0, 1 / 3.0);
        if (fromPart > 8 && middle.distance(end) > 25 && fromEdge > 3) {
          seen++;
          over += angle > 15 ? 1 : 0;
        } else if (middle.x() * mesh.point(n, 1 / 3.0, 1 / 3.0).x() < 0 && fromPart < 2) {
          across++;
          turned += angle > 60 ? 1 : 0;
        }
      }
    }
    assertTrue(seen > 10_000, "borders " + seen);
    assertTrue(over < 0.005 * seen, over + " of " + seen + " borders turn by over 15 degrees");
    assertTrue(turned > 0.8 * across, turned + " of " + across + " turn at the part");
  }

  @Test
  void itIsTangentAndMirrored() {
    TriangleMesh mesh = HEAD.mesh();
    double worst = 0;
    int count = 0;
    double sum = 0;
    for (int t = 0; t < mesh.triangleCount(); t += 7) {
      worst = Math.max(worst, Math.abs(FIELD.at(t).dot(mesh.normal(t))));
      Vector3 there = mesh.point(t, 1 / 3.0, 1 / 3.0).mirrored();
      int m = HEAD.nearestOnScalp(there).triangle();
      sum += angle(FIELD.at(t), FIELD.at(m).mirrored());
      count++;
    }
    assertEquals(0, worst, 1e-9);
    assertTrue(sum / count < 4, "left and right differ by " + sum / count + " degrees");
  }

  private static double angle(Vector3 a, Vector3 b) {
    double size = a.norm() * b.norm();
    return size < 1e-9 ? 0 : Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, a.dot(b) / size))));
  }
}
