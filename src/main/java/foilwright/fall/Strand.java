package foilwright.fall;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.hair.Texture;
import foilwright.head.Head;

/**
 * Follows hairs, one at a time.
 *
 * <p>{@link #setOut} reads what is its own of a hair, {@link #run} takes the steps, and between
 * them stand, one method each, the wishes that a hair has beside falling.
 */
final class Strand {
  /** No point of a hair lies nearer to the skin than this, but for the first steps at the root. */
  static final double LEAST_MM = 1;

  private static final double OUT_MM = 5;
  private static final double TOUCH_MM = 3;
  private static final double COMB_FADE_MM = 70;
  private static final double FRINGE_FADE_MM = 50;

  /** Longer hair is no fringe, and is not combed over the face. */
  private static final double FRINGE_MM = 170;

  /** How far from the tie hair counts as gathered. */
  private static final double TIE_MM = 9;

  private static final double SHOULDERS_FROM_MM = -60;
  private static final double SHOULDERS_TO_MM = -330;

  private final Roots roots;
  private final Body body;
  private final HairStyle style;
  private final Texture texture;
  private final double uneven;
  private final double step;
  private final double axisStep;
  private final double memory;
  private final double perMm;
  private final double coat;
  private final double tighten;
  private final Vector3 tie;
  private final Vector3 tieOut;
  private final double hairlineZ;
  private final double earY;
  private final double shoulderY;

  private final double[] slope = new double[3];

  // Of the hair that is being followed.
  private long key;
  private long clump;
  private long lock;
  private double x;
  private double y;
  private double z;
  private double dx;
  private double dy;
  private double dz;
  private double cx;
  private double cy;
  private double cz;
  private double fade;
  private double length;
  private double side;
  private boolean stray;
  private boolean ahead;
  private boolean fringe;
  private double sweep;
  private double tuck;
  private double driftX;
  private double driftY;
  private final double[] tieAt = new double[3];
  private final double[] tail = new double[3];
  private double sinceTie;

  // What it wants here.
  private double wx;
  private double wy;
  private double wz;

  Strand(Fall fall) {
    roots = fall.roots;
    body = fall.body;
    style = fall.settings.style();
    texture = fall.texture;
    uneven = fall.settings.unevenness();
    step = fall.step;
    axisStep = step * texture.shortening();
    memory = fall.memory;
    perMm = fall.perMm;
    coat = fall.coat;
    tighten = style == HairStyle.TIED_UP ? 0.35 : style == HairStyle.SWEPT_BACK ? 0.7 : 1;
    Head head = roots.hair().head();
    Polyline centre = head.centreLine();
    Vector3 at = centre.at(0.60 * centre.length());
    tieOut = head.form().normal(at);
    tie = at.plus(tieOut.times(12));
    hairlineZ = centre.first().z();
    Vector3 factors = head.form().factors();
    earY = -38 * factors.y();
    shoulderY = Body.SHOULDER_Y * (factors.x() + factors.y() + factors.z()) / 3;
  }

  /** Follows a hair into its points, numbered from one to before another. */
  void follow(int hair, int from, int to, float[] points) {
    setOut(hair);
    run(from, to, points);
  }

  private void setOut(int hair) {
    key = roots.key(hair);
    clump = roots.clump(hair);
    lock = roots.lock(hair);
    float[] places = roots.places();
    float[] outs = roots.outward();
    float[] combs = roots.combs();
    x = places[3 * hair];
    y = places[3 * hair + 1];
    z = places[3 * hair + 2];
    double nx = outs[3 * hair];
    double ny = outs[3 * hair + 1];
    double nz = outs[3 * hair + 2];
    length = roots.lengthMm(hair);
    stray = roots.isStray(hair);
    side = roots.isRight(hair) ? 1 : -1;
    ahead = y > earY;
    fringe = style == HairStyle.FRINGE_FORWARD && length < FRINGE_MM && nz > 0.45 && y > -10;
    boolean fallsFreely = style != HairStyle.SWEPT_BACK && style != HairStyle.TIED_UP && !fringe;
    sweep = fallsFreely ? smooth((length - 90) / 50) : 0;
    tuck = style == HairStyle.TUCKED && ahead ? smooth((length - 120) / 60) : 0;

    // The comb's direction; by lock and clump it is unsteady farther on.
    double shake = stray ? 0.5 : 0.05;
    cx = combs[3 * hair] + shake * noise(key, 21);
    cy = combs[3 * hair + 1] + shake * noise(key, 22);
    cz = combs[3 * hair + 2] + shake * 0.5 * noise(key, 23);
    comb(roots.edgeMm(hair));

    // Setting out: along the comb, a little off the scalp.
    double lift = 0.24 + 0.08 * noise(key, 24) + (stray ? 0.15 : 0);
    double inward = cx * nx + cy * ny + cz * nz;
    double ex = cx - inward * nx;
    double ey = cy - inward * ny;
    double ez = cz - inward * nz - (style == HairStyle.TIED_UP ? 0 : 0.5 * (1 - Math.abs(nz)));
    double size = Math.sqrt(ex * ex + ey * ey + ez * ez) + 1e-9;
    ex = ex / size + lift * nx;
    ey = ey / size + lift * ny;
    ez = ez / size + lift * nz;
    size = Math.sqrt(ex * ex + ey * ey + ez * ez);
    dx = ex / size;
    dy = ey / size;
    dz = ez / size;
    if (style == HairStyle.TIED_UP) {
      cx = 0;
      cy = 0;
      cz = 0;
    } else {
      cx += 0.10 * noise(clump, 21) + 0.10 * noise(lock, 21);
      cy += 0.10 * noise(clump, 22) + 0.10 * noise(lock, 22);
    }
    driftX = 0.005 * noise(key, 36) + 0.012 * noise(clump, 36);
    driftY = 0.005 * noise(key, 37) + 0.012 * noise(clump, 37);
  }

  /** What a style makes of the comb, and how far along the hair it is felt. */
  private void comb(double edgeMm) {
    fade = COMB_FADE_MM;
    switch (style) {
      case SWEPT_BACK -> {
        cx = cx * 0.15 + x * 0.003;
        cy = cy * 0.1 - 1.3;
        cz = cz * 0.1 - 0.1;
        fade = 1e9;
      }
      case TIED_UP -> {
        tieAt[0] = tie.x() + 6 * noise(key, 30);
        tieAt[1] = tie.y() + 3 * noise(key, 31);
        tieAt[2] = tie.z() + 6 * noise(key, 32);
        tail[0] = tieOut.x() + 0.07 * noise(key, 33) + 0.12 * noise(clump, 33);
        tail[1] = tieOut.y() + 0.07 * noise(key, 34) + 0.10 * noise(clump, 34);
        tail[2] = tieOut.z() + 0.07 * noise(key, 35) + 0.12 * noise(clump, 35);
        sinceTie = -1;
        cx = 0.2 * cx + (tieAt[0] - x) / 60;
        cy = 0.2 * cy + (tieAt[1] - y) / 60;
        cz = 0.2 * cz + (tieAt[2] - z) / 60;
      }
      default -> {
        if (fringe) {
          cx = cx * 0.25;
          cy = cy * 0.2 + 0.65;
          fade = FRINGE_FADE_MM;
        } else {
          // Hair long enough for the eyes is combed back from the front hairline.
          cy -= 1.2 * sweep * smooth((y - 20) / 45) * Math.exp(-edgeMm / 38);
        }
      }
    }
  }

  private void run(int from, int to, float[] points) {
    double px = x;
    double py = y;
    double pz = z;
    double ux = dx;
    double uy = dy;
    double uz = dz;
    double depth =
        Math.max(
            0.3,
            1
                + 0.22 * noise(key, 25)
                + 0.14 * noise(clump, 25)
                + 0.16 * noise(lock, 25)
                + (stray ? 0.3 : 0));
    double phase =
        2 * Math.PI * Noise.even(lock, 26) + 0.7 * noise(clump, 26) + 0.25 * noise(key, 26);
    double turnMm = texture.turnMm() * (1 + 0.08 * noise(lock, 27) + 0.02 * noise(clump, 27));
    double radius = texture.radiusMm() * (1 + 0.25 * noise(clump, 28)) + (stray ? 1.2 : 0);
    // What fades or turns evenly along the hair is carried from step to step.
    double keep = Math.exp(-axisStep / memory);
    double thick = tighten * depth * coat;
    double thin = 1;
    double thinStep = Math.exp(-perMm * axisStep / coat);
    double pull = 1;
    double pullStep = Math.exp(-axisStep / fade);
    double sin = Math.sin(phase);
    double cos = Math.cos(phase);
    double sinStep = Math.sin(2 * Math.PI * axisStep / turnMm);
    double cosStep = Math.cos(2 * Math.PI * axisStep / turnMm);
    double rise = 1 - Math.exp(-axisStep / 12);
    double s = 0;
    put(points, from, px, py, pz);
    for (int i = from + 1; i < to; i++) {
      double ds = axisStep;
      double turn = 1 - keep;
      if (i == to - 1) {
        ds = Math.max(1e-3, (length - (to - from - 2) * step)) * texture.shortening();
        turn = 1 - Math.exp(-ds / memory);
      }
      double here = body.distance(px, py, pz, slope);
      // At the root hair comes out of the skin; over the first millimetres it leaves it.
      double least = LEAST_MM * Math.min(1, (s + ds) / OUT_MM);
      double off = least + thick * (1 - thin);
      wx = cx * pull + driftX;
      wy = cy * pull + driftY;
      wz = cz * pull - 1;
      if (style == HairStyle.TIED_UP) {
        toTheTie(px, py, pz, ds);
      }
      if (style == HairStyle.SWEPT_BACK) {
        sweptBack(py, pz);
      }
      if (sweep > 0 && py > 15) {
        asideOfTheFace(px, py, pz);
      }
      if (tuck > 0 && py > earY && pz < 75 && pz > -30) {
        behindTheEar(pz);
      }
      if (pz < SHOULDERS_FROM_MM && pz > SHOULDERS_TO_MM) {
        overTheShoulder(px, py, pz, here - off);
      }
      double gx = slope[0];
      double gy = slope[1];
      double gz = slope[2];
      double touch = touch((off + 2 - here) / 2, ds);
      double in = wx * gx + wy * gy + wz * gz;
      if (in < 0) {
        wx -= touch * in * gx;
        wy -= touch * in * gy;
        wz -= touch * in * gz;
      }
      // The elastica's turn; under a pull of 1 the sum is twice the squared cosine of half the
      // angle between, and under none of them less than 0.
      double pulls = 0.5 + 0.5 * (wx * wx + wy * wy + wz * wz);
      double along = ux * wx + uy * wy + uz * wz;
      double bend = turn * Math.sqrt(2 / (pulls + along + 1e-9));
      double on = 1 - turn + turn * Math.max(along, 0) - bend * along;
      ux = on * ux + bend * wx;
      uy = on * uy + bend * wy;
      uz = on * uz + bend * wz;
      in = ux * gx + uy * gy + uz * gz;
      if (in < 0) {
        ux -= touch * in * gx;
        uy -= touch * in * gy;
        uz -= touch * in * gz;
      }
      double unit = 1 / Math.sqrt(ux * ux + uy * uy + uz * uz + 1e-12);
      ux *= unit;
      uy *= unit;
      uz *= unit;
      double there = here + ds * (ux * gx + uy * gy + uz * gz);
      if (there < off) {
        double up = Math.max((off - there) * rise, least - there) / ds;
        ux += gx * up;
        uy += gy * up;
        uz += gz * up;
        unit = 1 / Math.sqrt(ux * ux + uy * uy + uz * uz + 1e-12);
        ux *= unit;
        uy *= unit;
        uz *= unit;
      }
      px += ds * ux;
      py += ds * uy;
      pz += ds * uz;
      s += ds;
      pull *= pullStep;
      if (body.bearsHair(px, py, pz)) {
        thin *= thinStep;
      }

      // The hair's own bends, across it along what it lies on.
      double coil = radius * smooth(s / 45);
      double rx = uy * gz - uz * gy;
      double ry = uz * gx - ux * gz;
      double rz = ux * gy - uy * gx;
      double sine = sin * cosStep + cos * sinStep;
      cos = cos * cosStep - sin * sinStep;
      sin = sine;
      double across = coil * sin;
      double outer = 0.7 * coil * (1 + cos);
      put(
          points,
          i,
          px + rx * across + gx * outer,
          py + ry * across + gy * outer,
          pz + rz * across + gz * outer);
    }
  }

  /**
   * How much of what leads inwards is lost: all of it in contact, a share by the way before.
   *
   * @param near how near what lies beneath is: 1 and more in contact, 0 and less beyond reach
   */
  private static double touch(double near, double ds) {
    if (near >= 1) {
      return 1;
    }
    double soon = near * ds;
    return near <= 0 ? 0 : soon / (soon + (1 - near) * TOUCH_MM);
  }

  /** The comb holds on top of the head and lets go behind it and below the ears. */
  private void sweptBack(double py, double pz) {
    double held = smooth((pz - 5) / 75) * smooth((py + 70) / 90);
    wx = cx * held + driftX;
    wy = cy * held + driftY;
    wz = cz * held - 1;
  }

  /** Straight to the tie, through it outwards, and down behind it. */
  private void toTheTie(double px, double py, double pz, double ds) {
    if (sinceTie < 0) {
      double hx = tieAt[0] - px;
      double hy = tieAt[1] - py;
      double hz = tieAt[2] - pz;
      double far = Math.sqrt(hx * hx + hy * hy + hz * hz);
      if (far > TIE_MM) {
        wx = 2.2 * hx / far;
        wy = 2.2 * hy / far;
        wz = 2.2 * hz / far - 0.1;
        return;
      }
      sinceTie = 0;
    }
    double push = 2.6 * Math.exp(-sinceTie / 38);
    wx = tail[0] * push + driftX;
    wy = tail[1] * push + driftY;
    wz = tail[2] * push - 1;
    sinceTie += ds;
  }

  /** In front of the face nobody wears long hair: it goes to its side and back. */
  private void asideOfTheFace(double px, double py, double pz) {
    double f =
        sweep
            * smooth((py - 15) / 45)
            * smooth((hairlineZ + 30 - pz) / 48)
            * smooth((pz + 125) / 45);
    double within = smooth((80 - Math.abs(px)) / 26);
    wx += (Math.abs(px) > 8 ? Math.signum(px) : side) * 2.4 * f * within;
    wy -= 1.3 * f;
  }

  private void behindTheEar(double pz) {
    double f = tuck * smooth((75 - pz) / 30) * smooth((pz + 30) / 30);
    wy -= 2.2 * f;
    wz += 0.75 * f;
    wx -= 0.3 * side * f;
  }

  /**
   * Over a shoulder hair parts: what grew before the ear is drawn forward and the rest back, and
   * where it lies on the shoulder it slides to the side on which it came, never outwards.
   */
  private void overTheShoulder(double px, double py, double pz, double above) {
    double f = smooth((SHOULDERS_FROM_MM - pz) / 90) * smooth((Math.abs(px) - 30) / 30);
    if (above < 4) {
      wy += 1.4 * f * Math.min(Math.max((py - shoulderY) / 10, -1), 1);
    } else {
      wy += (ahead ? 0.3 : -0.3) * f * smooth((pz + 240) / 60);
    }
    double hold = 1 - 0.85 * smooth((-150 - pz) / 40);
    if (hold < 1) {
      double gx = slope[0] * hold;
      double gy = slope[1];
      double gz = slope[2];
      double size = Math.sqrt(gx * gx + gy * gy + gz * gz) + 1e-9;
      slope[0] = gx / size;
      slope[1] = gy / size;
      slope[2] = gz / size;
    }
  }

  private double noise(long of, int stream) {
    return uneven * Noise.normal(of, stream);
  }

  private static void put(float[] points, int i, double x, double y, double z) {
    points[3 * i] = (float) x;
    points[3 * i + 1] = (float) y;
    points[3 * i + 2] = (float) z;
  }

  /** From 0 to 1 with level ends. */
  private static double smooth(double t) {
    double h = Math.min(Math.max(t, 0), 1);
    return h * h * (3 - 2 * h);
  }
}
