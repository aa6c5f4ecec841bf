package foilwright.hair;

import foilwright.anatomy.Zone;
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
  private static final int CUT = -1;
  private static final int NONE = -2;

  private final HairProfile hair;
  private final TriangleMesh mesh;

  /** Zone of each triangle, {@code CUT} where zones divide it. */
  private final int[] zoneOf;

  /** The parts of the divided triangles by zone. */
  private final Map<Zone, Region> cut;

  private final ScalarField lengthsMm;

  private HairOnHead(Head head, HairProfile hair) {
    this.hair = hair;
    mesh = head.mesh();
    zoneOf = new int[mesh.triangleCount()];
    Arrays.fill(zoneOf, NONE);
    for (int z = 0; z < ZONES.size(); z++) {
      Region region = head.zone(ZONES.get(z));
      for (int f = 0; f < region.fragmentCount(); f++) {
        int t = region.triangle(f);
        zoneOf[t] = zoneOf[t] == NONE || zoneOf[t] == z ? z : CUT;
      }
    }
    Map<Zone, Region> divided = new EnumMap<>(Zone.class);
    for (Zone zone : ZONES) {
      Region region = head.zone(zone);
      divided.put(zone, region.fragments(f -> zoneOf[region.triangle(f)] == CUT));
    }
    cut = Collections.unmodifiableMap(divided);
    lengthsMm = blended(head);
  }

  public static HairOnHead of(Head head, HairProfile hair) {
    return new HairOnHead(head, hair);
  }

  public HairProfile hair() {
    return hair;
  }

  /** The parts of a region in each zone; zones without a share are left out. */
  private Map<Zone, Region> byZone(Region region) {
    Region divided = region.fragments(f -> zoneOf[region.triangle(f)] == CUT);
    Map<Zone, Region> parts = new EnumMap<>(Zone.class);
    for (int z = 0; z < ZONES.size(); z++) {
      int zone = z;
      Region whole = region.fragments(f -> zoneOf[region.triangle(f)] == zone);
      Region part =
          divided.isEmpty()
              ? whole
              : Region.join(mesh, List.of(whole, divided.intersect(cut.get(ZONES.get(z)))));
      if (!part.isEmpty()) {
        parts.put(ZONES.get(z), part);
      }
    }
    return parts;
  }

  /** Area of a region by zone; zones without a share are left out. */
  public Map<Zone, Area> areas(Region region) {
    Map<Zone, Area> areas = new EnumMap<>(Zone.class);
    byZone(region).forEach((z, part) -> areas.put(z, Area.ofSquareMillimetres(part.area())));
    return areas;
  }

  /** Hairs that root in a region, by zone; zones without a share are left out. */
  public Map<Zone, Double> hairsByZone(Region region) {
    Map<Zone, Double> hairs = new EnumMap<>(Zone.class);
    areas(region).forEach((zone, area) -> hairs.put(zone, hairs(zone, area)));
    return hairs;
  }

  private double hairs(Zone zone, Area area) {
    return hair.densityIn(zone).toHairsPerSquareMillimetre() * area.toSquareMillimetres();
  }

  /** Hairs that root in a region. */
  public double hairs(Region region) {
    return hairsByZone(region).values().stream().mapToDouble(Double::doubleValue).sum();
  }

  /**
   * Mean length of the hairs that root in a region.
   *
   * @throws IllegalArgumentException when the region has no hair
   */
  public Length meanLength(Region region) {
    double hairs = 0;
    double sumMm = 0;
    for (Map.Entry<Zone, Region> entry : byZone(region).entrySet()) {
      double density = hair.densityIn(entry.getKey()).toHairsPerSquareMillimetre();
      hairs += density * entry.getValue().area();
      sumMm += density * entry.getValue().integrate(lengthsMm);
    }
    if (!(hairs > 0)) {
      throw new IllegalArgumentException("a region without hair has no mean length");
    }
    return Length.ofMillimetres(sumMm / hairs);
  }

  /** Hair length over the scalp, millimetres along the hair. */
  public ScalarField lengths() {
    return lengthsMm;
  }

  /**
   * The table's lengths, averaged over the triangles round each vertex and then, as often as the
   * blend needs, over each vertex and its neighbours.
   */
  private ScalarField blended(Head head) {
    double[] sums = new double[mesh.vertexCount()];
    double[] weights = new double[mesh.vertexCount()];
    for (Zone zone : ZONES) {
      double length = hair.lengths().in(zone).toMillimetres();
      Region region = head.zone(zone);
      for (int f = 0; f < region.fragmentCount(); f++) {
        double area = region.fragmentArea(f);
        for (int k = 0; k < 3; k++) {
          int v = mesh.corner(region.triangle(f), k);
          sums[v] += area * length;
          weights[v] += area;
        }
      }
    }
    double[] values = new double[sums.length];
    for (int v = 0; v < values.length; v++) {
      values[v] = sums[v] / weights[v];
    }
    double edge = mesh.meanEdge();
    long rounds = Math.round(2 * BLEND_MM * BLEND_MM / (edge * edge));
    for (long i = 0; i < rounds; i++) {
      values = averaged(values);
    }
    return ScalarField.of(mesh, values);
  }

  /** Each value replaced by the mean over the vertices of the triangles round it. */
  private double[] averaged(double[] values) {
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
