package foilwright.service.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked figures of common practice, by hand arithmetic. */
class SchedulerReferenceTest {
  /** 1 + floor(25 / p) foils fit a window from 20 to 45 min when all come out at one moment. */
  @ParameterizedTest
  @CsvSource({"0.75, 34", "1, 26", "1.5, 17", "2.25, 12"})
  void waveSizesForAWindowOfTwentyToFortyFive(double minutes, int size) {
    List<FoilTask> fits = Foils.alike(size, minutes, 0, 20, 45);
    List<FoilTask> oneMore = Foils.alike(size + 1, minutes, 0, 20, 45);
    assertTrue(Scheduler.schedule(fits, 1, Removal.TOGETHER).schedule().isPresent());
    assertEquals(
        0, Scheduler.schedule(oneMore, 1, Removal.TOGETHER).overTime().orElseThrow().foil());
    assertEquals(size, fits.get(0).window().foilsOutTogether(fits.get(0).placing()));
  }

  /**
   * 30 foils at 1.2 min whose placing ends from 19.2 to 54.0, window to 45 min, 0.5 min to remove
   * one; 18 min are spent before the first foil.
   */
  private static List<FoilTask> workedVisit() {
    List<FoilTask> foils = new ArrayList<>(Foils.alike(30, 1.2, 0.5, 20, 45));
    foils.set(0, Foils.foil(1, "A", 18, 1.2, 0.5, new double[] {20, 45}));
    return foils;
  }

  @Test
  void workedVisitAllOutAtOneMoment() {
    OverTime over = Scheduler.schedule(workedVisit(), 1, Removal.TOGETHER).overTime().orElseThrow();
    assertEquals(0, over.foil());
    assertEquals(54.8 - 45, over.by().toMinutes(), 0.05);
    assertEquals(54.8 - 45, over.most().toMinutes(), 0.05);
    assertEquals(9, over.foils());
    assertTrue(over.proven());
  }

  @Test
  void workedVisitInPlacingOrder() {
    Schedule schedule =
        Scheduler.schedule(workedVisit(), 1, Removal.IN_PLACING_ORDER).schedule().orElseThrow();
    assertEquals(List.of(), ScheduleCheck.violations(schedule));
    assertEquals(19.2, schedule.in(0).toMinutes(), 0.05);
    assertEquals(54.0, schedule.allIn().toMinutes(), 0.05);
    assertEquals(64.2, schedule.outBy(0).toMinutes(), 0.05);
    assertEquals(1, schedule.waits().size());
    assertEquals(54.0, schedule.waits().get(0).start().toMinutes(), 0.05);
    assertEquals(59.0, schedule.waits().get(0).end().toMinutes(), 0.05);
    assertEquals(5.0, schedule.waits().get(0).length().toMinutes(), 0.05);
    assertEquals(74.0, schedule.end().toMinutes(), 0.05);
    assertEquals(40.3, schedule.exposure(0).toMinutes(), 0.05);
    assertEquals(20.0, schedule.exposure(29).toMinutes(), 0.05);
    assertTrue(schedule.proven());
  }

  /**
   * Graham 1969: 5, 5, 4, 4, 3, 3, 3 given longest first to three machines take 11 where 9 would do
   * in another order; a fixed placing order is such a list.
   */
  @Test
  void threePairsOfHandsTakeAFixedOrderAsALongestFirstList() {
    List<FoilTask> foils = new ArrayList<>();
    for (double minutes : new double[] {5, 5, 4, 4, 3, 3, 3}) {
      foils.add(Foils.foil(foils.size() + 1, "A", 0, minutes, 0, new double[] {0, 100}));
    }
    Schedule schedule = Scheduler.schedule(foils, 3, Removal.TOGETHER).schedule().orElseThrow();
    assertEquals(11, schedule.end().toMinutes(), 1e-9);
    assertTrue(schedule.proven());
    assertTrue(schedule.end().toMinutes() / 9 <= 4.0 / 3 - 1.0 / 9 + 1e-9);
  }
}
