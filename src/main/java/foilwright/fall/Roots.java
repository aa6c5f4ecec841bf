package foilwright.fall;

import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfaceDistance;
import foilwright.geometry.surface.SurfacePoint;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.hair.HairOnHead;
import foilwright.head.Head;
import foilwright.units.Density;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Where hairs root, how long each is and which way it sets out.
 *
 * <p>Roots are spread over the scalp in proportion to density: one after another along the mesh, so
 * that each triangle holds its share to within one hair, and inside a triangle by an additive
 * sequence that keeps them apart. Head frame, millimetres.
 */
public final class Roots {
  /** Half the width of the strip beside a part in which hair keeps strictly to its side. */
  private static final double SPREAD_MM = 0.8;

  private static final double CLUMP_MM = 7;
  private static final double LOCK_MM = 24;

  /** One hair in so many is young or broken: short, and it goes its own way. */
  private static final double STRAY_SHARE = 0.012;

  /** How much the ends of layers differ, a standard deviation. */
  private static final double RAGGED_MM = 12;

  /** How far hair of one side is combed over a part here and there, a standard deviation. */
  private static final double ACROSS_PART_MM = 1.9;

  /** How far the line that the comb drew strays from the part, and over what length it does. */
  private static final double STRAYS_MM = 1.1;

  private static final double STRAYS_OVER_MM = 16;

  /** Within this distance of a part or whorl hair sets out unsteadily. */
  private static final double UNSTEADY_MM = 2.5;

  private static final double UNSTEADY_RAD = 0.35;

  /** Strips round the head, each 6 mm wide at most. */
  private static final int STRIPS = 96;

  private final HairOnHead hair;
  private final long seed;
  private final double uneven;
  private final boolean layered;
  private final double each;
  private final int count;
  private final int halfway;
  private final int[] triangles;
  private final float[] w1;
  private final float[] w2;
  private final float[] places;
  private final float[] outward;
  private final float[] combs;
  private final float[] lengths;
  private final float[] cuts;
  private final long[] keys;
  private final long[] clumps;
  private final long[] locks;
  private final boolean[] right;
  private final boolean[] stray;
  private final float[] edges;

  private Roots(HairOnHead hair, FallSettings settings) {
    this.hair = hair;
    seed = settings.seed();
    uneven = settings.unevenness();
    layered = hair.hair().cut().map(cut -> !cut.shape().isBlunt()).orElse(false);
    Head head = hair.head();
    TriangleMesh mesh = head.mesh();
    double[] expected = expected(hair);
    double all = 0;
    for (double e : expected) {
      all += e;
    }
    count = (int) Math.min(settings.hairs(), Math.round(all));
    each = all / count;
    halfway = (count + 1) / 2;
    triangles = new int[count];
    w1 = new float[count];
    w2 = new float[count];
    places = new float[3 * count];
    outward = new float[3 * count];
    combs = new float[3 * count];
    lengths = new float[count];
    cuts = new float[count];
    keys = new long[count];
    clumps = new long[count];
    locks = new long[count];
    right = new boolean[count];
    stray = new boolean[count];
    edges = new float[count];
    spread(expected, all, downwards(mesh));
    Comb comb = Comb.of(head);
    ScalarField beside = head.besidePart();
    ScalarField fromHairline = head.distanceFromHairline();
    double grownMm = settings.grown().toMillimetres();
    IntStream.range(0, count)
        .parallel()
        .forEach(i -> settle(i, mesh, comb, beside, fromHairline, grownMm));
  }

  /** The roots of a head of hair as settings ask for them. */
  public static Roots of(HairOnHead hair, FallSettings settings) {
    return new Roots(hair, settings);
  }

  /** Hairs of each triangle by density and area. */
  private static double[] expected(HairOnHead hair) {
    TriangleMesh mesh = hair.head().mesh();
    double[] expected = new double[mesh.triangleCount()];
    boolean even = hair.hair().zoneFactors().isEmpty();
    double usual = hair.hair().density().toHairsPerSquareMillimetre();
    for (int t = 0; t < expected.length; t++) {
      double perMm2 = usual;
      if (!even) {
        SurfacePoint middle =
            new SurfacePoint(t, 1 / 3.0, 1 / 3.0, mesh.point(t, 1 / 3.0, 1 / 3.0));
        Zone zone = hair.head().zoneAt(middle);
        Density density = hair.hair().densityIn(zone);
        perMm2 = density.toHairsPerSquareMillimetre();
      }
      expected[t] = perMm2 * mesh.area(t);
    }
    return expected;
  }

  /**
   * Triangles strip by strip from the top of the head down: what hangs together is then worked on
   * together, and what it lies on and where it is drawn is near in memory.
   */
  private static int[] downwards(TriangleMesh mesh) {
    int count = mesh.triangleCount();
    Vector3[] middles = new Vector3[count];
    double y = 0;
    for (int t = 0; t < count; t++) {
      middles[t] = mesh.point(t, 1 / 3.0, 1 / 3.0);
      y += middles[t].y() / count;
    }
    double[] keys = new double[count];
    for (int t = 0; t < count; t++) {
      double turn = Math.atan2(middles[t].x(), middles[t].y() - y) / (2 * Math.PI) + 0.5;
      keys[t] = Math.floor(turn * STRIPS) * 1000 - middles[t].z();
    }
    return IntStream.range(0, count)
        .boxed()
        .sorted(Comparator.comparingDouble(t -> keys[t]))
        .mapToInt(t -> t)
        .toArray();
  }

  /** Draws both halves, each for itself, so that neither knows where the other's hairs are. */
  private void spread(double[] expected, double all, int[] order) {
    for (int half = 0; half < 2; half++) {
      int from = half == 0 ? 0 : halfway;
      int to = half == 0 ? halfway : count;
      double share = (to - from) / all;
      double phase = Noise.even(seed, 16 + half);
      double sum = 0;
      int i = from;
      for (int k = 0; k < order.length && i < to; k++) {
        int t = order[k];
        sum += expected[t] * share;
        double u = Noise.even(seed ^ t, 1 + 13 * half);
        double v = Noise.even(seed ^ t, 2 + 13 * half);
        while (i < to && i - from + phase <= sum) {
          // The additive sequence of the plastic number (Roberts 2018): well spread in a square.
          u = (u + 0.7548776662466927) % 1;
          v = (v + 0.5698402909980532) % 1;
          boolean fold = u + v > 1;
          triangles[i] = t;
          w1[i] = (float) (fold ? 1 - u : u);
          w2[i] = (float) (fold ? 1 - v : v);
          i++;
        }
      }
      while (i < to) {
        triangles[i] = order[order.length - 1];
        w1[i] = 0.3f;
        w2[i] = 0.3f;
        i++;
      }
    }
  }

  private void settle(
      int i,
      TriangleMesh mesh,
      Comb comb,
      ScalarField beside,
      ScalarField fromHairline,
      double grownMm) {
    int t = triangles[i];
    keys[i] = Noise.mix(seed + 31L * i);
    SurfacePoint at = point(i);
    Vector3 p = at.point();
    Vector3 n = mesh.normal(t);
    right[i] = at.valueOf(beside) >= 0;
    // The comb never draws a part quite straight, nor does a hairline end in a line.
    Vector3 e = n.cross(Vector3.UP).norm() > 0.1 ? n.cross(Vector3.UP).unit() : Vector3.RIGHT;
    Vector3 f = n.cross(e);
    Vector3 moved =
        p.plus(e.times(SPREAD_MM * noise(keys[i], 3))).plus(f.times(SPREAD_MM * noise(keys[i], 4)));
    put(places, i, moved);
    put(outward, i, n);
    clumps[i] = cell(moved, CLUMP_MM, keys[i]);
    locks[i] = cell(moved, LOCK_MM, keys[i]);
    put(combs, i, combed(i, comb, at, n));
    double edge = at.valueOf(fromHairline);
    edges[i] = (float) edge;
    stray[i] = Noise.even(keys[i], 20) < STRAY_SHARE * uneven;
    cuts[i] = (float) (at.valueOf(hair.lengths()) + grownMm);
    lengths[i] = (float) Math.max(2, (cuts[i] + raggedMm(i)) * share(i, moved));
    if (edge < 6) {
      // Hair at the very edge is younger and shorter.
      lengths[i] *= (float) (1 - 0.6 * uneven * (1 - edge / 6) * Noise.even(keys[i], 5));
    }
  }

  /** The comb at a root: unsteady at a part or whorl, so that neither is a clean line or star. */
  private Vector3 combed(int i, Comb comb, SurfacePoint at, Vector3 n) {
    Vector3 way = comb.at(triangles[i]);
    double from = at.valueOf(comb.distance);
    if (uneven == 0 || from > 6 * UNSTEADY_MM) {
      return way;
    }
    // Where the line strays to one side, hair of that side lies over on the other.
    double over =
        (right[i] ? STRAYS_MM : -STRAYS_MM) * drift(i, 11, STRAYS_OVER_MM)
            + ACROSS_PART_MM * (0.5 * noise(clumps[i], 11) + 0.8 * noise(keys[i], 11));
    double turn = UNSTEADY_RAD * Math.exp(-from / UNSTEADY_MM) * noise(keys[i], 12);
    if (from < over && comb.isAtPart(triangles[i])) {
      turn += Math.PI;
    }
    return way.times(Math.cos(turn)).plus(n.cross(way).times(Math.sin(turn)));
  }

  /** Layers are cut point by point, so that they end in no line. */
  private double raggedMm(int i) {
    if (!layered) {
      return 0;
    }
    double more = RAGGED_MM * (0.7 * noise(keys[i], 14) + 0.7 * noise(clumps[i], 14));
    return Math.max(-0.35 * cuts[i], Math.min(0.35 * cuts[i], more));
  }

  /** A hair's length over that of the cut: by hair, by clump, towards a clump's point, strays. */
  private double share(int i, Vector3 place) {
    // Scissors leave a blunt line nearly even from clump to clump; it wavers over more than one.
    double byClump = layered ? 0.03 : 0.011;
    double share =
        1
            + 0.025 * noise(keys[i], 6)
            + byClump * noise(clumps[i], 6)
            + (layered ? 0 : 0.012) * drift(i, 6, 45)
            + 0.02 * uneven * Math.log(Math.max(Noise.even(keys[i], 7), 1e-3));
    double u = Math.abs(place.x() / CLUMP_MM - Math.rint(place.x() / CLUMP_MM));
    double v = Math.abs(place.y() / CLUMP_MM - Math.rint(place.y() / CLUMP_MM));
    share += byClump * uneven * (0.5 - u - v);
    if (stray[i]) {
      double young = Noise.even(keys[i], 13);
      share *= 0.1 + 0.5 * young * young;
    }
    return share;
  }

  private double noise(long key, int stream) {
    return uneven * Noise.normal(key, stream);
  }

  /** One hair alone, of a place, direction and length of its own, for a look at the fall itself. */
  static Roots single(
      HairOnHead hair,
      FallSettings settings,
      Vector3 place,
      Vector3 outward,
      Vector3 comb,
      double lengthMm,
      boolean isRight) {
    return new Roots(hair, settings, place, outward, comb, lengthMm, isRight);
  }

  private Roots(
      HairOnHead hair,
      FallSettings settings,
      Vector3 place,
      Vector3 outward,
      Vector3 comb,
      double lengthMm,
      boolean isRight) {
    this.hair = hair;
    seed = settings.seed();
    uneven = settings.unevenness();
    layered = hair.hair().cut().map(cut -> !cut.shape().isBlunt()).orElse(false);
    count = 1;
    halfway = 1;
    each = 1;
    triangles = new int[1];
    w1 = new float[1];
    w2 = new float[1];
    places = new float[3];
    this.outward = new float[3];
    combs = new float[3];
    lengths = new float[] {(float) lengthMm};
    cuts = lengths;
    keys = new long[1];
    clumps = new long[1];
    locks = new long[1];
    right = new boolean[] {isRight};
    stray = new boolean[1];
    edges = new float[] {1000};
    put(places, 0, place);
    put(this.outward, 0, outward);
    put(combs, 0, comb);
  }

  private long cell(Vector3 p, double size, long key) {
    double blur = 0.22 * size;
    long a = Math.round((p.x() + blur * noise(key, 8)) / size);
    long b = Math.round((p.y() + blur * noise(key, 9)) / size);
    long c = Math.round((p.z() + blur * noise(key, 10)) / size);
    return Noise.mix(seed + ((a & 0x3ff) << 20 | (b & 0x3ff) << 10 | (c & 0x3ff)), (int) size);
  }

  private static void put(float[] into, int i, Vector3 v) {
    into[3 * i] = (float) v.x();
    into[3 * i + 1] = (float) v.y();
    into[3 * i + 2] = (float) v.z();
  }

  /** How many hairs are followed. */
  public int count() {
    return count;
  }

  /**
   * Number of the first hair of the second half. The two halves are drawn independently: what they
   * agree on is there, and what they differ in is chance.
   */
  public int halfway() {
    return halfway;
  }

  /** How many hairs of the head each stands for, 1 or more. */
  public double each() {
    return each;
  }

  public HairOnHead hair() {
    return hair;
  }

  /** Where on the scalp a hair roots. */
  public SurfacePoint point(int i) {
    TriangleMesh mesh = hair.head().mesh();
    return new SurfacePoint(triangles[i], w1[i], w2[i], mesh.point(triangles[i], w1[i], w2[i]));
  }

  /** Length of a hair, millimetres. */
  public double lengthMm(int i) {
    return lengths[i];
  }

  /** Length of the cut where it roots and what has grown since: about that of its neighbours. */
  double cutMm(int i) {
    return cuts[i];
  }

  /** A number of the hair's own, from which its irregularities follow. */
  public long key(int i) {
    return keys[i];
  }

  /** A number that neighbouring hairs share, about 7 mm across. */
  public long clump(int i) {
    return clumps[i];
  }

  /** A number that a lock of hair shares, about 24 mm across. */
  public long lock(int i) {
    return locks[i];
  }

  /** Whether it roots to the client's right of the part, or of the centre line without one. */
  public boolean isRight(int i) {
    return right[i];
  }

  /** A number that drifts over the scalp, about normal, the same within half of a reach or so. */
  double drift(int i, int stream, double reachMm) {
    return uneven
        * Noise.drift(seed, stream, places[3 * i], places[3 * i + 1], places[3 * i + 2], reachMm);
  }

  /** Whether it is young or broken, and so short and not where it was combed. */
  boolean isStray(int i) {
    return stray[i];
  }

  /** Distance of the root from the hairline along the scalp, millimetres. */
  double edgeMm(int i) {
    return edges[i];
  }

  int triangle(int i) {
    return triangles[i];
  }

  float[] places() {
    return places;
  }

  float[] outward() {
    return outward;
  }

  float[] combs() {
    return combs;
  }

  /** The way hair is combed by itself: away from the part and round the whorl. */
  private static final class Comb {
    private static final double WHORL_SHARE = 0.5;
    private static final double WHORL_ASIDE_MM = 8;
    private static final double TURN_FADE_MM = 45;
    private static final double TURN_RAD = Math.toRadians(35);

    /** In the middle of a whorl hair goes round it rather than away. */
    private static final double CORE_MM = 9;

    private static final double CORE_RAD = Math.toRadians(40);
    private final Vector3[] directions;
    private final boolean[] atPart;
    private final ScalarField distance;

    private Comb(Vector3[] directions, boolean[] atPart, ScalarField distance) {
      this.directions = directions;
      this.atPart = atPart;
      this.distance = distance;
    }

    static Comb of(Head head) {
      TriangleMesh mesh = head.mesh();
      double[] start = new double[mesh.vertexCount()];
      Arrays.fill(start, Double.POSITIVE_INFINITY);
      // A part in the middle is combed to its end: the whorl then turns to neither side. With a
      // part
      // on the other side it is the mirror image, since nobody says which way a guest's turns.
      double swirl =
          switch (head.part().side()) {
            case CENTRE -> 0;
            case RIGHT -> -1;
            case LEFT, NONE -> 1;
          };
      Vector3 whorl =
          head.nearestOnScalp(
                  head.centreLine()
                      .at(WHORL_SHARE * head.centreLine().length())
                      .plus(Vector3.RIGHT.times(swirl * WHORL_ASIDE_MM)))
              .point();
      int nearest = 0;
      for (int v = 0; v < start.length; v++) {
        if (mesh.vertex(v).distance(whorl) < mesh.vertex(nearest).distance(whorl)) {
          nearest = v;
        }
      }
      start[nearest] = 0;
      head.distanceFromPart()
          .ifPresent(
              part -> {
                for (int v = 0; v < start.length; v++) {
                  if (part.at(v) == 0) {
                    start[v] = 0;
                  }
                }
              });
      ScalarField distance = SurfaceDistance.march(mesh, start);
      Vector3[] directions = new Vector3[mesh.triangleCount()];
      boolean[] atPart = new boolean[directions.length];
      Optional<ScalarField> part = head.distanceFromPart();
      for (int t = 0; t < directions.length; t++) {
        Vector3 away = DirectionField.gradientIn(mesh, distance, t);
        Vector3 n = mesh.normal(t);
        double mm = mesh.point(t, 1 / 3.0, 1 / 3.0).distance(whorl);
        double turn =
            swirl * (TURN_RAD * Math.exp(-mm / TURN_FADE_MM) + CORE_RAD * Math.exp(-mm / CORE_MM));
        directions[t] = away.times(Math.cos(turn)).plus(n.cross(away).times(Math.sin(turn)));
      }
      for (int t = 0; t < directions.length; t++) {
        for (int k = 0; k < 3 && part.isPresent(); k++) {
          atPart[t] |= part.get().at(t, k) < 2 * ACROSS_PART_MM;
        }
      }
      return new Comb(directions, atPart, distance);
    }

    boolean isAtPart(int triangle) {
      return atPart[triangle];
    }

    Vector3 at(int triangle) {
      return directions[triangle];
    }
  }
}
