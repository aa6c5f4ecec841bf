package foilwright.service.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Two or more pairs of hands: any pair does any action, placings begin in the given order.
 *
 * <p>A schedule is a sequence of actions by their start (a block counts by the start of its
 * placing) and the pair of hands for each. For a known sequence and known hands all conditions are
 * of the form <i>this at least so long after that</i>, so the earliest times are longest paths, as
 * for one pair. The search goes depth first through sequences and hands, most promising first, and
 * leaves a branch whose lower bound reaches the best schedule found: what blocks, waits for the
 * least exposure and removals shared among all hands still ask. Every schedule has a sequence, so a
 * search that is not broken off at its limit finds the least end or proves that there is none. What
 * was found when it is broken off carries the lower bound of the start.
 */
final class ManyHands {
  private final Times times;
  private final int n;
  private final int hands;
  private final Removal removal;
  private final long allowance;
  private final long[] least;

  private final int[] sequence;
  private final int[] byHands;
  private final long[] start;
  private final long[] end;
  private int depth;
  private int placed;
  private final boolean[] out;
  private long steps;
  private long stepLimit;
  private boolean brokenOff;
  private long patience;
  private long bound;
  private long best = Long.MAX_VALUE;
  private List<Action> bestActions;
  private long[] bestIn;
  private long[] bestOut;

  /** Steps for few foils, whose search is meant to end, and for many. */
  private static final long STEPS_FEW = 200_000;

  private static final long STEPS_MANY = 20_000;

  /** Of one of the many waves that many foils can be parted into. */
  private static final long STEPS_WAVE = 60;

  /** Of a mere trial with many foils. */
  private static final long STEPS_TRIAL = 300;

  /** Where only the hands are open. */
  private static final long STEPS_FIXED_ORDER = 2_000;

  private static final int FEW = 20;

  private ManyHands(Times times, int hands, Removal removal, long allowance) {
    this.times = times;
    n = times.n;
    this.hands = hands;
    this.removal = removal;
    this.allowance = allowance;
    least = new long[n];
    for (int i = 0; i < n; i++) {
      least[i] = together() ? times.least[i] : Math.max(times.least[i], times.removal[i]);
    }
    sequence = new int[2 * n];
    byHands = new int[2 * n];
    start = new long[2 * n];
    end = new long[2 * n];
    out = new boolean[n];
  }

  static ScheduleResult schedule(Times times, int hands, Removal removal) {
    if (removal == Removal.IN_WAVES) {
      return waves(times, hands);
    }
    ManyHands search = of(times, hands, removal, 0, steps(times.n, removal));
    if (search.bestActions == null && removal == Removal.WHILE_PLACING) {
      ScheduleResult waves = waves(times, hands);
      return waves.schedule().isEmpty()
          ? waves
          : ScheduleResult.of(
              new Schedule(
                  times.foils,
                  hands,
                  removal,
                  waves.schedule().get().actions(),
                  Times.minutes(search.bound)));
    }
    return search.bestActions != null
        ? ScheduleResult.of(
            new Schedule(
                times.foils,
                hands,
                removal,
                search.bestActions,
                Times.minutes(search.brokenOff ? search.bound : search.best)))
        : leastExcess(times, hands, removal, search);
  }

  /** Whether a schedule is found soon. */
  static boolean possible(Times times, int hands, Removal removal) {
    if (removal == Removal.IN_WAVES || removal == Removal.WHILE_PLACING) {
      return schedule(times, hands, removal).schedule().isPresent();
    }
    long steps = times.n <= FEW ? STEPS_FEW : STEPS_TRIAL;
    return of(times, hands, removal, 0, steps).bestActions != null;
  }

  private static long steps(int n, Removal removal) {
    if (removal != Removal.WHILE_PLACING) {
      return STEPS_FIXED_ORDER;
    }
    return n <= FEW ? STEPS_FEW : STEPS_MANY;
  }

  /**
   * The finding with the least excess over a window; a schedule when one without any turns up that
   * the search broken off had missed.
   */
  private static ScheduleResult leastExcess(
      Times times, int hands, Removal removal, ManyHands search) {
    long low = 1;
    long high = times.horizon();
    long steps = times.n <= FEW ? 2000 : STEPS_TRIAL;
    long tolerance = times.n <= FEW ? 0 : 1000;
    ManyHands widest = of(times, hands, removal, high, steps);
    while (high - low > tolerance) {
      long middle = low + (high - low) / 2;
      ManyHands allowed = of(times, hands, removal, middle, steps);
      if (allowed.bestActions == null) {
        low = middle + 1;
      } else {
        high = middle;
        widest = allowed;
      }
    }
    if (Excess.none(times, widest.bestIn, widest.bestOut)) {
      return ScheduleResult.of(
          new Schedule(
              times.foils, hands, removal, widest.bestActions, Times.minutes(search.bound)));
    }
    return ScheduleResult.of(
        Excess.of(times, widest.bestIn, widest.bestOut, high, !search.brokenOff));
  }

  /** Wave by wave; a wave whose search is broken off counts with the best that was found. */
  private static ScheduleResult waves(Times times, int hands) {
    boolean[] open = new boolean[1];
    List<Integer> parts =
        Waves.parts(
            times.n,
            (from, to) -> {
              ManyHands wave = wave(times, from, to, hands);
              open[0] |= wave.brokenOff;
              return wave.bestActions == null ? -1 : wave.best;
            });
    if (parts.isEmpty()) {
      return ScheduleResult.of(Excess.ofRemovalAlone(times).orElseThrow());
    }
    List<Action> actions = new ArrayList<>();
    long now = 0;
    long most = 0;
    for (int part = 0; part + 1 < parts.size(); part++) {
      int from = parts.get(part);
      ManyHands wave = wave(times, from, parts.get(part + 1), hands);
      for (Action action : wave.bestActions) {
        actions.add(
            new Action(
                action.work(),
                action.foil() + from,
                action.hands(),
                action.start().plus(Times.minutes(now)),
                action.end().plus(Times.minutes(now))));
      }
      now += wave.best;
      most = Math.max(most, wave.bound);
    }
    long bound = open[0] ? of(times, hands, Removal.WHILE_PLACING, 0, 0).bound : now;
    return ScheduleResult.of(
        new Schedule(
            times.foils,
            hands,
            Removal.IN_WAVES,
            actions,
            Times.minutes(Math.min(now, Math.max(bound, most)))));
  }

  private static ManyHands wave(Times times, int from, int to, int hands) {
    long steps = times.n <= FEW ? 500 : STEPS_WAVE;
    return of(new Times(times.foils.subList(from, to)), hands, Removal.IN_PLACING_ORDER, 0, steps);
  }

  private static ManyHands of(
      Times times, int hands, Removal removal, long allowance, long stepLimit) {
    ManyHands search = new ManyHands(times, hands, removal, allowance);
    search.bound = search.lowerBound();
    if (stepLimit == 0) {
      search.brokenOff = true;
      return search;
    }
    // Straight dives that remove early or late, then the search itself.
    long[] patiences = {Long.MAX_VALUE, 900_000, 600_000, 300_000, 120_000, 0};
    int dives = removal == Removal.WHILE_PLACING ? patiences.length : 1;
    for (int dive = 0; dive <= dives && search.best > search.bound; dive++) {
      search.brokenOff = false;
      search.steps = 0;
      search.stepLimit = dive < dives ? 8L * times.n : stepLimit;
      search.patience = patiences[dive % dives];
      search.search();
      if (!search.brokenOff) {
        break;
      }
    }
    search.brokenOff &= search.best > search.bound;
    return search;
  }

  private boolean together() {
    return removal == Removal.TOGETHER;
  }

  private void search() {
    if (lowerBound() >= best) {
      return;
    }
    if (depth == (together() ? n : 2 * n)) {
      finish();
      return;
    }
    int[] order = choices();
    long[] starts = start.clone();
    long[] ends = end.clone();
    for (int event : order) {
      int[] which = handsByEnd();
      boolean idleTried = false;
      for (int h : which) {
        boolean idle = lastEnd(h) == 0;
        if (idle && idleTried) {
          continue;
        }
        idleTried |= idle;
        if (brokenOff || best <= bound) {
          return;
        }
        if (steps++ >= stepLimit) {
          brokenOff = true;
          return;
        }
        push(event, h);
        if (settle(depth - 1)) {
          search();
        }
        pop(event);
        System.arraycopy(starts, 0, start, 0, 2 * n);
        System.arraycopy(ends, 0, end, 0, 2 * n);
      }
    }
  }

  private void push(int event, int h) {
    sequence[depth] = event;
    byHands[depth] = h;
    start[event] = 0;
    end[event] = 0;
    depth++;
    if (event < n) {
      placed++;
    } else {
      out[event - n] = true;
    }
  }

  private void pop(int event) {
    depth--;
    if (event < n) {
      placed--;
    } else {
      out[event - n] = false;
    }
  }

  /**
   * Earliest times of the sequence so far; false when a foil cannot be kept inside its window. Only
   * a foil that is out reaches back, and a longest path takes each of these ways once: more sweeps
   * than foils that are out can only be followed by ever more.
   */
  private boolean settle(int from) {
    int first = from;
    int removed = depth - placed;
    for (int sweep = 0; sweep <= removed + 1; sweep++) {
      sweep(first);
      first = 0;
      boolean late = false;
      for (int e = 0; e < depth; e++) {
        int event = sequence[e];
        if (event >= n) {
          int foil = event - n;
          long earliest = end[event] - times.most[foil] - allowance;
          if (earliest > end[foil]) {
            start[foil] += earliest - end[foil];
            end[foil] = earliest;
            late = true;
          }
        }
      }
      if (!late) {
        return true;
      }
    }
    return false;
  }

  private void sweep(int from) {
    long[] free = new long[hands];
    long last = 0;
    long allIn = 0;
    for (int e = 0; e < depth; e++) {
      int event = sequence[e];
      int h = byHands[e];
      if (e >= from) {
        long begin = Math.max(start[event], last);
        if (event < n) {
          begin = Math.max(begin, free[h] + times.before[event]);
          start[event] = begin;
          end[event] = begin + times.block[event] - times.before[event];
        } else {
          int foil = event - n;
          begin = Math.max(begin, Math.max(free[h], end[foil] + least[foil] - times.removal[foil]));
          begin = removal == Removal.IN_PLACING_ORDER ? Math.max(begin, allIn) : begin;
          start[event] = begin;
          end[event] = begin + times.removal[foil];
        }
      }
      last = start[event];
      free[h] = end[event];
      allIn = event < n ? Math.max(allIn, end[event]) : allIn;
    }
  }

  private long lastEnd(int h) {
    for (int e = depth - 1; e >= 0; e--) {
      if (byHands[e] == h) {
        return end[sequence[e]];
      }
    }
    return 0;
  }

  private int[] handsByEnd() {
    long[] ends = new long[hands];
    int[] which = new int[hands];
    for (int h = 0; h < hands; h++) {
      ends[h] = lastEnd(h);
      int at = h;
      while (at > 0 && ends[which[at - 1]] > ends[h]) {
        which[at] = which[at - 1];
        at--;
      }
      which[at] = h;
    }
    return which;
  }

  private int[] choices() {
    int count = 0;
    int[] order = new int[n + 1];
    boolean removing =
        removal == Removal.WHILE_PLACING || (removal == Removal.IN_PLACING_ORDER && placed == n);
    long now = lastEnd(handsByEnd()[0]);
    for (int foil = 0; foil < placed && removing; foil++) {
      if (out[foil] || overtaken(foil)) {
        continue;
      }
      int at = count++;
      while (at > 0
          && end[foil] + times.most[foil]
              < end[order[at - 1] - n] + times.most[order[at - 1] - n]) {
        order[at] = order[at - 1];
        at--;
      }
      order[at] = n + foil;
      if (removal == Removal.IN_PLACING_ORDER) {
        break;
      }
    }
    if (placed < n) {
      int at = count++;
      while (at > 0 && placingFirst(order[at - 1] - n, now)) {
        order[at] = order[at - 1];
        at--;
      }
      order[at] = placed;
    }
    return Arrays.copyOf(order, count);
  }

  private boolean placingFirst(int foil, long now) {
    boolean ripe = end[foil] + least[foil] <= now + times.removal[foil];
    return !ripe || end[foil] + times.most[foil] - now > patience;
  }

  /** Whether an earlier foil that is still in may always come out before this one. */
  private boolean overtaken(int foil) {
    for (int other = 0; other < foil; other++) {
      if (!out[other]
          && times.removal[other] == times.removal[foil]
          && least[other] <= least[foil]
          && times.most[other] <= times.most[foil]) {
        return true;
      }
    }
    return false;
  }

  private long lowerBound() {
    long[] free = new long[hands];
    for (int h = 0; h < hands; h++) {
      free[h] = lastEnd(h);
    }
    long last = depth == 0 ? 0 : start[sequence[depth - 1]];
    long work = 0;
    for (long f : free) {
      work += f;
    }
    long[] release = new long[n];
    long bound = 0;
    int left = 0;
    long least0 = Long.MAX_VALUE;
    long blocks = work;
    // Placings alone, begun in order by whoever is free first, and nothing before them.
    for (int i = 0; i < n; i++) {
      if (out[i]) {
        bound = Math.max(bound, end[n + i]);
        continue;
      }
      long in = i < placed ? end[i] : 0;
      if (i >= placed) {
        int h = earliest(free);
        long begin = Math.max(last, free[h]);
        in = begin + times.block[i] - times.before[i];
        free[h] = in;
        last = begin;
        blocks += times.block[i];
        least0 = Math.min(least0, least[i]);
      }
      bound = Math.max(bound, in + least[i]);
      release[left++] = in + least[i] - (together() ? 0 : times.removal[i]);
      work += together() ? 0 : times.removal[i];
      work += i >= placed ? times.block[i] : 0;
    }
    if (placed < n) {
      bound = Math.max(bound, ceiling(blocks) + least0);
    }
    bound = Math.max(bound, together() ? 0 : ceiling(work));
    if (!together() && left > 0) {
      bound = Math.max(bound, removals(release, left));
    }
    return bound;
  }

  /** All removals that begin late must fit behind each other among all hands. */
  private long removals(long[] release, int left) {
    long shortest = Long.MAX_VALUE;
    for (int i = 0; i < n; i++) {
      shortest = out[i] ? shortest : Math.min(shortest, times.removal[i]);
    }
    Arrays.sort(release, 0, left);
    long bound = 0;
    for (int i = 0; i < left; i++) {
      bound = Math.max(bound, release[i] + ceiling(shortest * (left - i)));
    }
    return bound;
  }

  private int earliest(long[] free) {
    int earliest = 0;
    for (int h = 1; h < hands; h++) {
      earliest = free[h] < free[earliest] ? h : earliest;
    }
    return earliest;
  }

  private long ceiling(long work) {
    return (work + hands - 1) / hands;
  }

  private void finish() {
    if (together()) {
      finishTogether();
      return;
    }
    long last = 0;
    for (int i = 0; i < n; i++) {
      last = Math.max(last, end[n + i]);
    }
    if (last < best) {
      keep(last);
    }
  }

  /** All out at the first moment at which every foil has had its least; later in where too long. */
  private void finishTogether() {
    for (int sweep = 0; sweep <= n + 1; sweep++) {
      long moment = 0;
      for (int i = 0; i < n; i++) {
        moment = Math.max(moment, end[i] + least[i]);
      }
      boolean late = false;
      for (int i = 0; i < n; i++) {
        long earliest = moment - times.most[i] - allowance;
        if (earliest > end[i]) {
          start[i] += earliest - end[i];
          end[i] = earliest;
          late = true;
        }
      }
      if (!late) {
        if (moment < best) {
          Arrays.fill(start, n, 2 * n, moment);
          Arrays.fill(end, n, 2 * n, moment);
          keep(moment);
        }
        return;
      }
      sweep(0);
    }
  }

  private void keep(long last) {
    best = last;
    bestIn = Arrays.copyOf(end, n);
    bestOut = Arrays.copyOfRange(end, n, 2 * n);
    bestActions = new ArrayList<>();
    for (int e = 0; e < depth; e++) {
      int event = sequence[e];
      if (event < n) {
        times.addPlacing(bestActions, event, byHands[e], end[event]);
      } else {
        times.addRemoval(bestActions, event - n, byHands[e], end[event], times.removal[event - n]);
      }
    }
    for (int i = 0; i < n && together(); i++) {
      times.addRemoval(bestActions, i, 0, last, 0);
    }
  }
}
