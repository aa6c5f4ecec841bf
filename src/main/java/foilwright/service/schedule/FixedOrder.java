package foilwright.service.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One pair of hands, everything in a known order: a stretch of foils placed one after another and
 * then all out together or one by one in the order of placing.
 *
 * <p>With the order known, all conditions are of the form <i>this at least so long after that</i>,
 * or <i>at most</i>. The earliest times that meet them are longest paths. A sweep in order meets
 * all the first kind; a foil that would then be over time is put in later, which may push others,
 * and the sweep is repeated. A longest path goes back at most once per foil, so either nothing
 * changes any more after as many sweeps as there are foils and one, and every time is the earliest
 * possible, or there is no schedule at all.
 */
final class FixedOrder {
  private final Times times;
  private final int from;
  private final int to;
  private final boolean together;
  private final long[] in;
  private final long[] out;

  private FixedOrder(Times times, int from, int to, boolean together) {
    this.times = times;
    this.from = from;
    this.to = to;
    this.together = together;
    in = new long[to - from];
    out = new long[to - from];
  }

  /**
   * The foils from {@code from} to before {@code to} when the hands begin at 0, in and all out as
   * early as can be, or null when there is no way.
   *
   * @param allowance added to the most exposure of every foil
   */
  static FixedOrder of(Times times, int from, int to, boolean together, long allowance) {
    FixedOrder order = new FixedOrder(times, from, to, together);
    if (!order.solve(allowance)) {
      return null;
    }
    order.gatherWaits(allowance);
    return order;
  }

  private boolean solve(long allowance) {
    Arrays.fill(in, 0);
    Arrays.fill(out, 0);
    int count = to - from;
    long removed = 0;
    for (int i = 0; i < count; i++) {
      removed += together ? 0 : times.removal[from + i];
      if (times.between(from + i, to - 1) + removed > times.most[from + i] + allowance) {
        return false;
      }
    }
    for (int sweep = 0; sweep <= count + 1; sweep++) {
      sweep();
      boolean late = false;
      for (int i = 0; i < count; i++) {
        long earliest = out[i] - times.most[from + i] - allowance;
        if (earliest > in[i]) {
          in[i] = earliest;
          late = true;
        }
      }
      if (!late) {
        return true;
      }
    }
    return false;
  }

  private void sweep() {
    int count = to - from;
    long now = 0;
    for (int i = 0; i < count; i++) {
      in[i] = Math.max(in[i], now + times.block[from + i]);
      now = in[i];
    }
    if (together) {
      for (int i = 0; i < count; i++) {
        now = Math.max(now, in[i] + times.least[from + i]);
      }
      Arrays.fill(out, now);
      return;
    }
    for (int i = 0; i < count; i++) {
      out[i] = Math.max(now + times.removal[from + i], in[i] + times.least[from + i]);
      now = out[i];
    }
  }

  /** Foils come out as late as the end and their windows allow, so that waits become one. */
  private void gatherWaits(long allowance) {
    for (int i = out.length - 2; i >= 0 && !together; i--) {
      out[i] =
          Math.min(
              out[i + 1] - times.removal[from + i + 1], in[i] + times.most[from + i] + allowance);
    }
  }

  long end() {
    return out[out.length - 1];
  }

  void addActions(List<Action> actions, long start) {
    for (int i = 0; i < in.length; i++) {
      times.addPlacing(actions, from + i, 0, start + in[i]);
    }
    for (int i = 0; i < in.length; i++) {
      times.addRemoval(
          actions, from + i, 0, start + out[i], together ? 0 : times.removal[from + i]);
    }
  }

  static ScheduleResult schedule(Times times, Removal removal) {
    boolean together = removal == Removal.TOGETHER;
    FixedOrder order = of(times, 0, times.n, together, 0);
    if (order == null) {
      return ScheduleResult.of(overTime(times, together));
    }
    List<Action> actions = new ArrayList<>();
    order.addActions(actions, 0);
    return ScheduleResult.of(
        new Schedule(times.foils, 1, removal, actions, Times.minutes(order.end())));
  }

  private static OverTime overTime(Times times, boolean together) {
    long low = 1;
    long high = times.horizon();
    while (low < high) {
      long middle = low + (high - low) / 2;
      if (of(times, 0, times.n, together, middle) == null) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    FixedOrder order = of(times, 0, times.n, together, high);
    return Excess.of(times, order.in, order.out, high, true);
  }
}
