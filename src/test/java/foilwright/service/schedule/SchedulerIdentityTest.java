package foilwright.service.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The scheduler against other ways to the same figures, and its results against the rules. */
class SchedulerIdentityTest {
  @Test
  void onePairWhilePlacingEqualsEverySequence() {
    int impossible = 0;
    for (int seed = 0; seed < 400; seed++) {
      Random random = new Random(seed);
      List<FoilTask> foils = Foils.few(random, 1 + random.nextInt(5));
      Optional<Schedule> schedule = Scheduler.schedule(foils, 1, Removal.WHILE_PLACING).schedule();
      long least = EveryOrder.leastEnd(foils);
      if (least == Long.MAX_VALUE) {
        impossible++;
        assertTrue(schedule.isEmpty(), "seed " + seed);
      } else {
        assertEquals(1000 * least, Times.millis(schedule.orElseThrow().end()), "seed " + seed);
        assertTrue(schedule.get().proven(), "seed " + seed);
        assertEquals(List.of(), ScheduleCheck.violations(schedule.get()), "seed " + seed);
      }
    }
    assertTrue(impossible > 10 && impossible < 200, impossible + " cases cannot be done");
  }

  @Test
  void fullHeadsKeepTheRulesEveryWay() {
    for (int seed = 0; seed < 10; seed++) {
      List<FoilTask> foils = Foils.many(new Random(seed), 30 + 8 * seed);
      double whilePlacing = 0;
      for (Removal removal : List.of(Removal.WHILE_PLACING, Removal.IN_WAVES)) {
        Schedule schedule = Scheduler.schedule(foils, 1, removal).schedule().orElseThrow();
        assertEquals(List.of(), ScheduleCheck.violations(schedule), "seed " + seed);
        assertTrue(schedule.end().toMinutes() >= whilePlacing, "seed " + seed);
        whilePlacing = schedule.end().toMinutes();
      }
    }
  }

  /** Where windows do not matter before the last foil is in, the bound of the last one is exact. */
  @Test
  void aWideWindowEndsWithTheLastFoil() {
    List<FoilTask> foils = Foils.alike(40, 1.3, 0.5, 20, 500);
    for (Removal removal :
        List.of(Removal.WHILE_PLACING, Removal.IN_PLACING_ORDER, Removal.TOGETHER)) {
      Schedule schedule = Scheduler.schedule(foils, 1, removal).schedule().orElseThrow();
      assertEquals(40 * 1.3 + 20, schedule.end().toMinutes(), 1e-9, removal.words());
      assertTrue(schedule.proven());
    }
  }

  /** A foil that needs long goes in first, and the next is held back until it is nearly done. */
  @Test
  void placingIsDelayedWhereAWindowAsksForIt() {
    List<FoilTask> foils =
        new ArrayList<>(
            List.of(
                Foils.foil(1, "A", 0, 1, 0, new double[] {40, 45}),
                Foils.foil(2, "B", 0, 1, 0, new double[] {5, 10})));
    Schedule schedule = Scheduler.schedule(foils, 1, Removal.TOGETHER).schedule().orElseThrow();
    assertEquals(41, schedule.end().toMinutes(), 1e-9);
    assertEquals(31, schedule.in(1).toMinutes(), 1e-9);
    assertEquals(List.of(), ScheduleCheck.violations(schedule));
  }

  @Test
  void twoPairsKeepTheRulesAndAreNotSlowerThanOne() {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      List<FoilTask> foils =
          seed % 8 == 0 ? Foils.many(random, 10 + seed) : Foils.few(random, 1 + random.nextInt(5));
      for (Removal removal : Removal.values()) {
        Optional<Schedule> one = Scheduler.schedule(foils, 1, removal).schedule();
        Optional<Schedule> two = Scheduler.schedule(foils, 2, removal).schedule();
        String where = "seed " + seed + " " + removal;
        assertTrue(two.isPresent() || one.isEmpty(), where);
        if (two.isPresent()) {
          assertEquals(List.of(), ScheduleCheck.violations(two.get()), where);
        }
        if (one.isPresent() && two.get().proven()) {
          assertTrue(two.get().end().compareTo(one.get().end()) <= 0, where);
        }
      }
    }
  }
}
