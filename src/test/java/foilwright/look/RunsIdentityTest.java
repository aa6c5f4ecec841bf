package foilwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Ribbons, bands, shelves and contrast on drawn hair whose stripes are known. */
class RunsIdentityTest {
  private static final double WIDE = 160;
  private static final double HIGH = 200;
  private static final double STEP = 3;

  /** As of 60 thousand hairs standing for twice as many, half hidden among each other. */
  private static final float BROAD = 0.05f;

  private static final Window WINDOW = new Window(LookSide.BACK, -80, 100, 1, 160, 200);

  /** Lightened share at a place across the hair and a distance down. */
  private interface Shares {
    double at(double across, double down);
  }

  private static FigureMap hair(double leanDegrees, long seed, Shares shares) {
    return hair(leanDegrees, seed, shares, BROAD);
  }

  private static FigureMap hair(double leanDegrees, long seed, Shares shares, float broad) {
    FigureMap map = new FigureMap(WINDOW);
    Random random = new Random(seed);
    double lean = Math.toRadians(leanDegrees);
    double sin = Math.sin(lean);
    double cos = Math.cos(lean);
    double across = WIDE + HIGH;
    int count = (int) (1.3 * across / broad);
    for (int h = 0; h < count; h++) {
      double u = (random.nextDouble() - 0.5) * 2 * across;
      double draw = random.nextDouble();
      double from = random.nextDouble() * STEP;
      for (double v = -HIGH + from; v < 2 * HIGH; v += STEP) {
        double x = WIDE / 2 + u * cos + v * sin - HIGH / 2 * sin;
        double y = v * cos - u * sin;
        boolean light = draw < shares.at(u, y);
        map.add(
            (float) x,
            (float) y,
            (float) (STEP * sin),
            (float) (STEP * cos),
            2 * broad,
            light ? 1 : 0,
            light ? 0.5f : 0.04f,
            light ? 0.35f : 0.025f,
            light ? 0.2f : 0.015f);
      }
    }
    return map;
  }

  private static Runs runs(FigureMap map, boolean across) {
    boolean[] part = new boolean[map.width * map.height];
    for (int i = 0; i < part.length; i++) {
      part[i] = i % map.width > 0 && i % map.width < 159 && i / map.width < 199;
    }
    return Runs.of(map, part, across);
  }

  private static Shares stripes(double width, double gap, double light, double dark) {
    DoubleUnaryOperator place = u -> u / (width + gap) - Math.floor(u / (width + gap));
    return (u, v) -> place.applyAsDouble(u) < width / (width + gap) ? light : dark;
  }

  /** Width, gap, lightened share in the stripes and between them. */
  private static final double[][] STRIPES = {
    {2, 2, 1, 0},
    {2, 6, 0.95, 0.02},
    {3, 3, 0.8, 0.1},
    {3, 9, 0.6, 0.05},
    {5, 10, 0.5, 0.1},
    {6, 34, 0.5, 0.05},
    {10, 10, 0.5, 0.1},
    {8, 24, 0.5, 0.1},
    {20, 20, 0.4, 0.1},
    {40, 40, 0.3, 0.1}
  };

  @Test
  void stripesAreCountedAndMeasured() {
    for (double[] c : STRIPES) {
      for (double lean : new double[] {0, -20, 20, 40}) {
        Runs found = runs(hair(lean, 7, stripes(c[0], c[1], c[2], c[3])), true);
        String what = c[0] + " mm, " + c[1] + " mm apart, lean " + lean + ": " + found;
        double all = 158 * Math.cos(Math.toRadians(lean)) / (c[0] + c[1]);
        assertEquals(all, found.perLine(), 0.125 * all + 0.3, what);
        assertEquals(c[0], found.widthMm(), Math.max(1.2, 0.25 * c[0]), what);
      }
    }
  }

  @Test
  void hairScatteredAtRandomHasNoRibbonsNoBandsAndNoContrast() {
    for (int seed = 0; seed < 12; seed++) {
      double share = 0.05 + 0.05 * seed;
      FigureMap map = hair(seed * 3, seed, (u, v) -> share);
      assertEquals(Runs.NONE, runs(map, true), "seed " + seed);
      assertEquals(Runs.NONE, runs(map, false), "seed " + seed);
      SideFigures figures = Reading.whole(map);
      assertEquals(share, figures.visible().toFraction(), 0.036);
      assertEquals(0, figures.contrast(), 2, "seed " + seed);
      assertEquals(0, figures.spread(), "seed " + seed);
    }
  }

  @Test
  void weakStripesBlendRatherThanBeMiscounted() {
    for (int seed = 0; seed < 6; seed++) {
      Runs found = runs(hair(0, seed, stripes(3, 5, 0.2, 0.1)), true);
      assertEquals(Runs.NONE, found, "seed " + seed);
    }
  }

  @Test
  void bandsAreCountedAndMeasuredDownTheFall() {
    for (double high : new double[] {6, 12, 25}) {
      Shares stripes = stripes(high, high, 0.5, 0.1);
      Runs found = runs(hair(0, 3, (u, v) -> stripes.at(v, u)), false);
      assertEquals(199 / (2 * high), found.perLine(), 0.125 * 199 / (2 * high) + 0.5, "of " + high);
      assertEquals(high, found.widthMm(), Math.max(1, 0.25 * high), found.toString());
    }
  }

  @Test
  void bandsReachAcrossAndRibbonsDown() {
    Shares stripes = stripes(12, 18, 0.6, 0.1);
    double ribbons = Reading.whole(hair(0, 5, stripes)).spread();
    double bands = Reading.whole(hair(0, 5, (u, v) -> stripes.at(v, u))).spread();
    assertTrue(ribbons < 0.2 && bands > 5, ribbons + " and " + bands);
  }

  @Test
  void shelfIsAsDeepAsTheDarkAboveTheLight() {
    for (double deep : new double[] {0, 10, 33, 60}) {
      for (Shares below : new Shares[] {(u, v) -> 0.15, stripes(4, 8, 0.6, 0.05)}) {
        FigureMap map = hair(0, 9, (u, v) -> v < deep ? 0 : below.at(u, v));
        assertEquals(deep, Reading.whole(map).shelf().toMillimetres(), 2.5, "of " + deep);
      }
    }
  }

  /**
   * Half as many hairs twice as broad; the difference is not linear in light, so that some stays.
   */
  @Test
  void contrastDoesNotDependOnHowManyHairsAreFollowed() {
    Shares stripes = stripes(8, 12, 0.5, 0.1);
    double fine = Reading.whole(hair(0, 1, stripes)).contrast();
    double coarse = Reading.whole(hair(0, 2, stripes, 2 * BROAD)).contrast();
    assertEquals(fine, coarse, 0.2 * fine);
  }
}
