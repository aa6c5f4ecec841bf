package foilwright.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.hair.HairProfile;
import foilwright.problem.Problem;
import foilwright.units.Length;
import foilwright.units.Mass;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TakeUpReferenceTest {
  private static final Optional<LocalDate> NO_DATE = Optional.empty();

  private static Mass hair(double widthMm, double sliceMm, double picked, double lengthMm) {
    HairProfile usual = HairProfile.usual(Length.ofMillimetres(lengthMm));
    double hairs =
        widthMm * sliceMm * picked * HairProfile.USUAL_DENSITY.toHairsPerSquareMillimetre();
    return usual.massOf(hairs, Length.ofMillimetres(lengthMm));
  }

  /**
   * The trade weighs about 1.1, 2.9 and 6.2 g on a small, a middle and a long foil (common
   * practice, no source). Foils of one usable width of 95 mm, 200 hairs per cm2 of 70 um: regrowth
   * of 70 mm in a woven 5 mm slice; 275 mm in a woven half-inch slice; 360 mm in a half-inch slice
   * taken whole.
   */
  @ParameterizedTest
  @CsvSource({"5, 0.5, 70, 1.1", "12.7, 0.5, 275, 2.9", "12.7, 1, 360, 6.2"})
  void whatTheTradeWeighs(double sliceMm, double picked, double lengthMm, double grams) {
    assertEquals(grams, TakeUp.USUAL.mixed(hair(95, sliceMm, picked, lengthMm)).toGrams(), 0.05);
  }

  /** One factor on the hair alone would be over four times larger for the small foil. */
  @Test
  void oneFactorCannot() {
    double small = 1.1 / hair(95, 5, 0.5, 70).toGrams();
    double large = 6.2 / hair(95, 12.7, 1, 360).toGrams();
    assertTrue(small > 4 * large, small + " against " + large);
  }

  /** 71 g used of 64 planned: the same foils are planned at 71 g from then on. */
  @Test
  void aWeighingCorrectsBothConstants() {
    TakeUp weighed = TakeUp.USUAL.withWeighBack(Mass.ofGrams(64), Mass.ofGrams(71), NO_DATE);
    assertEquals(71.0 / 64, weighed.factor(), 1e-12);
    assertEquals(0.9 * 71 / 64, weighed.effectiveFilm().toGrams(), 1e-12);
    assertEquals(1.2 * 71 / 64, weighed.effectivePerGramOfHair(), 1e-12);
    assertEquals(
        TakeUp.USUAL.mixed(Mass.ofGrams(2)).toGrams() * 71 / 64,
        weighed.mixed(Mass.ofGrams(2)).toGrams(),
        1e-12);
  }

  /** What the corrected plan says is weighed again and found right: nothing changes. */
  @Test
  void aWeighingThatAgreesChangesNothing() {
    TakeUp once = TakeUp.USUAL.withWeighBack(Mass.ofGrams(64), Mass.ofGrams(72), NO_DATE);
    TakeUp twice = once.withWeighBack(Mass.ofGrams(72), Mass.ofGrams(72), NO_DATE);
    assertEquals(64, twice.weighBacks().get(1).planned().toGrams(), 1e-12);
    assertEquals(once.factor(), twice.factor(), 1e-12);
    assertEquals(once, twice.withoutLastWeighBack());
    assertEquals(TakeUp.USUAL, once.withoutLastWeighBack().withoutLastWeighBack());
  }

  @Test
  void farOffIsKeptInBoundsAndSaid() {
    TakeUp high = TakeUp.USUAL.withWeighBack(Mass.ofGrams(10), Mass.ofGrams(50), NO_DATE);
    TakeUp low = TakeUp.USUAL.withWeighBack(Mass.ofGrams(100), Mass.ofGrams(5), NO_DATE);
    assertEquals(3, high.factor(), 0);
    assertEquals(0.3, low.factor(), 0);
    Problem told = high.problems("products").get(0);
    assertEquals("weighed-back-far-off", told.code());
    assertTrue(told.message().contains("5.00 of what was planned"), told.message());
    assertEquals(List.of(), TakeUp.USUAL.problems("products"));
    TakeUp usual = TakeUp.USUAL.withWeighBack(Mass.ofGrams(50), Mass.ofGrams(55), NO_DATE);
    assertEquals("weighed-back", usual.problems("products").get(0).code());
  }

  @Test
  void theOldestGoes() {
    TakeUp many = TakeUp.USUAL;
    for (int i = 0; i < TakeUp.MOST_WEIGH_BACKS + 5; i++) {
      many = many.withWeighBack(Mass.ofGrams(50), Mass.ofGrams(50), NO_DATE);
    }
    assertEquals(TakeUp.MOST_WEIGH_BACKS, many.weighBacks().size());
  }

  @Test
  void refusesNonsense() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new TakeUp.WeighBack(Mass.ZERO, Mass.ofGrams(1), NO_DATE));
    assertThrows(IllegalArgumentException.class, () -> new TakeUp(Mass.ofGrams(-1), 1, List.of()));
    assertThrows(
        IllegalArgumentException.class, () -> new TakeUp(Mass.ofGrams(1), Double.NaN, List.of()));
  }
}
