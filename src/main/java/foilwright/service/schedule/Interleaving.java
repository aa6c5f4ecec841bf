package foilwright.service.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One pair of hands that takes foils out also while placing: which removals go between which
 * placings, and when, so that the last foil is out earliest.
 *
 * <p>Foils with the same window and the same time to remove form a lane. Within a lane foils come
 * out in the order they went in: if a later one came out first, exchanging the two removals would
 * change nothing else and both would stay inside the window. The same holds between lanes for an
 * earlier foil whose window neither begins nor ends later. So a schedule is a sequence of blocks
 * and removals in which only the mixture is free; for a known sequence the earliest times are
 * longest paths.
 *
 * <p>The search asks whether all can be out by a given time. Earliest and latest times of every
 * placing and removal follow from each other and from the work that must lie between; which
 * removals must, and which can, come before a placing follows from those times, and sharpens them.
 * Where earliest passes latest there is no schedule. The least time that this alone does not refute
 * is a lower bound; a depth-first search over sequences, with the same reasoning after every step,
 * finds a schedule that ends then, or refutes that too and the time is raised by halving what is
 * left between the refuted and the found. Straight dives alone close in first; what they leave open
 * is then searched in earnest, the less the nearer they came. Only a limit on the number of steps
 * can leave a gap, and then the lower bound is what was refuted.
 */
final class Interleaving {
  private final Times times;
  private final int n;
  private final int[][] lanes;
  private final long[] laneRemoval;
  private final int[] laneOf;
  private final int[] place;
  private final long[] least;
  private final int[] anchors;

  // The state of the search: a sequence so far, bounds per depth.
  private final int[] sequence;
  private final long[][] bounds;
  private int depth;
  private int placed;
  private final int[] removed;
  private long limit;
  private boolean changed;
  private long steps;
  private long stepLimit;
  private long spent;
  private long mostSpent;
  private int splits;
  private int dived;

  // What is known: no schedule ends before the one, and the best ends at the other, ms.
  private long low;
  private long high;
  private List<Action> best;
  private boolean found;
  private double share;
  private final int[][] surely;
  private final int[][] possibly;
  private final int[][] atLeast;
  private final int[][] atMost;

  /** Sweeps of the bounds before the search goes on with what they are. */
  private static final int SWEEPS = 40;

  private static final int SWEEPS_IN_DIVE = 12;

  /** Steps of a dive beyond those that a straight one takes. */
  private static final int DIVE = 40;

  /**
   * How soon a dive takes foils out: when more than this share of what can be out before the next
   * block is still in.
   */
  private static final double[] SHARES = {1, 0.5, 0.75, 0.25, 0};

  /** How often what can be out before a block is halved, for one end. */
  private static final int SPLITS = 80;

  /** Steps in all after the straight dives, while a gap is wider than {@link #NEAR}. */
  private static final int MOST_STEPS = 20_000;

  /** Steps in all for a gap no wider, which nobody would notice at the chair. */
  private static final int STEPS_WHEN_NEAR = 2_000;

  /** A quarter of a minute, ms. */
  private static final long NEAR = 15_000;

  /** Steps of the last search, when nothing is left to halve. */
  private static final int LAST = 5000;

  private enum Answer {
    FOUND,
    REFUTED,
    UNKNOWN
  }

  Interleaving(Times times) {
    this.times = times;
    n = times.n;
    least = new long[n];
    Map<List<Long>, List<Integer>> groups = new LinkedHashMap<>();
    for (int i = 0; i < n; i++) {
      least[i] = Math.max(times.least[i], times.removal[i]);
      groups
          .computeIfAbsent(
              List.of(least[i], times.most[i], times.removal[i]), key -> new ArrayList<>())
          .add(i);
    }
    lanes =
        groups.values().stream()
            .map(lane -> lane.stream().mapToInt(i -> i).toArray())
            .toArray(int[][]::new);
    laneRemoval = new long[lanes.length];
    laneOf = new int[n];
    place = new int[n];
    anchors = new int[lanes.length];
    for (int a = 0; a < lanes.length; a++) {
      for (int index = 0; index < lanes[a].length; index++) {
        laneOf[lanes[a][index]] = a;
        place[lanes[a][index]] = index;
      }
      laneRemoval[a] = times.removal[lanes[a][0]];
      anchors[a] = lanes[a][lanes[a].length - 1];
    }
    sequence = new int[2 * n];
    bounds = new long[2 * n + 1][4 * n];
    removed = new int[lanes.length];
    surely = new int[lanes.length][n];
    possibly = new int[lanes.length][n];
    atLeast = new int[lanes.length][n];
    atMost = new int[lanes.length][n];
    for (int[] lane : atMost) {
      Arrays.fill(lane, n);
    }
  }

  private boolean root(long end) {
    limit = end;
    long[] open = new long[4 * n];
    Arrays.fill(open, n, 2 * n, end);
    Arrays.fill(open, 3 * n, 4 * n, end);
    return restart(open);
  }

  /** Least end that the reasoning on bounds alone does not refute. */
  private long rootBound(long low, long high) {
    while (low < high) {
      long middle = low + (high - low) / 2;
      if (root(middle)) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  private Answer decide(long end, int halvings) {
    splits = halvings;
    dived = 0;
    return root(end) ? split(SHARES.length) : Answer.REFUTED;
  }

  /**
   * Dives straight down, and where they find nothing, again with how many foils of a lane are out
   * before a block halved: where most is open, the upper half first.
   *
   * @param kinds how many kinds of dives are tried
   */
  private Answer split(int kinds) {
    long[] here = bounds[0].clone();
    int lane = -1;
    int at = -1;
    int width = 0;
    for (int a = 0; a < lanes.length; a++) {
      for (int i = 0; i < n; i++) {
        if (possibly[a][i] - surely[a][i] > width) {
          width = possibly[a][i] - surely[a][i];
          lane = a;
          at = i;
        }
      }
    }
    int middle = lane < 0 ? 0 : surely[lane][at] + (width - 1) / 2;
    Answer answer = Answer.UNKNOWN;
    for (int dive = 0; dive < (lane < 0 ? 1 : kinds) && answer == Answer.UNKNOWN; dive++) {
      share = SHARES[dived++ % SHARES.length];
      steps = 0;
      stepLimit = lane < 0 ? LAST : 2L * n + DIVE;
      answer = restart(here) ? search() : Answer.REFUTED;
      spent += steps;
    }
    if (answer != Answer.UNKNOWN || lane < 0) {
      return answer;
    }
    boolean unknown = false;
    for (int half = 0; half < 2; half++) {
      if (splits-- <= 0 || spent > mostSpent) {
        return Answer.UNKNOWN;
      }
      int least = atLeast[lane][at];
      int most = atMost[lane][at];
      if (half == 0) {
        atLeast[lane][at] = middle + 1;
      } else {
        atMost[lane][at] = middle;
      }
      answer = restart(here) ? split(1) : Answer.REFUTED;
      atLeast[lane][at] = least;
      atMost[lane][at] = most;
      if (answer == Answer.FOUND) {
        return answer;
      }
      unknown |= answer == Answer.UNKNOWN;
    }
    return unknown ? Answer.UNKNOWN : Answer.REFUTED;
  }

  /** Back to the empty sequence with known bounds. */
  private boolean restart(long[] known) {
    depth = 0;
    placed = 0;
    Arrays.fill(removed, 0);
    System.arraycopy(known, 0, bounds[0], 0, 4 * n);
    return tighten(bounds[0], SWEEPS);
  }

  private Answer search() {
    if (depth == 2 * n) {
      return Answer.FOUND;
    }
    int[] choices = new int[lanes.length + 1];
    int count = choices(choices);
    for (int c = 0; c < count; c++) {
      if (steps++ >= stepLimit) {
        return Answer.UNKNOWN;
      }
      int event = choices[c];
      System.arraycopy(bounds[depth], 0, bounds[depth + 1], 0, 4 * n);
      push(event);
      Answer below =
          tighten(bounds[depth], depth == 2 * n ? n + 2 : SWEEPS_IN_DIVE)
              ? search()
              : Answer.REFUTED;
      if (below == Answer.FOUND) {
        return below;
      }
      pop(event);
      if (below == Answer.UNKNOWN) {
        return below;
      }
    }
    return Answer.REFUTED;
  }

  private void push(int event) {
    sequence[depth++] = event;
    if (event >= 0) {
      for (int a = 0; a < lanes.length; a++) {
        possibly[a][event] = removed[a];
      }
      placed++;
    } else {
      removed[laneOf[~event]]++;
    }
  }

  private void pop(int event) {
    depth--;
    if (event >= 0) {
      placed--;
    } else {
      removed[laneOf[~event]]--;
    }
  }

  /** Next events worth trying, best first: a foil to place, or the complement of one to remove. */
  private int choices(int[] choices) {
    long[] b = bounds[depth];
    long now = 0;
    if (depth > 0) {
      int last = sequence[depth - 1];
      now = last >= 0 ? b[last] : b[2 * n + ~last];
    }
    int count = 0;
    for (int a = 0; a < lanes.length; a++) {
      if (removed[a] == lanes[a].length || lanes[a][removed[a]] >= placed) {
        continue;
      }
      int foil = lanes[a][removed[a]];
      if (overtaken(foil)) {
        continue;
      }
      int at = count++;
      while (at > 0 && b[3 * n + foil] < b[3 * n + ~choices[at - 1]]) {
        choices[at] = choices[at - 1];
        at--;
      }
      choices[at] = ~foil;
    }
    if (placed < n) {
      int at = count++;
      choices[at] = placed;
      while (at > 0 && waits(b, ~choices[at - 1], now)) {
        choices[at] = choices[at - 1];
        choices[--at] = placed;
      }
    }
    return count;
  }

  /** Whether placing goes first: removing would mean waiting, or enough are out for now. */
  private boolean waits(long[] b, int foil, long now) {
    int a = laneOf[foil];
    return b[foil] + least[foil] > now + times.removal[foil]
        || removed[a] - surely[a][placed] >= share * (possibly[a][placed] - surely[a][placed]);
  }

  /** Whether another foil that waits may always come out before this one. */
  private boolean overtaken(int foil) {
    for (int a = 0; a < lanes.length; a++) {
      if (a != laneOf[foil] && removed[a] < lanes[a].length) {
        int other = lanes[a][removed[a]];
        if (other < foil
            && laneRemoval[a] == times.removal[foil]
            && least[other] <= least[foil]
            && times.most[other] <= times.most[foil]) {
          return true;
        }
      }
    }
    return false;
  }

  /**
   * Draws earliest and latest times together until nothing changes or for so many sweeps; false
   * when some earliest time is later than the latest.
   */
  private boolean tighten(long[] b, int sweeps) {
    for (int sweep = 0; sweep < sweeps; sweep++) {
      changed = false;
      if (!forward(b, sweep == 0) || !backward(b)) {
        return false;
      }
      if (!changed) {
        return true;
      }
    }
    return depth < 2 * n;
  }

  private boolean raise(long[] b, int at, long value) {
    if (value > b[at]) {
      b[at] = value;
      changed = true;
      return value <= b[at + n];
    }
    return true;
  }

  private boolean lower(long[] b, int at, long value) {
    if (value < b[at]) {
      b[at] = value;
      changed = true;
      return value >= b[at - n];
    }
    return true;
  }

  private boolean forward(long[] b, boolean first) {
    int yLo = 2 * n;
    int yHi = 3 * n;
    long now = 0;
    for (int e = 0; e < depth; e++) {
      int event = sequence[e];
      if (event >= 0) {
        if (!raise(b, event, now + times.block[event])) {
          return false;
        }
        now = b[event];
      } else {
        int j = ~event;
        if (!raise(b, yLo + j, Math.max(now + times.removal[j], b[j] + least[j]))) {
          return false;
        }
        now = b[yLo + j];
        if (!raise(b, j, now - times.most[j])) {
          return false;
        }
      }
    }
    long placedBlocks = placed > 0 ? times.blocks[placed - 1] : 0;
    long work = 0;
    long previous = now;
    for (int a = 0; a < lanes.length; a++) {
      if (placed < n) {
        surely[a][placed] = removed[a];
      }
    }
    for (int i = placed; i < n; i++) {
      long lo = Math.max(b[i], previous + times.block[i]);
      boolean more = true;
      while (more) {
        more = false;
        lo = Math.max(lo, now + times.blocks[i] - placedBlocks + work);
        for (int a = 0; a < lanes.length; a++) {
          int[] lane = lanes[a];
          while (surely[a][i] < lane.length
              && lane[surely[a][i]] < i
              && (surely[a][i] < atLeast[a][i]
                  || b[yHi + lane[surely[a][i]]] < lo + laneRemoval[a]
                  || overTimeAfter(a, i, first))) {
            lo = Math.max(lo, b[yLo + lane[surely[a][i]]] + times.block[i]);
            surely[a][i]++;
            work += laneRemoval[a];
            more = true;
          }
        }
      }
      if (!raise(b, i, lo)) {
        return false;
      }
      previous = lo;
      if (i + 1 < n) {
        for (int a = 0; a < lanes.length; a++) {
          surely[a][i + 1] = surely[a][i];
        }
      }
    }
    for (int a = 0; a < lanes.length; a++) {
      long before = now;
      int i = placed;
      for (int index = removed[a]; index < lanes[a].length; index++) {
        int j = lanes[a][index];
        long lo = Math.max(b[yLo + j], Math.max(before + laneRemoval[a], b[j] + least[j]));
        while (i < n && (i <= j || index >= atMost[a][i] || lo > b[n + i] - times.block[i])) {
          lo = Math.max(lo, b[i] + laneRemoval[a]);
          possibly[a][i++] = index;
        }
        if (!raise(b, yLo + j, lo) || !raise(b, j, lo - times.most[j])) {
          return false;
        }
        before = lo;
      }
      while (i < n) {
        possibly[a][i++] = lanes[a].length;
      }
      for (int k = placed; k < n; k++) {
        if (surely[a][k] > possibly[a][k] || surely[a][k] < atLeast[a][k]) {
          return false;
        }
      }
    }
    return tailFits(b);
  }

  private final int[] tail = new int[64];

  /** Whether the removals that are left fit between when they can begin and the end. */
  private boolean tailFits(long[] b) {
    int yLo = 2 * n;
    long work = 0;
    int[] at = lanes.length <= tail.length ? tail : new int[lanes.length];
    for (int a = 0; a < lanes.length; a++) {
      at[a] = lanes[a].length - 1;
    }
    while (true) {
      int latest = -1;
      long release = -1;
      for (int a = 0; a < lanes.length; a++) {
        if (at[a] >= removed[a]) {
          long begins = b[yLo + lanes[a][at[a]]] - laneRemoval[a];
          if (begins > release) {
            release = begins;
            latest = a;
          }
        }
      }
      if (latest < 0) {
        return true;
      }
      work += laneRemoval[latest];
      if (release + work > limit) {
        return false;
      }
      at[latest]--;
    }
  }

  /**
   * Whether the next foil of a lane would be over its time if it came out after a block: blocks and
   * removals that must lie between are too long, wherever waits are.
   */
  private boolean overTimeAfter(int a, int block, boolean first) {
    int index = surely[a][block];
    int foil = lanes[a][index];
    if (first && foil >= placed) {
      return false;
    }
    long between = times.between(foil, block) + laneRemoval[a] * (index + 1 - possibly[a][foil]);
    for (int other = 0; other < lanes.length; other++) {
      if (other != a) {
        between += laneRemoval[other] * Math.max(0, surely[other][block] - possibly[other][foil]);
      }
    }
    return between > times.most[foil];
  }

  private boolean backward(long[] b) {
    int yHi = 3 * n;
    long next = limit;
    for (int a = 0; a < lanes.length; a++) {
      long after = limit + laneRemoval[a];
      int i = n - 1;
      for (int index = lanes[a].length - 1; index >= removed[a]; index--) {
        int j = lanes[a][index];
        long hi = Math.min(b[yHi + j], Math.min(after - laneRemoval[a], b[n + j] + times.most[j]));
        while (i >= placed && surely[a][i] > index) {
          hi = Math.min(hi, b[n + i] - times.block[i]);
          i--;
        }
        if (!lower(b, yHi + j, hi) || !lower(b, n + j, hi - least[j])) {
          return false;
        }
        after = hi;
      }
      if (removed[a] < lanes[a].length) {
        next = Math.min(next, after - laneRemoval[a]);
      }
    }
    for (int i = n - 1; i >= placed; i--) {
      long hi = b[n + i];
      if (i + 1 < n) {
        hi = Math.min(hi, b[n + i + 1] - times.block[i + 1]);
      }
      long after = 0;
      for (int a = 0; a < lanes.length; a++) {
        after += laneRemoval[a] * (lanes[a].length - possibly[a][i]);
      }
      hi = Math.min(hi, limit - times.between(i, n - 1) - after);
      for (int anchor : anchors) {
        if (anchor > i) {
          long between = 0;
          for (int a = 0; a < lanes.length; a++) {
            between += laneRemoval[a] * Math.max(0, surely[a][anchor] - possibly[a][i]);
          }
          hi = Math.min(hi, b[n + anchor] - times.between(i, anchor) - between);
        }
      }
      if (!lower(b, n + i, hi)) {
        return false;
      }
    }
    if (placed < n) {
      next = Math.min(next, b[n + placed] - times.block[placed]);
    }
    for (int e = depth - 1; e >= 0; e--) {
      int event = sequence[e];
      if (event >= 0) {
        if (!lower(b, n + event, Math.min(next, b[yHi + event] - least[event]))) {
          return false;
        }
        next = b[n + event] - times.block[event];
      } else {
        int j = ~event;
        if (!lower(b, yHi + j, Math.min(next, b[n + j] + times.most[j]))) {
          return false;
        }
        next = b[yHi + j] - times.removal[j];
      }
    }
    return true;
  }

  /**
   * The earliest times of the sequence that was found; after the last foil is in, the others come
   * out as late as the end and their windows allow, so that waits become one.
   */
  private List<Action> actions() {
    long[] b = bounds[2 * n];
    long next = b[2 * n + ~sequence[2 * n - 1]];
    for (int e = 2 * n - 1; sequence[e] < 0; e--) {
      int foil = ~sequence[e];
      b[2 * n + foil] = Math.min(next, b[foil] + times.most[foil]);
      next = b[2 * n + foil] - times.removal[foil];
    }
    List<Action> actions = new ArrayList<>();
    for (int event : sequence) {
      if (event >= 0) {
        times.addPlacing(actions, event, 0, b[event]);
      } else {
        times.addRemoval(actions, ~event, 0, b[2 * n + ~event], times.removal[~event]);
      }
    }
    return actions;
  }

  private long end() {
    long end = 0;
    for (int i = 0; i < n; i++) {
      end = Math.max(end, bounds[2 * n][2 * n + i]);
    }
    return end;
  }

  /**
   * Looks for sooner ends between the bound and the best that is known, by halving.
   *
   * @param halvings of what can be out before a block, for one end
   */
  private void closeIn(int halvings) {
    long before = spent;
    long unknown = low - 1;
    long step = 1000;
    long end = low;
    while (end > unknown && low < high && end < high) {
      mostSpent = before + (high - low > NEAR ? MOST_STEPS : STEPS_WHEN_NEAR);
      if (halvings > 0 && spent > mostSpent) {
        break;
      }
      Answer answer = decide(end, halvings);
      if (answer == Answer.FOUND) {
        high = end();
        best = actions();
        found = true;
      } else {
        low = answer == Answer.REFUTED ? end + 1 : low;
        unknown = end;
        step *= 2;
      }
      end =
          !found
              ? Math.min(high - 1, end + step)
              : high - unknown < 1200 ? high - 1 : unknown + (high - unknown) / 2;
    }
    low = Math.min(low, high);
  }

  static ScheduleResult schedule(Times times) {
    ScheduleResult waves = Waves.schedule(times);
    if (waves.schedule().isEmpty()) {
      return waves;
    }
    Interleaving search = new Interleaving(times);
    search.best = waves.schedule().get().actions();
    search.high = Times.millis(waves.schedule().get().end());
    search.low = search.rootBound(0, search.high);
    search.closeIn(0);
    search.closeIn(SPLITS);
    return ScheduleResult.of(
        new Schedule(
            times.foils, 1, Removal.WHILE_PLACING, search.best, Times.minutes(search.low)));
  }
}
