package foilwright.look;

import foilwright.fall.Roots;
import foilwright.fall.Strands;
import java.util.stream.IntStream;

/**
 * Hair seen from one side.
 *
 * <p>Three rounds over the hair. The first finds how near to the viewer the hair comes, on a coarse
 * grid; the second how much hair lies in each layer behind that, and from it how much is still seen
 * through the layers before (Beer and Lambert's law). The third draws each step of each hair with
 * that share as its weight. In a pixel the weights of the hairs and what they leave to the figure
 * behind add up to one, and since all sums are of whole numbers, no order of drawing can change
 * them.
 */
final class Painting {
  private static final double CELL_MM = 2.5;
  private static final int LAYERS = 18;
  private static final double FIRST_LAYER_MM = 0.5;
  private static final double LAYER_GROWTH = 1.22;
  private static final int ENOUGH_HAIRS = 24_000;
  private static final double LEAST_SEEN = 0.012;
  private static final int SUPER = 2;
  private static final double HIDDEN_MM = 3;
  private static final double LONG_STEP_MM = 4;
  private static final int WEIGHT = 4096;
  private static final int LIGHT = 4095;
  private static final int SLICES = 2;

  private static final int[] LAYER_AT = layers();

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
  private final Hairs hairs;
  private final Window window;
  private final Bust bust;
  private final byte[] seen;
  private final int across;
  private final int up;
  private final int near;
  private final float acrossSign;
  private final float nearSign;
  private final double widthMm;

  /** Weight of a fine pixel that is covered once; less for hairs so few that each is wider. */
  private final float unit;

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
  }

  private final int cellsWide;
  private final int cellsHigh;
  private final float[] through;
  private final int[] front;

  /** Two long words for each pixel: red and green, blue and weight. */
  private long[] light;

  private FigureMap map;

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

  private Painting(Strands strands, Hairs hairs, Window window, Bust bust, byte[] seen) {
    this.strands = strands;
    this.hairs = hairs;
    this.window = window;
    this.bust = bust;
    this.seen = seen;
    across = window.side().acrossAxis();
    up = window.side().upAxis();
    near = window.side().nearAxis();
    acrossSign = window.side().acrossSign();
    nearSign = window.side().nearSign();
    Roots roots = strands.roots();
    widthMm = roots.hair().hair().diameter().toMillimetres() * roots.each();
    unit = (float) (WEIGHT / Math.max(1, widthMm * window.pixelsPerMm() * SUPER));
    cellsWide = (int) Math.ceil(window.width() / window.pixelsPerMm() / CELL_MM) + 1;
    cellsHigh = (int) Math.ceil(window.height() / window.pixelsPerMm() / CELL_MM) + 1;
    front = new int[cellsWide * cellsHigh];
    through = new float[cellsWide * cellsHigh * (LAYERS + 1)];
  }

  /** What one side shows. */
  record Result(LookPicture picture, FigureMap map) {}

  static Result of(Strands strands, Hairs hairs, Window window, Bust bust, byte[] seen) {
    Painting painting = new Painting(strands, hairs, window, bust, seen);
    painting.findFront();
    painting.fillLayers();
    painting.draw();
    return new Result(painting.develop(), painting.map);
  }

  private interface Slice {
    void run(int slice, int fromHair, int toHair);
  }

  private void slices(Slice work) {
    int count = strands.count();
    IntStream.range(0, SLICES)
        .parallel()
        .forEach(
            s ->
                work.run(
                    s, (int) ((long) count * s / SLICES), (int) ((long) count * (s + 1) / SLICES)));
  }

  private int stride() {
    return Math.max(1, strands.count() / ENOUGH_HAIRS);
  }

  /** Depth in sixteenths of a millimetre, rising towards the viewer, always more than 0. */
  private static int depth16(float nearMm) {
    return (int) (nearMm * 16 + 32768);
  }

  private void findFront() {
    int stride = stride();
    int[][] parts = new int[SLICES][];
    slices(
        (slice, from, to) -> {
          int[] mine = new int[front.length];
          float[] p = strands.points();
          float scale = (float) (1 / CELL_MM);
          float left = (float) (window.leftMm() / CELL_MM);
          float top = (float) (window.topMm() / CELL_MM);
          for (int h = from + (stride - from % stride) % stride; h < to; h += stride) {
            int end = 3 * strands.start(h + 1);
            for (int i = 3 * strands.start(h); i < end; i += 3) {
              int cx = (int) (acrossSign * p[i + across] * scale - left);
              int cy = (int) (top - p[i + up] * scale);
              if (cx >= 0 && cy >= 0 && cx < cellsWide && cy < cellsHigh) {
                int at = cy * cellsWide + cx;
                int d = depth16(nearSign * p[i + near]);
                if (d > mine[at]) {
                  mine[at] = d;
                }
              }
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
    int stride = stride();
    float[] figure = figure();
    int[][] parts = new int[SLICES][];
    slices(
        (slice, from, to) -> {
          int[] mine = new int[front.length * LAYERS];
          float[] p = strands.points();
          float scale = (float) (1 / CELL_MM);
          float left = (float) (window.leftMm() / CELL_MM);
          float top = (float) (window.topMm() / CELL_MM);
          for (int h = from + (stride - from % stride) % stride; h < to; h += stride) {
            int end = 3 * strands.start(h + 1);
            for (int i = 3 * strands.start(h) + 3; i < end; i += 3) {
              float dx = p[i + across] - p[i + across - 3];
              float dy = p[i + up] - p[i + up - 3];
              int length = (int) (64 * Math.sqrt(dx * dx + dy * dy));
              int cx = (int) (acrossSign * p[i + across] * scale - left);
              int cy = (int) (top - p[i + up] * scale);
              if (cx >= 0 && cy >= 0 && cx < cellsWide && cy < cellsHigh) {
                int cell = cy * cellsWide + cx;
                float d = nearSign * p[i + near];
                if (figure[cell] > d + HIDDEN_MM) {
                  continue;
                }
                int behind = (front[cell] - depth16(d)) >> 1;
                mine[cell * LAYERS + LAYER_AT[Math.min(behind, LAYER_AT.length - 1)]] += length;
              }
            }
          }
          parts[slice] = mine;
        });
    double perUnit = widthMm * stride / (64 * CELL_MM * CELL_MM);
    for (int cell = 0; cell < front.length; cell++) {
      double thickness = 0;
      through[cell * (LAYERS + 1)] = 1;
      for (int layer = 0; layer < LAYERS; layer++) {
        int sum = 0;
        for (int[] part : parts) {
          sum += part[cell * LAYERS + layer];
        }
        thickness += sum * perUnit;
        through[cell * (LAYERS + 1) + layer + 1] = (float) Math.exp(-thickness);
      }
    }
  }

  /** How much of a place is seen through the hair before it, 0 to 1. */
  private float seenAt(float x, float y, float nearMm) {
    int cx = (int) x;
    int cy = (int) y;
    if (x < 0 || y < 0 || cx >= cellsWide || cy >= cellsHigh) {
      return 0;
    }
    int cell = cy * cellsWide + cx;
    int behind = Math.max(0, front[cell] - depth16(nearMm)) >> 1;
    if (behind >= LAYER_AT.length) {
      return through[cell * (LAYERS + 1) + LAYERS];
    }
    int layer = LAYER_AT[behind];
    int at = cell * (LAYERS + 1) + layer;
    // Within a layer: between what enters and what leaves it.
    float share = (behind - LAYER_FROM[layer]) * LAYER_SHARE[layer];
    return through[at] + share * (through[at + 1] - through[at]);
  }

  private static final float[] LAYER_FROM = layerFrom();
  private static final float[] LAYER_SHARE = layerShare();

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

  private void draw() {
    int fineWidth = window.width() * SUPER;
    int fineHeight = window.height() * SUPER;
    long[][] parts = new long[SLICES][];
    FigureMap[] maps = new FigureMap[SLICES];
    slices(
        (slice, from, to) -> {
          Brush brush = new Brush(fineWidth, fineHeight);
          for (int h = from; h < to; h++) {
            brush.hair(h);
          }
          parts[slice] = brush.light;
          maps[slice] = brush.map;
        });
    light = parts[0];
    map = maps[0];
    for (int s = 1; s < SLICES; s++) {
      long[] part = parts[s];
      for (int i = 0; i < light.length; i++) {
        light[i] += part[i];
      }
      map.add(maps[s]);
    }
  }

  /** Draws hairs, one after another. */
  private final class Brush {
    private final long[] light;
    private final FigureMap map;
    private final int fineWidth;
    private final int fineHeight;
    private final float scale = (float) (window.pixelsPerMm() * SUPER);
    private final float left = (float) (window.leftMm() * window.pixelsPerMm() * SUPER);
    private final float top = (float) (window.topMm() * window.pixelsPerMm() * SUPER);
    private final float toCell = (float) (1 / (CELL_MM * window.pixelsPerMm() * SUPER));
    private final float toPixel = 1f / SUPER;
    private float[] shares = new float[256];
    private float red;
    private float green;
    private float blue;

    Brush(int fineWidth, int fineHeight) {
      this.fineWidth = fineWidth;
      this.fineHeight = fineHeight;
      light = new long[2 * window.width() * window.height()];
      map = new FigureMap(window);
    }

    void hair(int h) {
      float[] p = strands.points();
      int first = strands.start(h);
      int size = strands.size(h);
      long key = strands.roots().key(h);
      // The coarse grid must not show: each hair looks at it from a little elsewhere.
      float shiftX = (key & 0xff) / 256f - 0.5f;
      float shiftY = (key >>> 8 & 0xff) / 256f - 0.5f;
      float stepMm = (float) strands.stepMm();
      Dye dye = hairs.dye;
      boolean picked = dye.isPicked(h);
      boolean old = dye.oldStartMm(h) < Double.POSITIVE_INFINITY;
      float bright = hairs.bright[h];
      float beforeX = 0;
      float beforeY = 0;
      float beforeSeen = 0;
      float beforeRed = 0;
      float beforeGreen = 0;
      float beforeBlue = 0;
      look(first, size, shiftX, shiftY, stepMm);
      for (int k = 0; k < size; k++) {
        float share = shares[k];
        if (share == 0 && beforeSeen == 0) {
          continue;
        }
        int i = 3 * (first + k);
        float x = p[i + across] * acrossSign * scale - left;
        float y = top - p[i + up] * scale;
        if (beforeSeen == 0 && k > 0) {
          beforeX = p[i - 3 + across] * acrossSign * scale - left;
          beforeY = top - p[i - 3 + up] * scale;
        }
        if (share > 0) {
          shade(h, i, k, first, size, share, bright, picked, old, stepMm);
          int held = (int) (255 * share);
          if (held > (seen[first + k] & 0xff)) {
            seen[first + k] = (byte) held;
          }
        }
        if (k > 0) {
          if (share == 0) {
            red = beforeRed;
            green = beforeGreen;
            blue = beforeBlue;
          } else if (beforeSeen == 0) {
            beforeRed = red;
            beforeGreen = green;
            beforeBlue = blue;
          }
          line(beforeX, beforeY, beforeSeen, beforeRed, beforeGreen, beforeBlue, x, y, share);
          count(h, (k - 0.5f) * stepMm, beforeX, beforeY, x, y, beforeSeen + share, picked, old);
        }
        beforeX = x;
        beforeY = y;
        beforeSeen = share;
        beforeRed = red;
        beforeGreen = green;
        beforeBlue = blue;
      }
    }

    /**
     * How much of each point of a hair is seen. Most points are buried: with short steps every
     * second one is looked at first, and one between two that are buried counts as buried.
     */
    private void look(int first, int size, float shiftX, float shiftY, float stepMm) {
      if (shares.length < size) {
        shares = new float[2 * size];
      }
      int stride = stepMm <= LONG_STEP_MM ? 2 : 1;
      for (int k = 0; k < size; k += stride) {
        shares[k] = seenPoint(first + k, shiftX, shiftY);
      }
      for (int k = 1; k < size && stride == 2; k += 2) {
        boolean near = shares[k - 1] > 0 || k + 1 == size || shares[k + 1] > 0;
        shares[k] = near ? seenPoint(first + k, shiftX, shiftY) : 0;
      }
    }

    private float seenPoint(int point, float shiftX, float shiftY) {
      float[] p = strands.points();
      int i = 3 * point;
      float x = p[i + across] * acrossSign * scale - left;
      float y = top - p[i + up] * scale;
      float d = p[i + near] * nearSign;
      float share = seenAt(x * toCell + shiftX, y * toCell + shiftY, d);
      return share > LEAST_SEEN && !isBehindFigure(x, y, d) ? share : 0;
    }

    private boolean isBehindFigure(float x, float y, float d) {
      int column = (int) (x * toPixel);
      int row = (int) (y * toPixel);
      return x >= 0
          && y >= 0
          && column < window.width()
          && row < window.height()
          && bust.near[row * window.width() + column] > d + HIDDEN_MM;
    }

    private void shade(
        int h,
        int i,
        int k,
        int first,
        int size,
        float share,
        float bright,
        boolean picked,
        boolean old,
        float stepMm) {
      float[] p = strands.points();
      int a = 3 * (first + Math.max(k - 1, 0));
      int b = 3 * (first + Math.min(k + 1, size - 1));
      float tx = p[b] - p[a];
      float ty = p[b + 1] - p[a + 1];
      float tz = p[b + 2] - p[a + 2];
      float norm = 1 / (float) Math.sqrt(tx * tx + ty * ty + tz * tz + 1e-12f);
      tx *= norm;
      ty *= norm;
      tz *= norm;
      // The form of the whole: an egg over the head and a column below it.
      float nx = p[i] / (74 * 74);
      float ny = (p[i + 1] - 6) / (94 * 94);
      float nz = Math.max(0, p[i + 2] - 8) / (102 * 102);
      norm = 1 / (float) Math.sqrt(nx * nx + ny * ny + nz * nz + 1e-12f);
      nx *= norm;
      ny *= norm;
      nz *= norm;
      // Rightwards, up and towards the viewer of this picture.
      float ta = acrossSign * (across == 0 ? tx : ty);
      float tu = up == 1 ? ty : tz;
      float tn = nearSign * (near == 0 ? tx : near == 1 ? ty : tz);
      float na = acrossSign * (across == 0 ? nx : ny);
      float nu = up == 1 ? ny : nz;
      float nn = nearSign * (near == 0 ? nx : near == 1 ? ny : nz);
      // A lamp above and to the left behind the viewer's shoulder.
      float la = -0.36f;
      float lu = 0.58f;
      float ln = 0.73f;
      float along = ta * la + tu * lu + tn * ln;
      float diffuse = (float) Math.sqrt(Math.max(0, 1 - along * along));
      float facing = na * la + nu * lu + nn * ln;
      float form = Math.max(0.16f, 0.36f + 0.64f * facing);
      // Half way between lamp and viewer; the scales of a hair tilt its shine along it.
      float half = (ta * la + tu * lu + tn * (ln + 1)) * 0.537f;
      float off1 = half - 0.09f;
      float off2 = half - 0.02f;
      float shine = Math.max(0, 1 - off1 * off1);
      shine *= shine;
      shine *= shine;
      shine *= shine;
      shine *= shine;
      shine *= shine;
      float glow = Math.max(0, 1 - off2 * off2);
      glow *= glow;
      glow *= glow;
      glow *= glow;
      glow *= glow;
      float deep = 0.30f + 0.70f * share;
      float base = deep * bright * (0.22f + 0.98f * form * (0.30f + 0.70f * diffuse));
      float bounce = deep * form * glow * 0.55f * bright;
      float gloss = share * form * shine * 0.032f * bright;

      float[] palette = hairs.shades.palette();
      int c = hairs.shades.natural(h);
      float r = palette[c];
      float g = palette[c + 1];
      float bl = palette[c + 2];
      float mm = k * stepMm;
      if (old) {
        float t = (float) Dye.share(mm, hairs.dye.oldStartMm(h));
        c = hairs.shades.old(h);
        r += t * (palette[c] - r);
        g += t * (palette[c + 1] - g);
        bl += t * (palette[c + 2] - bl);
      }
      if (picked) {
        float t = (float) Dye.share(mm, hairs.dye.startMm(h));
        c = hairs.shades.fresh(h);
        r += t * (palette[c] - r);
        g += t * (palette[c + 1] - g);
        bl += t * (palette[c + 2] - bl);
      }
      red = Math.min(1, r * (base + bounce) + gloss) * LIGHT;
      green = Math.min(1, g * (base + bounce) + 0.94f * gloss) * LIGHT;
      blue = Math.min(1, bl * (base + bounce) + 0.84f * gloss) * LIGHT;
    }

    private void line(
        float x0,
        float y0,
        float seen0,
        float red0,
        float green0,
        float blue0,
        float x1,
        float y1,
        float seen1) {
      float dx = x1 - x0;
      float dy = y1 - y0;
      int steps = (int) Math.max(Math.abs(dx), Math.abs(dy)) + 1;
      float per = 1f / steps;
      float length = (float) Math.sqrt(dx * dx + dy * dy);
      // Area of this piece of hair in fine pixels, in units of weight.
      float area = length * per * (float) widthMm * scale * unit;
      int width = window.width();
      float x = x0 + 0.5f * per * dx;
      float y = y0 + 0.5f * per * dy;
      float w = (seen0 + 0.5f * per * (seen1 - seen0)) * area;
      float wStep = per * (seen1 - seen0) * area;
      float t = 0.5f * per;
      for (int i = 0; i < steps; i++) {
        if (x >= 0 && y >= 0 && x < fineWidth && y < fineHeight) {
          int at = 2 * ((int) y / SUPER * width + (int) x / SUPER);
          long weight = (long) w;
          long r = (long) (red0 + t * (red - red0));
          long g = (long) (green0 + t * (green - green0));
          long b = (long) (blue0 + t * (blue - blue0));
          light[at] += (r << 32 | g) * weight;
          light[at + 1] += (b << 32 | 1) * weight;
        }
        x += per * dx;
        y += per * dy;
        w += wStep;
        t += per;
      }
    }

    private void count(
        int h,
        float mm,
        float x0,
        float y0,
        float x1,
        float y1,
        float seenTwice,
        boolean picked,
        boolean old) {
      float dx = x1 - x0;
      float dy = y1 - y0;
      float newShare = picked ? (float) Dye.share(mm, hairs.dye.startMm(h)) : 0;
      float oldShare = old ? (float) Dye.share(mm, hairs.dye.oldStartMm(h)) * (1 - newShare) : 0;
      float rest = 1 - newShare - oldShare;
      HairShades shades = hairs.shades;
      float[] palette = shades.palette();
      int n = shades.natural(h);
      int o = shades.old(h);
      int f = shades.fresh(h);
      map.add(
          (x0 + x1) * 0.5f / scale,
          (y0 + y1) * 0.5f / scale,
          dx / scale,
          dy / scale,
          seenTwice * 0.5f * (float) widthMm,
          (shades.lightens(h) ? newShare : 0) + oldShare,
          rest * palette[n] + oldShare * palette[o] + newShare * palette[f],
          rest * palette[n + 1] + oldShare * palette[o + 1] + newShare * palette[f + 1],
          rest * palette[n + 2] + oldShare * palette[o + 2] + newShare * palette[f + 2]);
    }
  }

  private LookPicture develop() {
    int width = window.width();
    int height = window.height();
    int[] pixels = new int[width * height];
    IntStream.range(0, height)
        .parallel()
        .forEach(
            row -> {
              for (int column = 0; column < width; column++) {
                pixels[row * width + column] = develop(row, column, row * width + column);
              }
            });
    return new LookPicture(window.side(), width, height, window.pixelsPerMm(), pixels);
  }

  private int develop(int row, int column, int at) {
    double weight = light[2 * at + 1] & 0xffffffffL;
    if (weight == 0 && bust.cover[at] == 0) {
      return 0;
    }
    double coat = opaque(row, column);
    double hair = 0;
    double each = 0;
    if (weight > 0) {
      double mean = weight / (unit * SUPER * SUPER);
      // Few hairs are drawn in a pixel: where a thick coat lies they stand for all of it.
      hair = Math.min(1, mean * (1 + 2.5 * coat));
      each = hair / (weight * LIGHT);
    }
    double figure = (1 - hair) * bust.cover[at];
    double opaque = hair + figure;
    if (opaque < 1e-3) {
      return 0;
    }
    // Hair shades the skin and the roots tint it.
    double shaded = (1 - 0.5 * coat) * figure;
    int r = byteOf(((light[2 * at] >>> 32) * each + shaded * bust.red[at]) / opaque);
    int g = byteOf(((light[2 * at] & 0xffffffffL) * each + shaded * bust.green[at]) / opaque);
    int b = byteOf(((light[2 * at + 1] >>> 32) * each + shaded * bust.blue[at]) / opaque);
    int alpha = (int) Math.round(255 * Math.min(1, opaque));
    return alpha << 24 | r << 16 | g << 8 | b;
  }

  private static int byteOf(double light) {
    return BYTES[(int) (Math.min(light, 1) * (BYTES.length - 1) + 0.5)] & 0xff;
  }

  /** How much the whole coat of hair covers round a pixel, 0 to 1, from the coarse grid. */
  private double opaque(int row, int column) {
    double x = (column + 0.5) / (window.pixelsPerMm() * CELL_MM) - 0.5;
    double y = (row + 0.5) / (window.pixelsPerMm() * CELL_MM) - 0.5;
    int cx = Math.min(Math.max((int) x, 0), cellsWide - 2);
    int cy = Math.min(Math.max((int) y, 0), cellsHigh - 2);
    double u = Math.min(Math.max(x - cx, 0), 1);
    double v = Math.min(Math.max(y - cy, 0), 1);
    double upper = (1 - u) * left(cx, cy) + u * left(cx + 1, cy);
    double lower = (1 - u) * left(cx, cy + 1) + u * left(cx + 1, cy + 1);
    double covered = 1 - ((1 - v) * upper + v * lower);
    return covered * covered;
  }

  /** What is seen through all hair of a cell. */
  private double left(int cx, int cy) {
    return through[(cy * cellsWide + cx) * (LAYERS + 1) + LAYERS];
  }
}
