package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Joins directed segments end to start into polylines; ends nearer than 1e-6 mm are one point. */
final class Chains {
  private static final double SAME_MM = 1e-6;

  private final Map<Long, List<Integer>> grid = new HashMap<>();
  private final List<Vector3> points = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private final List<Integer> from = new ArrayList<>();
  private final List<Integer> to = new ArrayList<>();

  void add(Vector3 start, Vector3 end) {
    add(start, 0, end, 0);
  }

  void add(Vector3 start, double startValue, Vector3 end, double endValue) {
    int a = number(start, startValue);
    int b = number(end, endValue);
    if (a != b) {
      from.add(a);
      to.add(b);
    }
  }

  private int number(Vector3 p, double value) {
    for (long i = cell(p.x() - SAME_MM); i <= cell(p.x() + SAME_MM); i++) {
      for (long j = cell(p.y() - SAME_MM); j <= cell(p.y() + SAME_MM); j++) {
        for (long k = cell(p.z() - SAME_MM); k <= cell(p.z() + SAME_MM); k++) {
          for (int n : grid.getOrDefault(key(i, j, k), List.of())) {
            if (points.get(n).distance(p) <= SAME_MM) {
              return n;
            }
          }
        }
      }
    }
    points.add(p);
    values.add(value);
    grid.computeIfAbsent(key(cell(p.x()), cell(p.y()), cell(p.z())), c -> new ArrayList<>(1))
        .add(points.size() - 1);
    return points.size() - 1;
  }

  private static long cell(double value) {
    return (long) Math.floor(value / (4 * SAME_MM));
  }

  private static long key(long x, long y, long z) {
    return (x * 73_856_093L) ^ (y * 19_349_663L * 31) ^ (z * 83_492_791L * 961);
  }

  /**
   * The chains, open ones from their free start, in the order in which their segments were added.
   */
  List<Polyline> toPolylines() {
    return numbers().stream()
        .map(chain -> Polyline.of(chain.stream().map(points::get).toList()))
        .toList();
  }

  /** The chains with the values given with their points. */
  List<Isolines.Valued> toValued() {
    return numbers().stream()
        .map(
            chain ->
                new Isolines.Valued(
                    Polyline.of(chain.stream().map(points::get).toList()),
                    chain.stream().map(values::get).toList()))
        .toList();
  }

  private List<List<Integer>> numbers() {
    List<Deque<Integer>> outgoing = new ArrayList<>();
    int[] incoming = new int[points.size()];
    for (int p = 0; p < points.size(); p++) {
      outgoing.add(new ArrayDeque<>(1));
    }
    for (int s = 0; s < from.size(); s++) {
      outgoing.get(from.get(s)).add(s);
      incoming[to.get(s)]++;
    }
    boolean[] used = new boolean[from.size()];
    List<List<Integer>> chains = new ArrayList<>();
    for (boolean openOnly : new boolean[] {true, false}) {
      for (int s = 0; s < used.length; s++) {
        int start = from.get(s);
        if (used[s] || (openOnly && incoming[start] >= outgoing.get(start).size())) {
          continue;
        }
        List<Integer> chain = new ArrayList<>();
        chain.add(start);
        int at = start;
        Integer next = s;
        while (next != null) {
          used[next] = true;
          outgoing.get(at).remove(next);
          at = to.get(next);
          chain.add(at);
          if (at == start) {
            break;
          }
          next = outgoing.get(at).peek();
        }
        incoming[at] = 0;
        chains.add(chain);
      }
    }
    return chains;
  }
}
