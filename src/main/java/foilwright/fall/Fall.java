package foilwright.fall;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.hair.HairOnHead;
import foilwright.hair.HairProfile;
import foilwright.hair.Texture;
import foilwright.head.Head;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/**
 * Lets every hair fall.
 *
 * <p>A hair sets out from its root along the comb, a little off the scalp, and is then followed in
 * steps. At each step it turns from the direction it had towards the one it wants, with a memory of
 * {@value #MEMORY_MM} mm (the turn of a step is 1 - exp(-step / memory), so that the result
 * converges as the step shrinks); what it wants is straight down and, fading along the hair, the
 * direction it was combed in. Where it meets what lies beneath, it loses what leads inwards and
 * slides on. What lies beneath is the skin and the hair it has run over: the farther from its root,
 * the more, up to the depth of the whole coat. So hair from above lies on hair from below.
 */
public final class Fall {
  /** How soon a hair follows what it wants: 0.72 of its direction is kept over 3 mm. */
  static final double MEMORY_MM = 9.13;

  /** No point of a hair lies nearer to the skin than this, but for the first steps at the root. */
  static final double LEAST_MM = 1;

  private static final double OUT_MM = 5;
  private static final double TOUCH_MM = 3;
  private static final int CHUNK = 256;
  private static final double COMB_FADE_MM = 70;

  /** Share of the space in a head of hair that is hair, as it lies combed. */
  private static final double FILLED = 0.06;

  /** Depth of the whole coat for usual hair. */
  private static final double COAT_MM = 13;

  private final Roots roots;
  private final Body body;
  private final FallSettings settings;
  private final Texture texture;
  private final double step;
  private final double uneven;
  private final double axisStep;
  private final double perMm;
  private final double coat;
  private final Goal goal;

  private Fall(Roots roots, Body body, FallSettings settings, Texture texture) {
    this.roots = roots;
    this.body = body;
    this.settings = settings;
    this.texture = texture;
    step = settings.step().toMillimetres();
    uneven = settings.unevenness();
    axisStep = step * texture.shortening();
    HairProfile hair = roots.hair().hair();
    double d = hair.diameter().toMillimetres();
    double amount = hair.density().toHairsPerSquareMillimetre() * Math.PI * d * d / 4 / FILLED;
    perMm = amount;
    coat = COAT_MM * Math.sqrt(Math.min(2, amount / 0.128)) + 0.7 * texture.radiusMm();
    goal = new Goal(roots.hair().head(), settings.style());
  }

  /**
   * The fall of all hair.
   *
   * @param watch is told how much is done and may stop it
   * @throws java.util.concurrent.CancellationException when the watcher stops it
   */
  public static Strands of(
      HairOnHead hair, Body body, FallSettings settings, Texture texture, Watch watch) {
    return new Fall(Roots.of(hair, settings), body, settings, texture).run(watch);
  }

  /** The fall of given roots. */
  static Strands of(Roots roots, Body body, FallSettings settings, Texture texture) {
    return new Fall(roots, body, settings, texture).run(Watch.NOBODY);
  }

  private Strands run(Watch watch) {
    int count = roots.count();
    int[] starts = new int[count + 1];
    for (int i = 0; i < count; i++) {
      int links = (int) Math.max(1, Math.ceil(roots.lengthMm(i) / step - 1e-6));
      starts[i + 1] = starts[i] + links + 1;
    }
    float[] points = new float[3 * starts[count]];
    AtomicInteger done = new AtomicInteger();
    int chunks = (count + CHUNK - 1) / CHUNK;
    IntStream.range(0, chunks)
        .parallel()
        .forEach(
            c -> {
              Strand strand = new Strand();
              int to = Math.min(count, (c + 1) * CHUNK);
              for (int i = c * CHUNK; i < to; i++) {
                strand.follow(i, starts[i], starts[i + 1], points);
              }
              watch.told(done.incrementAndGet() / (double) chunks);
            });
    return new Strands(roots, body, settings, starts, points);
  }

  /** What a style asks of hair, beside falling. */
  private static final class Goal {
    private final HairStyle style;
    private final Vector3 tie;
    private final Vector3 tieOut;
    private final double hairlineZ;
    private final double earY;

    Goal(Head head, HairStyle style) {
      this.style = style;
      Polyline centre = head.centreLine();
      Vector3 at = centre.at(0.60 * centre.length());
      tieOut = head.form().normal(at);
      tie = at.plus(tieOut.times(12));
      hairlineZ = centre.first().z();
      earY = -38 * head.form().factors().y();
    }
  }

  /** One hair at a time. */
  private final class Strand {
    private final double[] slope = new double[3];

    void follow(int hair, int from, int to, float[] points) {
      long key = roots.key(hair);
      long clump = roots.clump(hair);
      long lock = roots.lock(hair);
      float[] places = roots.places();
      float[] outs = roots.outward();
      float[] combs = roots.combs();
      double px = places[3 * hair];
      double py = places[3 * hair + 1];
      double pz = places[3 * hair + 2];
      double nx = outs[3 * hair];
      double ny = outs[3 * hair + 1];
      double nz = outs[3 * hair + 2];
      double length = roots.lengthMm(hair);
      boolean free = Noise.even(key, 20) < 0.006 * uneven && py < 40;

      // The comb's direction; by lock and clump it is unsteady farther on.
      double stray = free ? 0.4 : 0.04;
      double cx = combs[3 * hair] + stray * noise(key, 21);
      double cy = combs[3 * hair + 1] + stray * noise(key, 22);
      double cz = combs[3 * hair + 2] + stray * 0.5 * noise(key, 23);
      HairStyle style = goal.style;
      double fade = COMB_FADE_MM;
      boolean ahead = py > goal.earY;
      if (style == HairStyle.SWEPT_BACK) {
        cx = cx * 0.15 + px * 0.003;
        cy = cy * 0.1 - 1.3;
        cz = cz * 0.1 - 0.1;
        fade = 190;
      } else if (style == HairStyle.FRINGE_FORWARD && nz > 0.45 && py > -10) {
        cx = cx * 0.25;
        cy = cy * 0.2 + 1.1;
        fade = 110;
      } else if (style == HairStyle.TIED_UP) {
        fade = 1e9;
      }
      double side = roots.isRight(hair) ? 1 : -1;
      double sweep =
          style == HairStyle.NATURAL || style == HairStyle.TUCKED ? smooth((length - 95) / 70) : 0;
      double tuck = style == HairStyle.TUCKED && ahead ? smooth((length - 120) / 60) : 0;

      // Setting out: along the comb, a little off the scalp.
      double lift = 0.24 + 0.08 * noise(key, 24) + (free ? 0.1 : 0);
      double inward = cx * nx + cy * ny + cz * nz;
      double dx = cx - inward * nx;
      double dy = cy - inward * ny;
      double dz = cz - inward * nz - 0.5 * (1 - Math.abs(nz));
      double size = Math.sqrt(dx * dx + dy * dy + dz * dz) + 1e-9;
      dx = dx / size + lift * nx;
      dy = dy / size + lift * ny;
      dz = dz / size + lift * nz;
      size = Math.sqrt(dx * dx + dy * dy + dz * dz);
      dx /= size;
      dy /= size;
      dz /= size;
      cx += 0.10 * noise(clump, 21) + 0.10 * noise(lock, 21);
      cy += 0.10 * noise(clump, 22) + 0.10 * noise(lock, 22);

      double depth =
          Math.max(
              0.35,
              1
                  + 0.22 * noise(key, 25)
                  + 0.14 * noise(clump, 25)
                  + 0.10 * noise(lock, 25)
                  + (free ? 0.4 : 0));
      double phase =
          2 * Math.PI * Noise.even(lock, 26) + 0.7 * noise(clump, 26) + 0.25 * noise(key, 26);
      double turn = texture.turnMm() * (1 + 0.08 * noise(lock, 27) + 0.02 * noise(clump, 27));
      double radius = texture.radiusMm() * (1 + 0.25 * noise(clump, 28)) + (free ? 1.2 : 0);
      double keep = Math.exp(-axisStep / MEMORY_MM);
      double tighten = style == HairStyle.TIED_UP ? 0.35 : style == HairStyle.SWEPT_BACK ? 0.7 : 1;
      boolean tied = false;
      double sinceTie = 0;
      double tx = 0;
      double ty = 0;
      double tz = 0;

      put(points, from, px, py, pz);
      double s = 0;
      // What fades or turns evenly along the hair is carried from step to step.
      double thick = tighten * depth * coat;
      double thin = 1;
      double thinStep = Math.exp(-perMm * axisStep / coat);
      double pull = 1;
      double pullStep = Math.exp(-axisStep / fade);
      double sin = Math.sin(phase);
      double cos = Math.cos(phase);
      double sinStep = Math.sin(2 * Math.PI * axisStep / turn);
      double cosStep = Math.cos(2 * Math.PI * axisStep / turn);
      double rise = 1 - Math.exp(-axisStep / 12);
      for (int i = from + 1; i < to; i++) {
        double ds = axisStep;
        if (i == to - 1) {
          ds = Math.max(1e-3, (length - (to - from - 2) * step)) * texture.shortening();
        }
        double here = body.distance(px, py, pz, slope);
        double gx = slope[0];
        double gy = slope[1];
        double gz = slope[2];
        // At the root hair comes out of the skin; over the first millimetres it leaves it.
        double least = LEAST_MM * Math.min(1, (s + ds) / OUT_MM);
        double off = least + thick * (1 - thin);
        double wx = cx * pull;
        double wy = cy * pull;
        double wz = cz * pull - 1;
        if (style == HairStyle.TIED_UP) {
          double hx = goal.tie.x() + 7 * noise(key, 30) - px;
          double hy = goal.tie.y() + 3 * noise(key, 31) - py;
          double hz = goal.tie.z() + 7 * noise(key, 32) - pz;
          double far = Math.sqrt(hx * hx + hy * hy + hz * hz);
          if (!tied && far > 9) {
            wx = 2.2 * hx / far;
            wy = 2.2 * hy / far;
            wz = 2.2 * hz / far - 0.1;
          } else {
            if (!tied) {
              tied = true;
              tx = goal.tieOut.x() + 0.45 * noise(key, 33) + 0.25 * noise(clump, 33);
              ty = goal.tieOut.y() + 0.30 * noise(key, 34);
              tz = goal.tieOut.z() + 0.25 * noise(key, 35);
            }
            double push = 2.6 * Math.exp(-sinceTie / 38);
            wx = tx * push;
            wy = ty * push;
            wz = tz * push - 1;
            sinceTie += ds;
          }
        }
        if (sweep > 0 && py > 20) {
          // In front of the face nobody wears long hair: it goes to its side and back.
          double f =
              sweep
                  * smooth((py - 25) / 40)
                  * smooth((goal.hairlineZ + 8 - pz) / 22)
                  * smooth((pz + 125) / 45);
          double within = smooth((80 - Math.abs(px)) / 26);
          wx += (Math.abs(px) > 8 ? Math.signum(px) : side) * 2.4 * f * within;
          wy -= 1.3 * f;
        }
        if (tuck > 0 && py > goal.earY && pz < 75 && pz > -30) {
          double f = tuck * smooth((75 - pz) / 30) * smooth((pz + 30) / 30);
          wy -= 2.2 * f;
          wz += 0.75 * f;
          wx -= 0.3 * side * f;
        }

        if (pz < -45 && pz > -330) {
          // Over a shoulder hair parts: what grew before the ear comes forward, the rest goes back.
          double f = smooth((-45 - pz) / 60) * smooth((Math.abs(px) - 30) / 30);
          wy += (ahead ? 1 : -1) * f * (here < off + 8 ? 1.3 : 0.2 * smooth((pz + 250) / 50));
        }

        double near = Math.min(Math.max((off + 2 - here) / 2, 0), 1);
        // How much of what leads inwards is lost: all of it in contact, a share by the way before.
        double soon = near * ds;
        double touch = soon / (soon + (1 - near) * TOUCH_MM + 1e-12);
        double in = wx * gx + wy * gy + wz * gz;
        if (in < 0) {
          wx -= touch * in * gx;
          wy -= touch * in * gy;
          wz -= touch * in * gz;
        }
        dx = keep * dx + (1 - keep) * wx;
        dy = keep * dy + (1 - keep) * wy;
        dz = keep * dz + (1 - keep) * wz;
        in = dx * gx + dy * gy + dz * gz;
        if (in < 0) {
          dx -= touch * in * gx;
          dy -= touch * in * gy;
          dz -= touch * in * gz;
        }
        double norm = ds / Math.sqrt(dx * dx + dy * dy + dz * dz + 1e-12);
        double qx = px + dx * norm;
        double qy = py + dy * norm;
        double qz = pz + dz * norm;
        double there = here + (dx * gx + dy * gy + dz * gz) * norm;
        if (there < off) {
          double up = Math.max((off - there) * rise, least - there);
          qx += gx * up;
          qy += gy * up;
          qz += gz * up;
          double lx = qx - px;
          double ly = qy - py;
          double lz = qz - pz;
          double fit = ds / Math.sqrt(lx * lx + ly * ly + lz * lz + 1e-12);
          qx = px + lx * fit;
          qy = py + ly * fit;
          qz = pz + lz * fit;
        }
        dx = (qx - px) / ds;
        dy = (qy - py) / ds;
        dz = (qz - pz) / ds;
        px = qx;
        py = qy;
        pz = qz;
        s += ds;

        double coil = radius * smooth(s / 45);
        // Across the hair, along what it lies on.
        double rx = dy * gz - dz * gy;
        double ry = dz * gx - dx * gz;
        double rz = dx * gy - dy * gx;
        double aside = 1 / (Math.sqrt(rx * rx + ry * ry + rz * rz) + 0.02);
        rx *= aside;
        ry *= aside;
        rz *= aside;
        double sine = sin * cosStep + cos * sinStep;
        cos = cos * cosStep - sin * sinStep;
        sin = sine;
        pull *= pullStep;
        thin *= thinStep;
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
  }

  private double noise(long key, int stream) {
    return uneven * Noise.normal(key, stream);
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
