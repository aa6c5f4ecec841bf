package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.pattern.Background;
import foilwright.pattern.CentreStart;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.Pattern;
import foilwright.pattern.PivotPoint;
import foilwright.pattern.RegionSide;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.pattern.WideEnd;
import foilwright.pattern.ZigzagParting;
import foilwright.problem.Problem;
import foilwright.problem.Severity;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What must hold for every placement, on the usual women's head. */
class PlacementIdentityTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);
  private static final Fill FILL =
      Fill.of(Run.ofMillimetres(4), new Background.Even(Run.ofMillimetres(12)));
  private static final RegionSpec BACK =
      RegionSpec.ofZones(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT);
  private static final RegionSpec BACK_LEFT = RegionSpec.ofZones(Zone.BACK_UPPER_LEFT);
  private static final Angle THIRTY = Angle.ofDegrees(30);

  private static Placement place(Head head, Section... sections) {
    return Placer.place(
        Pattern.of("test", sections),
        head,
        HairProfile.usual(Length.ofMillimetres(250)),
        PlacingSettings.USUAL,
        NaturalFall.over(head));
  }

  private static Placement sound(Head head, Section... sections) {
    Placement placement = place(head, sections);
    List<Problem> errors =
        placement.problems().stream().filter(p -> p.severity() == Severity.ERROR).toList();
    assertEquals(List.of(), errors);
    assertEquals(List.of(), PlacementValidator.faults(placement, 7));
    assertTrue(placement.foils().size() > 0, "some foils");
    return placement;
  }

  @Test
  void everyShapeIsSound() {
    SectionShape pivot =
        new SectionShape.Pivot(
            new PivotPoint.AlongCentreLine(
                Extent.ofMillimetres(0),
                CentreStart.APEX,
                Extent.zero(),
                foilwright.anatomy.Side.MIDDLE),
            SectionShape.Axis.SURFACE_NORMAL,
            Angle.ofDegrees(0),
            Angle.ofDegrees(360),
            Extent.ofMillimetres(40));
    Section[] sections = {
      Section.of("level", BACK, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL),
      Section.of(
              "diagonal",
              BACK_LEFT,
              new SectionShape.Diagonal(THIRTY, LowerEnd.EAR),
              TravelFrom.BOTTOM,
              FILL)
          .withMirror(true),
      Section.of(
              "upright",
              RegionSpec.ofZones(Zone.FRONT_SIDE_LEFT),
              new SectionShape.Vertical(),
              TravelFrom.BACK,
              FILL)
          .withMirror(true),
      Section.of(
          "v",
          BACK,
          new SectionShape.V(THIRTY, SectionShape.Apex.UP, SectionShape.MeetingLine.CENTRE_LINE),
          TravelFrom.BOTTOM,
          FILL),
      Section.of(
          "halo",
          RegionSpec.WHOLE_SCALP,
          SectionShape.Halo.from(new HaloBoundary.Line(HaloBoundary.HeadLine.HAIRLINE)),
          TravelFrom.HAIRLINE,
          FILL),
      Section.of("pivot", RegionSpec.ofZones(Zone.CROWN), pivot, TravelFrom.START, FILL),
      Section.of(
          "across",
          RegionSpec.ofZones(Zone.TOP_LEFT),
          new SectionShape.AcrossFall(),
          TravelFrom.CENTRE,
          FILL),
      Section.of(
          "along",
          RegionSpec.ofZones(Zone.TOP_LEFT),
          new SectionShape.AlongFall(),
          TravelFrom.BACK,
          FILL),
      Section.of(
          "level on top",
          RegionSpec.ofZones(Zone.TOP_LEFT, Zone.TOP_RIGHT),
          new SectionShape.Horizontal(),
          TravelFrom.FRONT,
          FILL),
    };
    for (Head head : List.of(HEAD, HEAD.withPart(PartSetting.of(PartSide.LEFT)))) {
      for (Section section : sections) {
        sound(head, section);
      }
    }
  }

  @Test
  void wedgesAreSound() {
    for (Background.Points points : Background.Points.values()) {
      for (WideEnd end : List.of(WideEnd.EAR, WideEnd.CENTRE)) {
        Fill fill = FILL.withBackground(new Background.Wedge(Run.ofMillimetres(18), end, points));
        sound(
            HEAD,
            Section.of(
                    "wedge",
                    BACK_LEFT.withInsetFromHairline(Extent.ofMillimetres(20)),
                    new SectionShape.Diagonal(THIRTY, LowerEnd.EAR),
                    TravelFrom.BOTTOM,
                    fill)
                .withMirror(true));
      }
    }
  }

  @Test
  void modifiersAreSound() {
    Section plain =
        Section.of("level", BACK, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL);
    sound(HEAD, plain.withTurned(Angle.ofDegrees(12)));
    sound(HEAD, plain.withBrickLay(true));
    sound(
        HEAD,
        plain.withZigzagParting(
            new ZigzagParting(Length.ofMillimetres(6), Length.ofMillimetres(14))));
    sound(
        HEAD,
        Section.of(
                "halo",
                RegionSpec.WHOLE_SCALP.withSide(RegionSide.LEFT),
                SectionShape.Halo.from(new HaloBoundary.Line(HaloBoundary.HeadLine.HAIRLINE)),
                TravelFrom.HAIRLINE,
                FILL)
            .withZigzagParting(
                new ZigzagParting(Length.ofMillimetres(6), Length.ofMillimetres(14))));
  }
}
