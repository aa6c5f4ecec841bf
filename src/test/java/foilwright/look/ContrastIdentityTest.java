package foilwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import foilwright.anatomy.PartSide;
import foilwright.anatomy.Zone;
import foilwright.fall.Body;
import foilwright.fall.Fall;
import foilwright.fall.FallSettings;
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
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Contrast of plans at the back of the usual women's head, one length, over many draws of the hair.
 * Its square is what is unbiased; means of it have a standard error by how the draws differ.
 */
class ContrastIdentityTest {
  private static final Head HEAD =
      Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(PartSide.CENTRE));
  private static final HairOnHead HAIR =
      HairOnHead.of(
          HEAD,
          HairProfile.usual(Length.ofMillimetres(250))
              .withCut(
                  Haircut.of("one length", new CutShape.OneLength(Length.ofMillimetres(110)))));
  private static final RegionSpec BACK =
      RegionSpec.ofZones(Zone.BACK_UPPER_LEFT, Zone.BACK_UPPER_RIGHT, Zone.CROWN);

  /** How many hairs are followed, and how often. */
  private static final int[][] DRAWS = {{10_000, 8}, {30_000, 6}, {100_000, 3}};

  private static final String TIGHT = "weave of 2 mm, 3 mm apart";
  private static final String LOOSE = "weave of 6 mm, 16 mm apart";
  private static final String BOLD = "slices of 10 mm, 20 mm apart";
  private static final String NARROW = "slices of 2 mm, 4 mm apart";
  private static final Map<String, List<List<SideFigures>>> FIGURES = new LinkedHashMap<>();
  private static final Map<String, List<List<Double>>> SQUARES = new LinkedHashMap<>();

  private static Section section(RegionSpec region, Fill fill) {
    return Section.of("test", region, new SectionShape.Vertical(), TravelFrom.LEFT, fill);
  }

  private static Fill solid(double slice, double background) {
    return Fill.of(Run.ofMillimetres(slice), new Background.Even(Run.ofMillimetres(background)));
  }

  private static Fill woven(double pick, double background) {
    return solid(3, background).withPicks(Pick.Weave.ofMillimetres(pick, pick));
  }

  @BeforeAll
  static void lookAtAll() {
    Map<String, Pattern> patterns =
        Map.of(
            TIGHT, Pattern.of("test", section(RegionSpec.WHOLE_SCALP, woven(2, 3))),
            LOOSE, Pattern.of("test", section(RegionSpec.WHOLE_SCALP, woven(6, 16))),
            BOLD, Pattern.of("test", section(BACK, solid(10, 20))),
            NARROW, Pattern.of("test", section(BACK, solid(2, 4))));
    Map<String, Placement> placed = new LinkedHashMap<>();
    patterns.forEach(
        (name, pattern) ->
            placed.put(
                name, Placer.place(pattern, HAIR, PlacingSettings.USUAL, NaturalFall.over(HEAD))));
    LookSettings settings =
        LookSettings.of(HairColours.usual(new Level(5)))
            .withSides(List.of(LookSide.BACK))
            .withHeight(160);
    Body body = Body.of(HEAD);
    for (int[] draws : DRAWS) {
      for (int seed = 1; seed <= draws[1]; seed++) {
        Strands strands =
            Fall.of(
                HAIR,
                body,
                FallSettings.USUAL.withHairs(draws[0]).withSeed(seed),
                Texture.STRAIGHT,
                Watch.NOBODY);
        Studio studio = Studio.of(strands, settings.heightPx());
        boolean first = seed == 1;
        placed.forEach(
            (name, placement) -> {
              Dye dye =
                  Dye.after(strands.roots(), placement, HEAD, patterns.get(name), Length.ZERO);
              Look look = Look.at(strands, dye, studio, settings, Watch.NOBODY);
              List<List<SideFigures>> figures =
                  FIGURES.computeIfAbsent(name, n -> new ArrayList<>());
              List<List<Double>> squares = SQUARES.computeIfAbsent(name, n -> new ArrayList<>());
              if (first) {
                figures.add(new ArrayList<>());
                squares.add(new ArrayList<>());
              }
              figures.get(figures.size() - 1).add(LookFigures.of(look).sides().get(LookSide.BACK));
              squares
                  .get(squares.size() - 1)
                  .add(Reading.contrastSquare(look.maps().get(LookSide.BACK)));
            });
      }
    }
  }

  /** Mean of some draws and its standard error. */
  private record Mean(double value, double error) {
    static Mean of(List<Double> draws) {
      double mean = draws.stream().mapToDouble(d -> d).average().orElseThrow();
      double squares = draws.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
      return new Mean(mean, Math.sqrt(squares / (draws.size() - 1) / draws.size()));
    }

    /** Of all draws, each with the weight of what it is good to. */
    static Mean together(List<List<Double>> counts) {
      double weights = 0;
      double sum = 0;
      for (List<Double> draws : counts) {
        Mean mean = of(draws);
        double weight = 1 / (mean.error * mean.error);
        weights += weight;
        sum += weight * mean.value;
      }
      return new Mean(sum / weights, Math.sqrt(1 / weights));
    }
  }

  @Test
  void contrastIsTheSameHoweverManyHairsAreFollowed() {
    SQUARES.forEach(
        (name, counts) -> {
          for (int i = 0; i < counts.size(); i++) {
            Mean few = Mean.of(counts.get(i));
            for (int k = i + 1; k < counts.size(); k++) {
              Mean many = Mean.of(counts.get(k));
              assertEquals(
                  many.value(),
                  few.value(),
                  3 * Math.hypot(few.error(), many.error()),
                  name + " of " + DRAWS[i][0] + " and " + DRAWS[k][0] + " hairs");
            }
          }
        });
  }

  /** Even the finest weave differs from one mixed evenly, though an eye would hardly see it. */
  @Test
  void aFineWeaveStillHasSomeContrast() {
    Mean fine = Mean.together(SQUARES.get(TIGHT));
    assertTrue(fine.value() > 2 * fine.error(), fine.toString());
  }

  @Test
  void widerBackgroundAtEqualShareStandsOffMore() {
    Mean narrow = Mean.together(SQUARES.get(NARROW));
    Mean bold = Mean.together(SQUARES.get(BOLD));
    assertEquals(
        FIGURES.get(NARROW).get(2).get(0).visible().toFraction(),
        FIGURES.get(BOLD).get(2).get(0).visible().toFraction(),
        0.03);
    assertTrue(
        bold.value() - narrow.value() > 3 * Math.hypot(narrow.error(), bold.error()),
        narrow + " beside " + bold);
  }

  /** Tighter weave and spacing: lighter with less contrast; common practice, no source. */
  @Test
  void tighterWeaveAndSpacingIsLighterWithLessContrast() {
    Mean tight = Mean.together(SQUARES.get(TIGHT));
    Mean loose = Mean.together(SQUARES.get(LOOSE));
    assertTrue(
        loose.value() - tight.value() > 3 * Math.hypot(tight.error(), loose.error()),
        tight + " beside " + loose);
    for (int i = 0; i < DRAWS.length; i++) {
      for (int seed = 0; seed < DRAWS[i][1]; seed++) {
        double light = FIGURES.get(TIGHT).get(i).get(seed).visible().toFraction();
        double dark = FIGURES.get(LOOSE).get(i).get(seed).visible().toFraction();
        assertTrue(light > 1.5 * dark, light + " beside " + dark);
      }
    }
  }
}
