package foilwright.look;

import foilwright.fall.Strands;
import foilwright.fall.Watch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * Hair seen from one side.
 *
 * <p>A {@link Coat} tells how much is seen of each place; a {@link Brush} draws each step of each
 * hair with that share as its weight. In a pixel the weights of the hairs and what they leave to
 * the figure behind add up to one.
 */
final class Painting {
  /** In so many parts hair is drawn: the two halves of the roots, each by itself. */
  static final int SLICES = 2;

  /** Share of its light that skin has in the thickest hair. */
  static final double LEAST_LIGHT = 0.2;

  /** How far about a place hair shades the skin there. */
  private static final double SHADE_MM = 1.2;

  private static final int TOLD_HAIRS = 4096;
  private static final double COAT_SHARE = 0.3;

  /** Holes in a coat are closed where it covers more than this. */
  private static final double LEAST_FILLED = 0.02;

  /** The eight bits of light from 0 to 1, in steps of a fifth of one of them or less. */
  private static final byte[] BYTES = bytes();

  private static byte[] bytes() {
    byte[] table = new byte[1 << 14];
    for (int i = 0; i < table.length; i++) {
      double light = i / (double) (table.length - 1);
      table[i] = (byte) Math.round(255 * Colour.encoded(light));
    }
    return table;
  }

  private final Strands strands;
  private final Window window;
  private final Bust bust;
  private final Coat coat;

  /** Light of each part, as its brush summed it. */
  private final long[][] light = new long[SLICES][];

  private final Halves maps;

  /** Weight of a whole pixel that is covered once. */
  private final double unit;

  /** What all views of one look share: the colours of each hair and how bright it is. */
  static final class Hairs {
    private final Dye dye;
    private final HairShades shades;
    private final float[] bright;

    Hairs(Dye dye, HairShades shades, float[] bright) {
      this.dye = dye;
      this.shades = shades;
      this.bright = bright;
    }

    Dye dye() {
      return dye;
    }

    HairShades shades() {
      return shades;
    }

    float bright(int hair) {
      return bright[hair];
    }
  }

  /** What one side shows. */
  record Result(LookPicture picture, Halves maps) {}

  private Painting(
      Strands strands, Coat.Sample sample, Hairs hairs, Bust bust, byte[] seen, Watch watch) {
    this.strands = strands;
    this.bust = bust;
    window = bust.window;
    coat = Coat.of(sample, bust);
    watch.told(COAT_SHARE);
    unit = Brush.unit(Coat.hairMm(strands), window) * Brush.SUPER * Brush.SUPER;
    maps = draw(hairs, seen, watch);
  }

  static Result of(
      Strands strands, Coat.Sample sample, Hairs hairs, Bust bust, byte[] seen, Watch watch) {
    Painting painting = new Painting(strands, sample, hairs, bust, seen, watch);
    return new Result(painting.develop(), painting.maps);
  }

  /** Work on some of the hairs. */
  interface Slice {
    void run(int slice, int fromHair, int toHair);
  }

  /** Works on both halves side by side. */
  static void slices(int halfway, int count, Slice work) {
    IntStream.range(0, SLICES)
        .parallel()
        .forEach(s -> work.run(s, s == 0 ? 0 : halfway, s == 0 ? halfway : count));
  }

  private Halves draw(Hairs hairs, byte[] seen, Watch watch) {
    FigureMap[] maps = new FigureMap[SLICES];
    AtomicInteger drawn = new AtomicInteger();
    slices(
        strands.roots().halfway(),
        strands.count(),
        (slice, from, to) -> {
          Brush brush = new Brush(strands, hairs, window, coat, seen);
          for (int h = from; h < to; h++) {
            brush.draw(h);
            if (h % TOLD_HAIRS == 0) {
              double share = drawn.addAndGet(TOLD_HAIRS) / (double) strands.count();
              watch.told(COAT_SHARE + (1 - COAT_SHARE) * Math.min(1, share));
            }
          }
          light[slice] = brush.light();
          maps[slice] = brush.map();
        });
    return new Halves(maps[0], maps[1]);
  }

  private LookPicture develop() {
    int width = window.width();
    int height = window.height();
    Hair hair = new Hair(width * height);
    IntStream.range(0, height)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < width; column++) {
                close(row, column, row * width + column, hair);
              }
            });
    int reach = shadeReach(window);
    Box covers = Box.of(at -> hair.cover[at], width, height);
    Box places = Box.of(at -> 1, width, height);
    int[] pixels = new int[width * height];
    IntStream.range(0, height)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < width; column++) {
                int at = row * width + column;
                double round = covers.sum(row, column, reach) / places.sum(row, column, reach);
                pixels[at] = develop(at, hair, shade(round));
              }
            });
    return new LookPicture(window.side(), width, height, window.pixelsPerMm(), pixels);
  }

  /** The hair of each pixel: how much of it hair covers, and its light, which that share has. */
  private static final class Hair {
    final float[] cover;
    final float[] red;
    final float[] green;
    final float[] blue;

    Hair(int pixels) {
      cover = new float[pixels];
      red = new float[pixels];
      green = new float[pixels];
      blue = new float[pixels];
    }
  }

  /** What was drawn in a pixel, and what closes the holes that a coat does not have. */
  private void close(int row, int column, int at, Hair into) {
    double covered = coat.cover(row, column);
    double weight = weight(at);
    if (weight == 0 && covered < LEAST_FILLED) {
      return;
    }
    // Few hairs are drawn in a pixel: where a thick coat lies they stand for all of it.
    double dense = (1 + 2.5 * covered) / unit;
    double hair = Math.min(1, weight * dense);
    double each = weight > 0 ? hair / (weight * Brush.LIGHT) : 0;
    double red = each * red(at);
    double green = each * green(at);
    double blue = each * blue(at);
    if (hair < covered) {
      // Nor does such a coat have holes a pixel wide: what lies round about closes them.
      double round = 0;
      double roundRed = 0;
      double roundGreen = 0;
      double roundBlue = 0;
      int places = 0;
      for (int y = Math.max(0, row - 1); y <= Math.min(window.height() - 1, row + 1); y++) {
        for (int x = Math.max(0, column - 1); x <= Math.min(window.width() - 1, column + 1); x++) {
          int beside = y * window.width() + x;
          round += weight(beside);
          roundRed += red(beside);
          roundGreen += green(beside);
          roundBlue += blue(beside);
          places++;
        }
      }
      double more = covered * Math.min(1, round / places * dense) - hair;
      if (more > 0) {
        hair += more;
        double eachRound = more / (round * Brush.LIGHT);
        red += eachRound * roundRed;
        green += eachRound * roundGreen;
        blue += eachRound * roundBlue;
      }
    }
    into.cover[at] = (float) hair;
    into.red[at] = (float) red;
    into.green[at] = (float) green;
    into.blue[at] = (float) blue;
  }

  /** Hair before the figure, of whose light the hair round about leaves a share. */
  private int develop(int at, Hair hair, double shade) {
    double figure = (1 - hair.cover[at]) * bust.cover[at];
    double opaque = hair.cover[at] + figure;
    if (opaque < 1e-3) {
      return 0;
    }
    double shaded = shade * figure;
    int r = byteOf((hair.red[at] + shaded * bust.red[at]) / opaque);
    int g = byteOf((hair.green[at] + shaded * bust.green[at]) / opaque);
    int b = byteOf((hair.blue[at] + shaded * bust.blue[at]) / opaque);
    int alpha = (int) Math.round(255 * Math.min(1, opaque));
    return alpha << 24 | r << 16 | g << 8 | b;
  }

  /** How far about a pixel hair shades it, in pixels. */
  static int shadeReach(Window window) {
    return Math.max(1, (int) Math.round(SHADE_MM * window.pixelsPerMm()));
  }

  /**
   * Share of its light that skin has between hairs. The lamp stands aside, so that its light comes
   * through more hair than the eye looks through, and what skin scatters goes out through it again:
   * as through three times as much.
   *
   * @param round how much of the place round about hair covers, 0 to 1
   */
  static double shade(double round) {
    double through = 1 - round;
    return LEAST_LIGHT + (1 - LEAST_LIGHT) * through * through * through;
  }

  private double weight(int at) {
    return (light[0][2 * at + 1] + light[1][2 * at + 1]) & 0xffffffffL;
  }

  private double red(int at) {
    return (light[0][2 * at] + light[1][2 * at]) >>> 32;
  }

  private double green(int at) {
    return (light[0][2 * at] + light[1][2 * at]) & 0xffffffffL;
  }

  private double blue(int at) {
    return (light[0][2 * at + 1] + light[1][2 * at + 1]) >>> 32;
  }

  private static int byteOf(double light) {
    return BYTES[(int) (Math.min(light, 1) * (BYTES.length - 1) + 0.5)] & 0xff;
  }
}
