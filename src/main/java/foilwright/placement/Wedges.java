package foilwright.placement;

import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.head.Head;
import foilwright.pattern.Background;
import foilwright.pattern.Remainder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/**
 * Lays slices with parallel edges whose backgrounds close, each to its own point on the region's
 * border.
 *
 * <p>After a slice, its last edge meets the border at a pointed end P and a wide end W. From W the
 * wedge's width is walked along the surface, in the direction of travel and square to the edge as
 * the viewer sees it, to W'; the next slice begins on the plane through P and W' that contains the
 * viewing direction. With points at the same end the partings turn a little with every wedge; at
 * alternate ends they keep their direction.
 */
final class Wedges {
  private static final double ALONG_MM = 1e-6;
  private static final int STRETCH_STEPS = 24;

  /** A wedge that turns the partings by more than 75 degrees ends the section. */
  private static final double LEAST_COSINE = 0.26;

  private final Head head;
  private final Region region;
  private final ViewFrame frame;
  private final Guide guide;
  private final Vector3 normal;
  private final UnaryOperator<Cut> teeth;
  private final double shortest;

  /** Lengths of the first partings' middles by their arcs, for those who lay the arm again. */
  private final Map<Double, Double> lengths = new HashMap<>();

  /**
   * Prepares an arm.
   *
   * @param normal unit normal of the first parting's plane, in the direction of travel
   * @param teeth draws a plain parting in teeth, or leaves it
   * @param shortest a corner of the region is passed over until a slice is this long and twice as
   *     long as its wedge is wide, mm: a wedge on a shorter one would turn the partings too far
   */
  Wedges(
      Head head,
      Region region,
      ViewFrame frame,
      Guide guide,
      Vector3 normal,
      UnaryOperator<Cut> teeth,
      double shortest) {
    this.head = head;
    this.region = region;
    this.frame = frame;
    this.guide = guide;
    this.normal = normal;
    this.teeth = teeth;
    this.shortest = shortest;
  }

  /**
   * Lays the arm.
   *
   * @param wide direction of the wide end, of any length
   */
  Strip.Arm lay(
      OptionalInt count,
      double offset,
      Spacing.Widths slice,
      Spacing.Widths wedge,
      Background.Points points,
      Vector3 wide,
      Remainder remainder) {
    Strip.Arm arm = lay(count, offset, slice, wedge, points, wide);
    if (arm.strips().isEmpty() || arm.leftMm() <= 0) {
      return arm;
    }
    OptionalInt same = OptionalInt.of(arm.strips().size());
    if (remainder == Remainder.BALANCE) {
      return lay(same, offset + arm.leftMm() / 2, slice, wedge, points, wide);
    }
    if (remainder == Remainder.STRETCH && arm.strips().size() > 1) {
      double low = 1;
      double high = 3;
      for (int i = 0; i < STRETCH_STEPS; i++) {
        double scale = (low + high) / 2;
        Strip.Arm tried = lay(same, offset, slice, scaled(wedge, scale), points, wide);
        if (tried.strips().size() == same.getAsInt() && tried.leftMm() >= 0) {
          low = scale;
          arm = tried;
        } else {
          high = scale;
        }
      }
    }
    return arm;
  }

  private static Spacing.Widths scaled(Spacing.Widths w, double scale) {
    return new Spacing.Widths(w.first() * scale, w.last() * scale);
  }

  private Strip.Arm lay(
      OptionalInt count,
      double offset,
      Spacing.Widths slice,
      Spacing.Widths wedge,
      Background.Points points,
      Vector3 wide) {
    List<Strip> strips = new ArrayList<>();
    List<Region> backgrounds = new ArrayList<>();
    List<Region> untouched = new ArrayList<>();
    Region rest = region;
    Vector3 n = normal;
    double begin =
        pastTheCorner(
            guide.arcAt(n, region.least(along(n))) + offset,
            slice.first() / 2,
            n,
            Math.max(shortest, 2 * wedge.first()));
    double length = Math.max(1e-9, guide.arcAt(n, region.greatest(along(n))) - begin);
    Vector3 on = guide.at(begin);
    Vector3 end = wide;
    double left = 0;
    ToDoubleFunction<Vector3> backgroundBefore = p -> offset;
    while (count.isEmpty() || strips.size() < count.getAsInt()) {
      int expected = count.orElse(0);
      double share =
          Math.min(1, Math.max(0, (guide.arcAt(normal, on.dot(normal)) - begin) / length));
      double thickness =
          expected > 1
              ? slice.at(strips.size(), expected)
              : slice.first() + share * (slice.last() - slice.first());
      LinearValues field = along(n);
      double low = on.dot(n);
      double limit = rest.greatest(field);
      Guide square = squareTo(n, on, limit);
      double from = square.arcAt(n, low);
      left = square.arcAt(n, limit) - from;
      if (rest.isEmpty() || thickness > left + ALONG_MM) {
        break;
      }
      double high = square.at(from + thickness).dot(n);
      Cut first = teeth.apply(new Cut.Level(field, low));
      Cut last = teeth.apply(new Cut.Level(field, high));
      Cut middle = new Cut.Level(field, square.at(from + thickness / 2).dot(n));
      (strips.isEmpty() ? untouched : backgrounds).add(first.behind(rest));
      Region ahead = first.ahead(rest);
      Region held = last.behind(ahead);
      strips.add(
          new Strip(
              strips.size(),
              held,
              first.lines(rest),
              middle.lines(held),
              last.lines(ahead),
              thickness,
              gap(n, low, high),
              backgroundBefore,
              OptionalDouble.of(rising(n)),
              square.at(from),
              square.at(from + thickness)));
      rest = last.ahead(ahead);
      backgroundBefore = beyond(n, high);
      left -= thickness;
      double width =
          expected > 2
              ? wedge.at(strips.size() - 1, expected - 1)
              : wedge.first() + share * (wedge.last() - wedge.first());
      Optional<Turn> turn = turn(n, high, end, width);
      if (turn.isEmpty() || turn.get().normal().dot(n) < LEAST_COSINE) {
        break;
      }
      n = turn.get().normal();
      on = turn.get().point();
      if (points == Background.Points.ALTERNATE_ENDS) {
        end = end.negated();
      }
    }
    untouched.add(rest);
    int most = strips.size();
    double over = count.isPresent() && most < count.getAsInt() ? -Math.max(ALONG_MM, left) : left;
    return new Strip.Arm(strips, backgrounds, Region.join(region.mesh(), untouched), over, most);
  }

  /**
   * The line, square to a parting, along which its slice is measured: through the parting's middle
   * in the region.
   */
  private Guide squareTo(Vector3 n, Vector3 on, double limit) {
    Vector3 through =
        Isolines.of(region, along(n), on.dot(n)).stream()
            .max((a, b) -> Double.compare(a.length(), b.length()))
            .map(line -> line.at(line.length() / 2))
            .orElse(on);
    return Guide.trace(head, through, frame.view().cross(n).unit(), n, on.dot(n), limit);
  }

  private ToDoubleFunction<Vector3> gap(Vector3 n, double from, double to) {
    return p -> Family.onSlope(head, p, n, to - from);
  }

  /** Surface distance of a point beyond a parting, mm. */
  private ToDoubleFunction<Vector3> beyond(Vector3 n, double level) {
    return p -> Family.onSlope(head, p, n, p.dot(n) - level);
  }

  /** The first arc, in steps of a millimetre, at which the middle of a slice is long enough. */
  private double pastTheCorner(double arc, double halfSlice, Vector3 n, double enough) {
    LinearValues field = along(n);
    double at = arc;
    while (at + halfSlice < guide.length()) {
      double length =
          lengths.computeIfAbsent(
              at + halfSlice,
              middle ->
                  Isolines.of(region, field, guide.at(middle).dot(n)).stream()
                      .mapToDouble(Polyline::length)
                      .max()
                      .orElse(0));
      if (length >= enough) {
        return at;
      }
      at++;
    }
    return arc;
  }

  private LinearValues along(Vector3 n) {
    return ScalarField.compute(region.mesh(), p -> p.dot(n));
  }

  /**
   * How partings with this normal rise to the viewer's right, radians, between -90 and 90 degrees.
   */
  private double rising(Vector3 n) {
    double rise = -n.dot(frame.across());
    double across = n.dot(frame.rise());
    double angle = Math.atan2(rise, across);
    if (angle > Math.PI / 2) {
      return angle - Math.PI;
    }
    return angle <= -Math.PI / 2 ? angle + Math.PI : angle;
  }

  /** A point of the next parting and its plane's normal. */
  private record Turn(Vector3 point, Vector3 normal) {}

  private Optional<Turn> turn(Vector3 n, double level, Vector3 wide, double width) {
    Vector3 direction = frame.view().cross(n);
    if (direction.dot(wide) < 0) {
      direction = direction.negated();
    }
    Vector3 pointed = null;
    Vector3 open = null;
    for (Polyline line : Isolines.of(region, along(n), level)) {
      for (Vector3 p : List.of(line.first(), line.last())) {
        if (pointed == null || p.dot(direction) < pointed.dot(direction)) {
          pointed = p;
        }
        if (open == null || p.dot(direction) > open.dot(direction)) {
          open = p;
        }
      }
    }
    if (pointed == null || open == null) {
      return Optional.empty();
    }
    Guide walk =
        Guide.trace(
            head, open, frame.view().cross(n).unit(), n, open.dot(n), open.dot(n) + 3 * width);
    Vector3 reached = walk.at(walk.arcAt(open.dot(n)) + width);
    Vector3 chord = reached.minus(pointed);
    Vector3 seen = chord.minus(frame.view().times(chord.dot(frame.view())));
    Vector3 turned = frame.view().cross(seen).unit();
    return Optional.of(new Turn(pointed, turned.dot(n) < 0 ? turned.negated() : turned));
  }
}
