package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.PlacingTime;
import foilwright.service.ThreePoint;
import foilwright.service.TimeEstimate;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.SlotMix;
import foilwright.service.schedule.ScheduleCheck;
import foilwright.service.visit.Visit;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Every shipped pattern on every shipped guest in the practice room: planned, timed and told. */
class PlanLibraryTest {
  @TempDir static Path folder;

  /** One for all, guest by guest, so that a head is fitted once. */
  private static Workspace workspace;

  @BeforeAll
  static void open() {
    workspace = Workspace.in(folder);
  }

  private static Plan plan(PlanRequest request) {
    PlanOutcome outcome = Planning.plan(workspace, request, step -> {});
    return outcome.plan().orElseThrow(() -> new AssertionError(outcome.problems().toString()));
  }

  @TestFactory
  Stream<DynamicTest> everyPatternIsPlannedOnEveryGuest() {
    List<DynamicTest> tests = new ArrayList<>();
    for (String guest : Workspace.shippedNames(DocumentKind.GUEST)) {
      for (String pattern : Workspace.shippedNames(DocumentKind.PATTERN)) {
        tests.add(
            DynamicTest.dynamicTest(
                pattern + " on " + guest,
                () -> {
                  for (String pace : List.of("lead", "stylist", "apprentice")) {
                    check(plan(PlanRequest.of(pattern).withGuest(guest).withPace(pace)));
                  }
                }));
      }
    }
    return tests.stream();
  }

  private static void check(Plan plan) {
    assertFalse(plan.hasErrors(), plan.problems().toString());
    assertTrue(plan.totals().foils() > 0);
    double lightened = plan.totals().lightenedShare().toFraction();
    assertTrue(lightened > 0 && lightened < 0.6, "lightened " + lightened);
    assertTrue(plan.totals().hair().toGrams() > 0);
    for (PlacingTime time : plan.placing()) {
      inOrder(time.total());
      assertEquals(plan.totals().foils(), time.foils().size());
    }
    PlannedTimes times = plan.times().orElseThrow();
    Visit visit = times.visits().get(0);
    assertEquals(List.of(), ScheduleCheck.violations(visit.schedule()));
    visit.slowDay().ifPresent(slow -> assertEquals(List.of(), ScheduleCheck.violations(slow)));
    assertTrue(visit.chair().p50().compareTo(plan.placingTime().p50()) > 0);
    assertTrue(visit.chair().p90().compareTo(visit.chair().p50()) >= 0);
    double taken = 0;
    for (SlotMix slot : visit.mix().slots()) {
      taken += slot.onFoils().toGrams();
      assertTrue(slot.mixed().toGrams() >= slot.onFoils().toGrams() * 1.12 - 1e-6);
    }
    double each = 0;
    for (FoilClock clock : FoilClock.byNumber(plan).values()) {
      each += clock.mixed().toGrams();
    }
    assertEquals(each, taken, 1e-6);
    for (Bowl bowl : visit.mix().bowls()) {
      assertTrue(bowl.neededUntil().compareTo(bowl.goodUntil()) <= 0, bowl.name());
    }
  }

  private static void inOrder(TimeEstimate time) {
    List<Double> minutes =
        Stream.of(time.quick(), time.mean(), time.p90()).map(t -> t.toMinutes()).toList();
    assertEquals(minutes.stream().sorted().toList(), minutes, time.toString());
    assertTrue(time.mean().compareTo(time.slow()) <= 0, time.toString());
    assertTrue(time.quick().toMinutes() > 0, time.toString());
  }

  /**
   * Common practice: a foil takes 0.75 to 1.25 min in an experienced hand and 2 to 2.5 in a
   * learner's. A foil of the usual width (95 mm), woven with 12 picks, in hair of 300 mm.
   */
  @Test
  void theShippedPacesAreCommonPractice() {
    Plan plan = plan(PlanRequest.of("v-back"));
    for (PlacingTime time : plan.placing()) {
      ThreePoint foil =
          time.pace().placing(plan.house().foil().usableWidth(), 12, plan.totals().meanLength());
      boolean learner = time.pace().name().equals("apprentice");
      double minutes = foil.usual().toMinutes();
      assertTrue(
          minutes >= (learner ? 2 : 0.75) && minutes <= (learner ? 2.5 : 1.25),
          time.pace().name() + " " + minutes);
    }
  }
}
