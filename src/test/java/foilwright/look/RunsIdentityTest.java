package foilwright.look;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Ribbons, bands, shelves and contrast on drawn hair whose stripes are known. */
class RunsIdentityTest {
  private static final double WIDE = 160;
  private static final double HIGH = 200;
  private static final double STEP = 3;

  /** As of 60 thousand hairs standing for twice as many, half hidden among each other. */
  private static final float BROAD = 0.05f;

  private static final Colour LIGHT = new Colour(0.5, 0.35, 0.2);
  private static final Colour DARK = new Colour(0.04, 0.025, 0.015);
  private static final Window WINDOW = new Window(LookSide.BACK, -80, 100, 1, 160, 200);

  /** Lightened share at a place across the hair and a distance down. */
  private interface Shares {
    double at(double across, double down);
  }

  private static Halves hair(double leanDegrees, long seed, Shares shares) {
    return hair(leanDegrees, seed, shares, BROAD);
  }

  private static Halves hair(double leanDegrees, long seed, Shares shares, float broad) {
    SplittableRandom random = new SplittableRandom(seed);
    return new Halves(
        half(leanDegrees, random, shares, broad), half(leanDegrees, random, shares, broad));
  }

  private static FigureMap half(
      double leanDegrees, SplittableRandom random, Shares shares, float broad) {
    FigureMap map = new FigureMap(WINDOW);
    double lean = Math.toRadians(leanDegrees);
    double sin = Math.sin(lean);
    double cos = Math.cos(lean);
    double across = WIDE + HIGH;
    int count = (int) (0.65 * across / broad);
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
            (float) (light ? LIGHT : DARK).red(),
            (float) (light ? LIGHT : DARK).green(),
            (float) (light ? LIGHT : DARK).blue());
      }
    }
    return map;
  }

  private static Runs runs(Halves map, boolean across) {
    boolean[] part = new boolean[map.width() * map.height()];
    for (int i = 0; i < part.length; i++) {
      part[i] = i % map.width() > 0 && i % map.width() < 159 && i / map.width() < 199;
    }
    Runs.Both both = Runs.of(map, part);
    return across ? both.ribbons() : both.bands();
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
    double[] squares = new double[24];
    for (int seed = 0; seed < squares.length; seed++) {
      double share = 0.05 + 0.05 * (seed % 12);
      Halves map = hair(seed % 12 * 3, seed, (u, v) -> share);
      assertEquals(Runs.NONE, runs(map, true), "seed " + seed);
      assertEquals(Runs.NONE, runs(map, false), "seed " + seed);
      SideFigures figures = Reading.whole(map);
      assertEquals(share, figures.visible().toFraction(), 0.036);
      squares[seed] = Reading.contrastSquare(map);
      assertEquals(0, figures.spread(), "seed " + seed);
    }
    double mean = Arrays.stream(squares).average().orElseThrow();
    double error = Arrays.stream(squares).map(s -> s * s).sum();
    assertEquals(0, mean, 3 * Math.sqrt(error) / squares.length);
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
        Halves map = hair(0, 9, (u, v) -> v < deep ? 0 : below.at(u, v));
        assertEquals(deep, Reading.whole(map).shelf().toMillimetres(), 2.5, "of " + deep);
      }
    }
  }

  /**
   * On stripes whose answer is worked out from their shares alone, by the whole formula of
   * CIEDE2000: each place is the mean over 5 mm, and is held against the mean of such places over
   * 41 mm. Within three standard errors of the eight draws and 6 %, for the weighing of large
   * differences as small ones and for the bend of the colours within a draw.
   */
  @Test
  void contrastOfStripesIsTheirsHoweverManyHairsAreFollowed() {
    double[][] cases = {
      {4, 9, 0.7, 0}, {7, 5, 0.45, 0.2}, {15, 22, 0.3, 0.05}, {9, 30, 0.9, 0.02}, {2, 3, 0.6, 0.1}
    };
    for (double[] c : cases) {
      double wanted = known(c[0], c[1], c[2], c[3]);
      for (int coarser : new int[] {1, 3, 8}) {
        double[] squares = new double[8];
        for (int i = 0; i < squares.length; i++) {
          Halves hair =
              hair(0, 1000 + 10 * coarser + i, stripes(c[0], c[1], c[2], c[3]), coarser * BROAD);
          squares[i] = Reading.contrastSquare(hair);
        }
        double mean = Arrays.stream(squares).average().orElseThrow();
        double deviation = 0;
        for (double s : squares) {
          deviation += (s - mean) * (s - mean) / (squares.length - 1);
        }
        double error = Math.sqrt(deviation / squares.length);
        assertEquals(
            wanted * wanted,
            mean,
            3 * error + 0.12 * wanted * wanted,
            Arrays.toString(c) + ", " + coarser + " times as broad");
      }
    }
  }

  private static double known(double width, double gap, double light, double dark) {
    Shares stripes = stripes(width, gap, light, dark);
    double step = 0.05;
    int places = (int) Math.round(WIDE / step);
    Colour.Lab[] labs = new Colour.Lab[places];
    double[] shares = new double[places];
    for (int i = 0; i < places; i++) {
      shares[i] = stripes.at((i + 0.5) * step - WIDE / 2, 0);
    }
    int eye = (int) Math.round(2.5 / step);
    for (int i = 0; i < places; i++) {
      int from = Math.max(0, i - eye);
      int to = Math.min(places, i + eye);
      double share = Arrays.stream(shares, from, to).average().orElseThrow();
      labs[i] = DARK.towards(LIGHT, share).toLab();
    }
    int round = (int) Math.round(20.5 / step);
    double sum = 0;
    for (int i = 0; i < places; i++) {
      double l = 0;
      double a = 0;
      double b = 0;
      int from = Math.max(0, i - round);
      int to = Math.min(places, i + round);
      for (int k = from; k < to; k++) {
        l += labs[k].l() / (to - from);
        a += labs[k].a() / (to - from);
        b += labs[k].b() / (to - from);
      }
      double d = labs[i].difference(new Colour.Lab(l, a, b));
      sum += d * d;
    }
    return Math.sqrt(sum / places);
  }
}
