package foilwright.service.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.TimeWindow;
import foilwright.units.Minutes;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CuresTest {
  private static final TimeWindow WEAKER =
      new TimeWindow(Minutes.ofMinutes(30), Minutes.ofMinutes(55));

  /** 60 foils at 1 min, 0.5 min to remove, 20 to 45 min: the first waits 59 min before removing. */
  private static final List<FoilTask> FOILS = Foils.alike(60, 1, 0.5, 20, 45);

  private static final Cures CURES =
      Cures.of(FOILS, 1, Removal.IN_PLACING_ORDER, Optional.of(WEAKER));

  private static <T extends Cure> T cure(Class<T> kind) {
    return kind.cast(CURES.cures().stream().filter(kind::isInstance).findFirst().orElseThrow());
  }

  @Test
  void saysWhichFoilIsFirstOverTimeAndByHowMuch() {
    assertEquals(0, CURES.overTime().foil());
    assertEquals(59.5 - 45, CURES.overTime().by().toMinutes(), 1e-9);
  }

  /** The first of n foils develops n - 1 + 0.5 min at least, so 45 foils fit. */
  @Test
  void countsTheFirstFoilsThatFit() {
    Cure.FewerFoils cure = cure(Cure.FewerFoils.class);
    assertEquals(45, cure.most());
    assertEquals(
        "At most the first 45 foils can be done this way, 15 fewer than planned.", cure.words());
  }

  /** 59 p + 0.5 = 45 gives p = 0.754. */
  @Test
  void findsThePaceToATenthOfAPerCent() {
    Cure.FasterPace cure = cure(Cure.FasterPace.class);
    assertEquals(0.754, cure.factor().orElseThrow(), 1e-9);
    assertEquals(
        "A pace of 0.75 min a foil on average would do, 75.4 % of the planned time.", cure.words());
  }

  @Test
  void secondPairWavesAndPlacingBetween() {
    Cure.AnotherPair pair = cure(Cure.AnotherPair.class);
    assertTrue(pair.works());
    // 30 min to place, then the last one's 20.
    assertEquals(50, pair.schedule().orElseThrow().end().toMinutes(), 1e-9);
    Cure.InWaves waves = cure(Cure.InWaves.class);
    assertEquals(60, waves.sizes().stream().mapToInt(i -> i).sum());
    assertEquals(2, waves.sizes().size());
    // Each wave of 20 to 40 foils ends 20 min after its last is in.
    assertEquals(100, waves.schedule().orElseThrow().end().toMinutes(), 1e-9);
    Cure.OutWhilePlacing between = cure(Cure.OutWhilePlacing.class);
    Schedule schedule = between.schedule().orElseThrow();
    assertTrue(schedule.proven());
    assertEquals(60 + 20 + 0.5 * between.outBeforeLast(), schedule.end().toMinutes(), 1e-9);
    assertTrue(between.words().contains(between.outBeforeLast() + " foils come out"));
  }

  @Test
  void weakerMixForAsFewFirstFoilsAsPossible() {
    Cure.WeakerMixFirst cure = cure(Cure.WeakerMixFirst.class);
    // The first of 60 needs 59.5 min, more than even 55.
    assertEquals(false, cure.works());
    List<FoilTask> fewer = FOILS.subList(0, 50);
    Cure.WeakerMixFirst ten =
        assertInstanceOf(
            Cure.WeakerMixFirst.class,
            Cures.of(fewer, 1, Removal.IN_PLACING_ORDER, Optional.of(WEAKER)).cures().stream()
                .filter(Cure.WeakerMixFirst.class::isInstance)
                .findFirst()
                .orElseThrow());
    // Foil i waits 50 - i + i / 2 min at least: at most 45 from i = 10 on.
    assertEquals(9, ten.first().orElseThrow());
    assertEquals(List.of(), ScheduleCheck.violations(ten.schedule().orElseThrow()));
  }

  @Test
  void twoVisitsShareTheFoils() {
    Cure.TwoVisits cure = cure(Cure.TwoVisits.class);
    assertEquals(
        "In two visits: 30 foils in 50 min from the first parting to the last foil out, then 30 foils in 50 min from the first parting to the last foil out.",
        cure.words());
  }

  @Test
  void nothingHelpsAFoilThatTakesLongerToRemoveThanItMayStay() {
    List<FoilTask> foils = Foils.alike(3, 1, 5, 1, 4);
    Cures cures = Cures.of(foils, 1, Removal.WHILE_PLACING, Optional.empty());
    for (Cure cure : cures.cures()) {
      assertEquals(false, cure.works(), cure.words());
    }
  }

  @Test
  void longChairTimesAreToldInHoursToo() {
    assertEquals("136.9 min (2 h 17 min)", Words.chair(Minutes.ofMinutes(136.9)));
    assertEquals("59.5 min", Words.chair(Minutes.ofMinutes(59.5)));
  }

  @Test
  void foilsThatCanBeDoneNeedNoCure() {
    List<FoilTask> few = FOILS.subList(0, 10);
    assertThrows(
        IllegalArgumentException.class, () -> Cures.of(few, 1, Removal.TOGETHER, Optional.empty()));
  }
}
