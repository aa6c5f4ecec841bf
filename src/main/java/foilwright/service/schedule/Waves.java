package foilwright.service.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Wave by wave: where to part the working order so that the last foil is out earliest, and among
 * equals with the fewest waves.
 *
 * <p>A wave begins when the one before it is out, so its length does not depend on the others, and
 * the least end over the first foils is the least over the last wave's first foil (dynamic
 * programming over the points of parting). A wave with one more foil meets one more condition: from
 * the first length that has no schedule on, longer ones have none either.
 */
final class Waves {
  private Waves() {}

  /** Least length of a wave on its own, or -1 when its foils cannot be one wave. */
  interface Length {
    long of(int from, int to);
  }

  /**
   * First foil of every wave, in order, with the number of foils at the end; empty when there is no
   * way.
   */
  static List<Integer> parts(int n, Length length) {
    long[] end = new long[n + 1];
    int[] count = new int[n + 1];
    int[] from = new int[n + 1];
    Arrays.fill(end, 1, n + 1, Long.MAX_VALUE);
    for (int first = 0; first < n; first++) {
      if (end[first] == Long.MAX_VALUE) {
        continue;
      }
      for (int to = first + 1; to <= n; to++) {
        long wave = length.of(first, to);
        if (wave < 0) {
          break;
        }
        long total = end[first] + wave;
        if (total < end[to] || (total == end[to] && count[first] + 1 < count[to])) {
          end[to] = total;
          count[to] = count[first] + 1;
          from[to] = first;
        }
      }
    }
    if (end[n] == Long.MAX_VALUE) {
      return List.of();
    }
    List<Integer> parts = new ArrayList<>(List.of(n));
    for (int to = n; to > 0; to = from[to]) {
      parts.add(from[to]);
    }
    Collections.reverse(parts);
    return List.copyOf(parts);
  }

  /** One pair of hands. */
  static ScheduleResult schedule(Times times) {
    List<Integer> parts =
        parts(
            times.n,
            (from, to) -> {
              FixedOrder wave = FixedOrder.of(times, from, to, false, 0);
              return wave == null ? -1 : wave.end();
            });
    if (parts.isEmpty()) {
      return ScheduleResult.of(Excess.ofRemovalAlone(times).orElseThrow());
    }
    List<Action> actions = new ArrayList<>();
    long now = 0;
    for (int wave = 0; wave + 1 < parts.size(); wave++) {
      FixedOrder order = FixedOrder.of(times, parts.get(wave), parts.get(wave + 1), false, 0);
      order.addActions(actions, now);
      now += order.end();
    }
    return ScheduleResult.of(
        new Schedule(times.foils, 1, Removal.IN_WAVES, actions, Times.minutes(now)));
  }
}
