package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.document.Documents;
import foilwright.document.HouseDocument;
import foilwright.pattern.MixSlot;
import foilwright.placement.PlacedFoil;
import foilwright.service.PlacingTime;
import foilwright.service.TakeUp;
import foilwright.service.ThreePoint;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CalibrationIdentityTest {
  private static final PlanRequest REQUEST = PlanRequest.of("v-back").withGuest("guest-07");

  /** Has foils of A and B. */
  private static final PlanRequest TWO_SLOTS =
      PlanRequest.of("full-head-fine-weave").withGuest("guest-07");

  private static final Path SHIPPED = Path.of("shared/house/practice-room.json");
  private static final LocalDate DAY = LocalDate.of(2026, 12, 1);

  /** By the shipped house. */
  private static Plan planned;

  @TempDir Path folder;

  @BeforeAll
  static void plan(@TempDir Path elsewhere) {
    planned = Planning.plan(Workspace.in(elsewhere), REQUEST, step -> {}).plan().orElseThrow();
  }

  private Path own() {
    return folder.resolve("shared/house/practice-room.json");
  }

  private static HouseDocument house(Path file) {
    return Documents.readHouse(file).value().orElseThrow();
  }

  private CalibrationOutcome outcome(PlanRequest request, Measured measured) throws IOException {
    return Calibration.calibrate(Workspace.in(folder), request, measured, step -> {});
  }

  private Calibrated calibrate(Measured measured) throws IOException {
    return calibrated(outcome(REQUEST, measured));
  }

  private static Calibrated calibrated(CalibrationOutcome outcome) {
    return outcome
        .calibrated()
        .orElseThrow(() -> new AssertionError(outcome.problems().toString()));
  }

  private void assertRefused(String code, PlanRequest request, Measured measured)
      throws IOException {
    assertRefused(code, outcome(request, measured));
  }

  private void assertRefused(String code, CalibrationOutcome outcome) {
    assertTrue(outcome.calibrated().isEmpty());
    assertEquals(List.of(code), outcome.problems().stream().map(p -> p.problem().code()).toList());
    assertFalse(Files.exists(own()), "nothing is written after a refusal");
  }

  private static Measured weighed(double mixed, double left) {
    return new Measured(
        Map.of(MixSlot.A, Mass.ofGrams(mixed)),
        Map.of(MixSlot.A, Mass.ofGrams(left)),
        Optional.empty(),
        List.of(),
        Optional.of(DAY));
  }

  private static Measured took(double minutes) {
    return new Measured(
        Map.of(), Map.of(), Optional.of(Minutes.ofMinutes(minutes)), List.of(), Optional.of(DAY));
  }

  private static Measured each(List<Minutes> foils) {
    return new Measured(Map.of(), Map.of(), Optional.empty(), foils, Optional.empty());
  }

  private static Mass onFoils(Plan plan, TakeUp takeUp, String slot) {
    return plan.placement().foils().stream()
        .filter(foil -> foil.mix().equals(slot))
        .map(PlacedFoil::hair)
        .map(takeUp::mixed)
        .reduce(Mass.ZERO, Mass::plus);
  }

  /** 0.9 g on every foil and 1.2 g for a gram of hair, summed by hand. */
  @Test
  void whatWasUsedIsWhatTheNextPlanSays() throws IOException {
    double byHand = 0;
    for (PlacedFoil foil : planned.placement().foils()) {
      byHand += foil.mix().equals("A") ? 0.9 + 1.2 * foil.hair().toGrams() : 0;
    }
    Calibrated done = calibrate(weighed(84, 9));
    Calibrated.ChangedProduct product = done.products().get(0);
    assertEquals(1, done.products().size());
    assertEquals(List.of("A"), product.slots());
    assertEquals(byHand, done.weighed().get(0).planned().toGrams(), 1e-9);
    assertEquals(byHand, product.onFoilsBefore().toGrams(), 1e-9);
    // What was planned is kept to 0.1 g.
    double off = 75 * 0.05 / (byHand - 0.05);
    assertEquals(75, product.onFoilsAfter().toGrams(), off);
    assertEquals(75 / byHand, product.after().factor(), off / byHand);
    assertTrue(done.pace().isEmpty());

    Plan next = Planning.plan(Workspace.in(folder), REQUEST, step -> {}).plan().orElseThrow();
    TakeUp takeUp = next.house().products().get("A").takeUp();
    assertEquals(product.after(), takeUp);
    assertEquals(Optional.of(DAY), takeUp.weighBacks().get(0).date());
    assertEquals(product.onFoilsAfter(), onFoils(next, takeUp, "A"));
  }

  @Test
  void nothingElseInTheHouseChanges() throws IOException {
    calibrate(weighed(84, 9));
    HouseDocument shipped = house(SHIPPED);
    HouseDocument own = house(own());
    assertFalse(own.equals(shipped));
    assertEquals(
        shipped,
        own.withProduct(own.products().get(0).withTakeUp(shipped.products().get(0).takeUp())));
  }

  @Test
  void undoingBringsTheSameHouseBack() throws IOException {
    Workspace workspace = Workspace.in(folder);
    calibrate(weighed(84, 9));
    calibrate(took(80));
    byte[] both = Files.readAllBytes(own());
    Calibrated undone =
        calibrated(Calibration.undoWeighBack(workspace, REQUEST, Optional.empty(), step -> {}));
    assertEquals(1, undone.products().get(0).after().factor());
    assertArrayEquals(both, Files.readAllBytes(folder.resolve(undone.kept().orElseThrow())));
    assertEquals(
        1,
        calibrated(Calibration.undoTiming(workspace, REQUEST, step -> {}))
            .pace()
            .orElseThrow()
            .after()
            .pace()
            .timedFactor());
    assertEquals(house(SHIPPED), house(own()));
  }

  @Test
  void theNextPlanTakesTheTimeOfTheWatch() throws IOException {
    double expected = planned.placing().get(0).total().mean().toMinutes();
    Calibrated done = calibrate(took(1.1 * expected));
    PlacingTime after = done.pace().orElseThrow().after();
    // What was planned is kept to 0.01 min.
    assertEquals(1.1 * expected, after.total().mean().toMinutes(), 0.01);
    assertEquals(1.1, after.pace().timedFactor(), 1e-3);
    Plan next = Planning.plan(Workspace.in(folder), REQUEST, step -> {}).plan().orElseThrow();
    assertEquals(after, next.placing().get(0));
    assertTrue(done.products().isEmpty());
  }

  /** The first foils, each by itself: exactly as planned leaves everything as it was. */
  @Test
  void foilsTimedAsPlannedChangeNothing() throws IOException {
    List<Minutes> first =
        planned.placing().get(0).foils().subList(0, 12).stream().map(ThreePoint::mean).toList();
    Calibrated done = calibrate(each(first));
    double sum = first.stream().mapToDouble(Minutes::toMinutes).sum();
    assertEquals(sum, done.timed().orElseThrow().planned().toMinutes(), 1e-9);
    assertEquals(1, done.pace().orElseThrow().after().pace().timedFactor(), 0.005 / sum * 1.01);
  }

  @Test
  void aLearnerIsMeasuredAgainstWhatLearningExpects() throws IOException {
    PlanRequest apprentice = REQUEST.withPace("apprentice");
    Plan plan = Planning.plan(Workspace.in(folder), apprentice, s -> {}).plan().orElseThrow();
    Minutes expected = plan.placingTime().mean();
    Calibrated done = calibrated(outcome(apprentice, took(expected.toMinutes())));
    PlacingTime after = done.pace().orElseThrow().after();
    assertEquals(1, after.pace().timedFactor(), 1e-3);
    assertEquals(
        plan.house().pace().learning().foilsDone() + plan.totals().foils(),
        after.pace().learning().foilsDone());
    assertTrue(after.total().mean().compareTo(expected) < 0, "the next visit is faster");
  }

  /** Two slots with one product: the factor is that of both together, in either order. */
  @Test
  void twoSlotsOfOneProductAddUp() throws IOException {
    Files.createDirectories(own().getParent());
    String shared =
        Files.readString(SHIPPED)
            .replace("\"B\": \"lowlight colour, entry 2\"", "\"B\": \"powder lightener, entry 1\"");
    Files.writeString(folder.resolve("house.json"), shared);
    Plan plan = Planning.plan(Workspace.in(folder), TWO_SLOTS, s -> {}).plan().orElseThrow();
    double a = onFoils(plan, TakeUp.USUAL, "A").toGrams();
    double b = onFoils(plan, TakeUp.USUAL, "B").toGrams();
    Measured both =
        new Measured(
            Map.of(MixSlot.A, Mass.ofGrams(100), MixSlot.B, Mass.ofGrams(60)),
            Map.of(MixSlot.A, Mass.ofGrams(20), MixSlot.B, Mass.ofGrams(10)),
            Optional.empty(),
            List.of(),
            Optional.empty());
    Calibrated done = calibrated(outcome(TWO_SLOTS.withHouse("house.json"), both));
    assertEquals(List.of("A", "B"), done.products().get(0).slots());
    assertEquals(130 / (a + b), done.products().get(0).after().factor(), 130 * 0.1 / a / a);
    assertEquals(Path.of("house.json"), done.file());
    assertEquals(
        shared,
        Files.readString(folder.resolve(done.kept().orElseThrow()), StandardCharsets.UTF_8));
    assertFalse(Files.exists(own()), "a named file is changed itself");
  }

  @Test
  void slipsAreRefused() throws IOException {
    assertRefused("weighed-back-far-off", REQUEST, weighed(840, 9));
    assertRefused("weighed-back-far-off", REQUEST, weighed(84, 80));
    assertRefused("timed-far-off", REQUEST, took(8));
    assertRefused("timed-far-off", REQUEST, took(500));
    assertRefused(
        "more-timed-than-placed", REQUEST, each(Collections.nCopies(300, Minutes.ofMinutes(1))));
    assertRefused(
        "slot-not-used",
        REQUEST,
        new Measured(
            Map.of(MixSlot.D, Mass.ofGrams(50)),
            Map.of(MixSlot.D, Mass.ofGrams(5)),
            Optional.empty(),
            List.of(),
            Optional.empty()));
    assertRefused("no-such-pace", REQUEST.withPace("hurried"), took(80));
    assertRefused("no-such-document", REQUEST.withHouse("none"), took(80));
  }

  @Test
  void aMeasurementBesideARefusedOneIsNotTakenIn() throws IOException {
    assertRefused(
        "timed-far-off",
        REQUEST,
        new Measured(
            Map.of(MixSlot.A, Mass.ofGrams(84)),
            Map.of(MixSlot.A, Mass.ofGrams(9)),
            Optional.of(Minutes.ofMinutes(8)),
            List.of(),
            Optional.empty()));
  }

  @Test
  void nothingToUndoIsTold() throws IOException {
    Workspace workspace = Workspace.in(folder);
    for (Optional<MixSlot> slot : List.of(Optional.<MixSlot>empty(), Optional.of(MixSlot.A))) {
      assertRefused(
          "nothing-to-undo", Calibration.undoWeighBack(workspace, REQUEST, slot, step -> {}));
    }
    assertRefused("nothing-to-undo", Calibration.undoTiming(workspace, REQUEST, step -> {}));
  }

  @Test
  void whatCannotBeMeasuredIsRefusedAtOnce() {
    assertThrows(IllegalArgumentException.class, () -> weighed(84, 84));
    assertThrows(IllegalArgumentException.class, () -> weighed(0, 0));
    assertThrows(IllegalArgumentException.class, () -> weighed(84, -1));
    assertThrows(IllegalArgumentException.class, () -> took(0));
    assertThrows(IllegalArgumentException.class, () -> each(List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> each(Collections.nCopies(Measured.MOST_FOILS + 1, Minutes.ofMinutes(1))));
  }
}
