package foilwright.service.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.schedule.OrderSearch.Aim;
import foilwright.service.schedule.OrderSearch.Item;
import foilwright.service.schedule.OrderSearch.Reached;
import foilwright.service.schedule.OrderSearch.Result;
import foilwright.service.schedule.OrderSearch.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OrderSearchTest {
  private static final List<Aim> AIMS = List.of(Aim.LARGEST_EXCESS, Aim.WALKS, Aim.HAIRLINE_EARLY);

  static List<List<Row>> chains(Random random, int count, int most) {
    List<List<Row>> chains = new ArrayList<>();
    int number = 0;
    for (int c = 0; c < count; c++) {
      List<Row> chain = new ArrayList<>();
      for (int r = 1 + random.nextInt(most); r > 0; r--) {
        List<Item> row = new ArrayList<>();
        for (int i = 1 + random.nextInt(2); i > 0; i--) {
          double[] window = random.nextInt(3) == 0 ? new double[] {5, 20} : new double[] {10, 30};
          double before = chain.isEmpty() && row.isEmpty() ? 2 : 0;
          row.add(
              new Item(
                  Foils.foil(++number, "A", before, 1 + random.nextInt(5), 0.5, window),
                  List.of("left", "right", "back").get(random.nextInt(3)),
                  random.nextInt(4) == 0));
        }
        chain.add(new Row(row));
      }
      chains.add(chain);
    }
    return chains;
  }

  /** Every permutation of rows that keeps the chains, judged by plain sums of its own. */
  private static double[] best(List<List<Row>> chains, List<Aim> aims) {
    double[][] best = new double[1][];
    extend(chains, new int[chains.size()], new ArrayList<>(), aims, best);
    return best[0];
  }

  private static void extend(
      List<List<Row>> chains, int[] used, List<Item> order, List<Aim> aims, double[][] best) {
    boolean complete = true;
    for (int c = 0; c < chains.size(); c++) {
      if (used[c] < chains.get(c).size()) {
        complete = false;
        List<Item> row = chains.get(c).get(used[c]++).items();
        order.addAll(row);
        extend(chains, used, order, aims, best);
        order.subList(order.size() - row.size(), order.size()).clear();
        used[c]--;
      }
    }
    if (complete) {
      double[] value = aims.stream().mapToDouble(aim -> value(order, aim)).toArray();
      if (best[0] == null || Arrays.compare(value, best[0]) < 0) {
        best[0] = value;
      }
    }
  }

  private static double value(List<Item> order, Aim aim) {
    double value = 0;
    if (aim == Aim.LARGEST_EXCESS) {
      double now = 0;
      double[] in = new double[order.size()];
      for (int i = 0; i < in.length; i++) {
        FoilTask foil = order.get(i).foil();
        now += foil.before().toMinutes() + foil.placing().toMinutes();
        in[i] = now;
      }
      for (int i = 0; i < in.length; i++) {
        FoilTask foil = order.get(i).foil();
        now = Math.max(now + foil.removal().toMinutes(), in[i] + foil.window().least().toMinutes());
        value = Math.max(value, now - in[i] - foil.window().most().toMinutes());
      }
      return Math.round(value * 1000) / 1000.0;
    }
    for (int i = 0; i < order.size(); i++) {
      if (aim == Aim.WALKS) {
        value += i > 0 && !order.get(i).place().equals(order.get(i - 1).place()) ? 1 : 0;
      } else {
        for (int j = i + 1; j < order.size(); j++) {
          value += order.get(i).hairline() && !order.get(j).hairline() ? 1 : 0;
        }
      }
    }
    return value;
  }

  private static double[] values(Result result) {
    return result.reached().stream()
        .mapToDouble(Reached::value)
        .map(v -> Math.round(v * 1000) / 1000.0)
        .toArray();
  }

  @Test
  void fewOrdersAreAllTried() {
    for (int seed = 0; seed < 60; seed++) {
      Random random = new Random(seed);
      List<List<Row>> chains = chains(random, 1 + random.nextInt(4), 3);
      List<Aim> aims = new ArrayList<>(AIMS);
      Collections.shuffle(aims, random);
      Result result = OrderSearch.search(chains, aims, seed, 1000);
      assertTrue(result.proven());
      assertEquals(
          Arrays.toString(best(chains, aims)), Arrays.toString(values(result)), "seed " + seed);
      check(chains, result);
    }
  }

  @Test
  void manyOrdersReachWhatEveryOrderReaches() {
    for (int seed = 0; seed < 3; seed++) {
      Random random = new Random(seed);
      List<List<Row>> chains = chains(random, 8, 1);
      Result result = OrderSearch.search(chains, AIMS, seed, 19_000);
      check(chains, result);
      assertEquals(
          Arrays.toString(best(chains, AIMS)), Arrays.toString(values(result)), "seed " + seed);
    }
  }

  @Test
  void theSameSeedGivesTheSameOrder() {
    List<List<Row>> chains = chains(new Random(5), 8, 6);
    Result one = OrderSearch.search(chains, AIMS, 7, 5_000);
    assertEquals(one, OrderSearch.search(chains, AIMS, 7, 5_000));
    check(chains, one);
  }

  /** Bounds hold, figures are those of the order, and rows and chains are kept. */
  private static void check(List<List<Row>> chains, Result result) {
    for (Reached reached : result.reached()) {
      assertTrue(reached.lowerBound() <= reached.value() + 1e-9, reached.words());
      assertEquals(value(result.order(), reached.aim()), reached.value(), 1e-3, reached.words());
    }
    List<Integer> order = result.order().stream().map(item -> item.foil().number()).toList();
    for (List<Row> chain : chains) {
      int last = -1;
      for (Row row : chain) {
        int at = order.indexOf(row.items().get(0).foil().number());
        assertTrue(at > last, "a chain's rows keep their order");
        for (Item item : row.items()) {
          assertEquals(at++, order.indexOf(item.foil().number()), "a row is kept together");
        }
        last = at - 1;
      }
    }
  }

  @Test
  void figuresAreToldInWords() {
    assertEquals(
        "walks round the chair: 5 instead of 9, at least 4",
        new Reached(Aim.WALKS, 9, 5, 4).words());
    assertEquals(
        "largest excess over a window, min: 0.0 instead of 3.2, at least 0.0",
        new Reached(Aim.LARGEST_EXCESS, 3.24, 0, 0).words());
  }
}
