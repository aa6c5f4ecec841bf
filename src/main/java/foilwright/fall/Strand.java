package foilwright.fall;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.hair.Texture;
import foilwright.head.Head;

/**
 * Follows hairs, some side by side.
 *
 * <p>Each step of a hair waits for the one before it, so that a processor that follows one alone
 * waits most of the time. What is done to every hair is therefore done lane by lane in short loops
 * without branches: {@link #setOut} reads what is its own of a hair, {@link #want}, {@link #turn}
 * and {@link #go} take a step of all lanes, and beside them stand, one method each, the wishes that
 * a hair has beside falling. No lane knows of another, so that a hair does not depend on its
 * neighbours.
 */
final class Strand {
  /** No point of a hair lies nearer to the skin than this, but for the first steps at the root. */
  static final float LEAST_MM = 1;

  private static final float OUT_MM = 5;
  private static final float TOUCH_MM = 3;

  /** How soon the plane in which a hair bends follows what it lies on. */
  private static final double PLANE_MM = 12;

  private static final double COMB_FADE_MM = 70;
  private static final double FRINGE_FADE_MM = 50;

  /** Longer hair is no fringe, and is not combed over the face. */
  private static final double FRINGE_MM = 170;

  /** How far from the tie hair counts as gathered. */
  private static final float TIE_MM = 9;

  /** How far apart hair bends together no longer, and by how much it then does not, in radians. */
  private static final double WAVE_REACH_MM = 34;

  private static final double WAVE_DRIFT = 3.4;

  private static final float SHOULDERS_FROM_MM = -60;
  private static final float SHOULDERS_TO_MM = -330;

  private final Roots roots;
  private final Body.Beneath beneath;
  private final HairStyle style;
  private final Texture texture;
  private final double uneven;
  private final double step;
  private final float axisStep;
  private final double memory;
  private final double perMm;
  private final double coat;
  private final float tighten;
  private final Vector3 tie;
  private final Vector3 tieOut;
  private final float hairlineZ;
  private final float earY;
  private final float shoulderY;

  private final float planeTurn;
  private final float usualTurn;
  private final float thinStep;
  private final float rise;

  /** How many hairs go side by side. */
  private static final int LANES = 128;

  // What each is.
  private final int[] at = new int[LANES];
  private final int[] last = new int[LANES];
  private final float[] lastStep = new float[LANES];
  private final float[] side = new float[LANES];
  private final boolean[] ahead = new boolean[LANES];
  private final float[] sweep = new float[LANES];
  private final float[] tuck = new float[LANES];
  private final float[] combX = new float[LANES];
  private final float[] combY = new float[LANES];
  private final float[] combZ = new float[LANES];
  private final float[] driftX = new float[LANES];
  private final float[] driftY = new float[LANES];
  private final float[] thick = new float[LANES];
  private final float[] radius = new float[LANES];
  private final float[] pullStep = new float[LANES];
  private final float[] sinStep = new float[LANES];
  private final float[] cosStep = new float[LANES];
  private final float[] tieX = new float[LANES];
  private final float[] tieY = new float[LANES];
  private final float[] tieZ = new float[LANES];
  private final float[] tailX = new float[LANES];
  private final float[] tailY = new float[LANES];
  private final float[] tailZ = new float[LANES];

  // Where it is, and what it carries from step to step: what fades or turns evenly along it.
  private final float[] x = new float[LANES];
  private final float[] y = new float[LANES];
  private final float[] z = new float[LANES];
  private final float[] dirX = new float[LANES];
  private final float[] dirY = new float[LANES];
  private final float[] dirZ = new float[LANES];
  private final float[] gone = new float[LANES];
  private final float[] thin = new float[LANES];
  private final float[] pull = new float[LANES];
  private final float[] sin = new float[LANES];
  private final float[] cos = new float[LANES];
  private final float[] sinceTie = new float[LANES];

  // Of its next step: its length and turn, what lies beneath, what it wants, where it ends.
  private final float[] ds = new float[LANES];
  private final float[] turn = new float[LANES];
  private final float[] here;
  private final float[] slopeX;
  private final float[] slopeY;
  private final float[] slopeZ;
  private final float[] least = new float[LANES];
  private final float[] off = new float[LANES];
  private final float[] wantX = new float[LANES];
  private final float[] wantY = new float[LANES];
  private final float[] wantZ = new float[LANES];
  private final float[] outX = new float[LANES];
  private final float[] outY = new float[LANES];
  private final float[] outZ = new float[LANES];
  private final boolean[] bears;
  private final float[] touch = new float[LANES];
  private final float[] along = new float[LANES];
  private final float[] bend = new float[LANES];
  private final float[] keep = new float[LANES];
  private final float[] up = new float[LANES];
  private final float[] aside = new float[LANES];
  private final float[] outer = new float[LANES];
  private final float[] borne = new float[LANES];
  private final float[] planeX = new float[LANES];
  private final float[] planeY = new float[LANES];
  private final float[] planeZ = new float[LANES];

  Strand(Fall fall) {
    roots = fall.roots;
    beneath = fall.body.new Beneath(LANES);
    here = beneath.distance;
    slopeX = beneath.slopeX;
    slopeY = beneath.slopeY;
    slopeZ = beneath.slopeZ;
    bears = beneath.bears;
    style = fall.settings.style();
    texture = fall.texture;
    uneven = fall.settings.unevenness();
    step = fall.step;
    axisStep = (float) (step * texture.shortening());
    memory = fall.memory;
    perMm = fall.perMm;
    coat = fall.coat;
    tighten = style == HairStyle.TIED_UP ? 0.35f : style == HairStyle.SWEPT_BACK ? 0.7f : 1;
    Head head = roots.hair().head();
    Polyline centre = head.centreLine();
    Vector3 at = centre.at(0.60 * centre.length());
    tieOut = head.form().normal(at);
    tie = at.plus(tieOut.times(12));
    hairlineZ = (float) centre.first().z();
    Vector3 factors = head.form().factors();
    earY = (float) (-38 * factors.y());
    planeTurn = (float) (1 - Math.exp(-axisStep / PLANE_MM));
    usualTurn = (float) (1 - Math.exp(-axisStep / memory));
    thinStep = (float) Math.exp(-perMm * axisStep / coat);
    rise = (float) (1 - Math.exp(-axisStep / 12));
    shoulderY = (float) (Body.SHOULDER_Y * (factors.x() + factors.y() + factors.z()) / 3);
  }

  /**
   * Follows hairs, numbered from one to before another.
   *
   * @param starts where the points of each begin, and end where those of the next begin
   * @param points receives x, y and z of each point
   */
  void follow(int from, int to, int[] starts, float[] points) {
    int next = from;
    int running = 0;
    for (int l = 0; l < LANES; l++) {
      at[l] = -1;
      if (next < to) {
        setOut(l, next, starts, points);
        next++;
        running++;
      }
    }
    while (running > 0) {
      want();
      turn();
      go();
      for (int l = 0; l < LANES; l++) {
        int i = at[l] + 1;
        if (i == 0) {
          continue;
        }
        at[l] = i;
        put(points, i, outX[l], outY[l], outZ[l]);
        int left = last[l] - i;
        if (left == 1) {
          shorten(l);
        } else if (left == 0) {
          if (next < to) {
            setOut(l, next, starts, points);
            next++;
          } else {
            at[l] = -1;
            running--;
          }
        }
      }
    }
  }

  /** The last step may be shorter. */
  private void shorten(int l) {
    ds[l] = lastStep[l];
    turn[l] = (float) (1 - Math.exp(-lastStep[l] / memory));
  }

  private void setOut(int l, int hair, int[] starts, float[] points) {
    long key = roots.key(hair);
    long clump = roots.clump(hair);
    long lock = roots.lock(hair);
    float[] places = roots.places();
    float[] outs = roots.outward();
    float[] combs = roots.combs();
    x[l] = places[3 * hair];
    y[l] = places[3 * hair + 1];
    z[l] = places[3 * hair + 2];
    double nx = outs[3 * hair];
    double ny = outs[3 * hair + 1];
    double nz = outs[3 * hair + 2];
    double length = roots.lengthMm(hair);
    boolean stray = roots.isStray(hair);
    side[l] = roots.isRight(hair) ? 1 : -1;
    ahead[l] = y[l] > earY;
    boolean fringe =
        style == HairStyle.FRINGE_FORWARD && length < FRINGE_MM && nz > 0.45 && y[l] > -10;
    boolean fallsFreely = style != HairStyle.SWEPT_BACK && style != HairStyle.TIED_UP && !fringe;
    sweep[l] = fallsFreely ? smooth((float) (roots.cutMm(hair) - 98) / 22) : 0;
    tuck[l] = style == HairStyle.TUCKED && ahead[l] ? smooth((float) (length - 120) / 60) : 0;

    // The comb's direction; by lock and clump it is unsteady farther on.
    double shake = stray ? 0.5 : 0.05 + 0.13 * Math.exp(-roots.edgeMm(hair) / 8);
    combX[l] = (float) (combs[3 * hair] + shake * noise(key, 21));
    combY[l] = (float) (combs[3 * hair + 1] + shake * noise(key, 22));
    combZ[l] = (float) (combs[3 * hair + 2] + shake * 0.5 * noise(key, 23));
    double fade = comb(l, key, clump, fringe, roots.edgeMm(hair));

    // Setting out: along the comb, a little off the scalp.
    double lift = 0.24 + 0.08 * noise(key, 24) + (stray ? 0.15 : 0);
    double inward = combX[l] * nx + combY[l] * ny + combZ[l] * nz;
    double ex = combX[l] - inward * nx;
    double ey = combY[l] - inward * ny;
    double sinks = style == HairStyle.TIED_UP ? 0 : 0.5 * (1 - Math.abs(nz));
    double ez = combZ[l] - inward * nz - sinks;
    double size = Math.sqrt(ex * ex + ey * ey + ez * ez) + 1e-9;
    ex = ex / size + lift * nx;
    ey = ey / size + lift * ny;
    ez = ez / size + lift * nz;
    size = Math.sqrt(ex * ex + ey * ey + ez * ez);
    dirX[l] = (float) (ex / size);
    dirY[l] = (float) (ey / size);
    dirZ[l] = (float) (ez / size);
    if (style == HairStyle.TIED_UP) {
      combX[l] = 0;
      combY[l] = 0;
      combZ[l] = 0;
    } else {
      combX[l] = (float) (combX[l] + (0.10 * noise(clump, 21) + 0.10 * noise(lock, 21)));
      combY[l] = (float) (combY[l] + (0.10 * noise(clump, 22) + 0.10 * noise(lock, 22)));
    }
    driftX[l] = (float) (0.005 * noise(key, 36) + 0.012 * noise(clump, 36));
    driftY[l] = (float) (0.005 * noise(key, 37) + 0.012 * noise(clump, 37));

    double depth =
        1
            + 0.22 * noise(key, 25)
            + 0.14 * noise(clump, 25)
            + 0.16 * noise(lock, 25)
            + (stray ? 0.3 : 0);
    thick[l] = (float) (tighten * Math.max(0.3, depth) * coat);
    thin[l] = 1;
    pull[l] = 1;
    pullStep[l] = (float) Math.exp(-axisStep / fade);
    gone[l] = 0;
    // Neighbours bend together: at one height, whatever they grew from, and farther off at another.
    double phase =
        -2 * Math.PI * z[l] / texture.turnMm()
            + WAVE_DRIFT * roots.drift(hair, 26, WAVE_REACH_MM)
            + 0.6 * noise(lock, 26)
            + 0.5 * noise(clump, 26)
            + 0.25 * noise(key, 26);
    planeX[l] = 0;
    planeY[l] = 0;
    planeZ[l] = 0;
    double turnMm =
        texture.turnMm()
            * (1
                + 0.10 * roots.drift(hair, 27, WAVE_REACH_MM)
                + 0.04 * noise(lock, 27)
                + 0.02 * noise(clump, 27));
    radius[l] = (float) (texture.radiusMm() * (1 + 0.25 * noise(clump, 28)) + (stray ? 1.2 : 0));
    sin[l] = (float) Math.sin(phase);
    cos[l] = (float) Math.cos(phase);
    sinStep[l] = (float) Math.sin(2 * Math.PI * axisStep / turnMm);
    cosStep[l] = (float) Math.cos(2 * Math.PI * axisStep / turnMm);

    at[l] = starts[hair];
    last[l] = starts[hair + 1] - 1;
    put(points, at[l], x[l], y[l], z[l]);
    ds[l] = axisStep;
    turn[l] = usualTurn;
    int links = last[l] - at[l];
    lastStep[l] = (float) (Math.max(1e-3, length - (links - 1) * step) * texture.shortening());
    if (links == 1) {
      shorten(l);
    }
  }

  /** What a style makes of the comb; returns how far along the hair it is felt, millimetres. */
  private double comb(int l, long key, long clump, boolean fringe, double edgeMm) {
    switch (style) {
      case SWEPT_BACK -> {
        combX[l] = (float) (combX[l] * 0.15 + x[l] * 0.003);
        combY[l] = (float) (combY[l] * 0.1 - 1.3);
        combZ[l] = (float) (combZ[l] * 0.1 - 0.1);
        return 1e9;
      }
      case TIED_UP -> {
        tieX[l] = (float) (tie.x() + 6 * noise(key, 30));
        tieY[l] = (float) (tie.y() + 3 * noise(key, 31));
        tieZ[l] = (float) (tie.z() + 6 * noise(key, 32));
        tailX[l] = (float) (tieOut.x() + 0.07 * noise(key, 33) + 0.12 * noise(clump, 33));
        tailY[l] = (float) (tieOut.y() + 0.07 * noise(key, 34) + 0.10 * noise(clump, 34));
        tailZ[l] = (float) (tieOut.z() + 0.07 * noise(key, 35) + 0.12 * noise(clump, 35));
        sinceTie[l] = -1;
        combX[l] = (float) (0.2 * combX[l] + (tieX[l] - x[l]) / 60);
        combY[l] = (float) (0.2 * combY[l] + (tieY[l] - y[l]) / 60);
        combZ[l] = (float) (0.2 * combZ[l] + (tieZ[l] - z[l]) / 60);
      }
      default -> {
        if (fringe) {
          combX[l] = (float) (combX[l] * 0.25);
          combY[l] = (float) (combY[l] * 0.2 + 0.65);
          return FRINGE_FADE_MM;
        }
        // Hair long enough for the eyes is combed back from the front hairline.
        double back =
            (1.2 + Math.exp(-edgeMm / 12))
                * sweep[l]
                * smooth((y[l] - 20) / 45)
                * Math.exp(-edgeMm / 38);
        combY[l] = (float) (combY[l] - back);
      }
    }
    return COMB_FADE_MM;
  }

  /** What lies beneath, and what each hair wants there. */
  private void want() {
    beneath.at(x, y, z);
    for (int l = 0; l < LANES; l++) {
      // The root does not lie on what grows before it.
      thin[l] *= bears[l] && gone[l] > 0 ? thinStep : 1;
    }
    for (int l = 0; l < LANES; l++) {
      // At the root hair comes out of the skin; over the first millimetres it leaves it.
      least[l] = LEAST_MM * Math.min(1, (gone[l] + ds[l]) * (1 / OUT_MM));
    }
    for (int l = 0; l < LANES; l++) {
      off[l] = least[l] + thick[l] * (1 - thin[l]);
    }
    for (int l = 0; l < LANES; l++) {
      wantX[l] = combX[l] * pull[l] + driftX[l];
      wantY[l] = combY[l] * pull[l] + driftY[l];
      wantZ[l] = combZ[l] * pull[l] - 1;
    }
    if (style == HairStyle.TIED_UP) {
      for (int l = 0; l < LANES; l++) {
        toTheTie(l);
      }
    }
    if (style == HairStyle.SWEPT_BACK) {
      for (int l = 0; l < LANES; l++) {
        sweptBack(l);
      }
    }
    for (int l = 0; l < LANES; l++) {
      if (y[l] > 15 && sweep[l] > 0) {
        asideOfTheFace(l);
      }
      if (tuck[l] > 0 && y[l] > earY && z[l] < 75 && z[l] > -30) {
        behindTheEar(l);
      }
      if (z[l] < SHOULDERS_FROM_MM && z[l] > SHOULDERS_TO_MM) {
        overTheShoulder(l);
      }
    }
  }

  /** Turns each hair towards what it wants, but for what leads into what lies beneath. */
  private void turn() {
    for (int l = 0; l < LANES; l++) {
      // How near what lies beneath is: 1 in contact, 0 beyond reach. Of what leads inwards all is
      // lost in contact and before it a share by the way; what is wanted inwards is borne by how
      // near it is alone, since a share by the way would vanish with the step.
      float near = Math.min(Math.max((off[l] + 2 - here[l]) * 0.5f, 0), 1);
      float soon = near * ds[l];
      touch[l] = soon / (soon + (1 - near) * TOUCH_MM);
      borne[l] = Math.max(4 * near - 3, 0);
    }
    for (int l = 0; l < LANES; l++) {
      float w = wantX[l] * slopeX[l] + wantY[l] * slopeY[l] + wantZ[l] * slopeZ[l];
      float in = borne[l] * Math.min(w, 0);
      wantX[l] -= in * slopeX[l];
      wantY[l] -= in * slopeY[l];
      wantZ[l] -= in * slopeZ[l];
    }
    // The elastica's turn; under a pull of 1 the sum is twice the squared cosine of half the angle
    // between, and under none of them less than 0.
    for (int l = 0; l < LANES; l++) {
      along[l] = dirX[l] * wantX[l] + dirY[l] * wantY[l] + dirZ[l] * wantZ[l];
    }
    for (int l = 0; l < LANES; l++) {
      float square = wantX[l] * wantX[l] + wantY[l] * wantY[l] + wantZ[l] * wantZ[l];
      bend[l] = turn[l] * (float) Math.sqrt(2 / (0.5f + 0.5f * square + along[l] + 1e-9f));
    }
    for (int l = 0; l < LANES; l++) {
      keep[l] = 1 - turn[l] + turn[l] * Math.max(along[l], 0) - bend[l] * along[l];
    }
    for (int l = 0; l < LANES; l++) {
      dirX[l] = keep[l] * dirX[l] + bend[l] * wantX[l];
      dirY[l] = keep[l] * dirY[l] + bend[l] * wantY[l];
      dirZ[l] = keep[l] * dirZ[l] + bend[l] * wantZ[l];
    }
    for (int l = 0; l < LANES; l++) {
      float u = dirX[l] * slopeX[l] + dirY[l] * slopeY[l] + dirZ[l] * slopeZ[l];
      float in = touch[l] * Math.min(u, 0);
      dirX[l] -= in * slopeX[l];
      dirY[l] -= in * slopeY[l];
      dirZ[l] -= in * slopeZ[l];
    }
    toUnit();
    // Where it would come too near to what lies beneath it is lifted.
    for (int l = 0; l < LANES; l++) {
      float u = dirX[l] * slopeX[l] + dirY[l] * slopeY[l] + dirZ[l] * slopeZ[l];
      float there = here[l] + ds[l] * u;
      up[l] = Math.max(Math.max((off[l] - there) * rise, least[l] - there), 0) / ds[l];
    }
    for (int l = 0; l < LANES; l++) {
      dirX[l] += slopeX[l] * up[l];
      dirY[l] += slopeY[l] * up[l];
      dirZ[l] += slopeZ[l] * up[l];
    }
    toUnit();
  }

  private void toUnit() {
    for (int l = 0; l < LANES; l++) {
      float square = dirX[l] * dirX[l] + dirY[l] * dirY[l] + dirZ[l] * dirZ[l];
      float unit = 1 / (float) Math.sqrt(square + 1e-12f);
      dirX[l] *= unit;
      dirY[l] *= unit;
      dirZ[l] *= unit;
    }
  }

  /** Takes the step. */
  private void go() {
    for (int l = 0; l < LANES; l++) {
      x[l] += ds[l] * dirX[l];
      y[l] += ds[l] * dirY[l];
      z[l] += ds[l] * dirZ[l];
    }
    for (int l = 0; l < LANES; l++) {
      gone[l] += ds[l];
      pull[l] *= pullStep[l];
    }
    for (int l = 0; l < LANES; l++) {
      float sine = sin[l] * cosStep[l] + cos[l] * sinStep[l];
      cos[l] = cos[l] * cosStep[l] - sin[l] * sinStep[l];
      sin[l] = sine;
    }
    // The hair's own bends, across it along what it lies on; in free air it keeps the plane in
    // which
    // it came.
    for (int l = 0; l < LANES; l++) {
      planeX[l] += planeTurn * (slopeX[l] - planeX[l]);
      planeY[l] += planeTurn * (slopeY[l] - planeY[l]);
      planeZ[l] += planeTurn * (slopeZ[l] - planeZ[l]);
    }
    for (int l = 0; l < LANES; l++) {
      float u = planeX[l] * dirX[l] + planeY[l] * dirY[l] + planeZ[l] * dirZ[l];
      planeX[l] -= u * dirX[l];
      planeY[l] -= u * dirY[l];
      planeZ[l] -= u * dirZ[l];
    }
    for (int l = 0; l < LANES; l++) {
      float square = planeX[l] * planeX[l] + planeY[l] * planeY[l] + planeZ[l] * planeZ[l];
      float unit = 1 / (float) Math.sqrt(square + 1e-6f);
      planeX[l] *= unit;
      planeY[l] *= unit;
      planeZ[l] *= unit;
    }
    for (int l = 0; l < LANES; l++) {
      float h = Math.min(gone[l] * (1 / 45.0f), 1);
      float coil = radius[l] * h * h * (3 - 2 * h);
      aside[l] = coil * sin[l];
      outer[l] = 0.7f * coil * (1 + cos[l]);
    }
    for (int l = 0; l < LANES; l++) {
      outX[l] =
          x[l] + (dirY[l] * planeZ[l] - dirZ[l] * planeY[l]) * aside[l] + planeX[l] * outer[l];
    }
    for (int l = 0; l < LANES; l++) {
      outY[l] =
          y[l] + (dirZ[l] * planeX[l] - dirX[l] * planeZ[l]) * aside[l] + planeY[l] * outer[l];
    }
    for (int l = 0; l < LANES; l++) {
      outZ[l] =
          z[l] + (dirX[l] * planeY[l] - dirY[l] * planeX[l]) * aside[l] + planeZ[l] * outer[l];
    }
  }

  /** The comb holds on top of the head and lets go behind it and below the ears. */
  private void sweptBack(int l) {
    float held = smooth((z[l] - 5) / 75) * smooth((y[l] + 70) / 90);
    wantX[l] = combX[l] * held + driftX[l];
    wantY[l] = combY[l] * held + driftY[l];
    wantZ[l] = combZ[l] * held - 1;
  }

  /** Straight to the tie, through it outwards, and down behind it. */
  private void toTheTie(int l) {
    if (sinceTie[l] < 0) {
      float hx = tieX[l] - x[l];
      float hy = tieY[l] - y[l];
      float hz = tieZ[l] - z[l];
      float far = (float) Math.sqrt(hx * hx + hy * hy + hz * hz);
      if (far > TIE_MM) {
        wantX[l] = 2.2f * hx / far;
        wantY[l] = 2.2f * hy / far;
        wantZ[l] = 2.2f * hz / far - 0.1f;
        return;
      }
      sinceTie[l] = 0;
    }
    float push = 2.6f * (float) Math.exp(-sinceTie[l] / 38);
    wantX[l] = tailX[l] * push + driftX[l];
    wantY[l] = tailY[l] * push + driftY[l];
    wantZ[l] = tailZ[l] * push - 1;
    sinceTie[l] += ds[l];
  }

  /** In front of the face nobody wears long hair: it goes to its side and back. */
  private void asideOfTheFace(int l) {
    float ax = Math.abs(x[l]);
    float f =
        sweep[l]
            * smooth((y[l] - 15) * (1 / 45.0f))
            * smooth((hairlineZ + 30 - z[l]) * (1 / 48.0f))
            * smooth((z[l] + 125) * (1 / 45.0f));
    float within = smooth((80 - ax) * (1 / 26.0f));
    wantX[l] += (ax > 8 ? Math.signum(x[l]) : side[l]) * 2.4f * f * within;
    wantY[l] -= 1.3f * f;
  }

  private void behindTheEar(int l) {
    float f = tuck[l] * smooth((75 - z[l]) / 30) * smooth((z[l] + 30) / 30);
    wantY[l] -= 2.2f * f;
    wantZ[l] += 0.75f * f;
    wantX[l] -= 0.3f * side[l] * f;
  }

  /**
   * Over a shoulder hair parts: what grew before the ear is drawn forward and the rest back, and
   * where it lies on the shoulder it slides to the side on which it came, never outwards.
   */
  private void overTheShoulder(int l) {
    float beside = Math.abs(x[l]) - 30;
    if (beside > 0) {
      float f = smooth((SHOULDERS_FROM_MM - z[l]) * (1 / 90.0f)) * smooth(beside * (1 / 30.0f));
      if (here[l] - off[l] < 4) {
        wantY[l] += 1.4f * f * Math.min(Math.max((y[l] - shoulderY) * 0.1f, -1), 1);
      } else {
        wantY[l] += (ahead[l] ? 0.3f : -0.3f) * f * smooth((z[l] + 240) * (1 / 60.0f));
      }
    }
    if (z[l] < -150) {
      float gx = slopeX[l] * (1 - 0.85f * smooth((-150 - z[l]) * (1 / 40.0f)));
      float gy = slopeY[l];
      float gz = slopeZ[l];
      float size = 1 / ((float) Math.sqrt(gx * gx + gy * gy + gz * gz) + 1e-9f);
      slopeX[l] = gx * size;
      slopeY[l] = gy * size;
      slopeZ[l] = gz * size;
    }
  }

  private double noise(long of, int stream) {
    return uneven * Noise.normal(of, stream);
  }

  private static void put(float[] points, int i, float x, float y, float z) {
    points[3 * i] = x;
    points[3 * i + 1] = y;
    points[3 * i + 2] = z;
  }

  /** From 0 to 1 with level ends. */
  private static float smooth(float t) {
    if (t <= 0) {
      return 0;
    }
    return t >= 1 ? 1 : t * t * (3 - 2 * t);
  }
}
