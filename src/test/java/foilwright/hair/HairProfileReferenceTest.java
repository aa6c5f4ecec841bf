package foilwright.hair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.units.Density;
import foilwright.units.Length;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class HairProfileReferenceTest {
  /** 70 um and 1.32 g/cm3: 5.08 mg per metre (textbook density, quoted from memory). */
  @Test
  void oneMetreOfUsualHair() {
    HairProfile hair = HairProfile.usual(Length.ofMillimetres(250));
    assertEquals(5.08, hair.massOf(1, Length.ofMillimetres(1000)).toMilligrams(), 0.005);
  }

  /**
   * A thousand hairs of 250 mm: 1000 x 250 x pi x 0.07^2 / 4 x 1.32 mg, and hairs and length enter
   * alike.
   */
  @Test
  void massGrowsWithHairsAndLength() {
    HairProfile hair = HairProfile.usual(Length.ofMillimetres(250));
    double expected = 1000 * 250 * Math.PI * 0.07 * 0.07 / 4 * 1.32;
    assertEquals(
        expected, hair.massOf(1000, Length.ofMillimetres(250)).toMilligrams(), 1e-9 * expected);
    assertEquals(
        expected, hair.massOf(250, Length.ofMillimetres(1000)).toMilligrams(), 1e-9 * expected);
  }

  /** The default lies between the published group means, 161 and 226 per cm2. */
  @Test
  void usualDensityIsWithinThePublishedMeans() {
    assertTrue(HairProfile.USUAL_DENSITY.compareTo(HairProfile.LEAST_PUBLISHED_DENSITY) > 0);
    assertTrue(HairProfile.USUAL_DENSITY.compareTo(HairProfile.MOST_PUBLISHED_DENSITY) < 0);
  }

  @Test
  void zoneFactorsScaleTheDensity() {
    HairProfile hair =
        HairProfile.usual(Length.ofMillimetres(250)).withZoneFactors(Map.of(Zone.CROWN, 1.1));
    assertEquals(220, hair.densityIn(Zone.CROWN).toHairsPerSquareCentimetre(), 1e-9);
    assertEquals(200, hair.densityIn(Zone.FRINGE).toHairsPerSquareCentimetre(), 0);
  }

  @Test
  void refusesWhatNoHeadHas() {
    HairProfile hair = HairProfile.usual(Length.ofMillimetres(250));
    assertThrows(IllegalArgumentException.class, () -> hair.withDensity(Density.ZERO));
    assertThrows(
        IllegalArgumentException.class, () -> hair.withZoneFactors(Map.of(Zone.CROWN, -0.1)));
    assertThrows(IllegalArgumentException.class, () -> Lengths.same(Length.ofMillimetres(-1)));
    assertThrows(IllegalArgumentException.class, () -> new Level(11));
  }

  @Test
  void lengthsMirror() {
    Lengths lengths =
        Lengths.of(Length.ofMillimetres(200), Map.of(Zone.NAPE_LEFT, Length.ofMillimetres(50)));
    assertEquals(Length.ofMillimetres(50), lengths.mirrored().in(Zone.NAPE_RIGHT));
    assertEquals(Length.ofMillimetres(200), lengths.mirrored().in(Zone.NAPE_LEFT));
    assertEquals(lengths, lengths.mirrored().mirrored());
  }

  /**
   * Human head hair is 40 to 120 um across (Randebrook 1964) or 15 to 110 um (Kaswell 1953; both
   * quoted by Robbins 2002 and BioNumbers 116402), in the mean of 120 people 57.1 um with a
   * deviation of 10.6 um (Erik et al. 2008, BioNumbers 106859). The default lies within both ranges
   * and less than two of those deviations from that mean, and both ranges can be typed.
   */
  @Test
  void usualDiameterIsWithinThePublishedRanges() {
    double um = 1000 * HairProfile.USUAL_DIAMETER.toMillimetres();
    assertTrue(um > 40 && um < 110);
    assertEquals(57.1, um, 2 * 10.6);
    for (double published : new double[] {15, 40, 110, 120}) {
      Length across = Length.ofMillimetres(published / 1000);
      HairProfile usual = HairProfile.usual(Length.ofMillimetres(1000));
      HairProfile hair =
          new HairProfile(
              usual.density(),
              Map.of(),
              across,
              HairNature.UNKNOWN,
              Map.of(),
              Map.of(),
              usual.lengths(),
              Optional.empty());
      // As thick hair weighs as its section: 5.08 mg a metre at 70 um.
      double mg = hair.massOf(1, Length.ofMillimetres(1000)).toMilligrams();
      assertEquals(5.08 * published * published / 4900, mg, 0.002 * mg);
    }
  }
}
