package foilwright.service.mix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.MixRatio;
import foilwright.service.MixSettings;
import foilwright.service.ProductEntry;
import foilwright.service.ProductKind;
import foilwright.service.TakeUp;
import foilwright.service.TimeWindow;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class BowlsIdentityTest {
  private static final long SEED = 20260519;
  private static final MixSettings USUAL = settings(1, 12, 30);

  private static MixSettings settings(double step, double waste, int foils) {
    return new MixSettings(Mass.ofGrams(step), Share.ofPercent(waste), foils, List.of());
  }

  private static ProductEntry product(double productParts, double developerParts, double lifeMin) {
    return new ProductEntry(
        "powder lightener, entry 1",
        ProductKind.LIGHTENER,
        new MixRatio(productParts, developerParts),
        Share.ofPercent(6),
        new TimeWindow(Minutes.ofMinutes(20), Minutes.ofMinutes(45)),
        Minutes.ofMinutes(lifeMin),
        TakeUp.USUAL,
        true);
  }

  private static FoilMix foil(int number, String slot, double grams, double begin, double end) {
    return new FoilMix(
        number, slot, Mass.ofGrams(grams), Minutes.ofMinutes(begin), Minutes.ofMinutes(end));
  }

  private static List<FoilMix> evenly(int count, double grams, double eachMin) {
    List<FoilMix> foils = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      foils.add(foil(i + 1, "A", grams, i * eachMin, (i + 1) * eachMin));
    }
    return foils;
  }

  /** 30 foils of 1.2 min and a bowl that stands 30 min: 25 foils, then 5, the second at foil 26. */
  @Test
  void aFreshBowlWhenTheLastHasStoodItsTime() {
    Bowls bowls = Bowls.of(evenly(30, 2, 1.2), Map.of("A", product(1, 2, 30)), USUAL);
    assertEquals(List.of(25, 5), bowls.bowls().stream().map(b -> b.foils().size()).toList());
    assertEquals(Set.of(1, 26), bowls.firstFoils());
    Bowl second = bowls.bowls().get(1);
    assertEquals("A2", second.name());
    assertEquals(30, second.mixedAt().toMinutes(), 1e-9);
    assertEquals(60, second.goodUntil().toMinutes(), 1e-9);
    assertEquals(36, second.neededUntil().toMinutes(), 1e-9);
    assertEquals(List.of(), bowls.problems());
  }

  /** 25 foils of 2 g are 50 g, with 12 % 56 g: 18.67 g of powder rounded to 19, and 38 g. */
  @Test
  void weighsInTheRatioToTheStep() {
    Bowl bowl = Bowls.of(evenly(25, 2, 1), Map.of("A", product(1, 2, 30)), USUAL).bowls().get(0);
    assertEquals(50, bowl.onFoils().toGrams(), 1e-9);
    assertEquals(19, bowl.product().toGrams(), 1e-9);
    assertEquals(38, bowl.developer().toGrams(), 1e-9);
    Bowl fine =
        Bowls.of(evenly(25, 2, 1), Map.of("A", product(1, 1.5, 30)), settings(0.5, 10, 30))
            .bowls()
            .get(0);
    assertEquals(22, fine.product().toGrams(), 1e-9);
    assertEquals(33, fine.developer().toGrams(), 1e-9);
  }

  @Test
  void noMoreFoilsThanABowlMayServe() {
    Bowls bowls = Bowls.of(evenly(31, 1, 0.5), Map.of("A", product(1, 2, 60)), settings(1, 12, 10));
    assertEquals(
        List.of(10, 10, 10, 1), bowls.bowls().stream().map(b -> b.foils().size()).toList());
  }

  @Test
  void slotsHaveTheirOwnBowls() {
    List<FoilMix> foils = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      foils.add(foil(i + 1, i % 3 == 2 ? "B" : i == 7 ? "D" : "A", 2, i, i + 1));
    }
    Bowls bowls = Bowls.of(foils, Map.of("A", product(1, 2, 40), "B", product(1, 1.5, 5)), USUAL);
    assertEquals(List.of("A1", "B1", "B2"), bowls.bowls().stream().map(Bowl::name).toList());
    assertEquals(List.of(3, 6), bowls.of("B").get(0).foils());
    assertEquals(List.of(1, 2, 4, 5, 7, 10, 11), bowls.of("A").get(0).foils());
  }

  @Test
  void aFoilThatOutlastsItsBowlIsSaid() {
    Bowls bowls =
        Bowls.of(
            List.of(foil(1, "A", 3, 0, 12), foil(2, "A", 3, 12, 13)),
            Map.of("A", product(1, 2, 10)),
            USUAL);
    assertEquals("bowl-stands-too-long", bowls.problems().get(0).code());
    assertTrue(bowls.problems().get(0).message().contains("foil 1 alone takes 12 min"));
    assertEquals(2, bowls.bowls().size());
  }

  /** By chance: no bowl too old or too full, every foil once, and no fewer bowls would do. */
  @Test
  void asFewBowlsAsAnyChoice() {
    System.out.println("seed " + SEED);
    Random random = new Random(SEED);
    for (int round = 0; round < 300; round++) {
      List<FoilMix> foils = new ArrayList<>();
      double now = 0;
      int count = 1 + random.nextInt(14);
      for (int i = 0; i < count; i++) {
        now += random.nextInt(5) == 0 ? random.nextInt(15) : 0;
        double end = now + 0.5 + 3 * random.nextDouble();
        foils.add(foil(i + 1, "A", random.nextDouble() * 5, now, end));
        now = end;
      }
      double life = 5 + random.nextInt(20);
      int most = 2 + random.nextInt(6);
      List<Bowl> bowls =
          Bowls.of(foils, Map.of("A", product(1, 2, life)), settings(1, 12, most)).bowls();
      List<Integer> served = new ArrayList<>();
      for (Bowl bowl : bowls) {
        served.addAll(bowl.foils());
        assertTrue(bowl.foils().size() <= most);
        assertTrue(bowl.neededUntil().compareTo(bowl.goodUntil()) <= 0);
        assertTrue(
            bowl.mixed().toGrams() >= bowl.onFoils().toGrams() * 1.12 - 1e-9,
            "less than the foils take and the waste");
      }
      assertEquals(foils.stream().map(FoilMix::number).toList(), served);
      assertEquals(fewest(foils, life, most), bowls.size(), "seed " + SEED + " round " + round);
    }
  }

  /** Fewest bowls by trying every way of cutting the row of foils. */
  private static int fewest(List<FoilMix> foils, double lifeMin, int most) {
    int[] best = new int[foils.size() + 1];
    for (int to = 1; to <= foils.size(); to++) {
      best[to] = Integer.MAX_VALUE;
      for (int from = Math.max(0, to - most); from < to; from++) {
        double stood = foils.get(to - 1).end().minus(foils.get(from).begin()).toMinutes();
        if (stood <= lifeMin + 1e-9) {
          best[to] = Math.min(best[to], best[from] + 1);
        }
      }
    }
    return best[foils.size()];
  }

  /**
   * Mixing takes 3 min out of the schedule: 60 foils of 1 min and a life of 20 min. The bowls that
   * come out are those of the very times that they cause.
   */
  @Test
  void bowlsSettleWhereTheirMixingTimePutsThem() {
    Function<Set<Integer>, List<FoilMix>> timed =
        at -> {
          List<FoilMix> foils = new ArrayList<>();
          double now = 0;
          for (int i = 1; i <= 60; i++) {
            now += (at.contains(i) ? 3 : 0) + (i % 7 == 0 ? 2.5 : 0);
            foils.add(foil(i, i % 2 == 0 ? "A" : "B", 2, now, now + 1));
            now += 1;
          }
          return foils;
        };
    Map<String, ProductEntry> products = Map.of("A", product(1, 2, 20), "B", product(1, 2, 17));
    Set<Integer> at = Set.of(1);
    Bowls settled = Bowls.of(timed.apply(at), products, USUAL, at);
    for (Optional<Set<Integer>> next = settled.next(at); next.isPresent(); ) {
      at = next.get();
      settled = Bowls.of(timed.apply(at), products, USUAL, at);
      next = settled.next(at);
    }
    assertEquals(at, settled.firstFoils());
    for (Bowl bowl : settled.bowls()) {
      assertTrue(bowl.neededUntil().compareTo(bowl.goodUntil()) <= 0, bowl.name());
    }
    assertTrue(settled.bowls().size() > 7, "only " + settled.bowls().size() + " bowls");
  }
}
