package foilwright.service;

import static foilwright.service.ServiceSamples.always;
import static foilwright.service.ServiceSamples.lightener;
import static foilwright.service.ServiceSamples.pace;
import static foilwright.service.ServiceSamples.placement;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.hair.HairProfile;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.units.Length;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class AppointmentEstimateReferenceTest {
  private static final Length HAIR = Length.ofMillimetres(250);

  private static AppointmentEstimate estimate(
      Placement placement, PaceProfile pace, ProductEntry product) {
    return AppointmentEstimate.of(
        placement, pace, Map.of("A", product), HAIR, HairProfile.USUAL_DENSITY);
  }

  private static TimeEstimate block(AppointmentEstimate visit, AppointmentPhase phase) {
    return visit.blocks().stream().filter(b -> b.phase() == phase).findFirst().orElseThrow().time();
  }

  /**
   * Worked by hand: 30 foils at 1.2 min, window 20 to 45 min, removed in the order of placing at
   * 0.5 min each. The last foil has its 20 min when removing starts 5 min after it went in (20 - 30
   * x 0.5); the first reaches 45 min when it starts 9.7 min after (45 - 29 x 1.2 - 0.5).
   */
  @Test
  void freeGapOfThirtyFoils() {
    AppointmentEstimate visit =
        estimate(
            placement(1, 30),
            pace(
                Share.ZERO,
                Map.of(PaceEntry.FOIL, always(1.2), PaceEntry.REMOVE_FOIL, always(0.5))),
            lightener(20, 45, 60));
    TimeEstimate develop = block(visit, AppointmentPhase.DEVELOP);
    assertEquals(5.0, develop.quick().toMinutes(), 1e-9);
    assertEquals(9.7, develop.slow().toMinutes(), 1e-9);
    assertEquals(36, block(visit, AppointmentPhase.PLACE).mean().toMinutes(), 1e-9);
    assertEquals(15, block(visit, AppointmentPhase.REMOVE).mean().toMinutes(), 1e-9);
    assertEquals(36 + 5 + 15, visit.total().quick().toMinutes(), 1e-9);
    assertEquals(36 + 9.7 + 15, visit.total().slow().toMinutes(), 1e-9);
    assertEquals(List.of(), visit.problems());
  }

  /**
   * 60 foils at the same pace: the first would have 29 + 30 more placings before it, so that it is
   * over time: 59 x 1.2 + 0.5 = 71.3 min at the earliest removal, 26.3 min over 45.
   */
  @Test
  void tooManyFoilsAreSaid() {
    AppointmentEstimate visit =
        estimate(
            placement(1, 60),
            pace(
                Share.ZERO,
                Map.of(PaceEntry.FOIL, always(1.2), PaceEntry.REMOVE_FOIL, always(0.5))),
            lightener(20, 45, 60));
    Problem problem = visit.problems().get(0);
    assertEquals("foil-over-time", problem.code());
    assertTrue(
        problem.message().contains("foil 1 would be 26 min over its 45 min"), problem::message);
    assertTrue(problem.cure().contains("at most 21 foils"), problem::cure);
    assertTrue(problem.place().isPresent());
  }

  /** A day's spread that leaves the usual day within the window but not one day in ten. */
  @Test
  void aSlowDayIsSaid() {
    AppointmentEstimate visit =
        estimate(
            placement(1, 33),
            pace(
                Share.ofPercent(12),
                Map.of(PaceEntry.FOIL, always(1.2), PaceEntry.REMOVE_FOIL, always(0.5))),
            lightener(20, 45, 60));
    assertEquals(
        List.of("foil-over-time-slow-day"), visit.problems().stream().map(Problem::code).toList());
  }

  /** Together, window 20 to 45 min: 34, 26, 17, 12 foils at 0.75, 1, 1.5, 2.25 min each. */
  @Test
  void foilsThatComeOutTogether() {
    TimeWindow window = new TimeWindow(Minutes.ofMinutes(20), Minutes.ofMinutes(45));
    assertEquals(34, window.foilsOutTogether(Minutes.ofMinutes(0.75)));
    assertEquals(26, window.foilsOutTogether(Minutes.ofMinutes(1.0)));
    assertEquals(17, window.foilsOutTogether(Minutes.ofMinutes(1.5)));
    assertEquals(12, window.foilsOutTogether(Minutes.ofMinutes(2.25)));
  }

  /** 36 min of placing with a bowl that stands 30 min takes a second one; 30 min does not. */
  @Test
  void aFreshBowlWhenTheLastHasStoodItsTime() {
    PaceProfile pace =
        pace(Share.ZERO, Map.of(PaceEntry.FOIL, always(1.2), PaceEntry.MIX_BOWL, always(3)));
    AppointmentEstimate two = estimate(placement(1, 30), pace, lightener(20, 45, 30));
    assertEquals(Map.of("A", 2), two.bowls());
    assertEquals(6, block(two, AppointmentPhase.MIX).mean().toMinutes(), 1e-9);
    assertEquals(Map.of("A", 1), estimate(placement(1, 25), pace, lightener(20, 45, 30)).bowls());
  }

  @Test
  void blocksAddUpToTheVisit() {
    AppointmentEstimate visit =
        estimate(
            placement(3, 6),
            pace(
                Share.ofPercent(12),
                Map.of(
                    PaceEntry.CONSULT, ThreePoint.ofMinutes(5, 10, 20),
                    PaceEntry.SET_SECTION, ThreePoint.ofMinutes(1, 2, 4),
                    PaceEntry.FOIL, ThreePoint.ofMinutes(0.8, 1, 1.5),
                    PaceEntry.REMOVE_FOIL, ThreePoint.ofMinutes(0.3, 0.5, 0.8),
                    PaceEntry.DEVELOP_TONER, ThreePoint.ofMinutes(5, 10, 20),
                    PaceEntry.DRY_PER_CENTIMETRE_OF_HAIR, ThreePoint.ofMinutes(0.3, 0.5, 1))),
            lightener(20, 45, 40));
    assertEquals(
        visit.total().mean().toMinutes(),
        visit.blocks().stream().mapToDouble(b -> b.time().mean().toMinutes()).sum(),
        1e-9);
    assertEquals(AppointmentPhase.values().length, visit.blocks().size());
    assertEquals(0.5 * 25, block(visit, AppointmentPhase.DRY).usual().toMinutes(), 1e-9);
  }

  @Test
  void refusesWhatItCannotTime() {
    PaceProfile pace = pace(Share.ZERO, Map.of());
    assertThrows(
        IllegalArgumentException.class,
        () -> estimate(placement(1, 0), pace, lightener(20, 45, 30)));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            AppointmentEstimate.of(
                placement(1, 2), pace, Map.of(), HAIR, HairProfile.USUAL_DENSITY));
  }
}
