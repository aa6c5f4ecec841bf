package foilwright.hair;

import foilwright.anatomy.Zone;
import foilwright.geometry.surface.Partition;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import foilwright.units.Area;
import foilwright.units.Length;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * The hair of one person on one head: how many hairs root in a part of the scalp, and how long they
 * are.
 *
 * <p>Density is constant in each zone, so that counts are exact for the mesh and add up over the
 * parts of a region to rounding. Lengths typed by zone are blended over the zones' borders, with a
 * spread (standard deviation) of about {@value #BLEND_MM} mm of scalp, and are linear in each
 * triangle; a length that is the same everywhere stays so.
 */
public final class HairOnHead {
  private static final double BLEND_MM = 12;
  private static final List<Zone> ZONES = List.of(Zone.values());

  private final Head head;
  private final HairProfile hair;
  private final Partition zones;
  private final ScalarField lengthsMm;

  /** By region, kept as long as it: a plan that is changed in one place keeps most of its parts. */
  private final Map<Region, Map<Zone, Area>> areas =
      Collections.synchronizedMap(new WeakHashMap<>());

  private HairOnHead(Head head, HairProfile hair, ScalarField lengthsMm) {
    this.lengthsMm = lengthsMm;
    this.head = head;
    this.hair = hair;
    zones = Partition.of(head.mesh(), ZONES.stream().map(head::zone).toList());
  }

  public static HairOnHead of(Head head, HairProfile hair) {
    return new HairOnHead(head, hair, blended(head, hair));
  }

  /**
   * The same hair with its part combed elsewhere: lengths stay as they were cut.
   *
   * @param other the same head with another part
   */
  public HairOnHead worn(Head other) {
    TriangleMesh mesh = other.mesh();
    double[] values = new double[mesh.vertexCount()];
    IntStream.range(0, values.length)
        .parallel()
        .forEach(v -> values[v] = head.nearestOnScalp(mesh.vertex(v)).valueOf(lengthsMm));
    return new HairOnHead(other, hair, ScalarField.of(mesh, values));
  }

  public Head head() {
    return head;
  }

  public HairProfile hair() {
    return hair;
  }

  /** Area of a region by zone; zones without a share are left out. */
  public Map<Zone, Area> areas(Region region) {
    Map<Zone, Area> known = areas.get(region);
    if (known == null) {
      known = Collections.unmodifiableMap(measured(region));
      areas.put(region, known);
    }
    return known;
  }

  private Map<Zone, Area> measured(Region region) {
    double[] mm2 = zones.areas(region);
    Map<Zone, Area> byZone = new EnumMap<>(Zone.class);
    for (int z = 0; z < mm2.length; z++) {
      if (mm2[z] > 0) {
        byZone.put(ZONES.get(z), Area.ofSquareMillimetres(mm2[z]));
      }
    }
    return byZone;
  }

  /** Hairs that root in a region, by zone; zones without a share are left out. */
  public Map<Zone, Double> hairsByZone(Region region) {
    Map<Zone, Double> hairs = new EnumMap<>(Zone.class);
    areas(region)
        .forEach(
            (zone, area) ->
                hairs.put(
                    zone,
                    hair.densityIn(zone).toHairsPerSquareMillimetre()
                        * area.toSquareMillimetres()));
    return hairs;
  }

  /** Hairs that root in a region. */
  public double hairs(Region region) {
    return hairsByZone(region).values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /**
   * Mean hair length over the scalp of a region.
   *
   * @throws IllegalArgumentException when the region is empty
   */
  public Length meanLength(Region region) {
    double area = region.area();
    if (!(area > 0)) {
      throw new IllegalArgumentException("an empty region has no mean length");
    }
    return Length.ofMillimetres(region.integrate(lengthsMm) / area);
  }

  /** Hair length over the scalp, millimetres along the hair. */
  public ScalarField lengths() {
    return lengthsMm;
  }

  /**
   * The lengths of each zone, averaged over the triangles round each vertex and then, as often as
   * the blend needs, over each vertex's neighbours. A cut of one shape has nothing to blend.
   */
  private static ScalarField blended(Head head, HairProfile hair) {
    TriangleMesh mesh = head.mesh();
    Haircut cut = hair.cut().orElse(Haircut.named("as typed"));
    CutLengths shapes = new CutLengths(head, hair.lengths());
    boolean one = cut.zones().isEmpty() && !(cut.shape() instanceof CutShape.Table);
    double[] values =
        one ? shapes.of(cut.shape(), Zone.CROWN).clone() : joined(head, mesh, cut, shapes);
    cut.frame().ifPresent(frame -> shapes.frame(frame, values));
    return ScalarField.of(mesh, values);
  }

  private static double[] joined(Head head, TriangleMesh mesh, Haircut cut, CutLengths shapes) {
    return joined(head, mesh, zone -> shapes.of(cut.in(zone), zone));
  }

  /** Values told zone by zone, blended over the zones' borders as lengths are. */
  public ScalarField blended(ToDoubleFunction<Zone> told) {
    TriangleMesh mesh = head.mesh();
    return ScalarField.of(
        mesh,
        joined(
            head,
            mesh,
            zone -> {
              double[] same = new double[mesh.vertexCount()];
              Arrays.fill(same, told.applyAsDouble(zone));
              return same;
            }));
  }

  private static double[] joined(Head head, TriangleMesh mesh, Function<Zone, double[]> of) {
    double[] sums = new double[mesh.vertexCount()];
    double[] weights = new double[mesh.vertexCount()];
    for (Zone zone : ZONES) {
      double[] lengths = of.apply(zone);
      Region region = head.zone(zone);
      for (int f = 0; f < region.fragmentCount(); f++) {
        double area = region.fragmentArea(f);
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner(region.triangle(f), k);
          sums[v] += area * lengths[v];
          weights[v] += area;
        }
      }
    }
    double[] values = new double[sums.length];
    for (int v = 0; v < values.length; v++) {
      values[v] = sums[v] / weights[v];
    }
    double edge = mesh.meanEdge();
    // A mean over neighbours one edge away spreads by half the edge's square along each axis.
    long rounds = Math.round(2 * BLEND_MM * BLEND_MM / (edge * edge));
    for (long i = 0; i < rounds; i++) {
      values = averaged(mesh, values);
    }
    return values;
  }

  /** Each value replaced by the mean over the other corners of the triangles round it. */
  private static double[] averaged(TriangleMesh mesh, double[] values) {
    double[] sums = new double[values.length];
    int[] counts = new int[values.length];
    for (int t = 0; t < mesh.triangleCount(); t++) {
      int a = mesh.corner(t, 0);
      int b = mesh.corner(t, 1);
      int c = mesh.corner(t, 2);
      sums[a] += values[b] + values[c];
      sums[b] += values[c] + values[a];
      sums[c] += values[a] + values[b];
      counts[a] += 2;
      counts[b] += 2;
      counts[c] += 2;
    }
    for (int v = 0; v < sums.length; v++) {
      sums[v] /= counts[v];
    }
    return sums;
  }
}
