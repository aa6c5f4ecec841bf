package foilwright.service.visit;

import static foilwright.service.ServiceSamples.always;
import static foilwright.service.ServiceSamples.lightener;
import static foilwright.service.ServiceSamples.pace;
import static foilwright.service.ServiceSamples.placement;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.hair.HairProfile;
import foilwright.placement.Placement;
import foilwright.service.AppointmentPhase;
import foilwright.service.LiftAdvice;
import foilwright.service.LiftTables;
import foilwright.service.MixSettings;
import foilwright.service.PaceEntry;
import foilwright.service.PaceProfile;
import foilwright.service.ProductEntry;
import foilwright.service.ThreePoint;
import foilwright.service.mix.Bowl;
import foilwright.service.schedule.OverTime;
import foilwright.service.schedule.Removal;
import foilwright.service.schedule.Schedule;
import foilwright.service.schedule.ScheduleCheck;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class VisitPlannerReferenceTest {
  private static final Length HAIR = Length.ofMillimetres(250);
  private static final Map<PaceEntry, ThreePoint> WORKED =
      Map.of(
          PaceEntry.CONSULT, always(10),
          PaceEntry.GOWN_AND_SECTION, always(5),
          PaceEntry.MIX_BOWL, always(3),
          PaceEntry.FOIL, always(1.2),
          PaceEntry.REMOVE_FOIL, always(0.5));

  private static VisitTerms terms(PaceProfile pace, Placement placement, ProductEntry product) {
    Map<String, ProductEntry> products = Map.of("A", product);
    HairProfile hair = HairProfile.usual(HAIR);
    return new VisitTerms(
        pace,
        products,
        new MixSettings(Mass.ofGrams(1), Share.ofPercent(12), 1000, List.of()),
        LiftAdvice.of(placement, hair, Optional.empty(), products, LiftTables.USUAL),
        HAIR,
        hair.density());
  }

  private static VisitPlanner.Outcome plan(
      int foils, Share daySpread, ProductEntry product, Optional<Removal> removal) {
    Placement placement = placement(1, foils);
    return VisitPlanner.plan(
        placement, terms(pace(daySpread, WORKED), placement, product), removal, 1);
  }

  private static double sinceStart(Visit visit, foilwright.units.Minutes moment) {
    return visit.sinceStart(moment).toMinutes();
  }

  /**
   * Worked by hand: 18 min until the first parting, 30 foils at 1.2 min, window to 45 min from 20,
   * removal 0.5 min a foil. In with ends from 19.2 to 54.0; the first due by 64.2; removed from 59
   * to 74; 5.0 min free; exposures from 40.3 down to 20.0.
   */
  @Test
  void theWorkedVisit() {
    Visit visit =
        plan(30, Share.ZERO, lightener(20, 45, 60), Optional.empty()).visit().orElseThrow();
    Schedule schedule = visit.schedule();
    assertEquals(Removal.IN_PLACING_ORDER, visit.removal());
    assertEquals(18, visit.before().toMinutes(), 0.05);
    assertEquals(19.2, sinceStart(visit, schedule.in(0)), 0.05);
    assertEquals(54.0, sinceStart(visit, schedule.in(29)), 0.05);
    assertEquals(0, visit.firstDue());
    assertEquals(64.2, sinceStart(visit, schedule.outBy(0)), 0.05);
    assertEquals(59.5, sinceStart(visit, schedule.out(0)), 0.05);
    assertEquals(74.0, sinceStart(visit, schedule.end()), 0.05);
    assertEquals(40.3, schedule.exposure(0).toMinutes(), 0.05);
    assertEquals(20.0, schedule.exposure(29).toMinutes(), 0.05);
    Block free = visit.freeGap().orElseThrow();
    assertEquals(54.0, free.start().toMinutes(), 0.05);
    assertEquals(5.0, free.length().toMinutes(), 0.05);
    assertEquals(List.of(), ScheduleCheck.violations(schedule));
  }

  /** All out at 74: the first would have 54.8 min and the last 20, which is not allowed. */
  @Test
  void allOutTogetherIsNotAllowed() {
    VisitPlanner.Outcome outcome =
        plan(30, Share.ZERO, lightener(20, 45, 60), Optional.of(Removal.TOGETHER));
    assertTrue(outcome.visit().isEmpty());
    OverTime over = outcome.failed().orElseThrow();
    assertEquals(0, over.foil());
    assertEquals(54.8 - 45, over.most().toMinutes(), 0.05);
  }

  /**
   * 60 foils at the same pace: the first comes out after 59 more placings, 59 x 1.2 + 0.5 = 71.3
   * min after it went in, 26.3 min over 45. Straight through, the first 38 go: 37 x 1.2 + 0.5 =
   * 44.9.
   */
  @Test
  void tooManyFoilsComeOutWhilePlacing() {
    VisitPlanner.Outcome outcome = plan(60, Share.ZERO, lightener(20, 45, 60), Optional.empty());
    assertEquals(26.3, outcome.straight().usual().orElseThrow().by().toMinutes(), 0.05);
    Visit visit = outcome.visit().orElseThrow();
    assertEquals(Removal.WHILE_PLACING, visit.removal());
    assertEquals(List.of(), ScheduleCheck.violations(visit.schedule()));
    assertEquals(38, outcome.straight().lastSafe());
    assertFalse(outcome.cures().isEmpty());
  }

  /** A day's spread that leaves the usual day within the window but not one day in ten. */
  @Test
  void aSlowDayIsSaid() {
    VisitPlanner.Outcome outcome =
        plan(36, Share.ofPercent(12), lightener(20, 45, 60), Optional.empty());
    assertTrue(outcome.straight().usual().isEmpty());
    assertTrue(outcome.straight().slow().isPresent());
    assertTrue(outcome.visit().orElseThrow().slowDay().isPresent());
  }

  /** 36 min of placing with a bowl that stands 30 min takes a second one; 30 min does not. */
  @Test
  void aFreshBowlWhenTheLastHasStoodItsTime() {
    Visit two = plan(30, Share.ZERO, lightener(20, 45, 30), Optional.empty()).visit().orElseThrow();
    assertEquals(List.of(1, 26), two.mix().bowls().stream().map(Bowl::firstFoil).toList());
    assertEquals(36 + 3, two.schedule().allIn().toMinutes(), 0.01);
    Visit one = plan(25, Share.ZERO, lightener(20, 45, 30), Optional.empty()).visit().orElseThrow();
    assertEquals(1, one.mix().bowls().size());
  }

  /** Bowls and the schedule agree: no bowl stands longer than its life at its last foil. */
  @Test
  void bowlsAreMixedWhereTheirOwnMixingPutsThem() {
    for (int foils = 5; foils <= 90; foils += 17) {
      Visit visit =
          plan(foils, Share.ZERO, lightener(20, 45, 22), Optional.empty()).visit().orElseThrow();
      for (Bowl bowl : visit.mix().bowls()) {
        assertTrue(bowl.neededUntil().compareTo(bowl.goodUntil()) <= 0, bowl.name());
        int first = bowl.firstFoil() - 1;
        double before = visit.schedule().foils().get(first).before().toMinutes();
        assertEquals(first == 0 ? 0 : 3, before, 0.01, bowl.name());
      }
    }
  }

  @Test
  void blocksFillTheVisitWithoutAGap() {
    Visit visit =
        plan(30, Share.ofPercent(12), lightener(20, 45, 40), Optional.empty())
            .visit()
            .orElseThrow();
    double now = 0;
    for (Block block : visit.blocks()) {
      assertEquals(now, block.start().toMinutes(), 1e-6);
      now = block.end().toMinutes();
    }
    assertEquals(visit.chair().p50().toMinutes(), now, 1e-6);
    assertEquals(AppointmentPhase.values().length, visit.phases().size());
    assertTrue(visit.chair().p90().compareTo(visit.chair().p50()) > 0);
  }

  @Test
  void refusesWhatItCannotTime() {
    Placement none = placement(1, 0);
    PaceProfile pace = pace(Share.ZERO, WORKED);
    VisitTerms terms = terms(pace, none, lightener(20, 45, 30));
    assertThrows(
        IllegalArgumentException.class, () -> VisitPlanner.plan(none, terms, Optional.empty(), 1));
    VisitTerms empty =
        new VisitTerms(
            pace, Map.of(), terms.mixing(), terms.lift(), terms.meanLength(), terms.density());
    assertThrows(
        IllegalArgumentException.class,
        () -> VisitPlanner.plan(placement(1, 2), empty, Optional.empty(), 1));
  }
}
