package foilwright.look;

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
import foilwright.pattern.Pattern;
import foilwright.pattern.Pick;
import foilwright.pattern.RegionSide;
import foilwright.pattern.RegionSpec;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.placement.Placement;
import foilwright.placement.Placer;
import foilwright.placement.PlacingSettings;
import foilwright.units.Length;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must hold of pictures whatever hair they show. */
class PaintingIdentityTest {
  private static final CutShape ONE_LENGTH = new CutShape.OneLength(Length.ofMillimetres(110));

  private static HairOnHead hair(PartSide part) {
    return HairOnHead.of(
        Head.usual(HeadKind.WOMAN).withPart(PartSetting.of(part)),
        HairProfile.usual(Length.ofMillimetres(250)).withCut(Haircut.of("one length", ONE_LENGTH)));
  }

  private static Strands strands(HairOnHead hair, FallSettings settings) {
    return Fall.of(hair, Body.of(hair.head()), settings, Texture.STRAIGHT, Watch.NOBODY);
  }

  /** A picture in which hair has one light everywhere and the figure another. */
  private static LookPicture flat(Strands strands, Bust figure, float hair, float skin) {
    Dye none = Dye.before(strands.roots(), Length.ZERO);
    HairShades shades = HairShades.of(strands.roots(), none, HairColours.usual(new Level(5)));
    Arrays.fill(shades.palette(), 1);
    float[] bright = new float[strands.count()];
    // So bright that wherever the lamp stands each hair is cut at white, or else black.
    Arrays.fill(bright, hair * 1e6f);
    Arrays.fill(figure.red, skin);
    Arrays.fill(figure.green, skin);
    Arrays.fill(figure.blue, skin);
    return Painting.of(
            strands,
            new Coat.Sample(strands),
            new Painting.Hairs(none, shades, bright),
            figure,
            new byte[strands.pointCount()],
            Watch.NOBODY)
        .picture();
  }

  /**
   * Of white hair before a black figure a pixel shows the hair's weight, of black hair before a
   * white one the figure's, as far as the hair's shade leaves it: together they are 1 wherever the
   * hair does not shade, and nowhere more.
   */
  @ParameterizedTest
  @ValueSource(ints = {3000, 10_000, 100_000})
  void weightsOfHairAndFigureAddUpToOne(int hairs) {
    HairOnHead hair = hair(PartSide.CENTRE);
    Strands strands = strands(hair, FallSettings.USUAL.withHairs(hairs));
    Studio studio = Studio.of(strands, 200);
    for (LookSide side : List.of(LookSide.FRONT, LookSide.BACK, LookSide.TOP)) {
      Bust figure = Bust.of(strands.body(), hair.head().form(), studio.bust(side).window);
      LookPicture ofHair = flat(strands, figure, 1, 0);
      LookPicture ofFigure = flat(strands, figure, 0, 1);
      int mixed = 0;
      for (int row = 0; row < ofHair.height(); row++) {
        for (int column = 0; column < ofHair.width(); column++) {
          int white = ofHair.at(column, row);
          int black = ofFigure.at(column, row);
          assertEquals(white >>> 24, black >>> 24);
          if (figure.cover[row * ofHair.width() + column] < 1) {
            continue;
          }
          assertEquals(255, white >>> 24, "alpha at " + column + ", " + row);
          double shade =
              Painting.shade(cover(ofHair, row, column, Painting.shadeReach(figure.window)));
          double hairs1 = Colour.linear((white & 0xff) / 255.0);
          double figure1 = Colour.linear((black & 0xff) / 255.0) / shade;
          mixed += hairs1 > 0.1 && figure1 > 0.1 ? 1 : 0;
          // Two roundings to 1 / 255 of the encoded value, whose slope is at most 2.28.
          assertEquals(1, hairs1 + figure1, 2.3 / 255 / shade, column + ", " + row);
        }
      }
      assertTrue(mixed > 100, side.words() + ": " + mixed + " pixels show both");
    }
  }

  /** How much of what lies about a pixel white hair covers before a black figure. */
  private static double cover(LookPicture ofHair, int row, int column, int reach) {
    double sum = 0;
    int places = 0;
    for (int y = Math.max(0, row - reach); y <= Math.min(ofHair.height() - 1, row + reach); y++) {
      for (int x = Math.max(0, column - reach);
          x <= Math.min(ofHair.width() - 1, column + reach);
          x++) {
        int pixel = ofHair.at(x, y);
        sum += (pixel >>> 24) / 255.0 * Colour.linear((pixel & 0xff) / 255.0);
        places++;
      }
    }
    return sum / places;
  }

  /** White hair before what is white, shade and all, leaves no pixel darker. */
  @ParameterizedTest
  @ValueSource(ints = {10_000, 100_000})
  void whiteBeforeWhiteIsWhite(int hairs) {
    HairOnHead hair = hair(PartSide.LEFT);
    Strands strands = strands(hair, FallSettings.USUAL.withHairs(hairs));
    Studio studio = Studio.of(strands, 200);
    Bust figure = Bust.of(strands.body(), hair.head().form(), studio.bust(LookSide.RIGHT).window);
    LookPicture white = flat(strands, figure, 1, (float) (1 / Painting.LEAST_LIGHT));
    for (int row = 0; row < white.height(); row++) {
      for (int column = 0; column < white.width(); column++) {
        if (white.at(column, row) >>> 24 > 0) {
          assertEquals(0xffffff, white.at(column, row) & 0xffffff, column + ", " + row);
        }
      }
    }
  }

  private static final Fill WOVEN =
      Fill.of(Run.ofMillimetres(4), new Background.Even(Run.ofMillimetres(9)))
          .withPicks(Pick.Weave.ofMillimetres(5, 4));

  /** What Student's t of 22 degrees of freedom passes as seldom as a normal number passes 3. */
  private static final double THREE_SIGMA = 3.38;

  /** Figures that a mirror swaps, of some draws. */
  private static double[][] figures(PartSide part, RegionSide side, int firstSeed) {
    HairOnHead hair = hair(part);
    Pattern pattern =
        Pattern.of(
            "test",
            Section.of(
                "test",
                RegionSpec.WHOLE_SCALP.withSide(side),
                new SectionShape.Horizontal(),
                TravelFrom.BOTTOM,
                WOVEN));
    Placement placement =
        Placer.place(pattern, hair, PlacingSettings.USUAL, NaturalFall.over(hair.head()));
    boolean mirrored = side == RegionSide.LEFT;
    double[][] draws = new double[12][];
    LookSettings settings = LookSettings.of(HairColours.usual(new Level(5))).withHeight(160);
    for (int i = 0; i < draws.length; i++) {
      Strands strands = strands(hair, FallSettings.USUAL.withHairs(8000).withSeed(firstSeed + i));
      Dye dye = Dye.after(strands.roots(), placement, hair.head(), pattern, Length.ZERO);
      Look look = Look.at(strands, dye, Studio.of(strands, 160), settings, Watch.NOBODY);
      LookFigures all = LookFigures.of(look);
      SideFigures front = all.sides().get(LookSide.FRONT);
      SideFigures back = all.sides().get(LookSide.BACK);
      LookSide near = mirrored ? LookSide.LEFT : LookSide.RIGHT;
      LookSide far = mirrored ? LookSide.RIGHT : LookSide.LEFT;
      draws[i] =
          new double[] {
            (mirrored ? front.left() : front.right()).toFraction(),
            (mirrored ? front.right() : front.left()).toFraction(),
            (mirrored ? back.left() : back.right()).toFraction(),
            (mirrored ? back.right() : back.left()).toFraction(),
            all.sides().get(near).visible().toFraction(),
            all.sides().get(far).visible().toFraction(),
            all.sides().get(LookSide.TOP).visible().toFraction(),
            alpha(look.picture(LookSide.FRONT)),
            alpha(look.picture(near)),
            alpha(look.picture(far)),
            red(look, LookSide.BACK),
            red(look, near),
            red(look, far)
          };
    }
    return draws;
  }

  /** Area that a picture covers, square metres. */
  private static double alpha(LookPicture picture) {
    double sum = 0;
    for (int pixel : picture.toArray()) {
      sum += (pixel >>> 24) / 255.0;
    }
    return 1e-6 * sum / (picture.pixelsPerMm() * picture.pixelsPerMm());
  }

  /** Mean red of the hair in a view, without lamp and shade, which no mirror turns. */
  private static double red(Look look, LookSide side) {
    Halves maps = look.maps().get(side);
    double sum = 0;
    double area = 0;
    for (FigureMap map : List.of(maps.first(), maps.second())) {
      for (int cell = 0; cell < map.width * map.height; cell++) {
        sum += map.red(cell);
        area += map.seen(cell);
      }
    }
    return sum / area;
  }

  /** Part and pattern mirrored: what was left is right, as near as twelve draws of each tell. */
  @Test
  void aMirroredLookIsTheSameMirrored() {
    double[][] here = figures(PartSide.RIGHT, RegionSide.RIGHT, 1);
    double[][] there = figures(PartSide.LEFT, RegionSide.LEFT, 101);
    for (int f = 0; f < here[0].length; f++) {
      double[] one = mean(here, f);
      double[] two = mean(there, f);
      assertEquals(one[0], two[0], THREE_SIGMA * Math.hypot(one[1], two[1]), "figure " + f);
    }
    // Not because both sides were alike.
    assertTrue(mean(here, 0)[0] > 2 * mean(here, 1)[0]);
  }

  private static double[] mean(double[][] draws, int figure) {
    double mean = Arrays.stream(draws).mapToDouble(d -> d[figure]).average().orElseThrow();
    double squares = Arrays.stream(draws).mapToDouble(d -> d[figure] - mean).map(d -> d * d).sum();
    return new double[] {mean, Math.sqrt(squares / (draws.length - 1) / draws.length)};
  }

  /**
   * Seen from a side, past the tail, hair of the nape that is combed up shows at least five times
   * as much of its foils as under one length.
   */
  @Test
  void tiedUpShowsTheNapeFromTheSide() {
    HairOnHead hair = hair(PartSide.CENTRE);
    Pattern pattern =
        Pattern.of(
            "test",
            Section.of(
                "test",
                RegionSpec.ofZones(Zone.NAPE_LEFT, Zone.NAPE_RIGHT),
                new SectionShape.Horizontal(),
                TravelFrom.BOTTOM,
                Fill.of(Run.ofMillimetres(6), new Background.None())));
    Placement placement =
        Placer.place(pattern, hair, PlacingSettings.USUAL, NaturalFall.over(hair.head()));
    double[] shown = new double[2];
    for (int up = 0; up < 2; up++) {
      HairStyle style = up == 1 ? HairStyle.TIED_UP : HairStyle.NATURAL;
      Strands strands = strands(hair, FallSettings.USUAL.withHairs(20_000).withStyle(style));
      Dye dye = Dye.after(strands.roots(), placement, hair.head(), pattern, Length.ZERO);
      LookSettings sides =
          LookSettings.of(HairColours.usual(new Level(5)))
              .withHeight(200)
              .withSides(List.of(LookSide.LEFT, LookSide.RIGHT));
      LookFigures figures =
          LookFigures.of(Look.at(strands, dye, Studio.of(strands, 200), sides, Watch.NOBODY));
      shown[up] = figures.visible().toFraction();
    }
    assertTrue(shown[1] > 5 * shown[0], Arrays.toString(shown));
  }
}
