package foilwright.placement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.pattern.Background;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.FoilPlace;
import foilwright.pattern.NamedArea;
import foilwright.pattern.Pattern;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** What is given up first, and how it is written into the pattern. */
class ThinningTest {
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final Fill FILL =
      Fill.of(Run.ofMillimetres(4), new Background.Even(Run.ofMillimetres(14)));

  private static Placement place(Section... sections) {
    return Placer.place(
        Pattern.of("test", sections),
        HEAD,
        HairProfile.usual(Length.ofMillimetres(250)),
        PlacingSettings.USUAL,
        NaturalFall.over(HEAD));
  }

  private static Section level(String name, RegionSpec region) {
    return Section.of(name, region, new SectionShape.Horizontal(), TravelFrom.BOTTOM, FILL);
  }

  private static final Section NAPE =
      level("nape left", RegionSpec.ofZones(Zone.NAPE_LEFT)).withMirror(true);
  private static final Section BACK =
      level("back left", RegionSpec.ofZones(Zone.BACK_UPPER_LEFT)).withMirror(true);
  private static final Section CROWN = level("crown", RegionSpec.ofZones(Zone.CROWN));
  private static final Section FACE =
      level(
          "face",
          RegionSpec.WHOLE_SCALP.withWithin(
              new NamedArea.FaceFrameStrip(Extent.ofMillimetres(20))));

  @Test
  void theLeastSeenGoesFirst() {
    Placement placement = place(NAPE, BACK, CROWN, FACE);
    List<Thinning.Choice> order = Thinning.rank(placement, HEAD);
    List<String> sections =
        order.stream().map(c -> c.foil().section().replaceAll(" (left|right)", "")).toList();
    assertTrue(
        sections.lastIndexOf("nape") < sections.indexOf("crown")
            && sections.lastIndexOf("back") < sections.indexOf("face"),
        sections.toString());
    for (Thinning.Choice choice : order) {
      double percent = choice.seen().share().toPercent();
      assertTrue(percent >= 15 - 1e-9 && percent <= 100 + 1e-9, choice.reason());
    }
    Thinning.Choice nape = order.get(0);
    assertEquals(15, nape.seen().share().toPercent(), 1e-9);
    assertTrue(nape.reason().contains("about 15 %"), nape.reason());
    Thinning.Choice face = order.get(order.size() - 1);
    assertEquals(100, face.seen().share().toPercent(), 1e-9);
  }

  @Test
  void amongEquallySeenTheFewestHairsGoFirst() {
    Placement placement = place(NAPE);
    List<Thinning.Choice> order =
        Thinning.rank(placement, f -> new Thinning.Seen(Share.ofPercent(50), "is tried"));
    for (int i = 2; i < order.size(); i += 2) {
      assertTrue(order.get(i).foil().pickedHairs() >= order.get(i - 2).foil().pickedHairs() - 1e-6);
    }
    for (Thinning.Choice choice : order) {
      PlacedFoil partner = placement.foils().get(choice.partner().orElseThrow() - 1);
      assertEquals(0, partner.centre().mirrored().distance(choice.foil().centre()), 1e-9);
    }
  }

  /** One section over the whole head: partners are found by their places. */
  @Test
  void aSectionAcrossTheHeadHasPartnersToo() {
    Placement placement =
        place(level("back", RegionSpec.ofZones(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT)));
    TreeSet<Integer> seen = new TreeSet<>();
    for (Thinning.Choice choice : Thinning.rank(placement, HEAD)) {
      seen.add(choice.foil().number());
      if (choice.foil().side() == Side.MIDDLE) {
        assertEquals(Optional.empty(), choice.partner());
      } else {
        PlacedFoil partner = placement.foils().get(choice.partner().orElseThrow() - 1);
        assertEquals(choice.foil().side().mirrored(), partner.side());
        assertEquals(choice.foil().row(), partner.row());
      }
    }
    assertEquals(placement.foils().size(), seen.size());
  }

  @Test
  void pairsAreWrittenOnceAndHalvesWithTheirSide() {
    Pattern pattern = Pattern.of("test", NAPE, CROWN);
    Placement placement = place(NAPE, CROWN);
    List<PlacedFoil> second =
        placement.foils().stream()
            .filter(f -> f.section().startsWith("nape") && f.row() == 2 && f.inRow() == 1)
            .toList();
    assertEquals(2, second.size());
    PlacedFoil left =
        second.stream().filter(f -> f.section().equals("nape left")).findFirst().orElseThrow();
    Pattern one = Thinning.leaveOut(pattern, List.of(left));
    assertEquals(List.of(FoilPlace.of(Side.LEFT, 2, 1)), one.sections().get(0).leaveOut());
    assertEquals(
        List.of(FoilPlace.of(2, 1)), Thinning.leaveOut(one, second).sections().get(0).leaveOut());
    PlacedFoil crown =
        placement.foils().stream()
            .filter(f -> f.section().equals("crown"))
            .findFirst()
            .orElseThrow();
    assertEquals(
        List.of(FoilPlace.of(crown.row(), crown.inRow())),
        Thinning.leaveOut(pattern, List.of(crown)).sections().get(1).leaveOut());
    assertEquals(pattern, Thinning.leaveOut(pattern, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> Thinning.leaveOut(Pattern.of("other", CROWN), List.of(left)));
    assertThrows(
        IllegalArgumentException.class,
        () -> Thinning.leaveOut(Pattern.of("other", NAPE), List.of(crown)));
  }
}
