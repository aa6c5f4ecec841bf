package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.List;

/**
 * Lines of equal field value, as ordered polylines: straight in each triangle, exact for the field.
 * A line has greater values on its left, seen from outside.
 */
public final class Isolines {
  private Isolines() {}

  /**
   * The lines in a region where a field has a level; a line that leaves the region and comes back
   * is several.
   */
  public static List<Polyline> of(Region region, LinearValues field, double level) {
    Chains chains = new Chains();
    for (int f = 0; f < region.fragmentCount(); f++) {
      int t = region.triangle(f);
      double a = field.at(t, 0);
      double b = field.at(t, 1) - a;
      double c = field.at(t, 2) - a;
      int size = region.size(f);
      Vector3 enter = null;
      Vector3 leave = null;
      double here = a - level + b * region.weight1(f, 0) + c * region.weight2(f, 0);
      for (int i = 0; i < size; i++) {
        int j = i + 1 == size ? 0 : i + 1;
        double next = a - level + b * region.weight1(f, j) + c * region.weight2(f, j);
        if ((here >= 0) != (next >= 0)) {
          double s = here / (here - next);
          double u = region.weight1(f, i) + s * (region.weight1(f, j) - region.weight1(f, i));
          double v = region.weight2(f, i) + s * (region.weight2(f, j) - region.weight2(f, i));
          Vector3 p = region.mesh().point(t, u, v);
          if (here >= 0) {
            enter = p;
          } else {
            leave = p;
          }
        }
        here = next;
      }
      if (enter != null && leave != null) {
        chains.add(leave, enter);
      }
    }
    return chains.toPolylines();
  }
}
