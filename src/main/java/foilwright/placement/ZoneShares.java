package foilwright.placement;

import foilwright.anatomy.Zone;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Areas of a region by zone, exact: most triangles lie in one zone; those that zones cut are
 * intersected.
 */
final class ZoneShares {
  private static final List<Zone> ZONES = List.of(Zone.values());
  private static final int CUT = -1;
  private static final int NONE = -2;

  private final int[] zoneOf;
  private final Map<Zone, Region> cut = new EnumMap<>(Zone.class);

  ZoneShares(Head head) {
    zoneOf = new int[head.mesh().triangleCount()];
    Arrays.fill(zoneOf, NONE);
    for (int z = 0; z < ZONES.size(); z++) {
      Region region = head.zone(ZONES.get(z));
      for (int f = 0; f < region.fragmentCount(); f++) {
        int t = region.triangle(f);
        zoneOf[t] = zoneOf[t] == NONE || zoneOf[t] == z ? z : CUT;
      }
    }
    for (Zone zone : ZONES) {
      Region region = head.zone(zone);
      cut.put(zone, region.fragments(f -> zoneOf[region.triangle(f)] == CUT));
    }
  }

  /** Square millimetres by zone; zones without a share are left out. */
  Map<Zone, Double> areas(Region region) {
    double[] sums = new double[ZONES.size()];
    boolean any = false;
    for (int f = 0; f < region.fragmentCount(); f++) {
      int zone = zoneOf[region.triangle(f)];
      if (zone >= 0) {
        sums[zone] += region.fragmentArea(f);
      } else {
        any = true;
      }
    }
    Region split =
        any
            ? region.fragments(f -> zoneOf[region.triangle(f)] == CUT)
            : Region.empty(region.mesh());
    Map<Zone, Double> areas = new EnumMap<>(Zone.class);
    for (int z = 0; z < ZONES.size(); z++) {
      double area = sums[z] + (any ? split.intersect(cut.get(ZONES.get(z))).area() : 0);
      if (area > 0) {
        areas.put(ZONES.get(z), area);
      }
    }
    return areas;
  }
}
