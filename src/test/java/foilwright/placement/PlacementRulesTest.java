package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Side;
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
import foilwright.pattern.EarLineSide;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.FoilPlace;
import foilwright.pattern.FoilRule;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.HeightBound;
import foilwright.pattern.KeptCover;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.MixSlot;
import foilwright.pattern.NamedArea;
import foilwright.pattern.Pattern;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Remainder;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.ShortEnds;
import foilwright.pattern.TravelFrom;
import foilwright.pattern.WorkingOrder;
import foilwright.pattern.ZigzagParting;
import foilwright.problem.Problem;
import foilwright.units.Angle;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Regions, references, modifiers and rules of a section, on the usual women's head. */
class PlacementRulesTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);
  private static final Fill FILL =
      Fill.of(Run.ofMillimetres(4), new Background.Even(Run.ofMillimetres(12)));
  private static final RegionSpec BACK =
      RegionSpec.ofZones(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT);
  private static final RegionSpec BACK_LEFT = RegionSpec.ofZones(Zone.BACK_UPPER_LEFT);
  private static final Angle THIRTY = Angle.ofDegrees(30);
  private static final Section DIAGONALS =
      Section.of(
              "diagonals",
              BACK_LEFT.withInsetFromHairline(Extent.ofMillimetres(30)),
              new SectionShape.Diagonal(THIRTY, LowerEnd.EAR),
              TravelFrom.BOTTOM,
              FILL.withSlices(2))
          .withMirror(true);

  private static Placement place(Head head, WorkingOrder order, Section... sections) {
    return Placer.place(
        new Pattern("test", "", order, List.of(sections)),
        head,
        HairProfile.usual(Length.ofMillimetres(250)),
        PlacingSettings.USUAL,
        NaturalFall.over(head));
  }

  private static Placement place(Section... sections) {
    return place(HEAD, WorkingOrder.SECTION_BY_SECTION, sections);
  }

  private static Section level(String name, RegionSpec region) {
    return Section.of(name, region, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL);
  }

  private static Region region(RegionSpec spec) {
    return place(level("level", spec)).sections().get(0).region();
  }

  private static PlacedSection named(Placement placement, String name) {
    return placement.sections().stream()
        .filter(s -> s.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private static Problem only(Placement placement, String code) {
    List<Problem> found = placement.problems().stream().filter(p -> p.code().equals(code)).toList();
    assertEquals(1, found.size(), placement.problems().toString());
    return found.get(0);
  }

  private static Extent mm(double value) {
    return Extent.ofMillimetres(value);
  }

  // ---- named areas

  private static double across(Region region) {
    return Math.max(
        region.greatest(HEAD.distanceFromCentreLine()),
        -region.least(HEAD.distanceFromCentreLine()));
  }

  @Test
  void namedAreasKeepTheirMeasures() {
    RegionSpec whole = RegionSpec.WHOLE_SCALP;
    Region box = region(whole.withWithin(new NamedArea.Box(mm(40), mm(110), mm(60))));
    assertEquals(40, box.least(HEAD.alongCentreLine()), 1e-9);
    assertEquals(110, box.greatest(HEAD.alongCentreLine()), 1e-9);
    assertEquals(30, across(box), 1e-9);
    // 70 mm by 60 mm on a curved top: less than flat, by less than a tenth.
    assertEquals(1, box.area() / (70 * 60), 0.1);

    Region diamond = region(whole.withWithin(new NamedArea.Diamond(mm(80), mm(70), mm(60))));
    assertEquals(45, diamond.least(HEAD.alongCentreLine()), 0.5);
    assertEquals(115, diamond.greatest(HEAD.alongCentreLine()), 0.5);
    assertEquals(30, across(diamond), 0.5);
    assertEquals(0.5, diamond.area() / (70 * 60), 0.05);

    Region triangle = region(whole.withWithin(new NamedArea.Triangle(mm(90), mm(70))));
    assertEquals(70, triangle.greatest(HEAD.alongCentreLine()), 0.5);
    assertTrue(across(triangle) <= 45 + 3, "as wide as its base at the hairline");
    assertEquals(0.5, triangle.area() / (70 * 90), 0.08);

    Region horseshoe = region(whole.withWithin(new NamedArea.Horseshoe(mm(150), Optional.empty())));
    assertTrue(
        horseshoe.least(HEAD.normalElevation())
            >= HEAD.settings().ridgeElevation().toRadians() - 1e-9);
    assertEquals(150, horseshoe.greatest(HEAD.alongCentreLine()), 0.5);
    Region narrow = region(whole.withWithin(new NamedArea.Horseshoe(mm(150), Optional.of(mm(80)))));
    assertEquals(40, across(narrow), 0.05);
    // A straight part of 110 mm and half a circle of radius 40 mm, on a curved top.
    assertEquals(1, narrow.area() / (110 * 80 + Math.PI * 40 * 40 / 2), 0.12);

    Region face = region(whole.withWithin(new NamedArea.FaceFrameStrip(mm(20))));
    assertEquals(20, face.greatest(HEAD.distanceFromHairline()), 1.5);
    assertTrue(face.least(HEAD.beforeEarLine()) > -21, "nothing of it behind the ears");

    Head parted = HEAD.withPart(PartSetting.of(PartSide.LEFT));
    Region strip =
        place(
                parted,
                WorkingOrder.SECTION_BY_SECTION,
                level("strip", whole.withWithin(new NamedArea.PartLineStrip(mm(12)))))
            .sections()
            .get(0)
            .region();
    assertEquals(12, strip.greatest(parted.distanceFromPart().orElseThrow()), 1e-9);
    assertEquals(-30, strip.areaCentroid().x(), 6);
  }

  @Test
  void boundsKeepTheirSide() {
    Region region =
        region(
            RegionSpec.WHOLE_SCALP
                .withEarLine(EarLineSide.IN_FRONT)
                .withInsetFromHairline(mm(25))
                .withBelow(new HeightBound.NormalElevation(Angle.ofDegrees(40))));
    assertTrue(region.least(HEAD.beforeEarLine()) >= -1e-9);
    assertEquals(25, region.least(HEAD.distanceFromHairline()), 1e-9);
    assertEquals(Math.toRadians(40), region.greatest(HEAD.normalElevation()), 1e-9);
  }

  // ---- references

  @Test
  void aSectionCanLieBetweenTheHalvesOfAPair() {
    Section sides =
        Section.of(
                "diagonals",
                RegionSpec.ofZones(Zone.FRONT_SIDE_LEFT),
                new SectionShape.Diagonal(THIRTY, LowerEnd.BACK),
                TravelFrom.BOTTOM,
                FILL)
            .withMirror(true);
    Placement placement =
        place(
            sides,
            level(
                "rows", BACK.withInsetFromHairline(mm(30)).withBetween("diagonals", "diagonals")));
    Region rows = named(placement, "rows").region();
    assertTrue(rows.area() > 100, "area " + rows.area());
    assertEquals(0, rows.areaCentroid().x(), 0.01);
    for (PlacedSection half : placement.sections()) {
      if (!half.name().equals("rows")) {
        Region foils =
            Region.join(HEAD.mesh(), half.foils().stream().map(PlacedFoil::region).toList());
        assertEquals(0, rows.intersect(foils).area(), 1e-6);
        assertTrue(
            rows.greatest((t, k) -> z(t, k)) <= half.region().greatest((t, k) -> z(t, k)) + 1);
      }
    }
    assertEquals(List.of(), PlacementValidator.faults(placement, 5));
  }

  private static double z(int t, int k) {
    return HEAD.mesh().z(HEAD.mesh().corner(t, k));
  }

  @Test
  void aSectionCanLieInsideAHaloAndLeaveAnotherOut() {
    Section halo =
        Section.of(
            "ring",
            RegionSpec.WHOLE_SCALP,
            new SectionShape.Halo(
                new HaloBoundary.Line(HaloBoundary.HeadLine.HAIRLINE), mm(20), Optional.of(mm(60))),
            TravelFrom.HAIRLINE,
            FILL);
    Placement placement = place(halo, level("middle", RegionSpec.WHOLE_SCALP.withInside("ring")));
    Region middle = named(placement, "middle").region();
    assertTrue(middle.least(HEAD.distanceFromHairline()) > 50, "beyond the ring");
    Placement outside = place(halo, level("rest", RegionSpec.WHOLE_SCALP.withExcept("ring")));
    PlacedSection ring = named(outside, "ring");
    double footprint = ring.region().area() - ring.untouched().area();
    assertEquals(HEAD.scalp().area(), named(outside, "rest").region().area() + footprint, 1e-6);
  }

  @Test
  void aHaloCanFollowTheInnerEdgeOfAnother() {
    Section ring =
        Section.of(
            "ring",
            RegionSpec.WHOLE_SCALP,
            SectionShape.Halo.from(new HaloBoundary.Line(HaloBoundary.HeadLine.HAIRLINE)),
            TravelFrom.HAIRLINE,
            FILL.withSlices(2));
    Section inner =
        Section.of(
            "inner",
            RegionSpec.WHOLE_SCALP.withInside("ring"),
            SectionShape.Halo.from(new HaloBoundary.InnerEdgeOf("ring")),
            TravelFrom.START,
            FILL.withOffset(mm(10)).withSlices(1));
    Placement placement = place(ring, inner);
    for (PlacedFoil foil : named(placement, "inner").foils()) {
      // Two slices of 4 mm and a background of 12 mm, then 10 mm and half of 4 mm.
      assertEquals(32, foil.centreFind().fromHairline().toMillimetres(), 1.5);
    }
  }

  @Test
  void aSectionStartsAtTheHeightOfAnEarlierOne() {
    Placement placement =
        place(
            level("back", BACK.withAbove(new HeightBound.NormalElevation(Angle.ofDegrees(10)))),
            level(
                "side",
                RegionSpec.ofZones(Zone.FRONT_SIDE_LEFT)
                    .withAbove(new HeightBound.StartOf("back"))));
    double start = placement.sections().get(0).region().least((t, k) -> z(t, k));
    assertEquals(start, placement.sections().get(1).region().least((t, k) -> z(t, k)), 0.5);
  }

  /** One arm of a V lies behind the ear line and comes from the back, the other in front of it. */
  @Test
  void theArmsOfAVOnTheEarLineComeFromBackAndFront() {
    Section v =
        Section.of(
            "v",
            RegionSpec.ofZones(Zone.FRONT_SIDE_LEFT, Zone.BACK_UPPER_LEFT),
            new SectionShape.V(THIRTY, SectionShape.Apex.DOWN, SectionShape.MeetingLine.EAR_LINE),
            TravelFrom.TOP,
            FILL);
    Placement placement = place(v);
    assertEquals(List.of(), PlacementValidator.faults(placement, 9));
    long behind =
        placement.foils().stream()
            .filter(f -> HEAD.nearestOnScalp(f.centre()).valueOf(HEAD.beforeEarLine()) < 0)
            .count();
    assertTrue(behind > 0 && behind < placement.foils().size());
  }

  // ---- spacing

  @Test
  void remainderRules() {
    Spacing.Widths slice = new Spacing.Widths(4, 4);
    Spacing.Widths background = new Spacing.Widths(10, 10);
    Spacing leave = Spacing.place(50, OptionalInt.empty(), 2, slice, background, Remainder.LEAVE);
    assertEquals(4, leave.slices().size());
    assertEquals(2, leave.slices().get(0).from(), 1e-12);
    assertEquals(2, leave.left(), 1e-12);
    Spacing balance =
        Spacing.place(50, OptionalInt.empty(), 2, slice, background, Remainder.BALANCE);
    assertEquals(3, balance.slices().get(0).from(), 1e-12);
    assertEquals(1, balance.left(), 1e-12);
    Spacing stretch =
        Spacing.place(50, OptionalInt.empty(), 2, slice, background, Remainder.STRETCH);
    assertEquals(0, stretch.left(), 1e-12);
    assertEquals(
        10 + 2.0 / 3, stretch.slices().get(1).from() - stretch.slices().get(0).to(), 1e-12);
    Spacing growing =
        Spacing.place(
            50,
            OptionalInt.of(3),
            0,
            new Spacing.Widths(2, 6),
            new Spacing.Widths(5, 9),
            Remainder.LEAVE);
    assertEquals(
        List.of(2.0, 4.0, 6.0), growing.slices().stream().map(s -> s.to() - s.from()).toList());
    assertEquals(50 - 2 - 5 - 4 - 9 - 6, growing.left(), 1e-12);
    Spacing tooMany = Spacing.place(50, OptionalInt.of(9), 2, slice, background, Remainder.LEAVE);
    assertTrue(tooMany.left() < 0);
    assertEquals(4, tooMany.most());
  }

  @Test
  void aCountThatDoesNotFitSaysHowManyDo() {
    int most = place(level("rows", BACK)).sections().get(0).partings().size();
    Problem problem =
        only(
            place(
                Section.of(
                    "rows",
                    BACK,
                    new SectionShape.Horizontal(),
                    TravelFrom.BOTTOM,
                    FILL.withSlices(40))),
            "count-does-not-fit");
    assertTrue(problem.message().matches(".*40 slices; \\d+ fit.*"), problem.message());
    int fit = Integer.parseInt(problem.message().replaceAll(".*slices; (\\d+) fit.*", "$1"));
    assertTrue(fit >= most / 2 && fit <= most / 2 + 1, fit + " of " + most);
    assertTrue(problem.place().isPresent());
  }

  @Test
  void aSliceThickerThanItsSectionIsToldWithItsThickness() {
    Problem problem =
        only(
            place(
                Section.of(
                    "rows",
                    BACK,
                    new SectionShape.Horizontal(),
                    TravelFrom.BOTTOM,
                    Fill.of(Run.ofMillimetres(300), new Background.None()))),
            "slice-thicker-than-section");
    assertTrue(problem.message().contains("300 mm"), problem.message());
  }

  @Test
  void sharedHairIsToldWithItsAreaAndPlace() {
    Problem problem = only(place(level("one", BACK), level("two", BACK_LEFT)), "sections-overlap");
    assertTrue(problem.message().matches(".*\"one\" and \"two\" both claim \\d+ mm2.*"));
    assertTrue(problem.place().orElseThrow().x() < 0);
    assertEquals("sections[1].region", problem.path());
  }

  // ---- covers, order, foils

  @Test
  void keptCoversAreKept() {
    KeptCover cover = new KeptCover(Optional.of(mm(18)), Optional.of(mm(9)), Optional.of(mm(30)));
    Head parted = HEAD.withPart(PartSetting.of(PartSide.CENTRE));
    Placement placement =
        place(
            parted,
            WorkingOrder.SECTION_BY_SECTION,
            Section.of(
                    "top",
                    RegionSpec.ofZones(Zone.FRINGE, Zone.TOP_LEFT),
                    new SectionShape.Horizontal(),
                    TravelFrom.BACK,
                    FILL)
                .withKeptCover(cover));
    assertEquals(List.of(), PlacementValidator.faults(placement, 2));
    assertTrue(placement.foils().size() > 3);
    for (PlacedFoil foil : placement.foils()) {
      assertTrue(foil.region().least(parted.distanceFromHairline()) >= 18 - 1e-9);
      assertTrue(foil.region().least(parted.distanceFromPart().orElseThrow()) >= 9 - 1e-9);
      Region inFringe = foil.region().intersect(parted.zone(Zone.FRINGE));
      assertTrue(
          inFringe.area() < 1e-6 || inFringe.least(parted.distanceFromHairline()) >= 30 - 1e-6);
    }
  }

  @Test
  void workingOrders() {
    Section top =
        Section.of(
            "fringe",
            RegionSpec.ofZones(Zone.FRINGE),
            new SectionShape.Horizontal(),
            TravelFrom.BACK,
            FILL);
    Placement last = place(HEAD, WorkingOrder.HAIRLINE_LAST, top, DIAGONALS);
    assertEquals("fringe", last.foils().get(last.foils().size() - 1).section());
    Section pair =
        Section.of(
                "pair",
                BACK_LEFT,
                new SectionShape.Diagonal(THIRTY, LowerEnd.EAR),
                TravelFrom.BOTTOM,
                FILL)
            .withMirror(true);
    Placement turns = place(HEAD, WorkingOrder.ALTERNATE_SIDES, pair);
    String sides =
        turns.foils().stream()
            .map(f -> f.side() == Side.LEFT ? "l" : "r")
            .collect(Collectors.joining());
    assertTrue(sides.matches("(l+r+){2,}"), sides);
    Placement plain = place(pair);
    assertTrue(
        plain.foils().stream()
            .map(f -> f.side() == Side.LEFT ? "l" : "r")
            .collect(Collectors.joining())
            .matches("l+r+"));
  }

  @Test
  void oneCentredFoilLeavesTheEndsAsBackground() {
    Placement placement =
        place(
            Section.of(
                "rows",
                BACK,
                new SectionShape.Horizontal(),
                TravelFrom.BOTTOM,
                FILL.withFoils(new FoilRule.OneCentred(), ShortEnds.USUAL)));
    PlacedSection section = placement.sections().get(0);
    for (PlacedFoil foil : section.foils()) {
      assertTrue(foil.width().toMillimetres() <= 95 + 1e-6);
      assertEquals(0, foil.centre().x(), 1);
    }
    assertTrue(section.remainders().stream().mapToDouble(Region::area).sum() > 100);
    assertEquals(List.of(), PlacementValidator.faults(placement, 4));
  }

  @Test
  void brickLayShiftsEverySecondRowByHalfAFoil() {
    Section rows = level("rows", BACK);
    List<PlacedFoil> plain = place(rows).foils();
    List<PlacedFoil> laid = place(rows.withBrickLay(true)).foils();
    int row =
        plain.stream().mapToInt(PlacedFoil::row).filter(r -> r % 2 == 0).findFirst().orElseThrow();
    List<PlacedFoil> straight = plain.stream().filter(f -> f.row() == row).toList();
    List<PlacedFoil> shifted = laid.stream().filter(f -> f.row() == row).toList();
    assertEquals(straight.size() + 1, shifted.size());
    double width = straight.get(0).width().toMillimetres();
    assertEquals(width / 2, shifted.get(0).width().toMillimetres(), 1e-6);
    assertEquals(width, shifted.get(1).width().toMillimetres(), 1e-6);
  }

  /**
   * Both edges swing in phase, so that teeth change the area of a slice by a tooth's part at its
   * ends alone.
   */
  @Test
  void zigzagPartingsKeepTheArea() {
    Section rows = level("rows", BACK);
    ZigzagParting teeth = new ZigzagParting(Length.ofMillimetres(5), Length.ofMillimetres(12));
    double plain = foilArea(place(rows));
    double toothed = foilArea(place(rows.withZigzagParting(teeth)));
    assertEquals(1, toothed / plain, 0.03);
    Polyline edge =
        place(rows.withZigzagParting(teeth)).sections().get(0).partings().stream()
            .max((a, b) -> Double.compare(a.length(), b.length()))
            .orElseThrow();
    double low = edge.points().stream().mapToDouble(Vector3::z).min().orElseThrow();
    double high = edge.points().stream().mapToDouble(Vector3::z).max().orElseThrow();
    assertEquals(5, high - low, 1e-6);
  }

  private static double foilArea(Placement placement) {
    return placement.foils().stream().mapToDouble(f -> f.area().toSquareMillimetres()).sum();
  }

  @Test
  void mixSlotsRepeatOverTheFoils() {
    Placement placement =
        place(
            Section.of(
                "rows",
                BACK,
                new SectionShape.Horizontal(),
                TravelFrom.BOTTOM,
                FILL.withMix(MixSlot.A, MixSlot.A, MixSlot.B)));
    String mixes = placement.foils().stream().map(PlacedFoil::mix).collect(Collectors.joining());
    assertTrue("AAB".repeat(20).startsWith(mixes), mixes);
  }

  // ---- foils left out

  private static List<String> places(PlacedSection section) {
    return section.foils().stream()
        .map(f -> "row " + f.row() + " foil " + f.inRow() + " " + f.mix())
        .toList();
  }

  @Test
  void aFoilLeftOutStaysBackgroundAndTheRestKeepTheirPlaces() {
    Section all = level("level", BACK_LEFT.withInsetFromHairline(mm(20))).withMirror(true);
    Fill order = all.fill().withMix(MixSlot.A, MixSlot.B);
    Section mixed =
        Section.of("level", all.region(), all.shape(), all.from(), order).withMirror(true);
    Placement whole = place(mixed);
    Section given = mixed.withLeaveOut(List.of(FoilPlace.of(2, 1), FoilPlace.of(Side.RIGHT, 1, 1)));
    Placement placement = place(given);
    assertEquals(List.of(), PlacementValidator.faults(placement, 5));
    assertEquals(whole.foils().size() - 3, placement.foils().size());
    for (int h = 0; h < 2; h++) {
      List<String> kept = new ArrayList<>(places(whole.sections().get(h)));
      boolean right = whole.sections().get(h).foils().get(0).side() == Side.RIGHT;
      assertTrue(kept.removeIf(p -> p.startsWith("row 2 foil 1 ")));
      assertEquals(right, right && kept.removeIf(p -> p.startsWith("row 1 foil 1 ")));
      assertEquals(kept, places(placement.sections().get(h)));
      assertEquals(
          right ? List.of(FoilPlace.of(1, 1), FoilPlace.of(2, 1)) : List.of(FoilPlace.of(2, 1)),
          placement.sections().get(h).leftOut());
    }
    for (int i = 0; i < placement.foils().size(); i++) {
      assertEquals(i + 1, placement.foils().get(i).number());
    }
    assertEquals(List.of(), placement.problems());
  }

  /** Without its parting, a row left out is background of the next: 12 + 4 + 12 mm. */
  @Test
  void aRowLeftOutJoinsTheBackground() {
    Section section = level("level", BACK.withInsetFromHairline(mm(20)));
    Placement whole = place(section);
    List<FoilPlace> row =
        whole.foils().stream()
            .filter(f -> f.row() == 2)
            .map(f -> FoilPlace.of(f.row(), f.inRow()))
            .toList();
    Placement placement = place(section.withLeaveOut(row));
    assertEquals(List.of(), PlacementValidator.faults(placement, 5));
    PlacedFoil before = foilOf(whole, 3);
    PlacedFoil after = foilOf(placement, 3);
    assertEquals(before.centre(), after.centre());
    double second = foilOf(whole, 2).backgroundBefore().toMillimetres();
    assertEquals(
        before.backgroundBefore().toMillimetres() + 4 + second,
        after.backgroundBefore().toMillimetres(),
        1);
    assertEquals(foilOf(whole, 4).backgroundBefore(), foilOf(placement, 4).backgroundBefore());
    assertEquals(
        whole.sections().get(0).partings().size() - 2,
        placement.sections().get(0).partings().size());
  }

  private static PlacedFoil foilOf(Placement placement, int row) {
    return placement.foils().stream().filter(f -> f.row() == row).findFirst().orElseThrow();
  }

  @Test
  void aFoilThatIsNotThereIsNoted() {
    Placement placement =
        place(
            DIAGONALS.withLeaveOut(
                List.of(FoilPlace.of(Side.LEFT, 1, 1), FoilPlace.of(Side.LEFT, 9, 1))));
    Problem problem = only(placement, "no-such-foil");
    assertEquals("sections[0].leaveOut[1]", problem.path());
    assertTrue(problem.message().contains("left row 9 foil 1"), problem.message());
    assertEquals(List.of(), PlacementValidator.faults(placement, 5));
  }

  @Test
  void aSectionMayLoseAllItsFoils() {
    Section section = level("level", BACK);
    List<FoilPlace> every =
        place(section).foils().stream().map(f -> FoilPlace.of(f.row(), f.inRow())).toList();
    Placement placement = place(section.withLeaveOut(every), DIAGONALS.withMirror(false));
    assertEquals(List.of(), placement.sections().get(0).foils());
    assertEquals(List.of(), placement.sections().get(0).partings());
    assertEquals(1, placement.foils().get(0).number());
  }
}
