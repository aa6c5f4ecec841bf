package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.TriangleMesh;
import foilwright.head.Head;
import foilwright.head.HeadForm;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * A family of partings over one arm of a section, ordered by arc length in millimetres along its
 * guide line in the direction of travel.
 */
abstract class Family {
  /** Arc at which the region begins. */
  abstract double start();

  /** Arc at which the region ends, or the guide where that is nearer. */
  abstract double end();

  /** The point of the guide line at an arc. */
  abstract Vector3 guidePoint(double arc);

  /** The parting at an arc; {@code last} is the arc of the parting before it. */
  abstract Cut cut(double last, double arc);

  /**
   * Surface distance in mm between the partings at two arcs, near a point: the difference of the
   * field over its slope along the surface there. First order: within 1 % for 20 mm on a head.
   */
  abstract double gapAt(Head head, Vector3 point, double from, double to);

  /**
   * Surface distance in mm over which a point of the scalp, taken as the middle, advances by an
   * amount along a direction. The surface bends evenly about the point by its mean curvature, so
   * that the distance stays finite where it turns away from the direction; there it ends at the
   * summit.
   */
  static double onSlope(Head head, Vector3 point, Vector3 direction, double advance) {
    Vector3 normal = head.form().normal(point);
    double slope = direction.minus(normal.times(direction.dot(normal))).norm();
    return spread(slope, bend(head, point), advance);
  }

  /** Mean curvature of the surface at a point, per mm, never quite nothing. */
  static double bend(Head head, Vector3 point) {
    HeadForm.Curvature curvature = head.form().curvature(point);
    return Math.max(1e-6, (Math.abs(curvature.least()) + Math.abs(curvature.greatest())) / 2);
  }

  /**
   * Distance over which a quantity advances whose slope at the middle changes evenly by {@code
   * bend} per mm.
   */
  static double spread(double slope, double bend, double advance) {
    double amount = Math.abs(advance);
    double back = (Math.sqrt(slope * slope + bend * amount) - slope) / bend;
    double room = slope * slope - bend * amount;
    double ahead = (slope - Math.sqrt(Math.max(0, room))) / bend;
    return Math.signum(advance) * (back + ahead);
  }

  /**
   * The bands of a region before the first of ascending arcs, between each two and after the last.
   */
  List<Region> bands(Region usable, double[] arcs) {
    List<Region> bands = new ArrayList<>();
    Region rest = usable;
    double last = start();
    for (double arc : arcs) {
      Cut cut = cut(last, arc);
      bands.add(cut.behind(rest));
      rest = cut.ahead(rest);
      last = arc;
    }
    bands.add(rest);
    return bands;
  }

  /** The partings at ascending arcs, within a region. */
  List<List<Polyline>> lines(Region usable, double[] arcs) {
    List<List<Polyline>> lines = new ArrayList<>();
    double last = start();
    for (double arc : arcs) {
      lines.add(cut(last, arc).lines(usable));
      last = arc;
    }
    return lines;
  }

  /** The lines half way through slices, which foils follow: without teeth. */
  List<List<Polyline>> middles(Region usable, double[] arcs) {
    return lines(usable, arcs);
  }

  /** Partings that are lines of equal value of one field, which ascends with the arc. */
  abstract static class OfLevels extends Family {
    abstract LinearValues field();

    abstract double level(double arc);

    @Override
    Cut cut(double last, double arc) {
      return new Cut.Level(field(), level(arc));
    }

    @Override
    List<Region> bands(Region usable, double[] arcs) {
      return usable.bands(field(), levels(arcs));
    }

    @Override
    List<List<Polyline>> lines(Region usable, double[] arcs) {
      return Isolines.ofLevels(usable, field(), levels(arcs));
    }

    private double[] levels(double[] arcs) {
      double[] levels = new double[arcs.length];
      for (int i = 0; i < arcs.length; i++) {
        levels[i] = level(arcs[i]);
      }
      return levels;
    }
  }

  /** Straight partings of one direction: planes through the points of a guide line. */
  static final class Straight extends OfLevels {
    private final Guide guide;
    private final Vector3 normal;
    private final LinearValues field;
    private final double start;
    private final double end;

    /**
     * A family over a region.
     *
     * @param normal unit normal of the partings' planes, in the direction of travel
     */
    Straight(Region region, Guide guide, Vector3 normal) {
      this.guide = guide;
      this.normal = normal;
      field = ScalarField.compute(region.mesh(), p -> p.dot(normal));
      start = guide.arcAt(normal, region.least(field));
      end = guide.arcAt(normal, region.greatest(field));
    }

    @Override
    double start() {
      return start;
    }

    @Override
    double end() {
      return end;
    }

    @Override
    Vector3 guidePoint(double arc) {
      return guide.at(arc);
    }

    @Override
    LinearValues field() {
      return field;
    }

    @Override
    double level(double arc) {
      return guide.at(arc).dot(normal);
    }

    @Override
    double gapAt(Head head, Vector3 point, double from, double to) {
      return onSlope(head, point, normal, level(to) - level(from));
    }
  }

  /** Lines of equal surface distance from a boundary; the arc is that distance. */
  static final class Distance extends OfLevels {
    private final Region region;
    private final LinearValues distance;
    private final double start;
    private final double end;

    Distance(Region region, LinearValues distance, double from, double to) {
      this.region = region;
      this.distance = distance;
      start = Math.max(from, region.least(distance));
      end = Math.min(to, region.greatest(distance));
    }

    @Override
    double start() {
      return start;
    }

    @Override
    double end() {
      return end;
    }

    @Override
    Vector3 guidePoint(double arc) {
      List<Polyline> lines = Isolines.of(region, distance, arc);
      return lines.isEmpty()
          ? region.nearest(region.areaCentroid())
          : lines.get(0).at(lines.get(0).length() / 2);
    }

    @Override
    LinearValues field() {
      return distance;
    }

    @Override
    double level(double arc) {
      return arc;
    }

    @Override
    double gapAt(Head head, Vector3 point, double from, double to) {
      return to - from;
    }
  }

  /**
   * Lines of equal value of a fitted scalar, spaced along a guide line on which the scalar is
   * known.
   */
  static final class Scalar extends OfLevels {
    private final BitSet sheet = new BitSet();
    private final LinearValues scalar;
    private final Polyline guide;
    private final double[] values;
    private final double start;
    private final double end;

    /**
     * A family over a region.
     *
     * @param values of the scalar at the points of the guide, ascending
     */
    Scalar(Region region, LinearValues scalar, Polyline guide, double[] values) {

      for (int f = 0; f < region.fragmentCount(); f++) {
        sheet.set(region.triangle(f));
      }
      this.scalar = scalar;
      this.guide = guide;
      this.values = values;
      start = arcOf(region.least(scalar));
      end = arcOf(region.greatest(scalar));
    }

    private double arcOf(double value) {
      int i = 1;
      while (i < values.length - 1 && values[i] < value) {
        i++;
      }
      double s = (value - values[i - 1]) / (values[i] - values[i - 1]);
      return guide.arcAt(i - 1) + s * (guide.arcAt(i) - guide.arcAt(i - 1));
    }

    @Override
    double start() {
      return start;
    }

    @Override
    double end() {
      return end;
    }

    @Override
    Vector3 guidePoint(double arc) {
      return guide.at(arc);
    }

    @Override
    LinearValues field() {
      return scalar;
    }

    /** Past the guide's ends the scalar goes on at its last slope. */
    @Override
    double level(double arc) {
      int i = 1;
      while (i < values.length - 1 && guide.arcAt(i) < arc) {
        i++;
      }
      double s = (arc - guide.arcAt(i - 1)) / (guide.arcAt(i) - guide.arcAt(i - 1));
      return values[i - 1] + s * (values[i] - values[i - 1]);
    }

    @Override
    double gapAt(Head head, Vector3 point, double from, double to) {
      int t = inSheet(head, head.nearestOnScalp(point).triangle());
      double slope = t < 0 ? 1 : DirectionField.gradientIn(head.mesh(), scalar, t).norm();
      return spread(slope, bend(head, point), level(to) - level(from));
    }

    /**
     * The triangle, or one that touches it, on which the scalar is known; -1 when there is none.
     */
    private int inSheet(Head head, int t) {
      if (sheet.get(t)) {
        return t;
      }
      TriangleMesh mesh = head.mesh();
      for (int k = 0; k < 3; k++) {
        int v = mesh.corner(t, k);
        for (int i = 0; i < mesh.fanSize(v); i++) {
          if (sheet.get(mesh.fan(v, i))) {
            return mesh.fan(v, i);
          }
        }
      }
      return -1;
    }
  }

  /** Half-planes that turn about an axis; the arc is the angle times a radius. */
  static final class Turning extends Family {
    private final Vector3 centre;
    private final Vector3 zero;
    private final Vector3 quarter;
    private final double first;
    private final double radius;
    private final double span;
    private final int sense;
    private final Region region;

    /**
     * A family over a region.
     *
     * @param zero unit direction of angle 0, square to the axis
     * @param quarter unit direction of a quarter turn, square to both
     * @param first angle of the first parting, radians
     * @param span how far the family turns, radians, signed
     * @param radius distance from the axis at which arcs are measured, mm
     */
    Turning(
        Region region,
        Vector3 centre,
        Vector3 zero,
        Vector3 quarter,
        double first,
        double span,
        double radius) {
      this.region = region;
      this.centre = centre;
      this.zero = zero;
      this.quarter = quarter;
      this.first = first;
      this.radius = radius;
      this.span = Math.abs(span);
      sense = span < 0 ? -1 : 1;
    }

    @Override
    double start() {
      return 0;
    }

    @Override
    double end() {
      return span * radius;
    }

    private Vector3 out(double arc) {
      double angle = first + sense * arc / radius;
      return zero.times(Math.cos(angle)).plus(quarter.times(Math.sin(angle)));
    }

    private LinearValues ahead(double arc) {
      return along(out(arc + radius * Math.PI / 2));
    }

    private LinearValues along(Vector3 direction) {
      return ScalarField.compute(region.mesh(), p -> p.minus(centre).dot(direction));
    }

    /** The part of a region inside the family's span. */
    Region sector(Region whole) {
      if (span >= 2 * Math.PI - 1e-9) {
        return whole;
      }
      double half = end() / 2;
      Region near =
          whole
              .clip(ahead(0), 0, Double.POSITIVE_INFINITY)
              .clip(ahead(half), Double.NEGATIVE_INFINITY, 0);
      Region far =
          whole
              .clip(ahead(half), 0, Double.POSITIVE_INFINITY)
              .clip(ahead(end()), Double.NEGATIVE_INFINITY, 0);
      return Region.join(whole.mesh(), List.of(near, far));
    }

    @Override
    Vector3 guidePoint(double arc) {
      return region.nearest(centre.plus(out(arc).times(radius)));
    }

    @Override
    double gapAt(Head head, Vector3 point, double from, double to) {
      Vector3 axis = zero.cross(quarter);
      Vector3 out = point.minus(centre);
      out = out.minus(axis.times(out.dot(axis)));
      double distance = out.norm();
      if (distance < 1e-9) {
        return 0;
      }
      Vector3 turning = axis.cross(out).times(1 / distance);
      return onSlope(head, point, turning, (to - from) / radius * distance);
    }

    @Override
    Cut cut(double last, double arc) {
      return new Cut.Turn(ahead(last), ahead(arc), along(out(arc)));
    }
  }

  /** Another family, its partings drawn in teeth. */
  static final class Zigzag extends Family {
    private final Family plain;
    private final LinearValues along;
    private final double reach;
    private final double period;

    Zigzag(Family plain, LinearValues along, double toothDepth, double toothWidth) {
      this.plain = plain;
      this.along = along;
      reach = toothDepth / 2;
      period = toothWidth;
    }

    @Override
    double start() {
      return plain.start();
    }

    @Override
    double end() {
      return plain.end();
    }

    @Override
    Vector3 guidePoint(double arc) {
      return plain.guidePoint(arc);
    }

    @Override
    Cut cut(double last, double arc) {
      return new Cut.Teeth(plain.cut(last, arc), along, reach, period);
    }

    @Override
    double gapAt(Head head, Vector3 point, double from, double to) {
      return plain.gapAt(head, point, from, to);
    }

    @Override
    List<List<Polyline>> middles(Region usable, double[] arcs) {
      return plain.lines(usable, arcs);
    }
  }
}
