package foilwright.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.document.Documents;
import foilwright.document.GuestDocument;
import foilwright.document.HouseDocument;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.service.LiftAdvice;
import foilwright.service.PlacingTime;
import foilwright.service.ProductEntry;
import foilwright.service.ThreePoint;
import foilwright.service.mix.Bowl;
import foilwright.service.mix.FoilMix;
import foilwright.service.mix.FoilSheets;
import foilwright.service.mix.MixPlan;
import foilwright.service.mix.SlotMix;
import foilwright.service.mix.TonerMix;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Every shipped pattern on every shipped guest in the practice room: weighed, cut and advised. */
class MixLibraryTest {
  private static final HouseDocument HOUSE =
      Documents.readHouse(Path.of("shared/house/practice-room.json")).value().orElseThrow();

  @TempDir static Path folder;

  /** One for all, guest by guest, so that a head is fitted once. */
  private static Workspace workspace;

  @BeforeAll
  static void open() {
    workspace = Workspace.in(folder);
  }

  @TestFactory
  Stream<DynamicTest> everyPatternIsWeighedOnEveryGuest() {
    List<DynamicTest> tests = new ArrayList<>();
    for (String guest : Workspace.shippedNames(DocumentKind.GUEST)) {
      for (String pattern : Workspace.shippedNames(DocumentKind.PATTERN)) {
        tests.add(
            DynamicTest.dynamicTest(
                pattern + " on " + guest,
                () -> {
                  PlanRequest request =
                      PlanRequest.of(pattern).withGuest(guest).withPace("apprentice");
                  Plan plan = Planning.plan(workspace, request, step -> {}).plan().orElseThrow();
                  weigh(plan.placement(), plan.placing().get(0));
                  advise(
                      plan.placement(),
                      Documents.readGuest(Path.of("shared/guests/" + guest + ".json"))
                          .value()
                          .orElseThrow());
                }));
      }
    }
    return tests.stream();
  }

  private static void weigh(Placement placement, PlacingTime pace) {
    List<MixPlan.Placed> times = new ArrayList<>();
    Minutes now = Minutes.ZERO;
    for (ThreePoint foil : pace.foils()) {
      Minutes end = now.plus(foil.usual());
      times.add(new MixPlan.Placed(now, end));
      now = end;
    }
    Map<String, ProductEntry> products = HOUSE.productsBySlot();
    MixPlan mix = MixPlan.of(placement, products, HOUSE.mixing(), times);
    assertEquals(placement.foils().size(), mix.foils().size());
    for (SlotMix slot : mix.slots()) {
      double served = 0;
      for (Bowl bowl : slot.bowls()) {
        served += bowl.onFoils().toGrams();
        assertTrue(bowl.neededUntil().compareTo(bowl.goodUntil()) <= 0, bowl.toString());
        assertTrue(bowl.foils().size() <= HOUSE.mixing().bowlFoils(), bowl.toString());
        double waste = bowl.mixed().toGrams() - bowl.onFoils().toGrams() * 1.12;
        assertTrue(waste >= -1e-9 && waste < 4, bowl + " mixes " + waste + " g too much");
      }
      assertEquals(slot.onFoils().toGrams(), served, 1e-9);
      assertTrue(slot.readyToUse().compareTo(ProductEntry.MOST_STRENGTH) < 0);
    }
    assertEquals(
        mix.foils().stream().map(FoilMix::mixed).mapToDouble(Mass::toGrams).sum(),
        mix.slots().stream().map(SlotMix::onFoils).mapToDouble(Mass::toGrams).sum(),
        1e-9);
    FoilSheets sheets = FoilSheets.of(placement.foils(), HOUSE.foils());
    assertEquals(
        placement.foils().size(), sheets.counts().stream().mapToInt(FoilSheets.Count::foils).sum());
    assertEquals(List.of(), sheets.problems());
    TonerMix toner = TonerMix.of(HOUSE.toners().get(0), mix.lightenedHair(), HOUSE.mixing());
    assertTrue(toner.mixed().compareTo(toner.toner().base()) >= 0);
    assertEquals(List.of(), toner.problems());
    assertTrue(
        mix.problems().stream().allMatch(p -> p.code().equals("grams-differ-from-trade")),
        mix.problems().toString());
  }

  private static void advise(Placement placement, GuestDocument guest) {
    LiftAdvice advice =
        LiftAdvice.of(placement, guest.hair(), guest.wish(), HOUSE.productsBySlot(), HOUSE.lift());
    for (PlacedFoil foil : placement.foils()) {
      ProductEntry product = HOUSE.productsBySlot().get(foil.mix());
      assertEquals(product.kind().lightens(), advice.window(foil).isPresent());
      assertTrue(advice.window(foil).map(product.window()::holds).orElse(true));
    }
    boolean tooMuch =
        advice.zones().stream()
            .anyMatch(z -> z.levels().orElse(0) > HOUSE.lift().mostLevelsInOneVisit());
    assertEquals(
        tooMuch, advice.problems().stream().anyMatch(p -> p.code().equals("lift-too-much")));
  }
}
