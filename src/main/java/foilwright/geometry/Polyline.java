package foilwright.geometry;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * An ordered chain of points with its arc length, in millimetres; at least one point.
 *
 * <p>A closed polyline repeats its first point at the end.
 */
public final class Polyline {
  private final List<Vector3> points;
  private final double[] arcMm;
  private final double[] xyz;

  private Polyline(List<Vector3> points) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a polyline needs at least one point");
    }
    this.points = List.copyOf(points);
    arcMm = new double[this.points.size()];
    xyz = new double[3 * arcMm.length];
    for (int i = 0; i < arcMm.length; i++) {
      Vector3 p = this.points.get(i);
      xyz[3 * i] = p.x();
      xyz[3 * i + 1] = p.y();
      xyz[3 * i + 2] = p.z();
    }
    for (int i = 1; i < arcMm.length; i++) {
      arcMm[i] = arcMm[i - 1] + this.points.get(i).distance(this.points.get(i - 1));
    }
  }

  public static Polyline of(List<Vector3> points) {
    return new Polyline(points);
  }

  public List<Vector3> points() {
    return points;
  }

  public int size() {
    return points.size();
  }

  public Vector3 first() {
    return points.get(0);
  }

  public Vector3 last() {
    return points.get(points.size() - 1);
  }

  /** Whether the last point repeats the first exactly. */
  public boolean closed() {
    return points.size() > 2 && first().equals(last());
  }

  /** Total length in millimetres. */
  public double length() {
    return arcMm[arcMm.length - 1];
  }

  /** Arc length in millimetres from the first point to point {@code index}. */
  public double arcAt(int index) {
    return arcMm[index];
  }

  /** The point at an arc length in millimetres, clamped to the ends. */
  public Vector3 at(double arc) {
    if (points.size() == 1 || arc <= 0) {
      return first();
    }
    if (arc >= length()) {
      return last();
    }
    int i = segmentAt(arc);
    double span = arcMm[i + 1] - arcMm[i];
    return points.get(i).lerp(points.get(i + 1), span > 0 ? (arc - arcMm[i]) / span : 0);
  }

  /** Unit direction of travel at an arc length in millimetres, of the segment there. */
  public Vector3 tangentAt(double arc) {
    if (points.size() < 2) {
      throw new IllegalArgumentException("a single point has no direction");
    }
    int i = segmentAt(Math.min(Math.max(arc, 0), length()));
    while (i > 0 && arcMm[i + 1] == arcMm[i]) {
      i--;
    }
    return points.get(i + 1).minus(points.get(i)).unit();
  }

  private int segmentAt(double arc) {
    int low = 0;
    int high = arcMm.length - 2;
    while (low < high) {
      int mid = (low + high + 1) >>> 1;
      if (arcMm[mid] <= arc) {
        low = mid;
      } else {
        high = mid - 1;
      }
    }
    return low;
  }

  /** Arc length in millimetres of the point of this polyline that is nearest to {@code p}. */
  public double nearestArc(Vector3 p) {
    double bestSquare = Double.POSITIVE_INFINITY;
    double best = 0;
    double ax = xyz[0] - p.x();
    double ay = xyz[1] - p.y();
    double az = xyz[2] - p.z();
    if (arcMm.length == 1) {
      return 0;
    }
    for (int i = 1; i < arcMm.length; i++) {
      double bx = xyz[3 * i] - p.x();
      double by = xyz[3 * i + 1] - p.y();
      double bz = xyz[3 * i + 2] - p.z();
      double ux = bx - ax;
      double uy = by - ay;
      double uz = bz - az;
      double square = ux * ux + uy * uy + uz * uz;
      double along = -(ax * ux + ay * uy + az * uz);
      double t = along <= 0 || square == 0 ? 0 : along >= square ? 1 : along / square;
      double dx = ax + t * ux;
      double dy = ay + t * uy;
      double dz = az + t * uz;
      double d = dx * dx + dy * dy + dz * dz;
      if (d < bestSquare) {
        bestSquare = d;
        best = arcMm[i - 1] + t * (arcMm[i] - arcMm[i - 1]);
      }
      ax = bx;
      ay = by;
      az = bz;
    }
    return best;
  }

  /**
   * The stretch between two arc lengths in millimetres, {@code from <= to}, with their exact ends.
   */
  public Polyline between(double from, double to) {
    List<Vector3> stretch = new ArrayList<>();
    stretch.add(at(from));
    for (int i = 0; i < points.size(); i++) {
      if (arcMm[i] > from && arcMm[i] < to) {
        stretch.add(points.get(i));
      }
    }
    stretch.add(at(to));
    return new Polyline(stretch);
  }

  /** The same points in the opposite order. */
  public Polyline reversed() {
    List<Vector3> turned = new ArrayList<>(points);
    Collections.reverse(turned);
    return new Polyline(turned);
  }

  /** The reflection in the plane x = 0, in the same order. */
  public Polyline mirrored() {
    return new Polyline(points.stream().map(Vector3::mirrored).toList());
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Polyline that && points.equals(that.points);
  }

  @Override
  public int hashCode() {
    return points.hashCode();
  }

  @Override
  public String toString() {
    return "Polyline of " + points.size() + " points, " + length() + " mm";
  }
}
