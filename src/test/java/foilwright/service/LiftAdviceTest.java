package foilwright.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.hair.Fineness;
import foilwright.hair.HairNature;
import foilwright.hair.HairProfile;
import foilwright.hair.Level;
import foilwright.hair.OldLightener;
import foilwright.hair.Porosity;
import foilwright.placement.Placement;
import foilwright.problem.Problem;
import foilwright.service.ServiceSamples.Foil;
import foilwright.units.Length;
import foilwright.units.Minutes;
import foilwright.units.Share;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LiftAdviceTest {
  private static final HairNature MIDDLE =
      HairNature.of(new Level(6), Fineness.MEDIUM, Porosity.MEDIUM);
  private static final HairNature DARK = HairNature.of(new Level(3), Fineness.COARSE, Porosity.LOW);
  private static final HairNature LIGHT = HairNature.of(new Level(9), Fineness.FINE, Porosity.HIGH);

  private static TimeWindow window(double least, double most) {
    return new TimeWindow(Minutes.ofMinutes(least), Minutes.ofMinutes(most));
  }

  private static ProductEntry product(String name, ProductKind kind, double developer) {
    return new ProductEntry(
        name,
        kind,
        new MixRatio(1, 2),
        Share.ofPercent(developer),
        window(20, 45),
        List.of(new LiftWindow(2, window(20, 30)), new LiftWindow(4, window(30, 45))),
        Minutes.ofMinutes(40),
        TakeUp.USUAL,
        Minutes.ofMinutes(10),
        true);
  }

  private static final Map<String, ProductEntry> PRODUCTS =
      Map.of(
          "A", product("lightener", ProductKind.LIGHTENER, 6),
          "B", product("lowlight", ProductKind.LOWLIGHT, 3),
          "C", product("weaker lightener", ProductKind.LIGHTENER, 3));

  private static final Placement PLACEMENT =
      ServiceSamples.placement(
          List.of(
              new Foil(1, Zone.FRINGE, "A"),
              new Foil(2, Zone.CROWN, "A"),
              new Foil(3, Zone.NAPE_LEFT, "A"),
              new Foil(4, Zone.NAPE_RIGHT, "A"),
              new Foil(5, Zone.TOP_LEFT, "B")));

  private static LiftAdvice advice(HairProfile hair, Integer wish) {
    return LiftAdvice.of(
        PLACEMENT, hair, Optional.ofNullable(wish).map(Level::new), PRODUCTS, LiftTables.USUAL);
  }

  private static HairProfile hair(HairNature whole, Map<Zone, HairNature> zones) {
    return HairProfile.usual(Length.ofMillimetres(300)).withNature(whole, zones);
  }

  private static HairProfile mixed() {
    return hair(MIDDLE, Map.of(Zone.FRINGE, LIGHT, Zone.NAPE_LEFT, DARK, Zone.NAPE_RIGHT, DARK));
  }

  private static Problem told(LiftAdvice advice, String code) {
    List<Problem> found = advice.problems().stream().filter(p -> p.code().equals(code)).toList();
    assertEquals(1, found.size(), advice.problems().toString());
    return found.get(0);
  }

  private static List<String> codes(LiftAdvice advice) {
    return advice.problems().stream().map(Problem::code).toList();
  }

  @Test
  void levelsWindowAndWarmthOfEachZone() {
    LiftAdvice advice = advice(mixed(), 8);
    assertEquals(
        List.of(Zone.NAPE_LEFT, Zone.NAPE_RIGHT, Zone.CROWN, Zone.FRINGE),
        advice.zones().stream().map(LiftAdvice.ZoneLift::zone).toList());
    LiftAdvice.ZoneLift crown = advice.zones().get(2);
    assertEquals(Optional.of(2), crown.levels());
    assertEquals(Map.of("A", window(20, 30)), crown.windows());
    assertEquals(Optional.of("yellow"), crown.warmth());
    assertEquals(window(30, 45), advice.window(PLACEMENT.foils().get(2)).orElseThrow());
    assertEquals(Optional.empty(), advice.window(PLACEMENT.foils().get(4)));
  }

  /** Common practice: about 4 levels in one visit. */
  @Test
  void moreThanOneVisitMayLift() {
    Problem told = told(advice(mixed(), 8), "lift-too-much");
    assertTrue(told.message().startsWith("nape: level 8 asks for 5 levels"), told.message());
    assertTrue(told.message().endsWith("expect yellow-orange at the most"), told.message());
    assertTrue(told.cure().contains("a wish of level 7"), told.cure());
  }

  @Test
  void alreadyThere() {
    Problem told = told(advice(mixed(), 9), "lift-not-needed");
    assertTrue(told.message().startsWith("fringe: the hair is at level 9 already"), told.message());
  }

  @Test
  void whatIsMissingIsSaid() {
    LiftAdvice advice = advice(hair(HairNature.UNKNOWN, Map.of(Zone.CROWN, MIDDLE)), 8);
    Problem told = told(advice, "level-missing");
    assertTrue(told.message().contains("MISSING in fringe, nape"), told.message());
    assertEquals(window(20, 45), advice.window(PLACEMENT.foils().get(0)).orElseThrow());
    assertEquals(window(20, 30), advice.window(PLACEMENT.foils().get(1)).orElseThrow());
  }

  @Test
  void withoutAWishOnlyOrderAndStrength() {
    LiftAdvice advice = advice(mixed(), null);
    assertEquals(List.of("lift-order", "lift-strength"), codes(advice));
    assertEquals(Optional.empty(), advice.zones().get(0).levels());
    assertEquals(List.of(), codes(advice(hair(MIDDLE, Map.of()), null)));
  }

  @Test
  void darkCoarseTightHairFirst() {
    Problem told = told(advice(mixed(), null), "lift-order");
    assertEquals(
        "begin with nape (level 3, coarse hair, low porosity); leave fringe (level 9, fine hair,"
            + " high porosity) to the end",
        told.message());
  }

  @Test
  void hairLightenedBeforeGoesLastAndTakesTheWeakerMix() {
    HairProfile before =
        hair(MIDDLE, Map.of())
            .withOldLightener(
                Map.of(
                    Zone.CROWN, new OldLightener(Share.ofPercent(30), Length.ofMillimetres(40))));
    LiftAdvice advice = advice(before, null);
    assertEquals(Zone.CROWN, advice.zones().get(3).zone());
    Problem told = told(advice, "lift-strength");
    assertTrue(told.message().startsWith("crown: hair that is lightened before"), told.message());
    assertTrue(told.cure().startsWith("take mix C there (weaker lightener, 3 %)"), told.cure());
  }

  /** Above 6 % at the scalp, by the label, nearer than 10 mm. */
  @Test
  void strongDeveloperAtTheScalp() {
    Map<String, ProductEntry> strong =
        Map.of("A", product("strong", ProductKind.LIGHTENER, 9), "B", PRODUCTS.get("B"));
    Placement placement =
        ServiceSamples.placement(
            List.of(
                new Foil(1, Zone.CROWN, "A", 90, 1, 250, 10, 0.5),
                new Foil(2, Zone.CROWN, "A", 90, 1, 250, 9, 0.5),
                new Foil(3, Zone.CROWN, "B", 90, 1, 250, 0, 0.5)));
    HairProfile hair = hair(MIDDLE, Map.of());
    LiftAdvice advice = LiftAdvice.of(placement, hair, Optional.empty(), strong, LiftTables.USUAL);
    Problem told = told(advice, "strong-at-scalp");
    assertTrue(told.message().startsWith("1 foil carries"), told.message());
    assertTrue(told.message().contains("foil 2"), told.message());
    assertEquals(
        List.of(),
        codes(LiftAdvice.of(placement, hair, Optional.empty(), PRODUCTS, LiftTables.USUAL)));
  }

  @Test
  void windowsByLiftStayInsideTheWindow() {
    ProductEntry product = PRODUCTS.get("A");
    assertEquals(window(20, 30), product.windowForLift(1));
    assertEquals(window(30, 45), product.windowForLift(3));
    assertEquals(window(30, 45), product.windowForLift(7));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            new ProductEntry(
                "x",
                ProductKind.LIGHTENER,
                new MixRatio(1, 2),
                Share.ofPercent(6),
                window(20, 45),
                List.of(new LiftWindow(2, window(20, 46))),
                Minutes.ofMinutes(40),
                TakeUp.USUAL,
                Minutes.ofMinutes(10),
                true));
  }
}
