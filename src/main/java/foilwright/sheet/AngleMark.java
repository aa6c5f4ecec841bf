package foilwright.sheet;

import foilwright.drawing.Curve;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The angle of a parting with the level, drawn at its lower end as it appears in a picture. */
record AngleMark(List<Part> parts) {
  private static final double ARC_MM = 7;
  private static final double LEVEL_MM = 11;
  private static final double LEAST_RAD = Math.toRadians(4);

  AngleMark {
    parts = List.copyOf(parts);
  }

  /** The mark for a parting between two points of the sheet; none where it appears level. */
  static Optional<AngleMark> of(Point from, Point to, Pen pen) {
    Point low = from.y() > to.y() ? from : to;
    Point high = from.y() > to.y() ? to : from;
    double turn = Math.atan2(low.y() - high.y(), high.x() - low.x());
    if (turn < LEAST_RAD || turn > Math.PI - LEAST_RAD || low.distance(high) < 2) {
      return Optional.empty();
    }
    boolean toTheRight = turn <= Math.PI / 2;
    double level = toTheRight ? 0 : Math.PI;
    List<Part> parts = new ArrayList<>();
    parts.add(
        Part.Shape.drawn(Curve.line(low, low.plus(toTheRight ? LEVEL_MM : -LEVEL_MM, 0)), pen));
    double radius = Math.min(ARC_MM, low.distance(high) * 0.8);
    List<Point> arc = new ArrayList<>();
    for (int i = 0; i <= 8; i++) {
      double t = level + (turn - level) * i / 8;
      arc.add(low.plus(radius * Math.cos(t), -radius * Math.sin(t)));
    }
    parts.add(Part.Shape.drawn(Curve.smooth(arc, false), pen));
    return Optional.of(new AngleMark(parts));
  }

  /** Places for the figure: within the angle, then farther out, then about its corner. */
  static List<Point> labelSpots(Point from, Point to) {
    Point low = from.y() > to.y() ? from : to;
    Point high = from.y() > to.y() ? to : from;
    double turn = Math.atan2(low.y() - high.y(), high.x() - low.x());
    double level = turn <= Math.PI / 2 ? 0 : Math.PI;
    double half = (turn + level) / 2;
    List<Point> spots = new ArrayList<>();
    for (double reach : new double[] {10.5, 12.5, 14.5, 17}) {
      spots.add(low.plus(reach * Math.cos(half), -reach * Math.sin(half)));
    }
    spots.addAll(around(low));
    return spots;
  }

  /** Places for a word at one end of a line, beyond it first. */
  static List<Point> endSpots(Point end, Point other) {
    double run = Math.max(1e-6, end.distance(other));
    List<Point> spots = new ArrayList<>();
    for (double beyond : new double[] {4, 5.5, 7}) {
      spots.add(end.lerp(other, -beyond / run));
    }
    spots.addAll(around(end));
    return spots;
  }

  private static List<Point> around(Point p) {
    List<Point> spots = new ArrayList<>();
    for (double reach : new double[] {4.5, 6.5, 9}) {
      for (int i = 0; i < 8; i++) {
        double t = Math.PI / 2 + Math.PI / 4 * i;
        spots.add(p.plus(reach * Math.cos(t), reach * Math.sin(t)));
      }
    }
    return spots;
  }
}
