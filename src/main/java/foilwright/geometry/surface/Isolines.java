package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import java.util.Arrays;
import java.util.List;

/**
 * Lines of equal field value, as ordered polylines: straight in each triangle, exact for the field.
 * A line has greater values on its left, seen from outside.
 */
public final class Isolines {
  private Isolines() {}

  /**
   * A line with the values that another field has along it.
   *
   * @param values one for each point of the line
   */
  public record Valued(Polyline line, List<Double> values) {}

  /**
   * The lines in a region where a field has a level; a line that leaves the region and comes back
   * is several.
   */
  public static List<Polyline> of(Region region, LinearValues field, double level) {
    return trace(region, field, level, (t, k) -> 0).toPolylines();
  }

  /** The lines of several levels, one list for each level, in one pass; the levels must ascend. */
  public static List<List<Polyline>> ofLevels(Region region, LinearValues field, double[] levels) {
    Chains[] chains = new Chains[levels.length];
    for (int i = 0; i < levels.length; i++) {
      chains[i] = new Chains();
    }
    for (int f = 0; f < region.fragmentCount(); f++) {
      int t = region.triangle(f);
      double a = field.at(t, 0);
      double b = field.at(t, 1) - a;
      double c = field.at(t, 2) - a;
      double least = Double.POSITIVE_INFINITY;
      double most = Double.NEGATIVE_INFINITY;
      for (int i = 0; i < region.size(f); i++) {
        double value = a + b * region.weight1(f, i) + c * region.weight2(f, i);
        least = Math.min(least, value);
        most = Math.max(most, value);
      }
      int level = Arrays.binarySearch(levels, least);
      level = level < 0 ? -level - 1 : level;
      while (level < levels.length && levels[level] <= most) {
        cross(region, f, a - levels[level], b, c, (s, u, v) -> 0, chains[level]);
        level++;
      }
    }
    return Arrays.stream(chains).map(Chains::toPolylines).toList();
  }

  /** The same lines with the values of another field along them. */
  public static List<Valued> withValues(
      Region region, LinearValues field, double level, LinearValues other) {
    return trace(region, field, level, other).toValued();
  }

  /** Joins lines whose ends meet within 1e-6 mm, end to start. */
  public static List<Polyline> join(List<Polyline> lines) {
    Chains chains = new Chains();
    for (Polyline line : lines) {
      for (int i = 0; i + 1 < line.size(); i++) {
        chains.add(line.points().get(i), line.points().get(i + 1));
      }
    }
    return chains.toPolylines();
  }

  private static Chains trace(Region region, LinearValues field, double level, LinearValues other) {
    Chains chains = new Chains();
    Inside values = (t, u, v) -> valueAt(other, t, u, v);
    for (int f = 0; f < region.fragmentCount(); f++) {
      int t = region.triangle(f);
      double a = field.at(t, 0) - level;
      double b = field.at(t, 1) - level;
      double c = field.at(t, 2) - level;
      if (Math.min(a, Math.min(b, c)) <= 0 && Math.max(a, Math.max(b, c)) >= 0) {
        cross(region, f, a, b - a, c - a, values, chains);
      }
    }
    return chains;
  }

  /** A value at a point of a triangle given by its weights. */
  private interface Inside {
    double at(int triangle, double u, double v);
  }

  /** Adds the segment in which a fragment crosses a + b u + c v = 0. */
  private static void cross(
      Region region, int f, double a, double b, double c, Inside values, Chains chains) {
    int t = region.triangle(f);
    int size = region.size(f);
    double u = region.weight1(f, 0);
    double v = region.weight2(f, 0);
    double here = a + b * u + c * v;
    double enterU = Double.NaN;
    double enterV = Double.NaN;
    double leaveU = Double.NaN;
    double leaveV = Double.NaN;
    for (int i = 0; i < size; i++) {
      int j = i + 1 == size ? 0 : i + 1;
      double nextU = region.weight1(f, j);
      double nextV = region.weight2(f, j);
      double next = a + b * nextU + c * nextV;
      if ((here >= 0) != (next >= 0)) {
        double s = here / (here - next);
        if (here >= 0) {
          enterU = u + s * (nextU - u);
          enterV = v + s * (nextV - v);
        } else {
          leaveU = u + s * (nextU - u);
          leaveV = v + s * (nextV - v);
        }
      }
      here = next;
      u = nextU;
      v = nextV;
    }
    if (!Double.isNaN(enterU) && !Double.isNaN(leaveU)) {
      chains.add(
          region.mesh().point(t, leaveU, leaveV),
          values.at(t, leaveU, leaveV),
          region.mesh().point(t, enterU, enterV),
          values.at(t, enterU, enterV));
    }
  }

  private static double valueAt(LinearValues field, int t, double u, double v) {
    double a = field.at(t, 0);
    return a + u * (field.at(t, 1) - a) + v * (field.at(t, 2) - a);
  }
}
