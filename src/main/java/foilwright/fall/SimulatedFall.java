package foilwright.fall;

import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Texture;
import foilwright.units.Length;
import java.util.Arrays;

/**
 * The direction in which hair lies on the scalp, taken from hairs that were followed over {@value
 * #FOLLOWED_MM} mm: away from part and whorl, down where the scalp is steep, and aside at the face.
 *
 * <p>The mean over the hairs that root in a triangle and its neighbours, without unevenness; where
 * hairs go several ways it is weak. Tangent to the mesh, strength at most 1.
 */
public final class SimulatedFall {
  private static final double FOLLOWED_MM = 45;
  private static final int HAIRS = 12_000;
  private static final int ROUNDS = 3;

  private SimulatedFall() {}

  /** The field of combed hair of one style. */
  public static DirectionField over(HairOnHead hair, Body body, HairStyle style) {
    TriangleMesh mesh = hair.head().mesh();
    HairOnHead followed =
        HairOnHead.of(hair.head(), HairProfile.usual(Length.ofMillimetres(FOLLOWED_MM)));
    FallSettings settings = FallSettings.USUAL.withHairs(HAIRS).withStyle(style).withUnevenness(0);
    Strands strands = Fall.of(followed, body, settings, Texture.STRAIGHT, Watch.NOBODY);
    Vector3[] sums = new Vector3[mesh.triangleCount()];
    Arrays.fill(sums, Vector3.ZERO);
    for (int h = 0; h < strands.count(); h++) {
      int from = strands.start(h);
      int to = strands.start(h + 1) - 1;
      Vector3 way =
          new Vector3(
              strands.x(to) - strands.x(from),
              strands.y(to) - strands.y(from),
              strands.z(to) - strands.z(from));
      int t = strands.roots().triangle(h);
      sums[t] = sums[t].plus(way.times(1 / FOLLOWED_MM));
    }
    boolean[] right = new boolean[sums.length];
    ScalarField beside = hair.head().besidePart();
    for (int t = 0; t < right.length; t++) {
      right[t] = beside.at(t, 0) + beside.at(t, 1) + beside.at(t, 2) >= 0;
    }
    for (int round = 0; round < ROUNDS; round++) {
      sums = spread(mesh, sums, right);
    }
    Vector3[] directions = sums;
    return DirectionField.compute(
        mesh,
        t -> {
          double size = directions[t].norm();
          return size > 1e-6 ? directions[t].times(1 / size) : Vector3.ZERO;
        });
  }

  /** Each triangle's sum with those of its neighbours on its side of the part. */
  private static Vector3[] spread(TriangleMesh mesh, Vector3[] sums, boolean[] right) {
    Vector3[] next = new Vector3[sums.length];
    for (int t = 0; t < sums.length; t++) {
      Vector3 sum = sums[t].times(2);
      for (int k = 0; k < 3; k++) {
        int n = mesh.neighbour(t, k);
        sum = n < 0 || right[n] != right[t] ? sum : sum.plus(sums[n]);
      }
      next[t] = sum;
    }
    return next;
  }
}
