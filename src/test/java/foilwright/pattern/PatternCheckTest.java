package foilwright.pattern;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.problem.Problem;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PatternCheckTest {
  private static final RegionSpec LEFT = RegionSpec.ofZones(Zone.BACK_UPPER_LEFT);
  private static final SectionShape LEVEL = new SectionShape.Horizontal();
  private static final Fill FINE =
      Fill.of(Run.ofMillimetres(3), new Background.Even(Run.ofMillimetres(6)));
  private static final Fill WEDGES =
      FINE.withBackground(
          new Background.Wedge(Run.ofMillimetres(22), WideEnd.FACE, Background.Points.SAME_END));

  private static Section section(String name, RegionSpec region) {
    return Section.of(name, region, LEVEL, TravelFrom.BOTTOM, FINE);
  }

  private static Section shaped(SectionShape shape, TravelFrom from, Fill fill) {
    return Section.of("a", LEFT, shape, from, fill);
  }

  private static SectionShape pivot(double from, double to) {
    return new SectionShape.Pivot(
        new PivotPoint.AtLandmark(Landmark.APEX),
        SectionShape.Axis.SURFACE_NORMAL,
        Angle.ofDegrees(from),
        Angle.ofDegrees(to),
        Extent.ofMillimetres(60));
  }

  private static List<String> codes(Section... sections) {
    return PatternCheck.problems(Pattern.of("test", sections)).stream()
        .map(p -> p.code() + " " + p.path())
        .toList();
  }

  @Test
  void aSoundPatternHasNoProblems() {
    assertEquals(
        List.of(),
        codes(
            section("low", LEFT).withMirror(true),
            section("high", LEFT.withAbove(new HeightBound.EndOf("low")).withExcept("low")),
            shaped(pivot(90, 270), TravelFrom.START, FINE)));
  }

  @Test
  void namesMustBeUniqueKnownAndEarlier() {
    assertEquals(
        List.of("duplicate-name sections[1].name"), codes(section("a", LEFT), section("a", LEFT)));
    assertEquals(
        List.of("unknown-section sections[0].region"), codes(section("a", LEFT.withInside("b"))));
    assertEquals(
        List.of("section-not-earlier sections[0].region"),
        codes(section("a", LEFT.withInside("b")), section("b", LEFT)));
    assertEquals(
        List.of("section-cycle sections[0].region"), codes(section("a", LEFT.withExcept("a"))));
    assertEquals(
        List.of("section-cycle sections[0].region", "section-cycle sections[1].region"),
        codes(section("a", LEFT.withInside("b")), section("b", LEFT.withExcept("a"))));
    assertEquals(
        List.of("unknown-section sections[0].shape"),
        codes(
            shaped(
                SectionShape.Halo.from(new HaloBoundary.InnerEdgeOf("rim")),
                TravelFrom.START,
                FINE)));
  }

  @Test
  void aPairNeedsASide() {
    assertEquals(
        List.of("mirror-without-side sections[0].mirror"),
        codes(section("a", RegionSpec.ofZones(Zone.CROWN)).withMirror(true)));
    assertEquals(
        List.of(),
        codes(
            section("a", RegionSpec.ofZones(Zone.CROWN).withSide(RegionSide.LEFT))
                .withMirror(true)));
  }

  @Test
  void shapeTravelTurnAndWedgeMustFit() {
    assertEquals(
        List.of("travel-does-not-fit sections[0].from"),
        codes(shaped(LEVEL, TravelFrom.EAR, FINE)));
    assertEquals(
        List.of("travel-does-not-fit sections[0].from"),
        codes(shaped(new SectionShape.Vertical(), TravelFrom.NAPE, FINE)));
    assertEquals(
        List.of("travel-does-not-fit sections[0].from"),
        codes(shaped(pivot(0, 90), TravelFrom.TOP, FINE)));
    assertEquals(
        List.of("empty-range sections[0].shape"),
        codes(shaped(pivot(90, 90), TravelFrom.START, FINE)));
    assertEquals(
        List.of("empty-range sections[0].shape"),
        codes(shaped(pivot(-90, 300), TravelFrom.START, FINE)));
    assertEquals(
        List.of("wedge-does-not-fit sections[0].fill.background"),
        codes(shaped(pivot(0, 90), TravelFrom.START, WEDGES)));
    assertEquals(
        List.of("turn-does-not-fit sections[0].turned"),
        codes(
            shaped(new SectionShape.AcrossFall(), TravelFrom.BOTTOM, FINE)
                .withTurned(Angle.ofDegrees(5))));
    assertEquals(
        List.of("empty-range sections[0].shape"),
        codes(
            shaped(
                new SectionShape.Halo(
                    new HaloBoundary.Line(HaloBoundary.HeadLine.HAIRLINE),
                    Extent.parse("0.2 of around"),
                    Optional.of(Extent.parse("0.1 of around"))),
                TravelFrom.START,
                FINE)));
  }

  @Test
  void fillMustHoldTogether() {
    Pick weave = Pick.Weave.ofMillimetres(3, 3);
    Pick deep =
        new Pick.Weave(
            Length.ofMillimetres(3),
            Length.ofMillimetres(3),
            new PickDepth.OfLength(Length.ofMillimetres(4)));
    assertEquals(
        List.of("picks-do-not-combine sections[0].fill.picks"),
        codes(shaped(LEVEL, TravelFrom.TOP, FINE.withPicks(weave, weave))));
    assertEquals(
        List.of("depth-beyond-slice sections[0].fill.picks[0]"),
        codes(shaped(LEVEL, TravelFrom.TOP, FINE.withPicks(deep))));
    assertEquals(
        List.of("nothing-to-stretch sections[0].fill.remainder"),
        codes(
            shaped(
                LEVEL,
                TravelFrom.TOP,
                FINE.withBackground(new Background.None()).withRemainder(Remainder.STRETCH))));
    assertEquals(
        List.of("brick-lay-without-rows sections[0].brickLay"),
        codes(
            shaped(
                    LEVEL,
                    TravelFrom.TOP,
                    FINE.withFoils(new FoilRule.OneCentred(), ShortEnds.USUAL))
                .withBrickLay(true)));
  }

  @Test
  void mirroringTwiceIsTheSame() {
    Section left =
        Section.of(
                "back left",
                LEFT,
                new SectionShape.Diagonal(Angle.ofDegrees(30), LowerEnd.CLIENTS_LEFT),
                TravelFrom.LEFT,
                WEDGES)
            .withTurned(Angle.ofDegrees(4));
    Section right = left.mirrored();
    assertEquals("back right", right.name());
    assertEquals(RegionSpec.ofZones(Zone.BACK_UPPER_RIGHT), right.region());
    assertEquals(TravelFrom.RIGHT, right.from());
    assertEquals(left, right.mirrored());
    assertEquals("temple, right", section("temple", LEFT).mirroredName());
    Section swivel = shaped(pivot(90, 180), TravelFrom.START, FINE);
    assertEquals(swivel.shape(), swivel.mirrored().shape().mirrored());
  }

  @Test
  void everyProblemSaysHowToPutItRight() {
    for (Problem problem :
        PatternCheck.problems(Pattern.of("test", section("a", LEFT), section("a", LEFT)))) {
      assertEquals("give each section its own name", problem.cure());
    }
  }

  @Test
  void aFoilLeftOutIsNamedOnce() {
    FoilPlace any = FoilPlace.of(2, 1);
    FoilPlace left = FoilPlace.of(Side.LEFT, 2, 1);
    FoilPlace right = FoilPlace.of(Side.RIGHT, 2, 1);
    Section pair = section("pair", LEFT).withMirror(true);
    assertEquals(List.of(), codes(pair.withLeaveOut(List.of(left, right, FoilPlace.of(2, 2)))));
    assertEquals(
        List.of("leave-out-twice sections[0].leaveOut[1]"),
        codes(pair.withLeaveOut(List.of(any, right))));
    assertEquals(
        List.of("leave-out-with-side sections[0].leaveOut[0]"),
        codes(section("single", LEFT).withLeaveOut(List.of(left))));
    for (FoilPlace place : List.of(any, left, right)) {
      assertEquals(Optional.of(place), FoilPlace.parse(" " + place.text() + " "));
    }
    for (String text : List.of("row 0 foil 1", "row 1", "middle row 1 foil 1", "row 1000 foil 1")) {
      assertEquals(Optional.empty(), FoilPlace.parse(text));
    }
    assertThrows(IllegalArgumentException.class, () -> FoilPlace.of(0, 1));
    assertThrows(IllegalArgumentException.class, () -> FoilPlace.of(Side.MIDDLE, 1, 1));
  }
}
