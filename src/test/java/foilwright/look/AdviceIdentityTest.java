package foilwright.look;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.Zone;
import foilwright.fall.NaturalFall;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.pattern.Background;
import foilwright.pattern.Fill;
import foilwright.pattern.Pattern;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.units.Area;
import foilwright.units.Length;
import foilwright.units.Share;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is said of figures that are given. */
class AdviceIdentityTest {
  private static final Head HEAD = Head.usual(HeadKind.WOMAN);
  private static final List<PlacedFoil> FOILS =
      Placer.place(
              Pattern.of(
                  "test",
                  Section.of(
                      "nape",
                      RegionSpec.ofZones(Zone.NAPE_LEFT, Zone.NAPE_RIGHT),
                      new SectionShape.Horizontal(),
                      TravelFrom.BOTTOM,
                      Fill.of(Run.ofMillimetres(6), new Background.Even(Run.ofMillimetres(9))))),
              HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(250))),
              PlacingSettings.USUAL,
              NaturalFall.over(HEAD))
          .foils();

  /** Figures in which the first foils show little of their colour and the rest much. */
  private static LookFigures figures(int hidden, double seenOfThem, double shelfMm) {
    List<FoilSeen> foils = new ArrayList<>();
    for (int f = 0; f < FOILS.size(); f++) {
      foils.add(
          new FoilSeen(
              FOILS.get(f),
              Share.ofFraction(f < hidden ? seenOfThem : 0.4),
              Share.ZERO,
              Area.ofSquareMillimetres(100),
              Length.ofMillimetres(1000)));
    }
    Share light = Share.ofFraction(0.2);
    SideFigures side =
        new SideFigures(
            light,
            0,
            Length.ZERO,
            0,
            Length.ZERO,
            0,
            Length.ofMillimetres(shelfMm),
            3,
            light,
            light);
    return new LookFigures(
        light,
        Map.of(LookSide.FRONT, side, LookSide.BACK, side),
        side,
        Share.ofFraction(0.3),
        Share.ZERO,
        foils);
  }

  private static String said(LookFigures down, Optional<LookFigures> up, double laterShelfMm) {
    List<Advice> advice =
        Advice.from(
            down,
            up,
            Optional.empty(),
            Optional.of(new Advice.Later(figures(0, 0, laterShelfMm), 2, "22 mm (16 to 26)")),
            foil -> 1);
    return String.join("\n", advice.stream().map(Advice::text).toList());
  }

  @Test
  void oneFoilIsItAndMoreAreThem() {
    assertTrue(FOILS.size() > 3);
    String one = said(figures(1, 0.01, 0), Optional.of(figures(1, 0.5, 0)), 0);
    assertTrue(one.contains("hardly shows: 1.0 % of the colour"), one);
    assertTrue(one.contains("Tied up it is 50.0 %: keep it for that, or leave it out"), one);
    String two = said(figures(2, 0.01, 0), Optional.of(figures(2, 0.5, 0)), 0);
    assertTrue(two.contains("hardly show: 1.0 % of the colour"), two);
    assertTrue(two.contains("keep them for that, or leave them out and save about 2 min"), two);
  }

  @Test
  void nothingIsSaidOfHairTiedUpThatWasNotLookedAt() {
    String text = said(figures(2, 0.01, 0), Optional.empty(), 0);
    assertTrue(text.contains("Leave them out and save"), text);
    assertFalse(text.contains("Tied up"), text);
    String same = said(figures(2, 0.01, 0), Optional.of(figures(2, 0.01, 0)), 0);
    assertTrue(same.contains("Tied up it is no more: leave them out"), same);
  }

  @Test
  void regrowthIsNoticedWhenItIsDeepAndHasGrown() {
    assertTrue(said(figures(0, 0, 2), Optional.empty(), 24).contains("will be noticed"));
    assertTrue(said(figures(0, 0, 2), Optional.empty(), 10).contains("without a line"));
    assertTrue(said(figures(0, 0, 40), Optional.empty(), 42).contains("without a line"));
  }
}
