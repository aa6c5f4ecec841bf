package foilwright.service;

import static foilwright.service.ServiceSamples.always;
import static foilwright.service.ServiceSamples.pace;
import static foilwright.service.ServiceSamples.placement;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.problem.Problem;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LearningReferenceTest {
  private static PaceProfile with(PaceProfile pace, Learning learning) {
    return new PaceProfile(
        pace.name(), pace.basis(), pace.times(), pace.daySpread(), pace.timings(), learning);
  }

  /**
   * T. P. Wright, Factors affecting the cost of airplanes, J. Aeronautical Sciences 3 (1936) 122:
   * at 80 % the exponent is -0.321928, so that T1 = 100 becomes 80, 64 and 51.2 at 2, 4 and 8.
   */
  @Test
  void wright1936() {
    Learning learning = new Learning(Share.ofPercent(80), 1, 0);
    assertEquals(-0.321928, learning.exponent(), 0.5e-6);
    assertEquals(100, 100 * learning.factor(1), 1e-9);
    assertEquals(80, 100 * learning.factor(2), 1e-9);
    assertEquals(64, 100 * learning.factor(4), 1e-9);
    assertEquals(51.2, 100 * learning.factor(8), 1e-9);
    assertEquals(100 * Math.pow(10, -0.321928), 100 * learning.factor(10), 1e-4);
  }

  /** A profile timed at foil 200 holds at foil 200 and is a rate faster at foil 400. */
  @Test
  void fromWhereItWasTimed() {
    Learning learning = new Learning(Share.ofPercent(95), 200, 150);
    assertEquals(1, learning.factor(50), 1e-12);
    assertEquals(0.95, learning.factor(250), 1e-12);
    assertTrue(learning.factor(1) > 1);
    assertEquals(1, Learning.NONE.factor(12345), 0);
  }

  /** Placing sums foil by foil: 3 foils of 1 min, from the first on at 80 %. */
  @Test
  void placingTimeLearns() {
    PaceProfile pace =
        with(
            pace(Share.ZERO, Map.of(PaceEntry.FOIL, always(1), PaceEntry.SET_SECTION, always(2))),
            new Learning(Share.ofPercent(80), 1, 0));
    PlacingTime time = PlacingTime.of(placement(1, 4), pace);
    assertEquals(0.8, time.foils().get(1).usual().toMinutes(), 1e-12);
    assertEquals(0.64, time.foils().get(3).usual().toMinutes(), 1e-12);
    double third = Math.pow(3, Math.log(0.8) / Math.log(2));
    assertEquals(2 + 1 + 0.8 + third + 0.64, time.total().mean().toMinutes(), 1e-12);
  }

  /** 39 min taken for 35 planned: the same work is planned at 39 min from then on. */
  @Test
  void aTimingCorrectsPlacing() {
    PaceProfile pace =
        pace(
            Share.ZERO,
            Map.of(
                PaceEntry.FOIL, always(1),
                PaceEntry.SET_SECTION, always(2.5),
                PaceEntry.REMOVE_FOIL, always(0.5)));
    Minutes planned = PlacingTime.of(placement(2, 15), pace).total().mean();
    assertEquals(35, planned.toMinutes(), 1e-9);
    PaceProfile timed = pace.withTiming(planned, Minutes.ofMinutes(39), 30, Optional.empty());
    Minutes again = PlacingTime.of(placement(2, 15), timed).total().mean();
    assertEquals(39, again.toMinutes(), 1e-9);
    assertEquals(0.5, timed.of(PaceEntry.REMOVE_FOIL).usual().toMinutes(), 0);
    PaceProfile twice = timed.withTiming(again, again, 30, Optional.empty());
    assertEquals(timed.timedFactor(), twice.timedFactor(), 1e-12);
    assertEquals(timed, twice.withoutLastTiming());
    assertEquals(pace, twice.withoutLastTiming().withoutLastTiming().withoutLastTiming());
    assertEquals(List.of(), pace.problems("paces"));
    assertEquals("timed", timed.problems("paces").get(0).code());
  }

  @Test
  void aTimingCountsFoilsForLearning() {
    PaceProfile pace =
        with(
            pace(Share.ZERO, Map.of(PaceEntry.FOIL, always(1))),
            new Learning(Share.ofPercent(90), 100, 100));
    PaceProfile timed =
        pace.withTiming(Minutes.ofMinutes(30), Minutes.ofMinutes(300), 30, Optional.empty());
    assertEquals(130, timed.learning().foilsDone());
    assertEquals(3, timed.timedFactor(), 0);
    assertEquals(
        List.of("timed-far-off", "learning"),
        timed.problems("paces").stream().map(Problem::code).toList());
    assertEquals(pace, timed.withoutLastTiming());
  }

  @Test
  void refusesRatesThatNobodyLearnsAt() {
    assertThrows(IllegalArgumentException.class, () -> new Learning(Share.ofPercent(40), 1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Learning(Share.ofPercent(101), 1, 0));
    assertThrows(IllegalArgumentException.class, () -> new Learning(Share.ofPercent(90), 0, 0));
    assertThrows(IllegalArgumentException.class, () -> Learning.NONE.factor(0));
  }
}
