package foilwright.look;

import foilwright.fall.Strands;

/**
 * Draws hairs of one view, one after another: each step of a hair that is seen, with the share that
 * is seen as its weight.
 *
 * <p>Light is sampled at twice the picture's fineness either way and summed in whole pixels, as
 * whole numbers, so that no order of drawing can change it.
 */
final class Brush {
  /** Weight of a fine pixel that is covered once. */
  static final int WEIGHT = 4096;

  /** The brightest light. */
  static final int LIGHT = 4095;

  /** Fine pixels in a pixel, either way. */
  static final int SUPER = 2;

  /** Two links are drawn as one where their middle lies no farther aside, in fine pixels. */
  private static final float STRAIGHT = 0.4f;

  /** Fine places are whole numbers of this many bits below a fine pixel. */
  private static final int FINE_BITS = 16;

  /** Light and weight carry so many bits more along a step. */
  private static final int MORE_BITS = 8;

  private static final int ROUND = 1 << (MORE_BITS - 1);
  private static final long ROUNDS = (long) ROUND << 32 | ROUND;
  private static final long LIGHTS = 0xfff_0000_0fffL;

  /** A lamp above and to the left behind the viewer's shoulder: rightwards, up, to the viewer. */
  private static final float[] LAMP = {-0.36f, 0.58f, 0.73f};

  private static final float[] PER_STEPS = perSteps();

  private final Strands strands;
  private final float[] p;
  private final Painting.Hairs hairs;
  private final Window window;
  private final Coat.Looker coat;
  private final byte[] seen;

  /** Two long words for each pixel: red and green, blue and weight. */
  private final long[] light;

  private final FigureMap map;

  private final int across;
  private final int up;
  private final float perAcross;
  private final float left;
  private final float perUp;
  private final float top;
  private final float toMm;
  private final float stepMm;

  /** Square of how far aside of a line a point may lie that is left out of it, in mm. */
  private final float straight;

  /** Breadth of a hair in mm. */
  private final float broadMm;

  /** Weight of a fine pixel's length of hair. */
  private final float weighs;

  /** Towards the lamp, and half way between lamp and viewer, in the head's frame. */
  private final float lampX;

  private final float lampY;
  private final float lampZ;
  private final float halfX;
  private final float halfY;
  private final float halfZ;

  // Of the hair that is being drawn.
  private float bright;
  private boolean picked;
  private boolean old;
  private float start;
  private float oldStart;
  private boolean lightens;
  private int natural;
  private int before;
  private int fresh;

  /** Colour without lamp and shade at a point, and how much of it is lightened. */
  private float ownRed;

  private float ownGreen;
  private float ownBlue;
  private float lightened;

  /** Colour in the light. */
  private float red;

  private float green;
  private float blue;

  private static float[] perSteps() {
    float[] per = new float[256];
    for (int i = 1; i < per.length; i++) {
      per[i] = 1f / i;
    }
    return per;
  }

  Brush(Strands strands, Painting.Hairs hairs, Window window, Coat coat, byte[] seen) {
    this.strands = strands;
    this.hairs = hairs;
    this.window = window;
    this.coat = coat.new Looker();
    this.seen = seen;
    p = strands.points();
    light = new long[2 * window.width() * window.height()];
    map = new FigureMap(window);
    LookSide side = window.side();
    across = side.acrossAxis();
    up = side.upAxis();
    float scale = (float) (window.pixelsPerMm() * SUPER);
    perAcross = side.acrossSign() * scale;
    left = (float) window.leftMm() * scale;
    perUp = scale;
    toMm = 1 / scale;
    top = (float) window.topMm() * scale;
    stepMm = (float) strands.stepMm();
    straight = STRAIGHT * STRAIGHT * toMm * toMm;
    double hairMm = Coat.hairMm(strands);
    broadMm = (float) hairMm;
    weighs = (float) (hairMm * scale * unit(hairMm, window));
    float[] lamp = new float[3];
    lamp[across] = side.acrossSign() * LAMP[0];
    lamp[up] = LAMP[1];
    lamp[side.nearAxis()] = side.nearSign() * LAMP[2];
    lampX = lamp[0];
    lampY = lamp[1];
    lampZ = lamp[2];
    lamp[side.nearAxis()] += side.nearSign();
    halfX = 0.537f * lamp[0];
    halfY = 0.537f * lamp[1];
    halfZ = 0.537f * lamp[2];
  }

  /** Weight of a fine pixel that is covered once; less for hairs so few that each is wider. */
  static double unit(double hairMm, Window window) {
    return WEIGHT / Math.max(1, hairMm * window.pixelsPerMm() * SUPER);
  }

  long[] light() {
    return light;
  }

  FigureMap map() {
    return map;
  }

  void draw(int hair) {
    int first = strands.start(hair);
    int size = strands.size(hair);
    coat.at(hair);
    boolean taken = false;
    float x0 = 0;
    float y0 = 0;
    float seen0 = 0;
    float red0 = 0;
    float green0 = 0;
    float blue0 = 0;
    float ownRed0 = 0;
    float ownGreen0 = 0;
    float ownBlue0 = 0;
    float lightened0 = 0;
    int hidden = -1;
    int close = 0;
    int k = 0;
    while (k < size) {
      int links = seen0 > 0 && k + 1 < size && isStraight(first + k) ? 2 : 1;
      float share = coat.seen(first + k + links - 1);
      if (links == 2 && share == 0) {
        // It goes under somewhere here: step by step.
        links = 1;
        share = coat.seen(first + k);
      }
      k += links - 1;
      if (share == 0 && seen0 == 0) {
        hidden = k;
        // Most hair is buried: leap on, and back again where it was seen too late.
        k += k < close || k + 1 == size ? 1 : Math.min(1 + coat.skipped(), size - 1 - k);
        continue;
      }
      if (seen0 == 0 && hidden < k - 1 && k > close) {
        close = k;
        k = hidden + 1;
        continue;
      }
      int i = 3 * (first + k);
      float x = p[i + across] * perAcross - left;
      float y = top - p[i + up] * perUp;
      if (share > 0) {
        if (!taken) {
          take(hair);
          taken = true;
        }
        shade(i, k, size, share);
        hold(first + k, share);
        if (links == 2) {
          hold(first + k - 1, (seen0 + share) * 0.5f);
        }
        if (seen0 == 0 && k > 0) {
          // It comes out from under others: as it is here.
          x0 = p[i - 3 + across] * perAcross - left;
          y0 = top - p[i - 3 + up] * perUp;
          red0 = red;
          green0 = green;
          blue0 = blue;
          ownRed0 = ownRed;
          ownGreen0 = ownGreen;
          ownBlue0 = ownBlue;
          lightened0 = lightened;
        }
      } else {
        hidden = k;
        red = red0;
        green = green0;
        blue = blue0;
        ownRed = ownRed0;
        ownGreen = ownGreen0;
        ownBlue = ownBlue0;
        lightened = lightened0;
      }
      if (k > 0) {
        line(x0, y0, seen0, red0, green0, blue0, x, y, share);
        float per = links == 1 ? toMm : 0.5f * toMm;
        for (float at = links == 1 ? 0.5f : 0.25f; at < 1; at += 0.5f) {
          map.add(
              (x0 + at * (x - x0)) * toMm,
              (y0 + at * (y - y0)) * toMm,
              (x - x0) * per,
              (y - y0) * per,
              (seen0 + at * (share - seen0)) * broadMm,
              lightened0 + at * (lightened - lightened0),
              ownRed0 + at * (ownRed - ownRed0),
              ownGreen0 + at * (ownGreen - ownGreen0),
              ownBlue0 + at * (ownBlue - ownBlue0));
        }
      }
      x0 = x;
      y0 = y;
      seen0 = share;
      red0 = red;
      green0 = green;
      blue0 = blue;
      ownRed0 = ownRed;
      ownGreen0 = ownGreen;
      ownBlue0 = ownBlue;
      lightened0 = lightened;
      k++;
    }
  }

  /** Whether the links to either side of a point are one line, as near as it can be seen. */
  private boolean isStraight(int point) {
    int i = 3 * point;
    float x = p[i + across] - 0.5f * (p[i + across - 3] + p[i + across + 3]);
    float y = p[i + up] - 0.5f * (p[i + up - 3] + p[i + up + 3]);
    return x * x + y * y < straight;
  }

  private void hold(int point, float share) {
    int held = (int) (255 * share);
    if (held > (seen[point] & 0xff)) {
      seen[point] = (byte) held;
    }
  }

  /** Reads what is the same all along a hair. */
  private void take(int hair) {
    Dye dye = hairs.dye();
    HairShades shades = hairs.shades();
    bright = hairs.bright(hair);
    picked = dye.isPicked(hair);
    start = (float) dye.startMm(hair);
    oldStart = (float) dye.oldStartMm(hair);
    old = oldStart < Float.POSITIVE_INFINITY;
    lightens = shades.lightens(hair);
    natural = shades.natural(hair);
    before = shades.old(hair);
    fresh = shades.fresh(hair);
  }

  private void shade(int i, int k, int size, float share) {
    colour(k * stepMm);
    int a = k > 0 ? i - 3 : i;
    int b = k + 1 < size ? i + 3 : i;
    float tx = p[b] - p[a];
    float ty = p[b + 1] - p[a + 1];
    float tz = p[b + 2] - p[a + 2];
    float norm = 1 / (float) Math.sqrt(tx * tx + ty * ty + tz * tz + 1e-12f);
    float along = (tx * lampX + ty * lampY + tz * lampZ) * norm;
    float diffuse = (float) Math.sqrt(Math.max(0, 1 - along * along));
    // The form of the whole: an egg over the head and a column below it.
    float nx = p[i] * (1f / (74 * 74));
    float ny = (p[i + 1] - 6) * (1f / (94 * 94));
    float nz = Math.max(0, p[i + 2] - 8) * (1f / (102 * 102));
    float facing =
        (nx * lampX + ny * lampY + nz * lampZ)
            / (float) Math.sqrt(nx * nx + ny * ny + nz * nz + 1e-12f);
    float form = Math.max(0.16f, 0.36f + 0.64f * facing);
    // The scales of a hair tilt its shine along it.
    float half = (tx * halfX + ty * halfY + tz * halfZ) * norm;
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
    float deep = (0.30f + 0.70f * share) * bright;
    float body = deep * (0.22f + form * (0.98f * (0.30f + 0.70f * diffuse) + 0.55f * glow));
    float gloss = share * form * shine * 0.032f * bright;
    red = Math.min(1, ownRed * body + gloss) * LIGHT;
    green = Math.min(1, ownGreen * body + 0.94f * gloss) * LIGHT;
    blue = Math.min(1, ownBlue * body + 0.84f * gloss) * LIGHT;
  }

  /** The colour of the hair at a distance along it, in even light. */
  private void colour(float mm) {
    float[] palette = hairs.shades().palette();
    ownRed = palette[natural];
    ownGreen = palette[natural + 1];
    ownBlue = palette[natural + 2];
    lightened = 0;
    if (old) {
      lightened = blend(Dye.share(mm, oldStart), before, palette);
    }
    if (picked) {
      float left = lightened;
      float share = blend(Dye.share(mm, start), fresh, palette);
      lightened = left * (1 - share) + (lightens ? share : 0);
    }
  }

  private float blend(float share, int shade, float[] palette) {
    ownRed += share * (palette[shade] - ownRed);
    ownGreen += share * (palette[shade + 1] - ownGreen);
    ownBlue += share * (palette[shade + 2] - ownBlue);
    return share;
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
    float per = steps < PER_STEPS.length ? PER_STEPS[steps] : 1f / steps;
    float half = 0.5f * per;
    // Weight of this piece of hair by its area.
    float weight = (float) Math.sqrt(dx * dx + dy * dy) * per * weighs;
    float one = 1 << FINE_BITS;
    int x = (int) ((x0 + half * dx) * one);
    int y = (int) ((y0 + half * dy) * one);
    int xStep = (int) (per * dx * one);
    int yStep = (int) (per * dy * one);
    float more = 1 << MORE_BITS;
    int w = (int) ((seen0 + half * (seen1 - seen0)) * weight * more) + ROUND;
    int wStep = (int) (per * (seen1 - seen0) * weight * more);
    // Red and green go side by side; what one borrows from the other is less than their least bit.
    long rg = ROUNDS + pair(red0 + half * (red - red0), green0 + half * (green - green0));
    long rgStep = pair(per * (red - red0), per * (green - green0));
    int b = (int) ((blue0 + half * (blue - blue0)) * more) + ROUND;
    int bStep = (int) (per * (blue - blue0) * more);
    int width = window.width();
    int wide = 2 * width;
    int high = window.height();
    for (int i = 0; i < steps; i++) {
      int column = x >> (FINE_BITS + 1);
      int row = y >> (FINE_BITS + 1);
      if (column >= 0 && row >= 0 && column < width && row < high) {
        int at = row * wide + 2 * column;
        int held = w >> MORE_BITS;
        light[at] += (rg >> MORE_BITS & LIGHTS) * held;
        light[at + 1] += (((long) (b >> MORE_BITS) * held) << 32) + held;
      }
      x += xStep;
      y += yStep;
      w += wStep;
      rg += rgStep;
      b += bStep;
    }
  }

  private static long pair(float r, float g) {
    return ((long) (int) (r * (1 << MORE_BITS)) << 32) + (int) (g * (1 << MORE_BITS));
  }
}
