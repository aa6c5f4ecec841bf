package foilwright.service.mix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.service.FoilStock;
import foilwright.service.MixRatio;
import foilwright.service.MixSettings;
import foilwright.service.ProductEntry;
import foilwright.service.ProductKind;
import foilwright.service.ServiceSamples;
import foilwright.service.ServiceSamples.Foil;
import foilwright.service.TakeUp;
import foilwright.service.TimeWindow;
import foilwright.service.TonerEntry;
import foilwright.units.Length;
import foilwright.units.Mass;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MixPlanReferenceTest {
  private static final MixSettings USUAL = MixSettings.USUAL;
  private static final TimeWindow WINDOW =
      new TimeWindow(Minutes.ofMinutes(5), Minutes.ofMinutes(20));

  private static ProductEntry product(TakeUp takeUp, double developer) {
    return new ProductEntry(
        "powder lightener, entry 1",
        ProductKind.LIGHTENER,
        new MixRatio(1, 2),
        Share.ofPercent(developer),
        new TimeWindow(Minutes.ofMinutes(20), Minutes.ofMinutes(45)),
        Minutes.ofMinutes(40),
        takeUp,
        true);
  }

  private static Foil foil(int number, double hairGrams, double lengthMm, double picked) {
    return new Foil(number, Zone.CROWN, "A", 90, hairGrams, lengthMm, 0, picked);
  }

  private static List<MixPlan.Placed> everyMinute(int foils) {
    return IntStream.range(0, foils)
        .mapToObj(i -> new MixPlan.Placed(Minutes.ofMinutes(i), Minutes.ofMinutes(i + 1)))
        .toList();
  }

  private static MixPlan plan(List<Foil> foils, ProductEntry product) {
    Placement placement = ServiceSamples.placement(foils);
    return MixPlan.of(placement, Map.of("A", product), USUAL, everyMinute(foils.size()));
  }

  private static List<String> codes(List<Problem> problems) {
    return problems.stream().map(Problem::code).toList();
  }

  /** 20 foils with 1.5 g of hair: 20 x (0.9 + 1.2 x 1.5) = 54 g, 60.48 with waste: 21 and 42 g. */
  @Test
  void gramsOfASlot() {
    List<Foil> foils = IntStream.rangeClosed(1, 20).mapToObj(n -> foil(n, 1.5, 250, 0.5)).toList();
    MixPlan plan = plan(foils, product(TakeUp.USUAL, 6));
    SlotMix slot = plan.slot("A").orElseThrow();
    assertEquals(54, slot.onFoils().toGrams(), 1e-9);
    assertEquals(30, slot.hair().toGrams(), 1e-9);
    assertEquals(21, slot.productWeight().toGrams(), 1e-9);
    assertEquals(42, slot.developerWeight().toGrams(), 1e-9);
    assertEquals(20, slot.foils());
    assertEquals(4.047, slot.readyToUse().toPercent(), 0.0005);
    assertEquals(List.of(), plan.problems());
    assertEquals(plan.bowls(), slot.bowls());
    assertEquals(slot.hair(), plan.lightenedHair());
    TakeUp weighed =
        TakeUp.USUAL.withWeighBack(Mass.ofGrams(54), Mass.ofGrams(60), Optional.empty());
    MixPlan again = plan(foils, product(weighed, 6));
    assertEquals(60, again.slot("A").orElseThrow().onFoils().toGrams(), 1e-9);
    assertEquals(List.of("weighed-back"), codes(again.problems()));
  }

  /** Common practice: regrowth 1 to 1.5 g, mid 2 to 3.5 g, long or solid 4 to 6 g a foil. */
  @ParameterizedTest
  @CsvSource({
    "40, 0.5, 0.3, REGROWTH, true",
    "50, 1, 0.3, REGROWTH, true",
    "40, 0.5, 0.9, REGROWTH, false",
    "250, 0.5, 1.5, MID, true",
    "250, 0.5, 0.5, MID, false",
    "250, 1, 3, LONG_OR_SOLID, true",
    "350, 0.5, 3, LONG_OR_SOLID, true",
    "350, 0.5, 0.5, LONG_OR_SOLID, false"
  })
  void theTradesGramsAsACrossCheck(
      double lengthMm, double picked, double hairGrams, TradeGrams kind, boolean agree) {
    Foil foil = foil(1, hairGrams, lengthMm, picked);
    assertEquals(kind, TradeGrams.of(ServiceSamples.placement(List.of(foil)).foils().get(0)));
    List<Problem> problems = plan(List.of(foil), product(TakeUp.USUAL, 6)).problems();
    assertEquals(agree ? List.of() : List.of("grams-differ-from-trade"), codes(problems));
    if (!agree) {
      assertTrue(problems.get(0).message().contains(kind.words()), problems.get(0).message());
    }
  }

  @Test
  void foilsOfASlotWithoutAProductAreLeftOut() {
    List<Foil> foils =
        List.of(foil(1, 1.5, 250, 0.5), new Foil(2, Zone.CROWN, "B"), foil(3, 1.5, 250, 0.5));
    MixPlan plan = plan(foils, product(TakeUp.USUAL, 6));
    assertEquals(List.of(1, 3), plan.foils().stream().map(FoilMix::number).toList());
    assertEquals(2, plan.foils().get(1).begin().toMinutes(), 0);
    assertEquals(Optional.empty(), plan.slot("B"));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            MixPlan.foils(
                ServiceSamples.placement(foils), Map.of(), everyMinute(foils.size() - 1)));
  }

  @Test
  void theDeveloperIsCrossedWhenTheDrawerHasItNot() {
    MixSettings drawer =
        new MixSettings(
            Mass.ofGrams(1),
            Share.ofPercent(12),
            30,
            List.of(Share.ofPercent(12), Share.ofPercent(3)));
    Placement placement = ServiceSamples.placement(List.of(foil(1, 1.5, 250, 0.5)));
    MixPlan plan =
        MixPlan.of(placement, Map.of("A", product(TakeUp.USUAL, 6)), drawer, everyMinute(1));
    MixingCross cross = plan.bowls().get(0).cross().orElseThrow();
    assertTrue(
        cross.strongerWeight().plus(cross.weakerWeight()).compareTo(plan.bowls().get(0).developer())
            >= 0);
    assertEquals(6, cross.strength().toPercent(), 0.1);
    assertEquals(List.of(), plan.problems());
    MixPlan cannot =
        MixPlan.of(placement, Map.of("A", product(TakeUp.USUAL, 1.5)), drawer, everyMinute(1));
    assertEquals(List.of("developer-not-in-drawer"), codes(cannot.problems()));
  }

  /** A sheet of 300 mm: folded to 150 mm, two to 300 mm, ends turned back beyond. */
  @ParameterizedTest
  @CsvSource({
    "150, 0, FOLDED, 1",
    "160, 10, FOLDED, 1",
    "151, 0, TWO, 2",
    "300, 0, TWO, 2",
    "301, 0, TWO_TURNED_BACK, 2",
    "20, 30, FOLDED, 1"
  })
  void layingByTreatedLength(
      double lengthMm, double startMm, FoilSheets.Laying laying, int sheets) {
    Placement placement =
        ServiceSamples.placement(
            List.of(new Foil(1, Zone.CROWN, "A", 90, 1, lengthMm, startMm, 0.5)));
    FoilSheets cut = FoilSheets.of(placement.foils(), List.of(stock("standard", 110, 95, 300)));
    assertEquals(laying, cut.foils().get(0).laying());
    assertEquals(sheets, cut.counts().get(0).sheets());
  }

  private static FoilStock stock(String name, double width, double usable, double length) {
    return new FoilStock(
        name,
        Length.ofMillimetres(width),
        Length.ofMillimetres(usable),
        Length.ofMillimetres(length));
  }

  @Test
  void theNarrowestThatHoldsIt() {
    List<Foil> foils = new ArrayList<>();
    double[] widths = {95, 78, 40, 78.5, 120};
    for (double width : widths) {
      foils.add(new Foil(foils.size() + 1, Zone.CROWN, "A", width, 1, 100, 0, 0.5));
    }
    List<FoilStock> drawer =
        List.of(
            stock("standard", 110, 95, 300),
            stock("narrow", 90, 78, 300),
            stock("wide", 125, 108, 150));
    FoilSheets cut = FoilSheets.of(ServiceSamples.placement(foils).foils(), drawer);
    assertEquals(
        List.of("standard", "narrow", "narrow", "standard", "wide"),
        cut.foils().stream().map(c -> c.stock().name()).toList());
    assertEquals(
        List.of("2 standard FOLDED", "2 narrow FOLDED", "1 wide TWO"),
        cut.counts().stream()
            .map(c -> c.foils() + " " + c.stock().name() + " " + c.laying())
            .toList());
    assertEquals(List.of("foil-wider-than-stock"), codes(cut.problems()));
    assertThrows(IllegalArgumentException.class, () -> FoilSheets.of(List.of(), List.of()));
  }

  private static TonerEntry toner() {
    return new TonerEntry(
        "toner, entry 1",
        List.of(
            new TonerEntry.ShadePart("beige, level 9", 2),
            new TonerEntry.ShadePart("pearl, level 9", 1)),
        new MixRatio(1, 2),
        Share.ofPercent(1.9),
        WINDOW);
  }

  /** 20 g and 1 g for each of 25 g of hair: 45 g, of which 15 of colour: 10 and 5, with 30. */
  @Test
  void tonerByItsParts() {
    TonerMix mix = TonerMix.of(toner(), Mass.ofGrams(25), USUAL);
    assertEquals(
        List.of(
            new TonerMix.ShadeWeight("beige, level 9", Mass.ofGrams(10)),
            new TonerMix.ShadeWeight("pearl, level 9", Mass.ofGrams(5))),
        mix.shades());
    assertEquals(30, mix.developer().toGrams(), 1e-9);
    assertEquals(45, mix.mixed().toGrams(), 1e-9);
    assertEquals(1.922 * 2 / 3, mix.readyToUse().toPercent(), 0.0005);
    assertEquals(List.of(), mix.problems());
    TonerMix none = TonerMix.of(toner(), Mass.ZERO, USUAL);
    assertEquals(5 + 3 + 16, none.mixed().toGrams(), 1e-9);
  }

  /** Common practice: 5 min sheer, about 15 usual, 20 saturated. */
  @Test
  void howSaturationFollowsTime() {
    assertEquals(Optional.empty(), toner().saturationAfter(Minutes.ofMinutes(4)));
    assertEquals(Optional.of("sheer"), toner().saturationAfter(Minutes.ofMinutes(5)));
    assertEquals(Optional.of("sheer"), toner().saturationAfter(Minutes.ofMinutes(14.9)));
    assertEquals(Optional.of("usual"), toner().saturationAfter(Minutes.ofMinutes(15)));
    assertEquals(Optional.of("saturated"), toner().saturationAfter(Minutes.ofMinutes(60)));
  }
}
