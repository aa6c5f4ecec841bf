package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.placement.PlacedFoil;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanningIdentityTest {
  @TempDir Path folder;

  private PlanOutcome outcome(PlanRequest request) {
    return Planning.plan(Workspace.in(folder), request, step -> {});
  }

  private Plan plan(PlanRequest request) {
    PlanOutcome outcome = outcome(request);
    return outcome.plan().orElseThrow(() -> new AssertionError(outcome.problems().toString()));
  }

  private static List<String> codes(List<FoundProblem> problems) {
    return problems.stream().map(p -> p.problem().code()).toList();
  }

  @Test
  void zonesFoilsAndTotalsAgree() {
    Plan plan = plan(PlanRequest.of("full-head-fine-weave").withGuest("guest-07"));
    Plan.Totals totals = plan.totals();
    double picked = plan.placement().foils().stream().mapToDouble(PlacedFoil::pickedHairs).sum();
    assertEquals(picked, totals.pickedHairs(), 1e-9 * picked);
    assertEquals(
        picked,
        plan.zones().stream().mapToDouble(Plan.ZoneFigures::pickedHairs).sum(),
        1e-9 * picked);
    assertEquals(
        totals.scalp().toSquareMillimetres(),
        plan.zones().stream().mapToDouble(z -> z.area().toSquareMillimetres()).sum(),
        1e-9 * totals.scalp().toSquareMillimetres());
    assertEquals(
        totals.hairs() * totals.lightenedShare().toFraction(),
        plan.zones().stream().mapToDouble(z -> z.hairs() * z.lightenedShare().toFraction()).sum(),
        1e-9 * totals.hairs());
    assertEquals(totals.foils(), plan.zones().stream().mapToInt(Plan.ZoneFigures::foils).sum());
    assertEquals(
        totals.hair().toGrams(),
        plan.sections().stream().mapToDouble(s -> s.hair().toGrams()).sum(),
        1e-9);
    assertEquals(Zone.values().length, plan.zones().size());
  }

  /** Slot B is a lowlight in the practice room: its hair is picked but not lightened. */
  @Test
  void lowlightsAreNotLightened() {
    Plan plan = plan(PlanRequest.of("full-head-fine-weave").withGuest("guest-07"));
    double lightened =
        plan.placement().foils().stream()
            .filter(foil -> foil.mix().equals("A"))
            .mapToDouble(PlacedFoil::pickedHairs)
            .sum();
    assertEquals(
        lightened / plan.totals().hairs(), plan.totals().lightenedShare().toFraction(), 1e-9);
    assertTrue(lightened < 0.9 * plan.totals().pickedHairs());
  }

  @Test
  void theNamedPaceComesFirstAndTheOthersFollow() {
    Plan plan = plan(PlanRequest.of("v-back").withPace("apprentice"));
    assertEquals(
        List.of("apprentice", "lead", "stylist"),
        plan.placing().stream().map(time -> time.pace().name()).toList());
    assertTrue(
        plan.placing().get(0).total().p90().compareTo(plan.placing().get(1).total().p90()) > 0);
  }

  @Test
  void aPartThatIsAskedForWins() {
    assertEquals(
        PartSide.LEFT, plan(PlanRequest.of("v-back").withGuest("guest-07")).head().part().side());
    assertEquals(
        PartSide.NONE,
        plan(PlanRequest.of("v-back").withGuest("guest-07").withPart(PartWish.on(PartSide.NONE)))
            .head()
            .part()
            .side());
  }

  @Test
  void withoutAGuestTheAssumptionIsSaid() {
    Plan plan = plan(PlanRequest.of("v-back"));
    assertTrue(codes(plan.problems()).contains("no-guest"));
    assertTrue(plan.guest().number().isEmpty());
    assertEquals(300, plan.totals().meanLength().toMillimetres(), 1e-9);
  }

  @Test
  void allDocumentsAreReadBeforeAnythingIsRefused() throws Exception {
    Files.writeString(folder.resolve("house.json"), "{}");
    PlanOutcome outcome =
        outcome(PlanRequest.of("nothing").withGuest("none.json").withHouse("house.json"));
    assertTrue(outcome.plan().isEmpty());
    assertTrue(outcome.unreachable());
    assertEquals(
        List.of("nothing", "none.json", "house.json"),
        outcome.problems().stream().map(FoundProblem::document).distinct().toList());
  }

  @Test
  void anUnknownPaceNamesTheKnownOnes() {
    PlanOutcome outcome = outcome(PlanRequest.of("v-back").withPace("hurried"));
    assertTrue(outcome.plan().isEmpty());
    assertEquals(List.of("no-such-pace"), codes(outcome.problems()).subList(0, 1));
    assertTrue(outcome.problems().get(0).problem().cure().contains("lead, stylist, apprentice"));
  }

  @Test
  void tapesThatContradictEachOtherAreSaidAtTheirLine() throws Exception {
    String text = Files.readString(Path.of("shared/guests/guest-03.json"));
    String wrong =
        text.replaceFirst(
            "\"head\": \\{[^}]*\\}",
            "\"head\": { \"kind\": \"woman\", \"around\": \"560 mm\",\n"
                + " \"frontToBack\": \"480 mm\", \"earToEar\": \"300 mm\" }");
    Files.writeString(folder.resolve("guest.json"), wrong);
    PlanOutcome outcome = outcome(PlanRequest.of("v-back").withGuest("guest.json"));
    assertTrue(outcome.plan().isEmpty());
    FoundProblem problem = outcome.problems().get(0);
    assertEquals("guest.json", problem.document());
    assertTrue(problem.line() > 1, problem.toString());
    assertTrue(problem.problem().path().startsWith("head."), problem.toString());
  }

  @Test
  void aSlotWithoutAProductLeavesTheVisitUnknown() throws Exception {
    String house =
        Files.readString(Path.of("shared/house/practice-room.json"))
            .replaceFirst("\"B\": \"[^\"]*\",", "");
    Files.writeString(folder.resolve("house.json"), house);
    Plan plan = plan(PlanRequest.of("full-head-fine-weave").withHouse("house.json"));
    assertTrue(plan.times().isEmpty());
    assertTrue(codes(plan.problems()).contains("empty-slot"));
  }

  @Test
  void aMissingMakersSheetIsSaid() throws Exception {
    String house =
        Files.readString(Path.of("shared/house/practice-room.json"))
            .replaceFirst("\"makersSheetOnFile\": true", "\"makersSheetOnFile\": false");
    Files.writeString(folder.resolve("house.json"), house);
    Plan plan = plan(PlanRequest.of("v-back").withHouse("house.json"));
    assertTrue(codes(plan.problems()).contains("no-makers-sheet"));
  }
}
