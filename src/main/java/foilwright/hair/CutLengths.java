package foilwright.hair;

import foilwright.anatomy.HairlineStretch;
import foilwright.anatomy.Landmark;
import foilwright.anatomy.Zone;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfaceDistance;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Hair lengths that follow from how a cut was held, at each vertex of the scalp, millimetres.
 *
 * <p>The way down to a level line is the shortest over the scalp to where the head no longer
 * carries the hair (normal no more than 15 degrees above level) and straight down from there, on
 * its own side of the part; it is that of combed, taut hair, and agrees with the distance along the
 * surface within its 1 %.
 */
final class CutLengths {
  private static final double HANGS_RAD = Math.toRadians(15);
  private static final double LEAST_MM = 3;

  /** Share of the ear-to-ear arc from the centre line at which a face frame is longest. */
  private static final double FRAME_END = 0.40;

  private static final double FRAME_FADE_MM = 18;

  private final Head head;
  private final TriangleMesh mesh;
  private final Lengths table;
  private final Map<CutShape, double[]> known = new HashMap<>();

  CutLengths(Head head, Lengths table) {
    this.head = head;
    this.mesh = head.mesh();
    this.table = table;
  }

  /** Lengths of a shape as if the whole head were cut so; a table's are those of one zone. */
  double[] of(CutShape shape, Zone zone) {
    if (shape instanceof CutShape.Table) {
      double[] same = new double[mesh.vertexCount()];
      Arrays.fill(same, table.in(zone).toMillimetres());
      return same;
    }
    return known.computeIfAbsent(shape, this::compute);
  }

  private double[] compute(CutShape shape) {
    return shape.match(
        s -> new double[mesh.vertexCount()],
        s -> wayDown(s.atNape().toMillimetres()),
        s -> {
          double base = s.atNape().toMillimetres();
          double less = Math.cos(s.held().toRadians());
          double[] down = wayDown(base);
          for (int v = 0; v < down.length; v++) {
            down[v] = Math.max(LEAST_MM, base + (down[v] - base) * less);
          }
          return down;
        },
        s -> {
          double[] same = new double[mesh.vertexCount()];
          Arrays.fill(same, s.length().toMillimetres());
          return same;
        },
        s -> wayUp(s.onTop().toMillimetres()));
  }

  private double[] wayDown(double atNapeMm) {
    double line = head.landmark(Landmark.NAPE_HAIRLINE).z() - atNapeMm;
    ScalarField elevation = head.normalElevation();
    ScalarField beside = head.besidePart();
    double[] right = new double[mesh.vertexCount()];
    double[] left = new double[right.length];
    for (int v = 0; v < right.length; v++) {
      double down =
          elevation.at(v) <= HANGS_RAD
              ? Math.max(LEAST_MM, mesh.z(v) - line)
              : Double.POSITIVE_INFINITY;
      right[v] = beside.at(v) >= 0 ? down : Double.POSITIVE_INFINITY;
      left[v] = beside.at(v) <= 0 ? down : Double.POSITIVE_INFINITY;
    }
    ScalarField overRight = SurfaceDistance.march(mesh, right);
    ScalarField overLeft = SurfaceDistance.march(mesh, left);
    for (int v = 0; v < right.length; v++) {
      right[v] =
          beside.at(v) > 0
              ? overRight.at(v)
              : beside.at(v) < 0 ? overLeft.at(v) : Math.min(overRight.at(v), overLeft.at(v));
    }
    return right;
  }

  private double[] wayUp(double onTopMm) {
    Vector3 point = head.landmark(Landmark.APEX).plus(Vector3.UP.times(onTopMm));
    double[] start = new double[mesh.vertexCount()];
    for (int v = 0; v < start.length; v++) {
      Vector3 p = mesh.vertex(v);
      Vector3 way = point.minus(p);
      boolean free = way.dot(head.form().normal(p)) >= 0;
      start[v] = free ? way.norm() : Double.POSITIVE_INFINITY;
    }
    return SurfaceDistance.march(mesh, start).toArray();
  }

  /** Shortens the hair about the face to a frame's line. */
  void frame(Haircut.FaceFrame frame, double[] lengths) {
    double shortest = frame.shortest().toMillimetres();
    double more = frame.longest().toMillimetres() - shortest;
    double depth = frame.depth().toMillimetres();
    double end = FRAME_END * head.earToEar().toMillimetres();
    ScalarField aside = head.distanceFromCentreLine();
    double[] fromFront = fromFront();
    for (int v = 0; v < lengths.length; v++) {
      double share = Math.min(1, Math.max(0, 1 - (fromFront[v] - depth) / FRAME_FADE_MM));
      if (share > 0) {
        double line = shortest + more * Math.min(1, Math.abs(aside.at(v)) / end);
        double cut = Math.min(lengths[v], line);
        lengths[v] += share * (cut - lengths[v]);
      }
    }
  }

  /** Distance from the hairline before the ear. */
  private double[] fromFront() {
    double[] start = new double[mesh.vertexCount()];
    Arrays.fill(start, Double.POSITIVE_INFINITY);
    ScalarField edge = head.distanceFromHairline();
    for (int v = 0; v < start.length; v++) {
      if (edge.at(v) == 0 && isFront(v)) {
        start[v] = 0;
      }
    }
    return SurfaceDistance.march(mesh, start).toArray();
  }

  private boolean isFront(int v) {
    HairlineStretch stretch = head.hairlineStretch(head.hairline().nearestArc(mesh.vertex(v)));
    return switch (stretch) {
      case FRONT, RECESSION, TEMPLE -> true;
      default -> false;
    };
  }
}
