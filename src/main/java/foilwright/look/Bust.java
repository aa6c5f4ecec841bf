package foilwright.look;

import foilwright.fall.Body;
import foilwright.geometry.Vector3;
import foilwright.head.HeadForm;
import java.util.stream.IntStream;

/**
 * Head, neck and shoulders without hair, as they are seen in one window: a calm figure of one skin
 * tone with closed eyes, of nobody in particular.
 *
 * <p>For each pixel its light, how much of it the figure covers, and how near to the viewer it is.
 */
final class Bust {
  private static final double REACH_MM = 460;

  /** Over this height above the lower edge the figure fades out. */
  private static final double FADE_MM = 60;

  private static final Colour SKIN = Colour.ofRgb(0xd8b49c);
  private static final Colour CLOTH = Colour.ofRgb(0xb9b4ad);
  private static final Colour BROW = Colour.ofRgb(0x6a5143);
  private static final Colour LIP = Colour.ofRgb(0xb5766c);
  static final float NOWHERE = Float.NEGATIVE_INFINITY;

  /** Template (x, z) of the drawn face, one half, and how it is drawn. */
  private static final class Stroke {
    private final double[][] at;
    private final double widthMm;
    private final Colour ink;
    private final double strength;

    Stroke(double[][] at, double widthMm, Colour ink, double strength) {
      this.at = at;
      this.widthMm = widthMm;
      this.ink = ink;
      this.strength = strength;
    }
  }

  private static final Stroke[] FACE = {
    new Stroke(
        new double[][] {{13, 24}, {22, 28.5}, {33, 30.5}, {44, 28.5}, {52, 23.5}}, 3.6, BROW, 0.55),
    new Stroke(
        new double[][] {{17.5, 8}, {23, 4.6}, {31, 2.8}, {39, 4.2}, {46, 8.2}}, 1.7, BROW, 0.85),
    new Stroke(new double[][] {{18, 12}, {25, 14.5}, {33, 15.2}, {41, 13.6}}, 1.6, BROW, 0.18),
    new Stroke(new double[][] {{0, -44}, {5, -43.4}, {13, -44.4}, {23, -46.4}}, 1.2, BROW, 0.75),
    new Stroke(new double[][] {{0, -40.6}, {5, -39.2}, {12, -41}, {20, -44.6}}, 4.6, LIP, 0.55),
    new Stroke(new double[][] {{0, -49.4}, {8, -49.2}, {15, -47.4}}, 6.4, LIP, 0.5),
    new Stroke(new double[][] {{4.5, -24.4}, {8, -23.2}, {11, -24.2}}, 1.8, BROW, 0.5),
    new Stroke(new double[][] {{0, -57.5}, {7, -57}}, 2.6, BROW, 0.14)
  };

  final Window window;
  final float[] red;
  final float[] green;
  final float[] blue;

  /** Share of the pixel that the figure covers. */
  final float[] cover;

  /** Millimetres towards the viewer from the head's origin; minus infinity beside the figure. */
  final float[] near;

  private Bust(Window window) {
    this.window = window;
    int pixels = window.width() * window.height();
    red = new float[pixels];
    green = new float[pixels];
    blue = new float[pixels];
    cover = new float[pixels];
    near = new float[pixels];
  }

  static Bust of(Body body, HeadForm form, Window window) {
    Bust bust = new Bust(window);
    IntStream.range(0, window.height()).parallel().forEach(row -> bust.trace(body, row));
    bust.drawFace(body, form);
    return bust;
  }

  /** A place in a picture put back into the head frame. */
  private static double axis(LookSide side, int axis, double across, double up, double near) {
    if (axis == side.acrossAxis()) {
      return side.acrossSign() * across;
    }
    return axis == side.upAxis() ? up : side.nearSign() * near;
  }

  private void trace(Body body, int row) {
    LookSide side = window.side();
    double scale = window.pixelsPerMm();
    double up = window.topMm() - (row + 0.5) / scale;
    for (int column = 0; column < window.width(); column++) {
      double across = window.leftMm() + (column + 0.5) / scale;
      int at = row * window.width() + column;
      double depth = REACH_MM / 2;
      double least = Double.POSITIVE_INFINITY;
      double leastAt = 0;
      boolean hit = false;
      while (depth > -REACH_MM / 2) {
        double d =
            body.distance(
                axis(side, 0, across, up, depth),
                axis(side, 1, across, up, depth),
                axis(side, 2, across, up, depth));
        if (d < least) {
          least = d;
          leastAt = depth;
        }
        if (d < 0.05) {
          hit = true;
          break;
        }
        depth -= Math.max(0.3, 0.9 * d);
      }
      double covered = hit ? 1 : Math.max(0, 0.6 - least * scale);
      near[at] = hit ? (float) depth : NOWHERE;
      double fade = (row + 0.5 - window.height()) / -scale / FADE_MM;
      if (side != LookSide.TOP) {
        covered *= smooth(fade);
      }
      cover[at] = (float) covered;
      if (covered > 0) {
        shade(body, at, across, up, hit ? depth : leastAt);
      }
    }
  }

  private void shade(Body body, int at, double across, double up, double depth) {
    LookSide side = window.side();
    double x = axis(side, 0, across, up, depth);
    double y = axis(side, 1, across, up, depth);
    double z = axis(side, 2, across, up, depth);
    Vector3 n = body.outward(x, y, z);
    double facing = side.near(n.x(), n.y(), n.z());
    double fromAbove = side == LookSide.TOP ? n.y() : n.z();
    double aside = side.across(n.x(), n.y(), n.z());
    double light = 0.46 + 0.34 * facing + 0.22 * fromAbove - 0.10 * aside;
    // Below the chin and beside the neck less light comes from the room.
    double hollow = body.distance(x + 16 * n.x(), y + 16 * n.y(), z + 16 * n.z()) / 16;
    light *= 0.62 + 0.38 * Math.min(Math.max(hollow, 0), 1);
    double aside01 = Math.min(1, Math.abs(x) / 78);
    double neckline = -190 - 26 * smooth((y + 34) / 50) * (1 - aside01 * aside01);
    double cloth = smooth((neckline - z) / 2);
    Colour c = SKIN.towards(CLOTH, cloth);
    double warm = 1 - 0.25 * (1 - light);
    red[at] = (float) (c.red() * light);
    green[at] = (float) (c.green() * light * warm);
    blue[at] = (float) (c.blue() * light * warm);
  }

  private void drawFace(Body body, HeadForm form) {
    if (window.side() == LookSide.BACK || window.side() == LookSide.TOP) {
      return;
    }
    Vector3 f = form.factors();
    for (Stroke stroke : FACE) {
      for (int half = -1; half <= 1; half += 2) {
        for (int i = 0; i + 1 < stroke.at.length; i++) {
          int steps = 14;
          for (int k = 0; k < steps; k++) {
            double t = k / (double) steps;
            double x = half * f.x() * spline(stroke.at, i, t, 0);
            double z = f.z() * spline(stroke.at, i, t, 1);
            double whole = (i + t) / (stroke.at.length - 1);
            dab(body, x, z, stroke, 1 - 0.55 * Math.pow(Math.abs(2 * whole - 0.8), 2));
          }
        }
      }
    }
  }

  private static double spline(double[][] p, int i, double t, int c) {
    double a = p[Math.max(i - 1, 0)][c];
    double b = p[i][c];
    double d = p[i + 1][c];
    double e = p[Math.min(i + 2, p.length - 1)][c];
    return b + 0.5 * t * (d - a + t * (2 * a - 5 * b + 4 * d - e + t * (3 * (b - d) + e - a)));
  }

  private void dab(Body body, double x, double z, Stroke stroke, double share) {
    double y = 140;
    while (y > 0) {
      double d = body.distance(x, y, z);
      if (d < 0.05) {
        break;
      }
      y -= Math.max(0.2, 0.8 * d);
    }
    LookSide side = window.side();
    double scale = window.pixelsPerMm();
    double column = (side.across(x, y, z) - window.leftMm()) * scale - 0.5;
    double row = (window.topMm() - side.up(x, y, z)) * scale - 0.5;
    double depth = side.near(x, y, z);
    double radius = Math.max(0.6, stroke.widthMm / 2 * scale * Math.max(share, 0.35));
    double strength = stroke.strength * Math.min(1, stroke.widthMm / 2 * scale / radius) * 0.30;
    int reach = (int) Math.ceil(radius + 1);
    for (int j = (int) row - reach; j <= row + reach; j++) {
      for (int i = (int) column - reach; i <= column + reach; i++) {
        if (i < 0 || j < 0 || i >= window.width() || j >= window.height()) {
          continue;
        }
        int at = j * window.width() + i;
        if (Math.abs(near[at] - depth) > 4) {
          continue;
        }
        double far = Math.hypot(i - column, j - row);
        double ink = strength * Math.min(1, Math.max(0, radius + 0.5 - far));
        red[at] += (float) (ink * (stroke.ink.red() * 0.8 - red[at]));
        green[at] += (float) (ink * (stroke.ink.green() * 0.8 - green[at]));
        blue[at] += (float) (ink * (stroke.ink.blue() * 0.8 - blue[at]));
      }
    }
  }

  private static double smooth(double t) {
    double h = Math.min(Math.max(t, 0), 1);
    return h * h * (3 - 2 * h);
  }
}
