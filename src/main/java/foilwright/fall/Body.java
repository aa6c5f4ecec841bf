package foilwright.fall;

import foilwright.anatomy.Landmark;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.StarSurface;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What hair lies on: the distance from the skin of head, ears, neck and shoulders, on a grid.
 *
 * <p>Head frame, millimetres; positive outside. Over the scalp the distance is that from the head's
 * form, within 0.15 mm up to 20 mm above it; ears, nose, neck and shoulders are rounded bodies
 * placed by the head's proportions, there so that hair lies over them, and measured from nobody.
 * Outside the grid the value at its border holds. Between grid points values run linearly.
 */
public final class Body {
  /** Where the ridge of a shoulder runs on the template. */
  static final double SHOULDER_Y = -47;

  private static final double SPACING_MM = 5;
  private static final Vector3 LOW = new Vector3(-235, -170, -420);
  private static final Vector3 HIGH = new Vector3(235, 165, 190);

  private final double spacing;
  private final double lowX;
  private final double lowY;
  private final double lowZ;
  private final int nx;
  private final int ny;
  private final int nz;
  private final float[] values;

  /** Bearing is known by cells of so many of the grid's, each way. */
  private static final int CELLS = 2;

  /** How far out hair counts as being over the scalp it has run over. */
  private static final double BEARING_OUT_MM = 40;

  /** Where the skin below bears hair, by cells of a coarser grid. */
  private final boolean[] bearing;

  private final int bearingY;
  private final int bearingZ;
  private final boolean bearsEverywhere;

  private Body(Vector3 low, Vector3 high, double spacing, boolean bearsEverywhere) {
    this.bearsEverywhere = bearsEverywhere;
    this.spacing = spacing;
    lowX = low.x();
    lowY = low.y();
    lowZ = low.z();
    nx = (int) Math.ceil((high.x() - lowX) / spacing) + 1;
    ny = (int) Math.ceil((high.y() - lowY) / spacing) + 1;
    nz = (int) Math.ceil((high.z() - lowZ) / spacing) + 1;
    values = new float[nx * ny * nz];
    bearingY = ny / CELLS + 1;
    bearingZ = nz / CELLS + 1;
    bearing = new boolean[(nx / CELLS + 1) * bearingY * bearingZ];
  }

  /** Head, ears, neck and shoulders of one person. */
  public static Body of(Head head) {
    Body body = new Body(LOW, HIGH, SPACING_MM, false);
    Figure figure = new Figure(head);
    body.fill((x, y, z) -> figure.head(x, y, z));
    body.straighten();
    body.combine(figure::others);
    body.bear(head);
    return body;
  }

  /**
   * A body given by its distance function, within a box about the origin.
   *
   * @param halfMm half the side of the box
   */
  public static Body of(ToDoubleFunction<Vector3> distance, double halfMm, double spacingMm) {
    Vector3 corner = new Vector3(halfMm, halfMm, halfMm);
    Body body = new Body(corner.negated(), corner, spacingMm, true);
    body.fill((x, y, z) -> distance.applyAsDouble(new Vector3(x, y, z)));
    return body;
  }

  private interface At {
    double value(double x, double y, double z);
  }

  private void fill(At function) {
    IntStream.range(0, nx)
        .parallel()
        .forEach(
            i -> {
              double x = lowX + i * spacing;
              for (int j = 0; j < ny; j++) {
                double y = lowY + j * spacing;
                for (int k = 0; k < nz; k++) {
                  values[(i * ny + j) * nz + k] = (float) function.value(x, y, lowZ + k * spacing);
                }
              }
            });
  }

  /** Divides by the slope, so that a distance along a ray becomes one along the normal. */
  private void straighten() {
    float[] before = values.clone();
    IntStream.range(1, nx - 1)
        .parallel()
        .forEach(
            i -> {
              for (int j = 1; j < ny - 1; j++) {
                for (int k = 1; k < nz - 1; k++) {
                  int at = (i * ny + j) * nz + k;
                  double gx = before[at + ny * nz] - before[at - ny * nz];
                  double gy = before[at + nz] - before[at - nz];
                  double gz = before[at + 1] - before[at - 1];
                  double slope = Math.sqrt(gx * gx + gy * gy + gz * gz) / (2 * spacing);
                  values[at] = (float) (before[at] / Math.max(slope, 0.7));
                }
              }
            });
  }

  private void bear(Head head) {
    TriangleMesh scalp = head.mesh();
    for (int v = 0; v < scalp.vertexCount(); v++) {
      Vector3 p = scalp.vertex(v);
      Vector3 n = head.form().normal(p);
      for (double out = 0; out <= BEARING_OUT_MM; out += spacing) {
        Vector3 q = p.plus(n.times(out));
        bearing[bearingCell(q.x(), q.y(), q.z())] = true;
      }
    }
  }

  private int bearingCell(double x, double y, double z) {
    int i = (int) ((x - lowX) / (CELLS * spacing));
    int j = (int) ((y - lowY) / (CELLS * spacing));
    int k = (int) ((z - lowZ) / (CELLS * spacing));
    return (i * bearingY + j) * bearingZ + k;
  }

  private interface Others {
    double join(double head, double x, double y, double z);
  }

  private void combine(Others others) {
    IntStream.range(0, nx)
        .parallel()
        .forEach(
            i -> {
              double x = lowX + i * spacing;
              for (int j = 0; j < ny; j++) {
                double y = lowY + j * spacing;
                for (int k = 0; k < nz; k++) {
                  int at = (i * ny + j) * nz + k;
                  values[at] = (float) others.join(values[at], x, y, lowZ + k * spacing);
                }
              }
            });
  }

  /** Distance from the skin at a point, millimetres; negative inside. */
  public double distance(double x, double y, double z) {
    double fx = held((x - lowX) / spacing, nx);
    double fy = held((y - lowY) / spacing, ny);
    double fz = held((z - lowZ) / spacing, nz);
    int i = (int) fx;
    int j = (int) fy;
    int k = (int) fz;
    double u = fx - i;
    double v = fy - j;
    double w = fz - k;
    int at = (i * ny + j) * nz + k;
    int up = at + ny * nz;
    double c00 = values[at] + w * (values[at + 1] - values[at]);
    double c01 = values[at + nz] + w * (values[at + nz + 1] - values[at + nz]);
    double c10 = values[up] + w * (values[up + 1] - values[up]);
    double c11 = values[up + nz] + w * (values[up + nz + 1] - values[up + nz]);
    double c0 = c00 + v * (c01 - c00);
    double c1 = c10 + v * (c11 - c10);
    return c0 + u * (c1 - c0);
  }

  /** Places of which it is found, lane by lane, what lies beneath; frame and units as above. */
  final class Beneath {
    /** Distance from the skin. */
    final float[] distance;

    /** Gradient of the distance, of length about 1, pointing outwards. */
    final float[] slopeX;

    final float[] slopeY;
    final float[] slopeZ;

    /** Whether the skin under a place bears hair, to within a centimetre. */
    final boolean[] bears;

    private final float scale = (float) (1 / spacing);
    private final float startX = (float) lowX;
    private final float startY = (float) lowY;
    private final float startZ = (float) lowZ;

    // Where in its cell of the grid a place is, and the cell's corners: of each edge upwards its
    // lower end, and what its upper end has more.
    private final float[] inX;
    private final float[] inY;
    private final float[] inZ;
    private final float[] corner00;
    private final float[] corner01;
    private final float[] corner10;
    private final float[] corner11;
    private final float[] edge00;
    private final float[] edge01;
    private final float[] edge10;
    private final float[] edge11;

    Beneath(int lanes) {
      distance = new float[lanes];
      slopeX = new float[lanes];
      slopeY = new float[lanes];
      slopeZ = new float[lanes];
      bears = new boolean[lanes];
      inX = new float[lanes];
      inY = new float[lanes];
      inZ = new float[lanes];
      corner00 = new float[lanes];
      corner01 = new float[lanes];
      corner10 = new float[lanes];
      corner11 = new float[lanes];
      edge00 = new float[lanes];
      edge01 = new float[lanes];
      edge10 = new float[lanes];
      edge11 = new float[lanes];
    }

    void at(float[] x, float[] y, float[] z) {
      for (int l = 0; l < x.length; l++) {
        inX[l] = Math.min(Math.max((x[l] - startX) * scale, 0), nx - 1.001f);
      }
      for (int l = 0; l < x.length; l++) {
        inY[l] = Math.min(Math.max((y[l] - startY) * scale, 0), ny - 1.001f);
      }
      for (int l = 0; l < x.length; l++) {
        inZ[l] = Math.min(Math.max((z[l] - startZ) * scale, 0), nz - 1.001f);
      }
      for (int l = 0; l < x.length; l++) {
        int i = (int) inX[l];
        int j = (int) inY[l];
        int k = (int) inZ[l];
        inX[l] -= i;
        inY[l] -= j;
        inZ[l] -= k;
        int at = (i * ny + j) * nz + k;
        int up = at + ny * nz;
        corner00[l] = values[at];
        edge00[l] = values[at + 1];
        corner01[l] = values[at + nz];
        edge01[l] = values[at + nz + 1];
        corner10[l] = values[up];
        edge10[l] = values[up + 1];
        corner11[l] = values[up + nz];
        edge11[l] = values[up + nz + 1];
        bears[l] =
            bearsEverywhere || bearing[((i / CELLS) * bearingY + j / CELLS) * bearingZ + k / CELLS];
      }
      for (int l = 0; l < x.length; l++) {
        edge00[l] -= corner00[l];
        edge01[l] -= corner01[l];
        edge10[l] -= corner10[l];
        edge11[l] -= corner11[l];
      }
      for (int l = 0; l < x.length; l++) {
        float d0 = edge00[l] + inY[l] * (edge01[l] - edge00[l]);
        float d1 = edge10[l] + inY[l] * (edge11[l] - edge10[l]) - d0;
        slopeZ[l] = (d0 + inX[l] * d1) * scale;
      }
      for (int l = 0; l < x.length; l++) {
        corner00[l] += inZ[l] * edge00[l];
        corner01[l] += inZ[l] * edge01[l] - corner00[l];
        corner10[l] += inZ[l] * edge10[l];
        corner11[l] += inZ[l] * edge11[l] - corner10[l];
      }
      for (int l = 0; l < x.length; l++) {
        float c0 = corner00[l] + inY[l] * corner01[l];
        float c1 = corner10[l] + inY[l] * corner11[l] - c0;
        distance[l] = c0 + inX[l] * c1;
        slopeX[l] = c1 * scale;
        slopeY[l] = (corner01[l] + inX[l] * (corner11[l] - corner01[l])) * scale;
      }
    }
  }

  /** Outward direction of the skin nearest to a point, smoothed over some millimetres. */
  public Vector3 outward(double x, double y, double z) {
    double h = spacing;
    Vector3 slope =
        new Vector3(
            distance(x + h, y, z) - distance(x - h, y, z),
            distance(x, y + h, z) - distance(x, y - h, z),
            distance(x, y, z + h) - distance(x, y, z - h));
    return slope.norm() > 1e-9 ? slope.unit() : Vector3.UP;
  }

  private static double held(double place, int count) {
    return Math.min(Math.max(place, 0), count - 1.001);
  }

  /** The bodies beside the head's form, in proportion to it. */
  private static final class Figure {
    private final StarSurface template;
    private final Vector3 inverse;
    private final Vector3 centre;
    private final Vector3 f;
    private final double scale;
    private final Vector3 chin;
    private final Vector3 chinSide;
    private final Vector3 jaw;
    private final Vector3 noseTip;
    private final Vector3 noseRoot;

    Figure(Head head) {
      HeadForm form = head.form();
      template = form.template();
      f = form.factors();
      inverse = new Vector3(1 / f.x(), 1 / f.y(), 1 / f.z());
      centre = template.centre();
      scale = (f.x() + f.y() + f.z()) / 3;
      Vector3 brow = head.landmark(Landmark.BROW);
      noseRoot = new Vector3(0, brow.y() - 4, 16 * f.z());
      chin = new Vector3(0, 76 * f.y(), -74 * f.z());
      chinSide = new Vector3(9 * f.x(), 74 * f.y(), -74 * f.z());
      jaw = new Vector3(54 * f.x(), 8 * f.y(), -40 * f.z());
      noseTip = new Vector3(0, brow.y() + 10 * scale, -14 * f.z());
    }

    double head(double x, double y, double z) {
      double qx = x * inverse.x() - centre.x();
      double qy = y * inverse.y() - centre.y();
      double qz = z * inverse.z() - centre.z();
      double r = Math.sqrt(qx * qx + qy * qy + qz * qz);
      if (r < 1e-6) {
        return -80;
      }
      return (r - template.radius(qx, qy, qz)) * scale;
    }

    double others(double head, double x, double y, double z) {
      double ax = Math.abs(x);
      double d = head;
      if (z < 20) {
        // Under the jaw the form of the head is only roughly right: cut it and set a chin on.
        double under = (-29 * (y - 78 * f.y()) - 85 * (z + 100 * f.z())) / 89.8;
        d = cut(d, under, 14);
        d = joined(d, capsule(ax, y, z, chin, chinSide, 18 * scale, 15 * scale), 30);
        d = joined(d, capsule(ax, y, z, chinSide, jaw, 11 * scale, 12 * scale), 34);
      }
      if (z > -60 * f.z() && z < 60 * f.z() && y < 40 && y > -70) {
        d = joined(d, ear(ax, y, z), 5);
      }
      if (y > 60 && z < 50 && z > -60 && ax < 60) {
        d = joined(d, capsule(x, y, z, noseRoot, noseTip, 4 * scale, 8.5 * scale), 9);
      }
      double neck =
          capsule(
              x,
              y,
              z,
              new Vector3(0, -14 * scale, -55 * scale),
              new Vector3(0, -40 * scale, -190 * scale),
              47 * scale,
              52 * scale);
      d = joined(d, neck, 18);
      Vector3 inner = new Vector3(22 * scale, -46 * scale, -232 * scale);
      Vector3 outer = new Vector3(142 * scale, -48 * scale, -276 * scale);
      Vector3 elbow = new Vector3(172 * scale, -40 * scale, -480 * scale);
      d = joined(d, capsule(ax, y, z, inner, outer, 50 * scale, 45 * scale), 50);
      d = joined(d, capsule(ax, y, z, outer, elbow, 45 * scale, 38 * scale), 20);
      double chest =
          capsule(
              ax * 0.66,
              y,
              z,
              new Vector3(0, -34 * scale, -300 * scale),
              new Vector3(0, -28 * scale, -520 * scale),
              84 * scale,
              90 * scale);
      return joined(d, chest, 40);
    }

    private double ear(double ax, double y, double z) {
      double u = (ax - 79 * f.x()) / (8 * f.x());
      double v = (y + 15 * f.y() + 0.12 * z) / (16 * f.y());
      double w = (z - 1 * f.z()) / (32 * f.z());
      double r = Math.sqrt(u * u + v * v + w * w);
      return (r - 1) * 8 * f.x();
    }

    /** Distance from a rounded cone between two points. */
    private static double capsule(
        double x, double y, double z, Vector3 a, Vector3 b, double ra, double rb) {
      double bx = b.x() - a.x();
      double by = b.y() - a.y();
      double bz = b.z() - a.z();
      double px = x - a.x();
      double py = y - a.y();
      double pz = z - a.z();
      double t = (px * bx + py * by + pz * bz) / (bx * bx + by * by + bz * bz);
      t = Math.min(Math.max(t, 0), 1);
      double dx = px - t * bx;
      double dy = py - t * by;
      double dz = pz - t * bz;
      return Math.sqrt(dx * dx + dy * dy + dz * dz) - (ra + t * (rb - ra));
    }

    /** What two bodies have in common, with a rounded edge. */
    private static double cut(double a, double b, double fillet) {
      return -joined(-a, -b, fillet);
    }

    /** The union of two bodies with a fillet between them. */
    private static double joined(double a, double b, double fillet) {
      double h = Math.max(fillet - Math.abs(a - b), 0) / fillet;
      return Math.min(a, b) - h * h * fillet / 4;
    }
  }
}
