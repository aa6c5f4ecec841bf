package foilwright.look;

import foilwright.fall.Strands;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How much of each place in the hair is seen from one side, through the hair and past the figure
 * before it.
 *
 * <p>A coarse grid holds how near to the viewer the hair comes and how much of it lies in each
 * layer behind that; from it follows how much is still seen through the layers before (Beer and
 * Lambert's law). Of much hair a part is enough to measure both. Sums are of whole numbers, so that
 * no order of adding matters.
 */
final class Coat {
  /** What is seen less than this counts as hidden. */
  static final float LEAST_SEEN = 0.05f;

  private static final double CELL_MM = 2.5;
  private static final int LAYERS = 18;
  private static final double FIRST_LAYER_MM = 0.5;
  private static final double LAYER_GROWTH = 1.22;
  private static final int ENOUGH_HAIRS = 24_000;
  private static final double LONG_STEP_MM = 4;

  /** The figure hides what lies this far behind its surface: hair at the root is within it. */
  private static final float HIDDEN_MM = 3;

  /** Behind this optical depth nothing is seen. */
  private static final double BLACK = 14;

  private static final char ALL = 0xffff;
  private static final int PER_MM = 16;

  /** How far about a place it is known, from the grid, that all is hidden; in cells. */
  private static final int[] REACHES = {8, 20};

  /** A hair that is hidden at places this far apart is hidden between them. */
  private static final double LEAP_MM = 6.1;

  /** The same where it lies some way below what is seen. */
  private static final double LEAP_DEEP_MM = 12.1;

  private static final int DEEP_MM = 1;

  /** Bends of its own may take a hair farther than its step. */
  private static final double LONGEST_STEPS = 1.25;

  private static final int[] LAYER_AT = layers();
  private static final float[] LAYER_FROM = layerFrom();
  private static final float[] LAYER_SHARE = layerShare();

  private final Sample sample;
  private final Strands strands;
  private final Bust bust;
  private final Window window;
  private final int across;
  private final int up;
  private final int near;
  private final float nearSign;

  /** From a hair's coordinates to cells rightwards and down: each times a scale, and a start. */
  private final float perAcross;

  private final float left;
  private final float perUp;
  private final float top;

  /** From a hair's coordinates to pixels. */
  private final float pixelsAcross;

  private final float leftPixel;
  private final float pixelsUp;
  private final float topPixel;

  private final int cellsWide;
  private final int cellsHigh;
  private final int[] front;

  /**
   * For each cell what is seen before each layer, and last behind all of them, in parts of {@link
   * #ALL}.
   */
  private final char[] through;

  /**
   * For each cell the depth behind which nothing is seen any more, because of hair or figure; that
   * before which the figure hides nothing; and then the first of all cells within each of the
   * reaches.
   */
  private final int[] buried;

  private static final int KNOWN = REACHES.length + 2;

  private final float[] reachMm = new float[REACHES.length];
  private final float perStep;
  private final int leapBuried;
  private final int leapDeep;

  private static int[] layers() {
    int[] table = new int[1024];
    double from = 0;
    double thick = FIRST_LAYER_MM;
    int layer = 0;
    for (int i = 0; i < table.length; i++) {
      double mm = i / 8.0;
      while (layer < LAYERS - 1 && mm >= from + thick) {
        from += thick;
        thick *= LAYER_GROWTH;
        layer++;
      }
      table[i] = layer;
    }
    return table;
  }

  private static float[] layerFrom() {
    float[] from = new float[LAYERS];
    for (int i = LAYER_AT.length - 1; i >= 0; i--) {
      from[LAYER_AT[i]] = i;
    }
    return from;
  }

  private static float[] layerShare() {
    float[] share = new float[LAYERS];
    for (int i : LAYER_AT) {
      share[i]++;
    }
    for (int i = 0; i < LAYERS; i++) {
      share[i] = 1 / Math.max(1, share[i]);
    }
    return share;
  }

  /**
   * Enough of the hair to measure a coat by, side by side in memory: of much hair some, and of
   * close points some.
   */
  static final class Sample {
    private final Strands strands;

    /** Where the points of each hair begin in {@link #points}, three numbers for each. */
    private final int[] starts;

    private final float[] points;
    private final int halfway;

    /** For how many hairs each stands. */
    private final int stride;

    Sample(Strands strands) {
      this.strands = strands;
      int count = strands.count();
      stride = Math.max(1, count / ENOUGH_HAIRS);
      int leap = strands.stepMm() <= LONG_STEP_MM ? 2 : 1;
      int some = (count + stride - 1) / stride;
      starts = new int[some + 1];
      for (int s = 0; s < some; s++) {
        starts[s + 1] = starts[s] + 3 * ((strands.size(s * stride) + leap - 1) / leap);
      }
      halfway = (strands.roots().halfway() + stride - 1) / stride;
      points = new float[starts[some]];
      float[] p = strands.points();
      IntStream.range(0, some)
          .parallel()
          .forEach(
              s -> {
                int from = 3 * strands.start(s * stride);
                for (int to = starts[s]; to < starts[s + 1]; to += 3) {
                  points[to] = p[from];
                  points[to + 1] = p[from + 1];
                  points[to + 2] = p[from + 2];
                  from += 3 * leap;
                }
              });
    }

    /** Works on both halves of the hair, side by side. */
    void slices(Painting.Slice work) {
      Painting.slices(halfway, starts.length - 1, work);
    }
  }

  private Coat(Sample sample, Bust bust) {
    this.sample = sample;
    strands = sample.strands;
    this.bust = bust;
    window = bust.window;
    LookSide side = window.side();
    across = side.acrossAxis();
    up = side.upAxis();
    near = side.nearAxis();
    nearSign = side.nearSign();
    perAcross = (float) (side.acrossSign() / CELL_MM);
    left = (float) (window.leftMm() / CELL_MM);
    perUp = (float) (1 / CELL_MM);
    top = (float) (window.topMm() / CELL_MM);
    double scale = window.pixelsPerMm();
    pixelsAcross = (float) (side.acrossSign() * scale);
    leftPixel = (float) (window.leftMm() * scale);
    pixelsUp = (float) scale;
    topPixel = (float) (window.topMm() * scale);
    cellsWide = (int) Math.ceil(window.width() / scale / CELL_MM) + 1;
    cellsHigh = (int) Math.ceil(window.height() / scale / CELL_MM) + 1;
    front = new int[cellsWide * cellsHigh];
    through = new char[front.length * (LAYERS + 1)];
    buried = new int[front.length * KNOWN];
    for (int i = 0; i < REACHES.length; i++) {
      reachMm[i] = (float) (REACHES[i] * CELL_MM);
    }
    perStep = (float) (1 / (LONGEST_STEPS * strands.stepMm()));
    leapBuried = Math.max(0, (int) (LEAP_MM / strands.stepMm()) - 1);
    leapDeep = Math.max(0, (int) (LEAP_DEEP_MM / strands.stepMm()) - 1);
  }

  /** The coat of hair as it is seen in the window of a figure. */
  static Coat of(Sample sample, Bust bust) {
    Coat coat = new Coat(sample, bust);
    coat.findFront();
    coat.fillLayers();
    coat.bury();
    return coat;
  }

  /** Depth in sixteenths of a millimetre, rising towards the viewer, always more than 0. */
  private static int depth(float nearMm) {
    return (int) (nearMm * PER_MM + 32768);
  }

  private void findFront() {
    int[][] parts = new int[Painting.SLICES][];
    sample.slices(
        (slice, from, to) -> {
          int[] mine = new int[front.length];
          float[] p = sample.points;
          int end = sample.starts[to];
          for (int i = sample.starts[from]; i < end; i += 3) {
            int cx = (int) (p[i + across] * perAcross - left);
            int cy = (int) (top - p[i + up] * perUp);
            if (cx >= 0 && cy >= 0 && cx < cellsWide && cy < cellsHigh) {
              int at = cy * cellsWide + cx;
              mine[at] = Math.max(mine[at], depth(nearSign * p[i + near]));
            }
          }
          parts[slice] = mine;
        });
    for (int[] part : parts) {
      for (int i = 0; i < front.length; i++) {
        front[i] = Math.max(front[i], part[i]);
      }
    }
  }

  /** How near the figure comes in the middle of each cell. */
  private float[] figure() {
    float[] depth = new float[front.length];
    double perCell = CELL_MM * window.pixelsPerMm();
    for (int cy = 0; cy < cellsHigh; cy++) {
      int row = Math.min(window.height() - 1, (int) ((cy + 0.5) * perCell));
      for (int cx = 0; cx < cellsWide; cx++) {
        int column = Math.min(window.width() - 1, (int) ((cx + 0.5) * perCell));
        depth[cy * cellsWide + cx] = bust.near[row * window.width() + column];
      }
    }
    return depth;
  }

  private void fillLayers() {
    float[] figure = figure();
    int[][] parts = new int[Painting.SLICES][];
    sample.slices(
        (slice, from, to) -> {
          int[] mine = new int[front.length * LAYERS];
          float[] p = sample.points;
          for (int h = from; h < to; h++) {
            int end = sample.starts[h + 1];
            for (int i = sample.starts[h] + 3; i < end; i += 3) {
              int cx = (int) (p[i + across] * perAcross - left);
              int cy = (int) (top - p[i + up] * perUp);
              if (cx >= 0 && cy >= 0 && cx < cellsWide && cy < cellsHigh) {
                int cell = cy * cellsWide + cx;
                float d = nearSign * p[i + near];
                if (figure[cell] > d + HIDDEN_MM) {
                  continue;
                }
                float dx = p[i + across] - p[i + across - 3];
                float dy = p[i + up] - p[i + up - 3];
                int length = (int) (64 * (float) Math.sqrt(dx * dx + dy * dy));
                int behind = Math.max(0, front[cell] - depth(d)) >> 1;
                mine[cell * LAYERS + LAYER_AT[Math.min(behind, LAYER_AT.length - 1)]] += length;
              }
            }
          }
          parts[slice] = mine;
        });
    double perUnit = hairMm(strands) * sample.stride / (64 * CELL_MM * CELL_MM);
    IntStream.range(0, cellsHigh)
        .parallel()
        .forEach(
            row -> {
              for (int cell = row * cellsWide; cell < (row + 1) * cellsWide; cell++) {
                thin(cell, parts, perUnit);
              }
            });
  }

  /** How wide each hair that is followed counts, millimetres: it stands for several. */
  static double hairMm(Strands strands) {
    return strands.roots().hair().hair().diameter().toMillimetres() * strands.roots().each();
  }

  private void thin(int cell, int[][] parts, double perUnit) {
    double thickness = 0;
    int at = cell * (LAYERS + 1);
    through[at] = ALL;
    for (int layer = 0; layer < LAYERS; layer++) {
      int sum = 0;
      for (int[] part : parts) {
        sum += part[cell * LAYERS + layer];
      }
      thickness += sum * perUnit;
      through[at + 1] =
          sum == 0 ? through[at] : (char) Math.round(ALL * Math.exp(-Math.min(thickness, BLACK)));
      at++;
    }
  }

  private void bury() {
    int[] byFigure = lowest(byFigure(true), 1);
    int[] before = lowest(byFigure(false), 1);
    int[] deep = new int[front.length];
    for (int cell = 0; cell < front.length; cell++) {
      int depth = 0;
      for (int layer = 0; layer < LAYERS; layer++) {
        int at = cell * (LAYERS + 1) + layer;
        if (through[at + 1] <= LEAST_SEEN * ALL) {
          float in = (through[at] - LEAST_SEEN * ALL) / (through[at] - through[at + 1]);
          // Beyond the roundings nothing is seen for certain.
          depth = front[cell] - 2 * (int) (LAYER_FROM[layer] + in / LAYER_SHARE[layer]) - 4;
          break;
        }
      }
      // A hair looks at the coat from up to half a cell beside it.
      deep[cell] = Math.max(depth, byFigure[cell]);
      buried[cell * KNOWN] = deep[cell];
      buried[cell * KNOWN + 1] = -before[cell];
    }
    for (int r = 0; r < REACHES.length; r++) {
      int[] all = lowest(deep, REACHES[r]);
      for (int cell = 0; cell < all.length; cell++) {
        buried[cell * KNOWN + r + 2] = all[cell];
      }
    }
  }

  /**
   * For each cell the depth behind which the figure hides all of its pixels, or less that before
   * which it hides none.
   */
  private int[] byFigure(boolean all) {
    int[] hidden = new int[front.length];
    Arrays.fill(hidden, Integer.MAX_VALUE);
    double toCell = 1 / (CELL_MM * window.pixelsPerMm());
    for (int row = 0; row < window.height(); row++) {
      int cy = (int) ((row + 0.5) * toCell);
      for (int column = 0; column < window.width(); column++) {
        float d = bust.near[row * window.width() + column];
        int at = cy * cellsWide + (int) ((column + 0.5) * toCell);
        int depth = d == Bust.NOWHERE ? 0 : depth(d - HIDDEN_MM) - 1;
        hidden[at] = Math.min(hidden[at], all ? depth : -depth - 2);
      }
    }
    for (int i = 0; i < hidden.length; i++) {
      hidden[i] = hidden[i] == Integer.MAX_VALUE ? 0 : hidden[i];
    }
    return hidden;
  }

  /** The least of all cells within a square that reaches so far; beyond the grid nothing shows. */
  private int[] lowest(int[] of, int reach) {
    int[] rows = new int[of.length];
    int[] all = new int[of.length];
    int[] line = new int[Math.max(cellsWide, cellsHigh)];
    int[] least = new int[line.length];
    for (int row = 0; row < cellsHigh; row++) {
      System.arraycopy(of, row * cellsWide, line, 0, cellsWide);
      lowest(line, cellsWide, reach, least);
      System.arraycopy(least, 0, rows, row * cellsWide, cellsWide);
    }
    for (int column = 0; column < cellsWide; column++) {
      for (int row = 0; row < cellsHigh; row++) {
        line[row] = rows[row * cellsWide + column];
      }
      lowest(line, cellsHigh, reach, least);
      for (int row = 0; row < cellsHigh; row++) {
        all[row * cellsWide + column] = least[row];
      }
    }
    return all;
  }

  /** By a queue of those that may still be least. */
  private static void lowest(int[] line, int size, int reach, int[] least) {
    int[] queue = new int[size];
    int head = 0;
    int tail = 0;
    for (int i = 0; i < size + reach; i++) {
      if (i < size) {
        while (tail > head && line[queue[tail - 1]] >= line[i]) {
          tail--;
        }
        queue[tail++] = i;
      }
      if (i >= reach) {
        while (queue[head] < i - 2 * reach) {
          head++;
        }
        least[i - reach] = line[queue[head]];
      }
    }
  }

  /** Looks at the points of hairs, one after another. */
  final class Looker {
    private final float[] p = strands.points();
    private float acrossStart;
    private float downStart;
    private int skipped;

    /** The coarse grid must not show: each hair looks at it from a little elsewhere. */
    void at(int hair) {
      long key = strands.roots().key(hair);
      acrossStart = (key & 0xff) / 256f - 0.5f - left;
      downStart = (key >>> 8 & 0xff) / 256f - 0.5f + top;
    }

    /** How much of a point is seen, 0 to 1; very little counts as nothing. */
    float seen(int point) {
      int i = 3 * point;
      float fx = p[i + across] * perAcross + acrossStart;
      float fy = downStart - p[i + up] * perUp;
      int cx = (int) fx;
      int cy = (int) fy;
      skipped = 0;
      if (!(fx >= 0 && fy >= 0) || cx >= cellsWide || cy >= cellsHigh) {
        return 0;
      }
      int cell = cy * cellsWide + cx;
      float d = p[i + near] * nearSign;
      int depth = depth(d);
      if (depth < buried[cell * KNOWN]) {
        skipped = skip(cell, depth);
        return 0;
      }
      float share = share(cell, depth);
      if (share <= LEAST_SEEN) {
        return 0;
      }
      return depth < buried[cell * KNOWN + 1] && isBehindFigure(i, d) ? 0 : share;
    }

    /**
     * How many points after a hidden one that was looked at may be left out; when the one after
     * them is seen, the last of them is to be looked at all the same.
     */
    int skipped() {
      return skipped;
    }

    private int skip(int cell, int depth) {
      float mm = 0;
      for (int r = 0; r < REACHES.length; r++) {
        int deep = buried[cell * KNOWN + r + 2] - depth;
        if (deep <= 0) {
          break;
        }
        mm = Math.min(deep * (1f / PER_MM), reachMm[r]);
      }
      int likely = buried[cell * KNOWN] - depth > DEEP_MM * PER_MM ? leapDeep : leapBuried;
      return Math.max(likely, (int) (mm * perStep));
    }

    private boolean isBehindFigure(int i, float d) {
      float x = p[i + across] * pixelsAcross - leftPixel;
      float y = topPixel - p[i + up] * pixelsUp;
      int column = (int) x;
      int row = (int) y;
      return x >= 0
          && y >= 0
          && column < window.width()
          && row < window.height()
          && bust.near[row * window.width() + column] > d + HIDDEN_MM;
    }
  }

  private float share(int cell, int depth) {
    int behind = Math.max(0, front[cell] - depth) >> 1;
    if (behind >= LAYER_AT.length) {
      return through[cell * (LAYERS + 1) + LAYERS] * (1f / ALL);
    }
    int layer = LAYER_AT[behind];
    int at = cell * (LAYERS + 1) + layer;
    // Within a layer: between what enters and what leaves it.
    float in = (behind - LAYER_FROM[layer]) * LAYER_SHARE[layer];
    return (through[at] + in * (through[at + 1] - through[at])) * (1f / ALL);
  }

  /** How much the whole coat covers round a pixel, 0 to 1. */
  double cover(int row, int column) {
    double x = (column + 0.5) / (window.pixelsPerMm() * CELL_MM) - 0.5;
    double y = (row + 0.5) / (window.pixelsPerMm() * CELL_MM) - 0.5;
    int cx = Math.min(Math.max((int) x, 0), cellsWide - 2);
    int cy = Math.min(Math.max((int) y, 0), cellsHigh - 2);
    double u = Math.min(Math.max(x - cx, 0), 1);
    double v = Math.min(Math.max(y - cy, 0), 1);
    double upper = (1 - u) * open(cx, cy) + u * open(cx + 1, cy);
    double lower = (1 - u) * open(cx, cy + 1) + u * open(cx + 1, cy + 1);
    double covered = 1 - ((1 - v) * upper + v * lower);
    return covered * covered;
  }

  /** What is seen through all hair of a cell. */
  private double open(int cx, int cy) {
    return through[(cy * cellsWide + cx) * (LAYERS + 1) + LAYERS] / (double) ALL;
  }
}
