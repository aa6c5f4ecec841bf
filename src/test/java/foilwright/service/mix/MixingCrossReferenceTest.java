package foilwright.service.mix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.problem.Problem;
import foilwright.service.MixSettings;
import foilwright.units.Mass;
import foilwright.units.Share;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class MixingCrossReferenceTest {
  private static final Share WATER = Share.ZERO;

  private static Share percent(double percent) {
    return Share.ofPercent(percent);
  }

  private static MixSettings settings(double stepGrams, double... developers) {
    return new MixSettings(
        Mass.ofGrams(stepGrams),
        Share.ofPercent(12),
        30,
        Arrays.stream(developers).mapToObj(Share::ofPercent).toList());
  }

  /** The common rule: 40 volumes and water, 1 to 1, are 20 volumes. */
  @Test
  void fortyVolumesAndWater() {
    Share forty = Peroxide.ofVolumes(40).label();
    Share twenty = Peroxide.ofVolumes(20).label();
    MixingCross cross = MixingCross.of(twenty, WATER, forty, Mass.ofGrams(60), settings(1));
    assertEquals(1, cross.parts(), 1e-9);
    assertEquals(30, cross.strongerWeight().toGrams(), 1e-9);
    assertEquals(30, cross.weakerWeight().toGrams(), 1e-9);
    assertEquals(20, Peroxide.ofLabel(cross.strength()).toVolumes(), 1e-9);
  }

  /** 12 % and 3 % for 6 %: 3 parts to 6, so a third of the stronger. */
  @Test
  void twoStocks() {
    MixingCross cross =
        MixingCross.of(percent(6), percent(12), percent(3), Mass.ofGrams(90), settings(1));
    assertEquals(0.5, cross.parts(), 1e-9);
    assertEquals(30, cross.strongerWeight().toGrams(), 1e-9);
    assertEquals(60, cross.weakerWeight().toGrams(), 1e-9);
    assertEquals(6, cross.strength().toPercent(), 1e-9);
  }

  /** Weights are steps of the scale, at least what is needed, and the strength says the shift. */
  @Test
  void stepsOfTheScale() {
    for (double step : new double[] {0.1, 0.5, 1, 5}) {
      for (double grams = 7; grams < 80; grams += 3.3) {
        MixingCross cross =
            MixingCross.of(
                percent(3), percent(1.9), percent(6), Mass.ofGrams(grams), settings(step));
        double stronger = cross.strongerWeight().toGrams() / step;
        double weaker = cross.weakerWeight().toGrams() / step;
        assertEquals(Math.rint(stronger), stronger, 1e-9);
        assertEquals(Math.rint(weaker), weaker, 1e-9);
        double all = (stronger + weaker) * step;
        assertTrue(all >= grams - 1e-9 && all < grams + 11 * step, all + " g for " + grams);
        assertEquals(3, cross.strength().toPercent(), 0.1 + 1e-9);
      }
    }
  }

  /** 2 g of 3 % out of 6 and 1.9 %: 1 and 1 g would be 3.95 %, 1 and 3 g are 2.925 %. */
  @Test
  void aLittleMoreForTheSakeOfTheStrength() {
    MixingCross cross =
        MixingCross.of(percent(3), percent(6), percent(1.9), Mass.ofGrams(2), settings(1));
    assertEquals(1, cross.strongerWeight().toGrams(), 1e-9);
    assertEquals(3, cross.weakerWeight().toGrams(), 1e-9);
    assertEquals(2.925, cross.strength().toPercent(), 1e-9);
  }

  @Test
  void refusesWhatDoesNotLieBetween() {
    IllegalArgumentException refused =
        assertThrows(
            IllegalArgumentException.class,
            () ->
                MixingCross.of(percent(9), percent(6), percent(3), Mass.ofGrams(10), settings(1)));
    assertTrue(refused.getMessage().contains("9 %"), refused.getMessage());
    assertTrue(refused.getMessage().contains("6 % and 3 %"), refused.getMessage());
    assertThrows(
        IllegalArgumentException.class,
        () -> MixingCross.of(percent(6), percent(6), percent(6), Mass.ofGrams(10), settings(1)));
  }

  @Test
  void theNearestTwoOfTheDrawer() {
    MixingCross cross =
        MixingCross.find(percent(3), Mass.ofGrams(20), settings(1, 12, 6, 1.9, 0)).orElseThrow();
    assertEquals(percent(6), cross.stronger());
    assertEquals(percent(1.9), cross.weaker());
    assertEquals(
        Optional.empty(), MixingCross.find(percent(6), Mass.ofGrams(20), settings(1, 12, 6, 3)));
    assertEquals(
        Optional.empty(), MixingCross.find(percent(3), Mass.ofGrams(20), settings(1, 12, 6)));
    assertEquals(Optional.empty(), MixingCross.find(percent(3), Mass.ofGrams(20), settings(1)));
    assertEquals(
        List.of("developer-not-in-drawer"),
        SlotMix.drawer("x", percent(3), settings(1, 12, 6)).stream().map(Problem::code).toList());
    assertEquals(List.of(), SlotMix.drawer("x", percent(3), settings(1, 12, 0)));
    assertEquals(List.of(), SlotMix.drawer("x", percent(3), settings(1)));
  }

  @Test
  void words() {
    assertEquals(
        "10 g of 12 % with 10 g of water makes 6 % (wanted 6 %)",
        MixingCross.of(percent(6), percent(12), WATER, Mass.ofGrams(20), settings(1)).words());
  }
}
