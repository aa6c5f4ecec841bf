package foilwright.look;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
import foilwright.fall.HairStyle;
import foilwright.fall.NaturalFall;
import foilwright.fall.Strands;
import foilwright.fall.Watch;
import foilwright.hair.CutShape;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Haircut;
import foilwright.hair.Level;
import foilwright.hair.Texture;
import foilwright.head.Head;
import foilwright.head.HeadKind;
import foilwright.head.PartSetting;
import foilwright.pattern.Background;
import foilwright.pattern.Fill;
import foilwright.pattern.FoilRule;
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.RegionSide;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.ShortEnds;
import foilwright.pattern.TravelFrom;
import foilwright.placement.PlacedFoil;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.units.Length;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;

/** What must hold of every look, and what the trade knows; one length, part in the middle. */
class LookIdentityTest {
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final HairOnHead HAIR =
      HairOnHead.of(
          HEAD,
          HairProfile.usual(Length.ofMillimetres(250))
              .withCut(
                  Haircut.of("one length", new CutShape.OneLength(Length.ofMillimetres(110)))));
  private static final Body BODY = Body.of(HEAD);
  private static final FallSettings SETTINGS = FallSettings.USUAL.withHairs(40_000);
  private static final Strands STRANDS =
      Fall.of(HAIR, BODY, SETTINGS, Texture.STRAIGHT, Watch.NOBODY);
  private static final LookSettings SHOWN =
      LookSettings.of(HairColours.usual(new Level(5))).withHeight(240);
  private static final Studio STUDIO = Studio.of(STRANDS, SHOWN.heightPx());

  /** Back to back, solid, to the scalp. */
  private static final Fill ALL = Fill.of(Run.ofMillimetres(6), new Background.None());

  /** The same without leaving out short pieces of parting or a last narrow slice. */
  private static final Fill EVERY_HAIR =
      Fill.of(Run.ofMillimetres(2), new Background.None())
          .withFoils(
              new FoilRule.Evenly(), new ShortEnds(ShortEnds.Rule.JOIN, Length.ofMillimetres(1)));

  private static Section section(RegionSpec region, SectionShape shape, Fill fill) {
    return Section.of("test", region, shape, TravelFrom.BOTTOM, fill);
  }

  private static Fill woven(double pick, double background) {
    return Fill.of(Run.ofMillimetres(3), new Background.Even(Run.ofMillimetres(background)))
        .withPicks(Pick.Weave.ofMillimetres(pick, pick));
  }

  private static Look look(Strands strands, Studio studio, Section... sections) {
    Pattern pattern = Pattern.of("test", sections);
    Placement placement =
        Placer.place(pattern, HAIR, PlacingSettings.USUAL, NaturalFall.over(HEAD));
    Dye dye = Dye.after(strands.roots(), placement, HEAD, pattern, Length.ZERO);
    return Look.at(strands, dye, studio, SHOWN, Watch.NOBODY);
  }

  private static LookFigures figures(Section... sections) {
    return LookFigures.of(look(STRANDS, STUDIO, sections));
  }

  @Test
  void nothingFoiledShowsNothing() {
    Dye none = Dye.before(STRANDS.roots(), Length.ZERO);
    LookFigures figures = LookFigures.of(Look.at(STRANDS, none, STUDIO, SHOWN, Watch.NOBODY));
    figures.sides().values().forEach(f -> assertEquals(0, f.visible().toFraction()));
    assertEquals(0, figures.picked().toFraction());
  }

  @Test
  void everythingFoiledToTheRootShowsAll() {
    LookFigures figures =
        figures(section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), EVERY_HAIR));
    assertEquals(1, figures.picked().toFraction(), 0.01);
    figures
        .sides()
        .forEach((side, f) -> assertEquals(1, f.visible().toFraction(), 0.01, side.words()));
  }

  @Test
  void oneHalfFoiledShowsHalfFromTheFront() {
    LookFigures figures =
        figures(
            section(
                RegionSpec.WHOLE_SCALP.withSide(RegionSide.RIGHT),
                new SectionShape.Horizontal(),
                EVERY_HAIR));
    assertEquals(0.5, figures.picked().toFraction(), 0.01);
    assertEquals(0.5, figures.sides().get(LookSide.FRONT).visible().toFraction(), 0.01);
    double near = figures.sides().get(LookSide.RIGHT).visible().toFraction();
    double far = figures.sides().get(LookSide.LEFT).visible().toFraction();
    assertTrue(near > 0.95, "near " + near);
    assertTrue(far < 0.05, "far " + far);
  }

  @Test
  void theSamePictureOnOneProcessorOrTwo() {
    Section all = section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), woven(4, 8));
    int[] first = look(STRANDS, STUDIO, all).picture(LookSide.BACK).toArray();
    ForkJoinPool alone = new ForkJoinPool(1);
    try {
      int[] second =
          alone.submit(() -> look(STRANDS, STUDIO, all).picture(LookSide.BACK).toArray()).join();
      assertArrayEquals(first, second);
    } finally {
      alone.shutdown();
    }
  }

  @Test
  void napeFoilsStayBuriedUnderOneLengthAndShowTiedUp() {
    Section nape =
        section(
            RegionSpec.ofZones(Zone.NAPE_LEFT, Zone.NAPE_RIGHT),
            new SectionShape.Horizontal(),
            ALL);
    LookFigures down = figures(nape);
    double seen = down.sides().get(LookSide.BACK).visible().toFraction();
    assertTrue(seen < 0.02, "shows " + seen);
    Strands tied =
        Fall.of(HAIR, BODY, SETTINGS.withStyle(HairStyle.TIED_UP), Texture.STRAIGHT, Watch.NOBODY);
    LookFigures up = LookFigures.of(look(tied, Studio.of(tied, SHOWN.heightPx()), nape));
    double shown = up.sides().get(LookSide.BACK).visible().toFraction();
    // From behind the tail hangs over most of the nape, which is why it is not more.
    assertTrue(shown > 2 * seen, "tied up " + shown + " beside " + seen);
    double foils = sum(down);
    assertTrue(sum(up) > 2 * foils, "tied up " + sum(up) + " mm2 beside " + foils);
  }

  private static double sum(LookFigures figures) {
    return figures.foils().stream().mapToDouble(f -> f.shown().toSquareMillimetres()).sum();
  }

  @Test
  void samplesAgreeWithTheIntegralsOfPlacing() {
    Pattern pattern =
        Pattern.of(
            "test", section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), woven(4, 8)));
    Placement placement =
        Placer.place(pattern, HAIR, PlacingSettings.USUAL, NaturalFall.over(HEAD));
    double picked = placement.foils().stream().mapToDouble(PlacedFoil::pickedHairs).sum();
    Strands many =
        Fall.of(
            HairOnHead.of(HEAD, HairProfile.usual(Length.ofMillimetres(12))),
            BODY,
            FallSettings.USUAL.withHairs(100_000),
            Texture.STRAIGHT,
            Watch.NOBODY);
    Dye dye = Dye.after(many.roots(), placement, HEAD, pattern, Length.ZERO);
    int taken = 0;
    for (int i = 0; i < many.count(); i++) {
      taken += dye.isPicked(i) ? 1 : 0;
    }
    double share = picked / HAIR.hairs(HEAD.scalp());
    assertEquals(share, taken / (double) many.count(), 0.01 * share + 0.001);
  }

  @Test
  void acrossTheFallReadsAsBandsAndAlongItAsRibbons() {
    RegionSpec back = RegionSpec.ofZones(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT, Zone.CROWN);
    Fill fill = Fill.of(Run.ofMillimetres(10), new Background.Even(Run.ofMillimetres(20)));
    double bands =
        spread(look(STRANDS, STUDIO, section(back, new SectionShape.Horizontal(), fill)));
    double ribbons =
        spread(
            look(
                STRANDS,
                STUDIO,
                Section.of("test", back, new SectionShape.Vertical(), TravelFrom.LEFT, fill)));
    assertTrue(bands >= 1.5 * ribbons, bands + " beside " + ribbons);
  }

  private static double spread(Look look) {
    return LookFigures.of(look).sides().get(LookSide.BACK).spread();
  }

  @Test
  void widerBackgroundAtEqualShareStandsOffMore() {
    RegionSpec back = RegionSpec.ofZones(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT, Zone.CROWN);
    LookFigures fine = vertical(back, 2);
    LookFigures wide = vertical(back, 10);
    assertEquals(fine.picked().toFraction(), wide.picked().toFraction(), 0.03);
    double fineContrast = fine.sides().get(LookSide.BACK).contrast();
    double wideContrast = wide.sides().get(LookSide.BACK).contrast();
    assertTrue(wideContrast > 1.2 * fineContrast, wideContrast + " beside " + fineContrast);
  }

  private static LookFigures vertical(RegionSpec region, double slice) {
    Fill fill =
        Fill.of(Run.ofMillimetres(slice), new Background.Even(Run.ofMillimetres(2 * slice)));
    return figures(Section.of("test", region, new SectionShape.Vertical(), TravelFrom.LEFT, fill));
  }

  @Test
  void leftAndRightLookAlike() {
    LookFigures figures =
        figures(section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), woven(4, 8)));
    double left = figures.sides().get(LookSide.LEFT).visible().toFraction();
    double right = figures.sides().get(LookSide.RIGHT).visible().toFraction();
    // Three standard errors, hairs of one clump of about fifty counting as one.
    double sigma = Math.sqrt(left * (1 - left) / (STRANDS.count() / 50.0));
    assertEquals(left, right, 3 * sigma);
    SideFigures back = figures.sides().get(LookSide.BACK);
    assertEquals(back.left().toFraction(), back.right().toFraction(), 3 * sigma);
  }

  @Test
  void moreHairsShowTheSame() {
    Section section = section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), woven(4, 8));
    double[] seen = new double[3];
    int[] counts = {4000, 12_000, 40_000};
    for (int i = 0; i < counts.length; i++) {
      Strands strands =
          Fall.of(HAIR, BODY, SETTINGS.withHairs(counts[i]), Texture.STRAIGHT, Watch.NOBODY);
      seen[i] =
          LookFigures.of(look(strands, Studio.of(strands, SHOWN.heightPx()), section))
              .sides()
              .get(LookSide.BACK)
              .visible()
              .toFraction();
    }
    for (int i = 0; i + 1 < counts.length; i++) {
      double sigma = Math.sqrt(seen[2] * (1 - seen[2]) / (counts[i] / 50.0));
      assertEquals(seen[2], seen[i], 3 * sigma, List.of(seen[0], seen[1], seen[2]).toString());
    }
  }

  @Test
  void growthMovesTheColourDown() {
    Section section = section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), woven(4, 6));
    Pattern pattern = Pattern.of("test", section);
    Placement placement =
        Placer.place(pattern, HAIR, PlacingSettings.USUAL, NaturalFall.over(HEAD));
    Length grown = Length.ofMillimetres(33);
    Strands later = Fall.of(HAIR, BODY, SETTINGS.withGrown(grown), Texture.STRAIGHT, Watch.NOBODY);
    Dye dye = Dye.after(later.roots(), placement, HEAD, pattern, grown);
    for (int h = 0; h < later.count(); h += 11) {
      if (dye.isPicked(h)) {
        assertEquals(33, dye.startMm(h), 1e-3);
      }
    }
    LookFigures then =
        LookFigures.of(
            Look.at(later, dye, Studio.of(later, SHOWN.heightPx()), SHOWN, Watch.NOBODY));
    LookFigures now = figures(section);
    double before = now.sides().get(LookSide.BACK).shelf().toMillimetres();
    double after = then.sides().get(LookSide.BACK).shelf().toMillimetres();
    assertTrue(after > before + 5, after + " after " + before);
  }

  /** A foil that starts off the scalp begins softly; what has grown shows as hair that grows. */
  @Test
  void rootsStaySoftAndRegrowthShows() {
    assertEquals(1, Dye.share(0, 0));
    assertEquals(0, Dye.share(4, 10));
    assertEquals(0.5, Dye.share(10, 10), 1e-9);
    assertEquals(1, Dye.share(16, 10));
    for (double mm = 0; mm < 20; mm++) {
      assertTrue(Dye.share(mm + 1, 10) >= Dye.share(mm, 10));
    }
  }

  /** The error of a visible share falls as one over the root of the hairs that are followed. */
  @Test
  void samplingErrorFallsWithTheRootOfTheHairs() {
    Section section = section(RegionSpec.WHOLE_SCALP, new SectionShape.Horizontal(), woven(4, 8));
    Pattern pattern = Pattern.of("test", section);
    Placement placement =
        Placer.place(pattern, HAIR, PlacingSettings.USUAL, NaturalFall.over(HEAD));
    double few = deviation(placement, pattern, 1000);
    double many = deviation(placement, pattern, 9000);
    // A deviation from eight draws is good to a quarter; three times is the law.
    assertTrue(few / many > 1.5 && few / many < 6, few + " beside " + many);
  }

  private static double deviation(Placement placement, Pattern pattern, int hairs) {
    int draws = 8;
    double sum = 0;
    double squares = 0;
    for (int seed = 1; seed <= draws; seed++) {
      Strands strands =
          Fall.of(
              HAIR, BODY, SETTINGS.withHairs(hairs).withSeed(seed), Texture.STRAIGHT, Watch.NOBODY);
      LookSettings back = SHOWN.withSides(List.of(LookSide.BACK)).withHeight(120);
      Dye dye = Dye.after(strands.roots(), placement, HEAD, pattern, Length.ZERO);
      double v =
          LookFigures.of(
                  Look.at(strands, dye, Studio.of(strands, back.heightPx()), back, Watch.NOBODY))
              .sides()
              .get(LookSide.BACK)
              .visible()
              .toFraction();
      sum += v;
      squares += v * v;
    }
    double mean = sum / draws;
    return Math.sqrt((squares - draws * mean * mean) / (draws - 1));
  }
}
