package foilwright.app;

import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.placement.PlacedFoil;
import foilwright.placement.PlacedSection;
import foilwright.placement.Placement;
import foilwright.service.schedule.FoilTask;
import foilwright.service.schedule.OrderSearch;
import foilwright.service.visit.VisitPlanner;
import foilwright.service.visit.VisitTerms;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Searches a better working order for the foils of a placement. */
final class WorkingOrders {
  /** Orders looked at when there are too many to try them all; about a tenth of a second. */
  private static final int LIMIT = 40_000;

  private static final long SEED = 20260501;

  /** A foil whose centre lies nearer than this to the hairline counts as one of the hairline. */
  private static final Length HAIRLINE = Length.ofMillimetres(20);

  private WorkingOrders() {}

  /**
   * Rows stay whole and in the order of their section; rows of different sections may follow each
   * other in any way.
   *
   * @param placement numbered from 1 in the pattern's own order
   */
  static OrderSearch.Result search(
      Placement placement, VisitTerms terms, List<OrderSearch.Aim> aims) {
    Map<Integer, FoilTask> tasks = new HashMap<>();
    VisitPlanner.tasks(placement, terms).forEach(task -> tasks.put(task.number(), task));
    List<List<OrderSearch.Row>> chains = new ArrayList<>();
    for (PlacedSection section : placement.sections()) {
      Map<Integer, List<OrderSearch.Item>> rows = new TreeMap<>();
      for (PlacedFoil foil : section.foils()) {
        rows.computeIfAbsent(foil.row(), r -> new ArrayList<>())
            .add(
                new OrderSearch.Item(
                    tasks.get(foil.number()), standing(foil.centre()), atHairline(foil)));
      }
      if (!rows.isEmpty()) {
        chains.add(rows.values().stream().map(OrderSearch.Row::new).toList());
      }
    }
    return OrderSearch.search(chains, aims, SEED, LIMIT);
  }

  private static boolean atHairline(PlacedFoil foil) {
    return foil.zone() == Zone.FRINGE || foil.centreFind().fromHairline().compareTo(HAIRLINE) < 0;
  }

  /**
   * Where one stands for a foil: before, beside or behind the chair, by its bearing on the head.
   */
  private static String standing(Vector3 centre) {
    double fromFront = Math.toDegrees(Math.atan2(Math.abs(centre.x()), centre.y()));
    if (fromFront < 40) {
      return "front";
    }
    if (fromFront > 130) {
      return "back";
    }
    return centre.x() > 0 ? "right" : "left";
  }
}
