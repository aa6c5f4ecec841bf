package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.pattern.Extent;
import foilwright.pattern.FoilRule;
import foilwright.pattern.KeptCover;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.PickDepth;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.problem.Problem;
import foilwright.units.Length;
import foilwright.units.Minutes;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** After a remedy its problem is gone, and no new one has come in its place. */
class RemediesTest {
  @TempDir Path folder;
  private Workspace workspace;

  @BeforeEach
  void open() {
    workspace = Workspace.in(folder);
  }

  private PlanOutcome plan(String pattern, String pace, WayOut way) {
    PlanRequest request =
        PlanRequest.of(pattern).withPace(pace).withWorking(new Working(way, 1, List.of()));
    return Planning.plan(workspace, request, step -> {});
  }

  private static List<Problem> problems(PlanOutcome outcome) {
    return outcome.problems().stream().map(FoundProblem::problem).toList();
  }

  private static Set<String> codes(PlanOutcome outcome) {
    Set<String> codes = new HashSet<>();
    problems(outcome).forEach(p -> codes.add(p.code()));
    return codes;
  }

  private List<Remedy> remedies(PlanOutcome outcome, String code) {
    Problem problem =
        problems(outcome).stream().filter(p -> p.code().equals(code)).findFirst().orElseThrow();
    return Remedies.of(workspace, outcome.plan().orElseThrow(), problem);
  }

  private Pattern shipped(String name) {
    return workspace.pattern(name).value().orElseThrow();
  }

  private String saved(Pattern pattern) throws IOException {
    return new PatternDesk(workspace).create(pattern).name();
  }

  /** Every remedy of one problem of the first section, each by itself. */
  private int curesAll(String code, UnaryOperator<Section> harm) throws IOException {
    Pattern harmed = shipped("dark-rim").withSection(0, harm);
    PlanOutcome before = plan(saved(harmed), "lead", WayOut.BEST);
    List<Remedy> remedies = remedies(before, code);
    for (Remedy remedy : remedies) {
      Pattern cured = ((Remedy.OfSection) remedy).applied(harmed);
      Set<String> after = codes(plan(saved(cured), "lead", WayOut.BEST));
      assertFalse(after.contains(code), remedy.words());
      after.removeAll(codes(before));
      assertEquals(Set.of(), after, remedy.words());
    }
    return remedies.size();
  }

  @Test
  void otherWaysOutMakeAVisitWhereThereIsNone() {
    PlanOutcome before = plan("full-head-fine-weave", "apprentice", WayOut.IN_ORDER);
    assertTrue(before.plan().orElseThrow().times().orElseThrow().visits().isEmpty());
    List<Remedy> remedies = remedies(before, "foil-over-time");
    assertTrue(remedies.contains(new Remedy.TakeOut(WayOut.WAVES)), remedies.toString());
    assertTrue(remedies.contains(new Remedy.TakeOut(WayOut.WHILE_PLACING)), remedies.toString());
    assertTrue(remedies.contains(new Remedy.LeaveOutUntilItFits()), remedies.toString());
    for (Remedy remedy : remedies) {
      PlanOutcome after = after(remedy);
      assertFalse(codes(after).contains("foil-over-time"), remedy.words());
      assertFalse(
          after.plan().orElseThrow().times().orElseThrow().visits().isEmpty(), remedy.words());
    }
  }

  /** The plan of that test after a remedy that leaves the pattern's sections alone. */
  private PlanOutcome after(Remedy remedy) {
    PlanRequest before =
        PlanRequest.of("full-head-fine-weave")
            .withPace("apprentice")
            .withWorking(new Working(WayOut.IN_ORDER, 1, List.of()));
    PlanRequest request = before;
    if (remedy instanceof Remedy.TakeOut out) {
      request = before.withWorking(new Working(out.way(), 1, List.of()));
    } else if (remedy instanceof Remedy.WorkTogether together) {
      request = before.withWorking(new Working(WayOut.IN_ORDER, together.hands(), List.of()));
    } else if (remedy instanceof Remedy.PlanAtPace other) {
      request = before.withPace(other.pace());
    } else {
      assertEquals(new Remedy.LeaveOutUntilItFits(), remedy);
      request =
          before.withLimits(new Limits(Optional.of(Minutes.ofMinutes(24 * 60)), Optional.empty()));
    }
    return Planning.plan(workspace, request, step -> {});
  }

  /** A pattern and pace for which each remedy without a section is offered somewhere. */
  @Test
  void morePairsAndAFasterPaceMakeAVisitToo() {
    PlanRequest request =
        PlanRequest.of("v-back")
            .withPace("apprentice")
            .withWorking(new Working(WayOut.IN_ORDER, 1, List.of()));
    PlanOutcome outcome = Planning.plan(workspace, request, step -> {});
    List<Remedy> remedies = remedies(outcome, "foil-over-time");
    assertTrue(
        remedies.stream().anyMatch(r -> r instanceof Remedy.WorkTogether), remedies.toString());
    assertTrue(
        remedies.stream().anyMatch(r -> r instanceof Remedy.PlanAtPace), remedies.toString());
    for (Remedy remedy : remedies) {
      PlanRequest cured =
          remedy instanceof Remedy.WorkTogether together
              ? request.withWorking(new Working(WayOut.IN_ORDER, together.hands(), List.of()))
              : remedy instanceof Remedy.PlanAtPace pace ? request.withPace(pace.pace()) : request;
      if (!cured.equals(request)) {
        assertFalse(
            codes(Planning.plan(workspace, cured, step -> {})).contains("foil-over-time"),
            remedy.words());
      }
    }
  }

  @Test
  void moreSlicesThanFitBecomeAsManyAsFit() throws IOException {
    assertEquals(1, curesAll("count-does-not-fit", s -> s.withFill(s.fill().withSlices(150))));
  }

  @Test
  void foilsTooNarrowAreDividedEvenly() throws IOException {
    assertEquals(
        1,
        curesAll(
            "foil-too-narrow",
            s -> s.withFill(s.fill().withFoils(new FoilRule.Count(1), s.fill().shortEnds()))));
  }

  @Test
  void shiftedRowsOfAFixedNumberAreDividedOrNotShifted() throws IOException {
    assertEquals(
        2,
        curesAll(
            "brick-lay-without-rows",
            s ->
                s.withFill(s.fill().withFoils(new FoilRule.Count(8), s.fill().shortEnds()))
                    .withBrickLay(true)));
  }

  @Test
  void aPickDeeperThanItsSliceReachesThroughIt() throws IOException {
    PickDepth deep = new PickDepth.OfLength(Length.ofMillimetres(45));
    assertEquals(
        1,
        curesAll(
            "depth-beyond-slice",
            s ->
                s.withFill(
                    s.fill()
                        .withPicks(
                            new Pick.Weave(
                                Length.ofMillimetres(4), Length.ofMillimetres(4), deep)))));
  }

  @Test
  void slicesThatNoCombHoldsBecomeThinnerOrThicker() throws IOException {
    assertEquals(
        1,
        curesAll("comb-cannot-hold", s -> s.withFill(s.fill().withSlice(Run.ofMillimetres(19.5)))));
    assertEquals(
        1,
        curesAll("comb-cannot-hold", s -> s.withFill(s.fill().withSlice(Run.ofMillimetres(0.7)))));
  }

  @Test
  void slicesThatDoNotFitBecomeThinner() throws IOException {
    assertEquals(
        1,
        curesAll(
            "slice-thicker-than-section",
            s ->
                s.withRegion(s.region().withInsetFromHairline(Extent.ofMillimetres(60)))
                    .withFill(s.fill().withSlice(Run.ofMillimetres(60)))));
  }

  @Test
  void aSectionThatBeginsTooFarInBeginsAtItsEdge() throws IOException {
    assertEquals(
        1,
        curesAll(
            "slice-thicker-than-section",
            s -> s.withFill(s.fill().withOffset(Extent.ofMillimetres(150)))));
  }

  @Test
  void coverThatTakesAllHairBecomesLess() throws IOException {
    KeptCover all =
        new KeptCover(Optional.of(Extent.ofMillimetres(140)), Optional.empty(), Optional.empty());
    assertEquals(2, curesAll("cover-leaves-nothing", s -> s.withKeptCover(all)));
  }

  @Test
  void whatNeedsJudgementHasNoButton() {
    PlanOutcome outcome = plan("full-head-fine-weave", "apprentice", WayOut.BEST);
    assertTrue(codes(outcome).contains("tests-missing"));
    assertEquals(List.of(), remedies(outcome, "tests-missing"));
    assertEquals(List.of(), remedies(outcome, "foil-over-time-straight"));
  }
}
