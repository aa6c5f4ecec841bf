package foilwright.placement;

import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.ScalarField;
import foilwright.head.Head;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * The line on the head along which partings are spaced: the cut of a plane with the surface, in the
 * direction of travel, as far as it keeps going that way.
 *
 * <p>On the scalp it is the cut of the mesh (arc length within 3e-5 of the smooth surface); past
 * the hairline it follows the head form in steps of 1.5 degrees.
 */
final class Guide {
  private static final double STEP_RAD = Math.toRadians(1.5);
  private static final int MOST_STEPS = 160;

  private final Polyline line;
  private final Vector3 travel;

  private Guide(Polyline line, Vector3 travel) {
    this.line = line;
    this.travel = travel;
  }

  /**
   * Traces the guide line through a point of the scalp.
   *
   * @param through the point, mm
   * @param square unit normal of the guide's plane
   * @param travel unit direction of travel; the guide goes on while it advances along it
   * @param from it is followed back at least to this value of travel . p, if the surface goes there
   * @param to it is followed on at least to this value
   */
  static Guide trace(
      Head head, Vector3 through, Vector3 square, Vector3 travel, double from, double to) {
    Plane plane = Plane.through(through, square);
    Polyline chain =
        Isolines.of(head.scalp(), ScalarField.distanceFrom(head.mesh(), plane), 0).stream()
            .min((a, b) -> Double.compare(gap(a, through), gap(b, through)))
            .orElseThrow(() -> new IllegalArgumentException("the point is not on the scalp"));
    if (chain.closed()) {
      chain = openedAcrossFrom(chain, through);
    }
    double arc = chain.nearestArc(through);
    if (chain.tangentAt(arc).dot(travel) < 0) {
      chain = chain.reversed();
      arc = chain.length() - arc;
    }
    List<Vector3> ahead = new ArrayList<>(List.of(chain.at(arc)));
    List<Vector3> back = new ArrayList<>(ahead);
    boolean endAhead = true;
    boolean endBack = true;
    for (int i = 0; i < chain.size(); i++) {
      if (chain.arcAt(i) > arc + 1e-9) {
        Vector3 p = chain.points().get(i);
        if (p.minus(ahead.get(ahead.size() - 1)).dot(travel) <= 0) {
          endAhead = false;
          break;
        }
        ahead.add(p);
      }
    }
    for (int i = chain.size() - 1; i >= 0; i--) {
      if (chain.arcAt(i) < arc - 1e-9) {
        Vector3 p = chain.points().get(i);
        if (p.minus(back.get(back.size() - 1)).dot(travel) >= 0) {
          endBack = false;
          break;
        }
        back.add(p);
      }
    }
    if (endAhead) {
      extend(head, ahead, plane, travel, to);
    }
    if (endBack) {
      extend(head, back, plane, travel.negated(), -from);
    }
    Collections.reverse(back);
    back.addAll(ahead.subList(1, ahead.size()));
    return new Guide(Polyline.of(back), travel);
  }

  /** A closed line, begun at its point farthest along from a point. */
  private static Polyline openedAcrossFrom(Polyline loop, Vector3 point) {
    double start = loop.nearestArc(point) + loop.length() / 2;
    start = start >= loop.length() ? start - loop.length() : start;
    List<Vector3> points = new ArrayList<>(loop.between(start, loop.length()).points());
    List<Vector3> rest = loop.between(0, start).points();
    points.addAll(rest.subList(1, rest.size()));
    return Polyline.of(points.subList(0, points.size() - 1));
  }

  private static double gap(Polyline line, Vector3 p) {
    return line.at(line.nearestArc(p)).distance(p);
  }

  /**
   * Follows the head form in the plane beyond the scalp until a value is reached or it turns back.
   */
  private static void extend(
      Head head, List<Vector3> line, Plane plane, Vector3 travel, double until) {
    Vector3 last = line.get(line.size() - 1);
    if (last.dot(travel) >= until) {
      return;
    }
    Vector3 centre = head.form().centre();
    Vector3 inside = centre.minus(plane.normal().times(plane.distance(centre)));
    Vector3 first = last.minus(inside).unit();
    Vector3 turn = plane.normal().cross(first);
    double sign = turn.dot(travel) >= 0 ? 1 : -1;
    for (int i = 1; i <= MOST_STEPS && last.dot(travel) < until; i++) {
      double angle = sign * i * STEP_RAD;
      Vector3 direction = first.times(Math.cos(angle)).plus(turn.times(Math.sin(angle)));
      Vector3 p = head.form().exit(inside, direction);
      if (p.minus(last).dot(travel) <= 0) {
        return;
      }
      line.add(p);
      last = p;
    }
  }

  Polyline line() {
    return line;
  }

  /**
   * Arc length in mm where the guide first reaches a value of {@code direction . p}; ends when it
   * never does.
   */
  double arcAt(Vector3 direction, double value) {
    List<Vector3> points = line.points();
    if (points.get(0).dot(direction) >= value) {
      return 0;
    }
    for (int i = 1; i < points.size(); i++) {
      double b = points.get(i).dot(direction);
      if (b >= value) {
        double a = points.get(i - 1).dot(direction);
        return line.arcAt(i - 1) + (value - a) / (b - a) * (line.arcAt(i) - line.arcAt(i - 1));
      }
    }
    return line.length();
  }

  /** Arc length in mm where the guide reaches a value of travel . p. */
  double arcAt(double value) {
    return arcAt(travel, value);
  }

  Vector3 at(double arc) {
    return line.at(arc);
  }

  double length() {
    return line.length();
  }

  /** Whether the guide reaches a value of travel . p at either end, within a tolerance in mm. */
  boolean reaches(double value, double tolerance) {
    return line.first().dot(travel) <= value + tolerance
        && line.last().dot(travel) >= value - tolerance;
  }
}
