package foilwright.placement;

import foilwright.anatomy.Zone;
import foilwright.geometry.surface.Partition;
import foilwright.geometry.surface.Region;
import foilwright.head.Head;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Areas of a region by zone, exact. */
final class ZoneShares {
  private static final List<Zone> ZONES = List.of(Zone.values());

  private final Partition zones;

  ZoneShares(Head head) {
    zones = Partition.of(head.mesh(), ZONES.stream().map(head::zone).toList());
  }

  /** Square millimetres by zone; zones without a share are left out. */
  Map<Zone, Double> areas(Region region) {
    double[] sums = zones.areas(region);
    Map<Zone, Double> areas = new EnumMap<>(Zone.class);
    for (int z = 0; z < sums.length; z++) {
      if (sums[z] > 0) {
        areas.put(ZONES.get(z), sums[z]);
      }
    }
    return areas;
  }
}
