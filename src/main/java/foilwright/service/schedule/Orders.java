package foilwright.service.schedule;

import foilwright.service.schedule.OrderSearch.Aim;
import foilwright.service.schedule.OrderSearch.Item;
import foilwright.service.schedule.OrderSearch.Reached;
import foilwright.service.schedule.OrderSearch.Result;
import foilwright.service.schedule.OrderSearch.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * The search through working orders.
 *
 * <p>Where there are few orders, every one is tried. Otherwise orders are improved by moving one
 * row, exchanging two, or moving several that follow each other, until nothing helps, again and
 * again from the best with a few rows moved at random.
 */
final class Orders {
  private static final int EVERY_ORDER = 20_000;

  private final List<List<Row>> chains;
  private final List<Aim> aims;
  private final int limit;
  private final Item[] items;
  private final Times times;
  private final int[] places;
  private final int[] rowsBefore;
  private final int[] rowStart;
  private final int rows;
  private final long[] bounds;
  private final long[] best;
  private final long[] value;
  private final long[] in;
  private final int[] next;
  private final int[] expanded;
  private int[] bestTokens;
  private int tried;

  Orders(List<List<Row>> chains, List<Aim> aims, int limit) {
    this.chains = chains.stream().map(List::copyOf).toList();
    this.aims = List.copyOf(aims);
    this.limit = limit;
    List<Item> all = new ArrayList<>();
    List<Integer> starts = new ArrayList<>();
    rowsBefore = new int[chains.size() + 1];
    for (int c = 0; c < chains.size(); c++) {
      rowsBefore[c + 1] = rowsBefore[c] + chains.get(c).size();
      for (Row row : chains.get(c)) {
        starts.add(all.size());
        all.addAll(row.items());
      }
    }
    if (all.isEmpty() || aims.isEmpty()) {
      throw new IllegalArgumentException("an order needs at least one foil and one aim");
    }
    starts.add(all.size());
    rowStart = starts.stream().mapToInt(i -> i).toArray();
    rows = rowStart.length - 1;
    items = all.toArray(Item[]::new);
    times = new Times(all.stream().map(Item::foil).toList());
    List<String> names = all.stream().map(Item::place).distinct().toList();
    places = all.stream().mapToInt(item -> names.indexOf(item.place())).toArray();
    bounds = new long[aims.size()];
    best = new long[aims.size()];
    value = new long[aims.size()];
    in = new long[items.length];
    next = new int[chains.size()];
    expanded = new int[items.length];
    Arrays.fill(best, Long.MAX_VALUE);
    for (int a = 0; a < bounds.length; a++) {
      bounds[a] = bound(aims.get(a));
    }
  }

  Result search(long seed) {
    int[] given = given();
    evaluate(given);
    long[] before = value.clone();
    boolean every = orders() <= EVERY_ORDER;
    if (every) {
      everyOrder(new int[rows], new int[chains.size()], 0);
    } else {
      improve(given, new SplittableRandom(seed));
    }
    return result(before, every);
  }

  private Result result(long[] before, boolean every) {
    List<Item> order = new ArrayList<>();
    expand(bestTokens);
    for (int item : expanded) {
      order.add(items[item]);
    }
    List<Reached> reached = new ArrayList<>();
    for (int a = 0; a < best.length; a++) {
      long bound = every && a == 0 ? best[0] : bounds[a];
      Aim aim = aims.get(a);
      reached.add(
          new Reached(aim, figure(aim, before[a]), figure(aim, best[a]), figure(aim, bound)));
    }
    return new Result(order, reached, every || Arrays.equals(best, bounds), tried);
  }

  private static double figure(Aim aim, long value) {
    return aim == Aim.LARGEST_EXCESS ? Times.minutes(value).toMinutes() : value;
  }

  private int[] given() {
    int[] tokens = new int[rows];
    for (int c = 0; c < chains.size(); c++) {
      Arrays.fill(tokens, rowsBefore[c], rowsBefore[c + 1], c);
    }
    return tokens;
  }

  /** How many orders there are, or a little more than are ever tried. */
  private double orders() {
    double orders = 1;
    int before = 0;
    for (List<Row> chain : chains) {
      for (int row = 1; row <= chain.size(); row++) {
        orders = orders * ++before / row;
      }
    }
    return orders;
  }

  private void everyOrder(int[] tokens, int[] used, int at) {
    if (at == rows) {
      keepIfBetter(tokens);
      return;
    }
    for (int c = 0; c < used.length; c++) {
      if (used[c] < chains.get(c).size()) {
        used[c]++;
        tokens[at] = c;
        everyOrder(tokens, used, at + 1);
        used[c]--;
      }
    }
  }

  private boolean done() {
    return tried >= limit || Arrays.equals(best, bounds);
  }

  private void improve(int[] given, SplittableRandom random) {
    keepIfBetter(given);
    int[] tokens = given.clone();
    while (!done()) {
      descend(tokens);
      System.arraycopy(bestTokens, 0, tokens, 0, rows);
      for (int kick = 2 + random.nextInt(4); kick > 0; kick--) {
        int from = random.nextInt(rows);
        int length = 1 + random.nextInt(Math.max(1, rows / 4));
        move(tokens, from, Math.min(length, rows - from), random.nextInt(rows));
      }
    }
  }

  /** Takes every move that helps until none does. */
  private void descend(int[] tokens) {
    evaluate(tokens);
    long[] here = value.clone();
    int[] trial = new int[rows];
    boolean better = true;
    while (better && !done()) {
      better = false;
      for (int from = 0; from < rows && !done(); from++) {
        for (int to = 0; to < rows && !done(); to++) {
          for (int length = 0; length <= 8 && from + length <= rows; length++) {
            System.arraycopy(tokens, 0, trial, 0, rows);
            if (length == 0) {
              trial[from] = tokens[to];
              trial[to] = tokens[from];
            } else {
              move(trial, from, length, to);
            }
            if (Arrays.equals(trial, tokens)) {
              continue;
            }
            evaluate(trial);
            if (less(value, here)) {
              System.arraycopy(value, 0, here, 0, here.length);
              System.arraycopy(trial, 0, tokens, 0, rows);
              better = true;
              if (less(here, best)) {
                System.arraycopy(here, 0, best, 0, here.length);
                bestTokens = tokens.clone();
              }
            }
          }
        }
      }
    }
  }

  /** Takes rows out and puts them in again so that the first is as near to {@code to} as can be. */
  private static void move(int[] tokens, int from, int length, int to) {
    int[] block = Arrays.copyOfRange(tokens, from, from + length);
    int at = Math.min(to, tokens.length - length);
    if (at < from) {
      System.arraycopy(tokens, at, tokens, at + length, from - at);
    } else {
      System.arraycopy(tokens, from + length, tokens, from, at - from);
    }
    System.arraycopy(block, 0, tokens, at, length);
  }

  private void keepIfBetter(int[] tokens) {
    evaluate(tokens);
    if (less(value, best)) {
      System.arraycopy(value, 0, best, 0, best.length);
      bestTokens = tokens.clone();
    }
  }

  private static boolean less(long[] a, long[] b) {
    for (int i = 0; i < a.length; i++) {
      if (a[i] != b[i]) {
        return a[i] < b[i];
      }
    }
    return false;
  }

  private void expand(int[] tokens) {
    System.arraycopy(rowsBefore, 0, next, 0, next.length);
    int at = 0;
    for (int chain : tokens) {
      int row = next[chain]++;
      for (int item = rowStart[row]; item < rowStart[row + 1]; item++) {
        expanded[at++] = item;
      }
    }
  }

  private void evaluate(int[] tokens) {
    tried++;
    expand(tokens);
    for (int a = 0; a < value.length; a++) {
      value[a] =
          switch (aims.get(a)) {
            case LARGEST_EXCESS -> largestExcess();
            case WALKS -> walks();
            case HAIRLINE_EARLY -> hairlineEarly(0, expanded.length);
          };
    }
  }

  private long largestExcess() {
    long now = 0;
    for (int item : expanded) {
      now += times.block[item];
      in[item] = now;
    }
    long excess = 0;
    for (int item : expanded) {
      now = Math.max(now + times.removal[item], in[item] + times.least[item]);
      excess = Math.max(excess, now - in[item] - times.most[item]);
    }
    return excess;
  }

  private long walks() {
    long walks = 0;
    for (int i = 1; i < expanded.length; i++) {
      walks += places[expanded[i]] != places[expanded[i - 1]] ? 1 : 0;
    }
    return walks;
  }

  private long hairlineEarly(int from, int to) {
    long hairline = 0;
    long pairs = 0;
    for (int i = from; i < to; i++) {
      if (items[expanded[i]].hairline()) {
        hairline++;
      } else {
        pairs += hairline;
      }
    }
    return pairs;
  }

  /**
   * What no order can be below. Excess: whichever foil is first waits for all other blocks and its
   * own removal. Walks: every place must be reached. Hairline: pairs inside a chain stay.
   */
  private long bound(Aim aim) {
    return switch (aim) {
      case LARGEST_EXCESS -> {
        long least = Long.MAX_VALUE;
        for (int c = 0; c < chains.size(); c++) {
          if (rowsBefore[c] < rowsBefore[c + 1]) {
            int first = rowStart[rowsBefore[c]];
            long others = times.blocks[times.n - 1] - times.block[first];
            least = Math.min(least, others + times.removal[first] - times.most[first]);
          }
        }
        yield Math.max(0, least);
      }
      case WALKS -> Arrays.stream(places).distinct().count() - 1;
      case HAIRLINE_EARLY -> {
        expand(given());
        long pairs = 0;
        for (int c = 0; c < chains.size(); c++) {
          pairs += hairlineEarly(rowStart[rowsBefore[c]], rowStart[rowsBefore[c + 1]]);
        }
        yield pairs;
      }
    };
  }
}
