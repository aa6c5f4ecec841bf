package foilwright.hair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.geometry.surface.Region;
import foilwright.head.HairlineSettings;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.HeadSettings;
import foilwright.head.PartSetting;
import foilwright.head.TapeMeasurements;
import foilwright.units.Area;
import foilwright.units.Length;
import java.util.Map;
import org.junit.jupiter.api.Test;

class HairOnHeadIdentityTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);
  private static final Length LONG = Length.ofMillimetres(300);
  private static final Length SHORT = Length.ofMillimetres(60);
  private static final HairProfile UNEVEN =
      HairProfile.usual(LONG)
          .withZoneFactors(Map.of(Zone.CROWN, 1.2, Zone.NAPE_LEFT, 0.8, Zone.NAPE_RIGHT, 0.8))
          .withLengths(
              Lengths.of(
                  LONG,
                  Map.of(
                      Zone.NAPE_LEFT, SHORT,
                      Zone.NAPE_RIGHT, SHORT,
                      Zone.FRINGE, SHORT)));

  @Test
  void evenDensityCountsTheArea() {
    HairOnHead hair = HairOnHead.of(HEAD, HairProfile.usual(LONG));
    double expected = 2 * HEAD.scalp().area();
    assertEquals(expected, hair.hairs(HEAD.scalp()), 1e-9 * expected);
  }

  /**
   * Published means, 161 to 226 per cm2, over a published 570 to 590 cm2 of scalp give 92 to 133
   * thousand hairs.
   */
  @Test
  void theUsualHeadHasAUsualNumberOfHairs() {
    double hairs = HairOnHead.of(HEAD, HairProfile.usual(LONG)).hairs(HEAD.scalp());
    assertTrue(hairs > 92_000 && hairs < 133_000, "hairs " + hairs);
  }

  @Test
  void zonesAddUpToTheScalp() {
    HairOnHead hair = HairOnHead.of(HEAD, UNEVEN);
    Map<Zone, Double> byZone = hair.hairsByZone(HEAD.scalp());
    assertEquals(Zone.values().length, byZone.size());
    double area = 0;
    for (Map.Entry<Zone, Area> entry : hair.areas(HEAD.scalp()).entrySet()) {
      double mm2 = entry.getValue().toSquareMillimetres();
      area += mm2;
      assertEquals(HEAD.zone(entry.getKey()).area(), mm2, 1e-9 * mm2);
      double expected = mm2 * UNEVEN.densityIn(entry.getKey()).toHairsPerSquareMillimetre();
      assertEquals(expected, byZone.get(entry.getKey()), 1e-9 * expected);
    }
    assertEquals(HEAD.scalp().area(), area, 1e-9 * area);
  }

  @Test
  void partsAddUpToTheRegion() {
    HairOnHead hair = HairOnHead.of(HEAD, UNEVEN);
    Region low = HEAD.scalp().clip(HEAD.distanceFromHairline(), 0, 37.3);
    Region high = HEAD.scalp().clip(HEAD.distanceFromHairline(), 37.3, Double.POSITIVE_INFINITY);
    double whole = hair.hairs(HEAD.scalp());
    assertEquals(whole, hair.hairs(low) + hair.hairs(high), 1e-9 * whole);
    double length = hair.meanLength(HEAD.scalp()).toMillimetres() * HEAD.scalp().area();
    assertEquals(
        length,
        hair.meanLength(low).toMillimetres() * low.area()
            + hair.meanLength(high).toMillimetres() * high.area(),
        1e-9 * length);
  }

  @Test
  void oneLengthStaysOneLength() {
    HairOnHead hair = HairOnHead.of(HEAD, HairProfile.usual(LONG));
    assertEquals(300, hair.meanLength(HEAD.scalp()).toMillimetres(), 1e-9);
    assertEquals(300, hair.meanLength(HEAD.zone(Zone.CROWN)).toMillimetres(), 1e-9);
  }

  /**
   * Half way between two zones the length is half way between theirs; far inside it is the zone's.
   */
  @Test
  void lengthsBlendOverABorder() {
    HairOnHead hair = HairOnHead.of(HEAD, UNEVEN);
    Region nape = HEAD.zone(Zone.NAPE_LEFT);
    Region above = HEAD.zone(Zone.BACK_UPPER_LEFT);
    double inNape = hair.meanLength(nape).toMillimetres();
    double inBack = hair.meanLength(above).toMillimetres();
    assertTrue(inNape > 60 && inNape < 180, "nape " + inNape);
    assertTrue(inBack > 180 && inBack < 300, "back " + inBack);
    assertEquals(300, hair.meanLength(HEAD.zone(Zone.CROWN)).toMillimetres(), 5);
    assertTrue(HEAD.scalp().least(hair.lengths()) >= 60 - 1e-9);
    assertTrue(HEAD.scalp().greatest(hair.lengths()) <= 300 + 1e-9);
  }

  @Test
  void aMirroredTableGivesMirroredHair() {
    HairProfile left =
        HairProfile.usual(LONG).withLengths(Lengths.of(LONG, Map.of(Zone.NAPE_LEFT, SHORT)));
    HairOnHead here = HairOnHead.of(HEAD, left);
    HairOnHead there = HairOnHead.of(HEAD, left.withLengths(left.lengths().mirrored()));
    for (Zone zone : Zone.values()) {
      assertEquals(
          here.meanLength(HEAD.zone(zone)).toMillimetres(),
          there.meanLength(HEAD.zone(zone.mirrored())).toMillimetres(),
          1e-9);
    }
  }

  /** The blend is a length on the scalp, not a number of triangles: 2.5 and 4 mm edges agree. */
  @Test
  void theBlendDoesNotDependOnTheMesh() {
    Head coarse =
        Head.fit(
                HeadKind.WOMAN,
                TapeMeasurements.NONE,
                HairlineSettings.USUAL,
                PartSetting.NONE,
                HeadSettings.USUAL.withMeshEdge(Length.ofMillimetres(4)))
            .head()
            .orElseThrow();
    for (Zone zone : Zone.values()) {
      assertEquals(
          HairOnHead.of(HEAD, UNEVEN).meanLength(HEAD.zone(zone)).toMillimetres(),
          HairOnHead.of(coarse, UNEVEN).meanLength(coarse.zone(zone)).toMillimetres(),
          0.01 * 300,
          zone.words());
    }
  }
}
