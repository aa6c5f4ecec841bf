package foilwright.hair;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.units.Angle;
import foilwright.units.Length;
import org.junit.jupiter.api.Test;

/** Lengths that follow from how a cut is held, on the usual women's head. */
class HaircutIdentityTest {
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final Length ATNAPE = Length.ofMillimetres(150);

  private static HairOnHead hair(Head head, Haircut cut) {
    return HairOnHead.of(head, HairProfile.usual(Length.ofMillimetres(200)).withCut(cut));
  }

  private static double at(HairOnHead hair, Vector3 place) {
    return hair.head().nearestOnScalp(place).valueOf(hair.lengths());
  }

  private static double at(CutShape shape, Landmark landmark) {
    return at(hair(HEAD, Haircut.of("cut", shape)), HEAD.landmark(landmark));
  }

  @Test
  void oneLengthIsTheWayDownToOneLevelLine() {
    HairOnHead hair = hair(HEAD, Haircut.of("cut", new CutShape.OneLength(ATNAPE)));
    double line = HEAD.landmark(Landmark.NAPE_HAIRLINE).z() - 150;
    assertEquals(150, at(hair, HEAD.landmark(Landmark.NAPE_HAIRLINE)), 0.5);
    double back = HEAD.landmark(Landmark.BACK_POINT).z() - line;
    assertEquals(back, at(hair, HEAD.landmark(Landmark.BACK_POINT)), 0.01 * back);
  }

  @Test
  void holdingDecidesBetweenOneLengthAndTheSameEverywhere() {
    for (Landmark landmark : new Landmark[] {Landmark.APEX, Landmark.BACK_POINT}) {
      double one = at(new CutShape.OneLength(ATNAPE), landmark);
      assertEquals(one, at(new CutShape.Graduated(ATNAPE, Angle.ZERO), landmark), 1e-9);
      assertEquals(150, at(new CutShape.Graduated(ATNAPE, Angle.ofDegrees(90)), landmark), 1e-9);
      double half = at(new CutShape.Graduated(ATNAPE, Angle.ofDegrees(60)), landmark);
      assertEquals(150 + (one - 150) / 2, half, 1e-9);
      assertEquals(150, at(new CutShape.UniformLayers(ATNAPE), landmark), 1e-9);
    }
  }

  @Test
  void longLayersReachOnePointAboveTheApex() {
    CutShape shape = new CutShape.LongLayers(ATNAPE);
    assertEquals(150, at(shape, Landmark.APEX), 0.5);
    double front =
        HEAD.landmark(Landmark.FRONT_HAIRLINE)
            .distance(HEAD.landmark(Landmark.APEX).plus(Vector3.UP.times(150)));
    assertEquals(front, at(shape, Landmark.FRONT_HAIRLINE), 0.02 * front);
    assertTrue(at(shape, Landmark.NAPE_HAIRLINE) > at(shape, Landmark.BACK_POINT) + 60);
  }

  @Test
  void leftAndRightAreAlikeWithAPartInTheMiddle() {
    HairOnHead hair = hair(HEAD, Haircut.of("cut", new CutShape.OneLength(ATNAPE)));
    for (int v = 0; v < HEAD.mesh().vertexCount(); v += 97) {
      Vector3 p = HEAD.mesh().vertex(v);
      assertEquals(hair.lengths().at(v), at(hair, p.mirrored()), 0.5);
    }
  }

  @Test
  void hairOfASidePartStaysOnItsSide() {
    Head left = HEAD.withPart(PartSetting.of(PartSide.LEFT));
    HairOnHead hair = hair(left, Haircut.of("cut", new CutShape.OneLength(ATNAPE)));
    Vector3 middle = left.partLine().orElseThrow().at(40);
    double narrow = at(hair, middle.plus(new Vector3(-4, 0, 0)));
    double wide = at(hair, middle.plus(new Vector3(4, 0, 0)));
    assertTrue(wide > narrow + 30, wide + " beside " + narrow);
  }

  @Test
  void zonesAreJoinedAndAFrameShortensTheFront() {
    Haircut cut =
        Haircut.of("cut", new CutShape.OneLength(ATNAPE))
            .withZone(Zone.FRINGE, new CutShape.UniformLayers(Length.ofMillimetres(90)));
    HairOnHead joined = hair(HEAD, cut);
    assertEquals(90, at(joined, HEAD.landmark(Landmark.FRONT_HAIRLINE)), 8);
    assertTrue(at(joined, HEAD.landmark(Landmark.APEX)) > 250);
    HairOnHead framed =
        hair(
            HEAD,
            Haircut.of("cut", new CutShape.OneLength(ATNAPE))
                .withFrame(
                    new Haircut.FaceFrame(
                        Length.ofMillimetres(120),
                        Length.ofMillimetres(300),
                        Haircut.FaceFrame.USUAL_DEPTH)));
    assertEquals(120, at(framed, HEAD.landmark(Landmark.FRONT_HAIRLINE)), 1);
    assertEquals(
        at(new CutShape.OneLength(ATNAPE), Landmark.BACK_POINT),
        at(framed, HEAD.landmark(Landmark.BACK_POINT)),
        1e-9);
  }
}
