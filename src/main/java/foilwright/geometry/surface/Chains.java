package foilwright.geometry.surface;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Joins directed segments end to start into polylines; ends nearer than 1e-6 mm are one point. */
final class Chains {
  private static final double SAME_MM = 1e-6;
  private static final int NONE = -1;

  private final List<Vector3> points = new ArrayList<>();
  private double[] values = new double[64];

  /** The points by the cell of space that they lie in: the latest of each bucket, and the rest. */
  private int[] buckets = filled(128);

  private int[] nextInBucket = new int[64];

  private int[] from = new int[64];
  private int[] to = new int[64];
  private int segments;

  private static int[] filled(int size) {
    int[] array = new int[size];
    Arrays.fill(array, NONE);
    return array;
  }

  void add(Vector3 start, Vector3 end) {
    add(start, 0, end, 0);
  }

  void add(Vector3 start, double startValue, Vector3 end, double endValue) {
    int a = number(start, startValue);
    int b = number(end, endValue);
    if (a == b) {
      return;
    }
    if (segments == from.length) {
      from = Arrays.copyOf(from, 2 * segments);
      to = Arrays.copyOf(to, 2 * segments);
    }
    from[segments] = a;
    to[segments++] = b;
  }

  private int number(Vector3 p, double value) {
    for (long i = cell(p.x() - SAME_MM); i <= cell(p.x() + SAME_MM); i++) {
      for (long j = cell(p.y() - SAME_MM); j <= cell(p.y() + SAME_MM); j++) {
        for (long k = cell(p.z() - SAME_MM); k <= cell(p.z() + SAME_MM); k++) {
          for (int n = buckets[bucket(i, j, k)]; n != NONE; n = nextInBucket[n]) {
            if (points.get(n).distance(p) <= SAME_MM) {
              return n;
            }
          }
        }
      }
    }
    int n = points.size();
    if (n == values.length) {
      values = Arrays.copyOf(values, 2 * n);
      nextInBucket = new int[2 * n];
      buckets = filled(4 * n);
      for (int known = 0; known < n; known++) {
        store(known);
      }
    }
    points.add(p);
    values[n] = value;
    store(n);
    return n;
  }

  private void store(int n) {
    Vector3 p = points.get(n);
    int bucket = bucket(cell(p.x()), cell(p.y()), cell(p.z()));
    nextInBucket[n] = buckets[bucket];
    buckets[bucket] = n;
  }

  private static long cell(double value) {
    return (long) Math.floor(value / (4 * SAME_MM));
  }

  private int bucket(long x, long y, long z) {
    long key = (x * 73_856_093L) ^ (y * 19_349_663L * 31) ^ (z * 83_492_791L * 961);
    key *= 0x9E3779B97F4A7C15L;
    return (int) (key >>> 32) & (buckets.length - 1);
  }

  /**
   * The chains, open ones from their free start, in the order in which their segments were added.
   */
  List<Polyline> toPolylines() {
    return numbers().stream().map(this::polyline).toList();
  }

  /** The chains with the values given with their points. */
  List<Isolines.Valued> toValued() {
    return numbers().stream()
        .map(
            chain ->
                new Isolines.Valued(
                    polyline(chain), Arrays.stream(chain).mapToObj(n -> values[n]).toList()))
        .toList();
  }

  private Polyline polyline(int[] chain) {
    return Polyline.of(Arrays.stream(chain).mapToObj(points::get).toList());
  }

  private List<int[]> numbers() {
    int[] outgoing = new int[points.size()];
    int[] incoming = new int[points.size()];
    int[] first = filled(points.size());
    int[] next = new int[segments];
    for (int s = segments - 1; s >= 0; s--) {
      outgoing[from[s]]++;
      incoming[to[s]]++;
      next[s] = first[from[s]];
      first[from[s]] = s;
    }
    boolean[] used = new boolean[segments];
    int[] chain = new int[segments + 1];
    List<int[]> chains = new ArrayList<>();
    for (boolean openOnly : new boolean[] {true, false}) {
      for (int s = 0; s < segments; s++) {
        int start = from[s];
        if (used[s] || (openOnly && incoming[start] >= outgoing[start])) {
          continue;
        }
        int size = 0;
        chain[size++] = start;
        int at = start;
        int step = s;
        while (step != NONE) {
          used[step] = true;
          outgoing[at]--;
          at = to[step];
          chain[size++] = at;
          if (at == start) {
            break;
          }
          while (first[at] != NONE && used[first[at]]) {
            first[at] = next[first[at]];
          }
          step = first[at];
        }
        incoming[at] = 0;
        chains.add(Arrays.copyOf(chain, size));
      }
    }
    return chains;
  }
}
