package foilwright.service.schedule;

import foilwright.units.Minutes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Least end of few foils for one pair of hands by trying every sequence of placings and removals,
 * whatever the order of removing, with waits wherever they help: Bellman-Ford over all conditions
 * of a sequence. Whole seconds. Shares nothing with the scheduler.
 */
final class EveryOrder {
  private final List<FoilTask> foils;
  private final int n;
  private long best = Long.MAX_VALUE;

  private EveryOrder(List<FoilTask> foils) {
    this.foils = foils;
    n = foils.size();
  }

  /** In seconds; {@code Long.MAX_VALUE} when no sequence keeps the windows. */
  static long leastEnd(List<FoilTask> foils) {
    EveryOrder order = new EveryOrder(foils);
    order.extend(new ArrayList<>(), 0, 0);
    return order.best;
  }

  /** Event i is the end of placing foil i, event n + i the end of its removal. */
  private void extend(List<Integer> sequence, int placed, int removed) {
    if (sequence.size() == 2 * n) {
      best = Math.min(best, end(sequence));
      return;
    }
    if (placed < n) {
      sequence.add(placed);
      extend(sequence, placed + 1, removed);
      sequence.remove(sequence.size() - 1);
    }
    for (int i = 0; i < placed; i++) {
      if ((removed & (1 << i)) == 0) {
        sequence.add(n + i);
        extend(sequence, placed, removed | (1 << i));
        sequence.remove(sequence.size() - 1);
      }
    }
  }

  private static long seconds(Minutes time) {
    return Math.round(time.toSeconds());
  }

  private long length(int event) {
    FoilTask foil = foils.get(event % n);
    return event < n ? seconds(foil.before()) + seconds(foil.placing()) : seconds(foil.removal());
  }

  private long end(List<Integer> sequence) {
    long[] time = new long[2 * n];
    Arrays.fill(time, 0);
    for (int round = 0; round <= 2 * n + 1; round++) {
      boolean changed = false;
      for (int k = 0; k < 2 * n; k++) {
        int event = sequence.get(k);
        long earliest = (k > 0 ? time[sequence.get(k - 1)] : 0) + length(event);
        changed |= earliest > time[event];
        time[event] = Math.max(time[event], earliest);
      }
      for (int i = 0; i < n; i++) {
        long out = time[i] + seconds(foils.get(i).window().least());
        changed |= out > time[n + i];
        time[n + i] = Math.max(time[n + i], out);
        long in = time[n + i] - seconds(foils.get(i).window().most());
        changed |= in > time[i];
        time[i] = Math.max(time[i], in);
      }
      if (!changed) {
        return Arrays.stream(time).max().orElseThrow();
      }
    }
    return Long.MAX_VALUE;
  }
}
