package foilwright.service.mix;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.service.MixRatio;
import foilwright.units.Share;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class PeroxideReferenceTest {
  private static final double HALF_A_DIGIT = 0.0005;

  /** The stoichiometry of 2 H2O2 -> 2 H2O + O2, and the labels that round it. */
  @ParameterizedTest
  @CsvFileSource(resources = "/reference/chemistry/peroxide_volumes.csv", numLinesToSkip = 1)
  void volumesWeightAndLabel(double volumes, String printed, double label) {
    Peroxide developer = Peroxide.ofVolumes(volumes);
    double weightOverVolume = Double.parseDouble(printed);
    double halfADigit = 0.5 * Math.pow(10, printed.indexOf('.') - printed.length() + 1);
    assertEquals(weightOverVolume, developer.weightOverVolume().toPercent(), halfADigit);
    assertEquals(label, developer.label().toPercent(), 1e-9);
    assertEquals(volumes, Peroxide.ofLabel(Share.ofPercent(label)).toVolumes(), 1e-9);
    assertEquals(
        volumes, Peroxide.ofWeightOverVolume(Share.ofPercent(weightOverVolume)).toVolumes(), 0.002);
  }

  /** 1 L of a solution with one mole holds 34.01468 g and gives off half a mole of oxygen. */
  @Test
  void oneMoleInALitre() {
    Peroxide molar = Peroxide.ofWeightOverVolume(Share.ofPercent(3.401468));
    assertEquals(22.413969 / 2, molar.toVolumes(), 1e-9);
  }

  @Test
  void refusedAboveFortyVolumesOrALabelOfTwelvePercent() {
    assertEquals(40, Peroxide.ofLabel(Share.ofPercent(12)).toVolumes(), 1e-9);
    assertThrows(IllegalArgumentException.class, () -> Peroxide.ofVolumes(40.1));
    assertThrows(IllegalArgumentException.class, () -> Peroxide.ofVolumes(-1));
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> Peroxide.ofLabel(Share.ofPercent(12.1)));
    assertTrue(refused.getMessage().contains("12.1 %"), refused.getMessage());
    assertTrue(refused.getMessage().contains("40 volumes"), refused.getMessage());
    assertEquals(12.14, Peroxide.ofVolumes(40).weightOverVolume().toPercent(), 0.005);
  }

  /** One part of product to two of a 6 % developer: two thirds of 6.07 % are ready to use. */
  @Test
  void readyToUse() {
    Peroxide six = Peroxide.ofLabel(Share.ofPercent(6));
    assertEquals(6.070 * 2 / 3, six.readyToUse(new MixRatio(1, 2)).toPercent(), HALF_A_DIGIT);
    assertEquals(6.070 / 2, six.readyToUse(new MixRatio(1, 1)).toPercent(), HALF_A_DIGIT);
    assertEquals(0, six.readyToUse(new MixRatio(1, 0)).toPercent(), 0);
  }

  @Test
  void words() {
    assertEquals("6 % (20 volumes, 6.07 % w/v)", Peroxide.ofVolumes(20).words());
    assertEquals("water", Peroxide.ofVolumes(0).words());
  }
}
