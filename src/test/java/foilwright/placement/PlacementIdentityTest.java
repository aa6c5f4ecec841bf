package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.fall.NaturalFall;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Region;
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
import java.util.ArrayList;
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

  @Test
  void aHorizontalIsLevelAllRound() {
    Placement placement =
        sound(
            HEAD,
            Section.of(
                "round",
                RegionSpec.ofZones(
                    Zone.BACK_UPPER_LEFT,
                    Zone.BACK_UPPER_RIGHT,
                    Zone.FRONT_SIDE_LEFT,
                    Zone.FRONT_SIDE_RIGHT),
                new SectionShape.Horizontal(),
                TravelFrom.BOTTOM,
                FILL));
    for (Polyline parting : placement.sections().get(0).partings()) {
      double z = parting.first().z();
      parting.points().forEach(p -> assertEquals(z, p.z(), 1e-9));
    }
  }

  @Test
  void acrossTheFallWithoutAPartIsLevel() {
    Placement placement =
        sound(
            HEAD,
            Section.of("across", BACK, new SectionShape.AcrossFall(), TravelFrom.BOTTOM, FILL));
    for (Polyline parting : placement.sections().get(0).partings()) {
      double z = parting.first().z();
      parting.points().forEach(p -> assertEquals(z, p.z(), 1e-5));
    }
  }

  /** Measured on the centre line itself, which is this section's guide line. */
  @Test
  void spacingOnTheGuideLineIsMet() {
    Placement placement =
        sound(
            HEAD,
            Section.of("level", BACK, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL));
    Polyline centre = HEAD.centreLine();
    List<Double> arcs = new ArrayList<>();
    for (Polyline parting : placement.sections().get(0).partings()) {
      for (int i = 0; i + 1 < parting.size(); i++) {
        Vector3 p = parting.points().get(i);
        Vector3 q = parting.points().get(i + 1);
        if (p.x() * q.x() <= 0 && p.x() != q.x()) {
          arcs.add(centre.length() - centre.nearestArc(p.lerp(q, p.x() / (p.x() - q.x()))));
          break;
        }
      }
    }
    assertTrue(arcs.size() >= 6, arcs.toString());
    double first = arcs.get(1) - arcs.get(0) > 8 ? 12 : 4;
    for (int i = 1; i < arcs.size(); i++) {
      double wanted = i % 2 == 1 ? first : 16 - first;
      assertEquals(wanted, arcs.get(i) - arcs.get(i - 1), 0.01, arcs.toString());
    }
  }

  @Test
  void refiningTheMeshHardlyChangesAreas() {
    Head fine =
        Head.fit(
                HeadKind.WOMAN,
                foilwright.head.TapeMeasurements.NONE,
                foilwright.head.HairlineSettings.USUAL,
                PartSetting.NONE,
                foilwright.head.HeadSettings.USUAL.withMeshEdge(Length.ofMillimetres(1.4)))
            .head()
            .orElseThrow();
    Section section =
        Section.of("level", BACK, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL);
    Placement coarse = sound(HEAD, section);
    Placement refined = sound(fine, section);
    assertEquals(coarse.foils().size(), refined.foils().size());
    double before = coarse.sections().get(0).region().area();
    assertEquals(1, refined.sections().get(0).region().area() / before, 2e-3);
    for (int i = 1; i < coarse.foils().size(); i++) {
      double a = coarse.foils().get(i).area().toSquareMillimetres();
      double b = refined.foils().get(i).area().toSquareMillimetres();
      assertEquals(1, b / a, 0.01, "foil " + (i + 1));
    }
  }

  @Test
  void aMirroredPairIsAMirrorImage() {
    Placement placement =
        sound(
            HEAD,
            Section.of(
                    "diagonal",
                    BACK_LEFT,
                    new SectionShape.Diagonal(THIRTY, LowerEnd.CENTRE),
                    TravelFrom.BOTTOM,
                    FILL)
                .withMirror(true));
    List<PlacedFoil> left = placement.sections().get(0).foils();
    List<PlacedFoil> right = placement.sections().get(1).foils();
    assertEquals(left.size(), right.size());
    for (int i = 0; i < left.size(); i++) {
      PlacedFoil a = left.get(i);
      PlacedFoil b = right.get(i);
      assertEquals(0, a.centre().mirrored().distance(b.centre()), 1e-9);
      assertEquals(a.area().toSquareMillimetres(), b.area().toSquareMillimetres(), 1e-8);
      assertEquals(a.width().toMillimetres(), b.width().toMillimetres(), 1e-9);
      assertEquals(a.zone().mirrored(), b.zone());
      assertEquals(a.side().mirrored(), b.side());
      assertEquals(a.lowerEnd(), b.lowerEnd());
    }
  }

  /** A validator that finds nothing in anything proves nothing: feed it faults. */
  @Test
  void theValidatorFindsFaults() {
    Section section =
        Section.of("level", BACK, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL);
    Placement good = sound(HEAD, section);
    PlacedSection whole = good.sections().get(0);
    List<PlacedFoil> twice = new ArrayList<>(whole.foils());
    twice.set(1, twice.get(0));
    PlacedSection doubled =
        new PlacedSection(
            whole.index(),
            whole.name(),
            whole.shape(),
            whole.region(),
            twice,
            whole.partings(),
            whole.remainders(),
            whole.backgrounds(),
            whole.untouched(),
            whole.figures(),
            whole.remainderWords(),
            whole.leftOut());
    List<String> codes =
        PlacementValidator.faults(new Placement(List.of(doubled), twice, List.of()), 3).stream()
            .map(Problem::code)
            .toList();
    assertTrue(codes.contains("fault-number"), codes.toString());
    assertTrue(codes.contains("fault-part"), codes.toString());
    List<Polyline> crossed = new ArrayList<>(whole.partings());
    List<Vector3> slanted = new ArrayList<>();
    Polyline low = crossed.get(2);
    Polyline high = crossed.get(3);
    for (int i = 0; i <= 400; i++) {
      Vector3 a = low.at(low.length() * i / 400);
      Vector3 across = a.lerp(high.at(high.length() * i / 400), i / 400.0 * 2 - 0.5);
      slanted.add(HEAD.nearestOnScalp(across).point());
    }
    crossed.add(Polyline.of(slanted));
    PlacedSection tangled =
        new PlacedSection(
            whole.index(),
            whole.name(),
            whole.shape(),
            whole.region(),
            whole.foils(),
            crossed,
            whole.remainders(),
            whole.backgrounds(),
            Region.empty(HEAD.mesh()),
            whole.figures(),
            whole.remainderWords(),
            whole.leftOut());
    codes =
        PlacementValidator.faults(new Placement(List.of(tangled), whole.foils(), List.of()), 3)
            .stream()
            .map(Problem::code)
            .toList();
    assertTrue(codes.contains("fault-area"), codes.toString());
    assertTrue(codes.contains("fault-crossing"), codes.toString());
  }
}
