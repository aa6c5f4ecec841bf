package foilwright.placement;

import foilwright.anatomy.Landmark;
import foilwright.anatomy.Side;
import foilwright.anatomy.Zone;
import foilwright.geometry.Plane;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.LinearValues;
import foilwright.geometry.surface.PotentialFit;
import foilwright.geometry.surface.Region;
import foilwright.geometry.surface.ScalarField;
import foilwright.geometry.surface.SurfaceDistance;
import foilwright.head.Head;
import foilwright.pattern.Background;
import foilwright.pattern.CentreStart;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.HaloBoundary;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.LowerEnd;
import foilwright.pattern.PivotPoint;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.pattern.TravelFrom;
import foilwright.pattern.ViewedFrom;
import foilwright.pattern.WideEnd;
import foilwright.pattern.ZigzagParting;
import foilwright.problem.Problem;
import foilwright.units.Length;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * Lays the partings of one section on its region: chooses the viewing frame and the guide line,
 * builds the family of partings of each arm, and spaces slices and backgrounds along the guide.
 */
final class SectionLayout {
  /** Below this share a direction is too nearly square to another to tell its ends apart. */
  private static final double UNCLEAR = 0.1;

  private final Head head;
  private final HeadDimensions dimensions;
  private final DirectionField fall;
  private final Function<String, List<Polyline>> innerEdges;
  private final Section section;
  private final Region region;
  private final String path;
  private final List<Problem> problems = new ArrayList<>();
  private List<Course> forEdges;

  /**
   * Prepares a section.
   *
   * @param innerEdges the last partings of an earlier section, by its name
   * @param region what the section may use, without kept covers; not empty
   * @param path of the section in its pattern
   */
  SectionLayout(
      Head head,
      HeadDimensions dimensions,
      DirectionField fall,
      Function<String, List<Polyline>> innerEdges,
      Section section,
      Region region,
      String path) {
    this.head = head;
    this.dimensions = dimensions;
    this.fall = fall;
    this.innerEdges = innerEdges;
    this.section = section;
    this.region = region;
    this.path = path;
  }

  List<Problem> problems() {
    return problems;
  }

  /** The strips of each arm; none where a problem stands in the way. */
  List<Strip.Arm> lay() {
    List<Strip.Arm> arms = new ArrayList<>();
    for (Course course : courses()) {
      List<Strip.Arm> its = course.lay(section.fill());
      reportFit(its);
      arms.addAll(its);
    }
    return arms;
  }

  /**
   * An edge of a slice of the first arm as another fill would draw it, without teeth; no line when
   * it has no such slice.
   *
   * @param fill with a background of the same kind as the section's
   * @param slice in the direction of travel, from 0
   * @param first whether it is the edge where travel begins
   */
  List<Polyline> edge(Fill fill, int slice, boolean first) {
    if (forEdges == null) {
      forEdges = courses();
    }
    return forEdges.isEmpty() ? List.of() : forEdges.get(0).edge(fill, slice, first);
  }

  /** Partings that are spaced together, before slices are spaced on them. */
  private interface Course {
    List<Strip.Arm> lay(Fill fill);

    List<Polyline> edge(Fill fill, int slice, boolean first);
  }

  private List<Course> courses() {
    Vector3 centroid = region.areaCentroid();
    boolean symmetric = Math.abs(centroid.x()) < 0.5;
    Vector3 centre = symmetric ? onCentreLine(centroid) : region.nearest(centroid);
    ViewFrame frame = frameAt(centre);
    return section
        .shape()
        .match(
            new SectionShape.Cases<>() {
              @Override
              public List<Course> horizontal(SectionShape.Horizontal shape) {
                return straight(frame, centre, 0);
              }

              @Override
              public List<Course> diagonal(SectionShape.Diagonal shape) {
                double angle = shape.angle().toRadians();
                OptionalDouble right = lowerOnTheRight(shape.lowerEnd(), frame, centre);
                if (angle > 1e-9 && right.isEmpty()) {
                  add(
                      "lower-end-unclear",
                      "From where one looks at this section, neither end of its partings lies toward \""
                          + shape.lowerEnd().words()
                          + "\".",
                      "Name the lower end as ear or centre, or client's left or right.",
                      centre);
                  return List.of();
                }
                return straight(frame, centre, right.orElse(1) > 0 ? -angle : angle);
              }

              @Override
              public List<Course> vertical(SectionShape.Vertical shape) {
                return straight(frame, centre, Math.PI / 2);
              }

              @Override
              public List<Course> v(SectionShape.V shape) {
                return vee(shape, centroid, centre);
              }

              @Override
              public List<Course> halo(SectionShape.Halo shape) {
                return halos(shape, centre);
              }

              @Override
              public List<Course> pivot(SectionShape.Pivot shape) {
                return turning(shape);
              }

              @Override
              public List<Course> acrossFall(SectionShape.AcrossFall shape) {
                return byFall(fall, true);
              }

              @Override
              public List<Course> alongFall(SectionShape.AlongFall shape) {
                return byFall(fall.turned(), false);
              }
            });
  }

  private Vector3 onCentreLine(Vector3 near) {
    Polyline line = head.centreLine();
    Vector3 found = line.at(line.nearestArc(near));
    return new Vector3(0, found.y(), found.z());
  }

  private ViewFrame frameAt(Vector3 point) {
    Zone zone = head.zoneAt(point);
    boolean above =
        section.seen() == ViewedFrom.ABOVE
            || (section.seen() == ViewedFrom.AUTO && zone.seenFromAbove());
    return above ? ViewFrame.FROM_ABOVE : ViewFrame.level(head.form().normal(point));
  }

  // ---- straight partings

  private List<Course> straight(ViewFrame frame, Vector3 centre, double rising) {
    double turned = rising + section.turned().toRadians();
    Vector3 square = frame.square(turned);
    OptionalDouble sense = sense(square, centre, frame);
    if (sense.isEmpty()) {
      return List.of();
    }
    Vector3 normal = square.times(sense.getAsDouble());
    ScalarField field = ScalarField.compute(head.mesh(), p -> p.dot(normal));
    Guide guide =
        Guide.trace(
            head,
            centre,
            frame.view().cross(normal).unit(),
            normal,
            region.least(field),
            region.greatest(field));
    LinearValues along =
        ScalarField.compute(head.mesh(), p -> p.minus(centre).dot(frame.parting(turned)));
    return section.fill().background() instanceof Background.Wedge wedge
        ? wedges(wedge, List.of(new Tilt(region, normal)), frame, guide, along)
        : even(
            List.of(new Branch(region, new Family.Straight(region, guide, normal), along, turned)));
  }

  /** One arm's region and the normal of its first parting's plane. */
  private record Tilt(Region region, Vector3 normal) {}

  private List<Course> wedges(
      Background.Wedge wedge, List<Tilt> arms, ViewFrame frame, Guide guide, LinearValues along) {
    List<Closing> closing = new ArrayList<>();
    for (Tilt arm : arms) {
      Vector3 middle = arm.region().areaCentroid();
      Vector3 wide = wideEnd(wedge.wideEnd(), frame, middle);
      Vector3 direction = frame.view().cross(arm.normal()).unit();
      if (Math.abs(direction.dot(wide)) < UNCLEAR) {
        add(
            "wide-end-unclear",
            "From where one looks at this section, neither end of its partings lies toward \""
                + wedge.wideEnd().words()
                + "\", so the wedge has no wide end.",
            "Name the wide end as ear or centre, or left or right.",
            middle);
        return List.of();
      }
      closing.add(
          new Closing(
              new Wedges(
                  head,
                  arm.region(),
                  frame,
                  guide,
                  arm.normal(),
                  c -> toothed(c, along),
                  section.fill().shortEnds().minimum().toMillimetres()),
              wide));
    }
    return List.of(new WedgeCourse(closing));
  }

  /** One arm whose backgrounds close, and the direction of their wide end. */
  private record Closing(Wedges wedges, Vector3 wide) {}

  private final class WedgeCourse implements Course {
    private final List<Closing> arms;

    WedgeCourse(List<Closing> arms) {
      this.arms = arms;
    }

    private Strip.Arm lay(Closing arm, Fill fill) {
      Background.Wedge wedge = (Background.Wedge) fill.background();
      return arm.wedges()
          .lay(
              fill.slices(),
              mm(fill.offset()),
              widths(fill.slice()),
              widths(wedge.width()),
              wedge.points(),
              arm.wide(),
              fill.remainder());
    }

    @Override
    public List<Strip.Arm> lay(Fill fill) {
      return arms.stream().map(arm -> lay(arm, fill)).toList();
    }

    @Override
    public List<Polyline> edge(Fill fill, int slice, boolean first) {
      List<Strip> strips = lay(arms.get(0), fill).strips();
      if (strips.size() <= slice) {
        return List.of();
      }
      return first ? strips.get(slice).first() : strips.get(slice).last();
    }
  }

  private Cut toothed(Cut plain, LinearValues along) {
    if (section.zigzagParting().isEmpty()) {
      return plain;
    }
    ZigzagParting teeth = section.zigzagParting().get();
    return new Cut.Teeth(
        plain, along, teeth.toothDepth().toMillimetres() / 2, teeth.toothWidth().toMillimetres());
  }

  private Vector3 wideEnd(WideEnd end, ViewFrame frame, Vector3 middle) {
    Vector3 outward = new Vector3(middle.x() < 0 ? -1 : 1, 0, 0);
    return switch (end) {
      case FACE -> Vector3.FRONT;
      case BACK -> Vector3.FRONT.negated();
      case UP -> frame.rise();
      case DOWN -> frame.rise().negated();
      case EAR -> outward;
      case CENTRE -> outward.negated();
      case LEFT -> Vector3.RIGHT.negated();
      case RIGHT -> Vector3.RIGHT;
    };
  }

  /**
   * Whether the lower end lies to the viewer's right (1) or left (-1); empty when it is unclear.
   */
  private static OptionalDouble lowerOnTheRight(LowerEnd end, ViewFrame frame, Vector3 centre) {
    Vector3 outward = new Vector3(Math.signum(centre.x()), 0, 0);
    Vector3 toward =
        switch (end) {
          case FACE -> Vector3.FRONT;
          case BACK -> Vector3.FRONT.negated();
          case EAR -> outward;
          case CENTRE -> outward.negated();
          case CLIENTS_LEFT -> Vector3.RIGHT.negated();
          case CLIENTS_RIGHT -> Vector3.RIGHT;
        };
    double right = toward.dot(frame.across());
    return Math.abs(right) < UNCLEAR
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.signum(right));
  }

  /**
   * The sense (1 or -1) in which travel along a direction leads away from where the section starts.
   */
  private OptionalDouble sense(Vector3 direction, Vector3 at, ViewFrame frame) {
    Vector3 from = toward(section.from(), at, frame);
    Vector3 seen = from.minus(frame.view().times(from.dot(frame.view())));
    double size = seen.norm();
    double share = size < 1e-9 ? 0 : seen.dot(direction) / size;
    if (Math.abs(share) < UNCLEAR) {
      add(
          "travel-unclear",
          "The partings of this section do not lead away from \""
              + section.from().words()
              + "\": it lies along them, not on one side of them.",
          "Say another start, such as top or bottom, front or back, ear or centre.",
          at);
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(share > 0 ? -1 : 1);
  }

  private Vector3 toward(TravelFrom from, Vector3 at, ViewFrame frame) {
    Vector3 outward = new Vector3(at.x() < 0 ? -1 : 1, 0, 0);
    return switch (from) {
      case START, BOTTOM -> frame.rise().negated();
      case NAPE -> frame.above() ? Vector3.FRONT.negated() : Vector3.UP.negated();
      case TOP -> frame.above() ? head.landmark(Landmark.APEX).minus(at) : Vector3.UP;
      case HAIRLINE -> nearestOn(head.hairline(), at).minus(at);
      case EAR -> outward;
      case CENTRE -> outward.negated();
      case FRONT -> Vector3.FRONT;
      case BACK -> Vector3.FRONT.negated();
      case LEFT -> Vector3.RIGHT.negated();
      case RIGHT -> Vector3.RIGHT;
      case PART -> nearestOn(head.partLine().orElse(head.centreLine()), at).minus(at);
    };
  }

  private static Vector3 nearestOn(Polyline line, Vector3 p) {
    return line.at(line.nearestArc(p));
  }

  // ---- V

  private List<Course> vee(SectionShape.V shape, Vector3 centroid, Vector3 centre) {
    double angle = shape.angle().toRadians();
    if (Math.cos(angle) < 0.05) {
      add(
          "v-too-steep",
          "The arms of a V at " + shape.angle() + " do not meet on a line.",
          "Use an angle up to 85 deg, or vertical partings.",
          centre);
      return List.of();
    }
    Vector3 meeting;
    Vector3 square;
    switch (shape.meetingLine()) {
      case CENTRE_LINE -> {
        meeting = onCentreLine(centroid);
        square = Vector3.RIGHT;
      }
      case EAR_LINE -> {
        meeting = nearestOn(head.earLine(), centroid);
        Vector3 apex = head.landmark(Landmark.APEX);
        square = apex.minus(meeting).cross(Vector3.RIGHT).unit();
      }
      default -> {
        meeting = centre;
        square = null;
      }
    }
    ViewFrame frame = frameAt(meeting);
    Vector3 plane = square == null ? frame.across() : square;
    OptionalDouble sense = sense(frame.rise(), meeting, frame);
    if (sense.isEmpty()) {
      return List.of();
    }
    double up = sense.getAsDouble();
    ScalarField side = ScalarField.distanceFrom(head.mesh(), Plane.through(meeting, plane));
    boolean rightIsPositive = plane.dot(frame.across()) > 0;
    List<Tilt> arms = new ArrayList<>();
    List<Double> risings = new ArrayList<>();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (boolean positive : new boolean[] {false, true}) {
      Region arm =
          positive
              ? region.clip(side, 0, Double.POSITIVE_INFINITY)
              : region.clip(side, Double.NEGATIVE_INFINITY, 0);
      if (arm.isEmpty()) {
        add(
            "v-one-arm",
            "This V has hair on one side of the " + shape.meetingLine().words() + " only.",
            "Widen the region across the line, or use a diagonal.",
            meeting);
        return List.of();
      }
      double right = positive == rightIsPositive ? 1 : -1;
      double fall = shape.apex() == SectionShape.Apex.UP ? 1 : -1;
      Vector3 normal =
          frame
              .rise()
              .times(Math.cos(angle))
              .plus(frame.across().times(right * fall * Math.sin(angle)))
              .times(up);
      ScalarField field = ScalarField.compute(head.mesh(), p -> p.dot(normal));
      double onLine = normal.dot(meeting) - up * Math.cos(angle) * frame.rise().dot(meeting);
      least = Math.min(least, (arm.least(field) - onLine) / Math.cos(angle));
      most = Math.max(most, (arm.greatest(field) - onLine) / Math.cos(angle));
      arms.add(new Tilt(arm, normal));
      risings.add(-right * fall * angle);
    }
    Vector3 travel = frame.rise().times(up);
    Guide guide = Guide.trace(head, meeting, plane, travel, least, most);
    LinearValues along =
        ScalarField.compute(head.mesh(), p -> Math.abs(p.minus(meeting).dot(frame.across())));
    if (section.fill().background() instanceof Background.Wedge wedge) {
      return wedges(wedge, arms, frame, guide, along);
    }
    List<Branch> branches = new ArrayList<>();
    for (int i = 0; i < arms.size(); i++) {
      Tilt arm = arms.get(i);
      branches.add(
          new Branch(
              arm.region(),
              new Family.Straight(arm.region(), guide, arm.normal()),
              along,
              risings.get(i)));
    }
    return even(branches);
  }

  // ---- halo

  private List<Course> halos(SectionShape.Halo shape, Vector3 centre) {
    ScalarField distance =
        shape
            .measuredFrom()
            .match(
                line ->
                    switch (line.line()) {
                      case HAIRLINE -> head.distanceFromHairline();
                      case PART_LINE ->
                          head.distanceFromPart().orElse(absolute(head.distanceFromCentreLine()));
                      case CENTRE_LINE -> absolute(head.distanceFromCentreLine());
                    },
                inner -> distanceFrom(innerEdges.apply(inner.section())));
    double from = mm(shape.from());
    double to = shape.to().map(this::mm).orElse(Double.POSITIVE_INFINITY);
    boolean inward =
        switch (section.from()) {
          case TOP, CENTRE ->
              shape.measuredFrom() instanceof HaloBoundary.Line line
                  && line.line() == HaloBoundary.HeadLine.HAIRLINE;
          default -> false;
        };
    LinearValues field = inward ? (t, k) -> -distance.at(t, k) : distance;
    Family family =
        inward
            ? new Family.Distance(region, field, -to, -from)
            : new Family.Distance(region, field, from, to);
    if (family.end() <= family.start()) {
      add(
          "section-outside-region",
          "The halo from "
              + Length.ofMillimetres(from)
              + " on lies beyond its region, which ends at "
              + Length.ofMillimetres(region.greatest(distance))
              + ".",
          "Start the halo nearer, or widen the region.",
          centre);
      return List.of();
    }
    if (refusesWedge()) {
      return List.of();
    }
    List<Polyline> first = Isolines.of(region, field, (family.start() + family.end()) / 2);
    LinearValues along =
        first.isEmpty() || section.zigzagParting().isEmpty()
            ? (t, k) -> 0
            : alongLine(first.get(0));
    return even(List.of(new Branch(region, family, along, Double.NaN)));
  }

  private static ScalarField absolute(ScalarField field) {
    double[] values = field.toArray();
    Arrays.setAll(values, v -> Math.abs(values[v]));
    return ScalarField.of(field.mesh(), values);
  }

  private ScalarField distanceFrom(List<Polyline> lines) {
    double[] start = new double[head.mesh().vertexCount()];
    Arrays.fill(start, Double.POSITIVE_INFINITY);
    double reach = 2 * head.mesh().longestEdge();
    for (Polyline line : lines) {
      for (int v = 0; v < start.length; v++) {
        double d = nearestOn(line, head.mesh().vertex(v)).distance(head.mesh().vertex(v));
        if (d <= reach) {
          start[v] = Math.min(start[v], d);
        }
      }
    }
    return SurfaceDistance.march(head.mesh(), start);
  }

  /** Arc length of the nearest point of a line, unwrapped within each triangle. */
  private LinearValues alongLine(Polyline line) {
    double[] arcs = new double[head.mesh().vertexCount()];
    Arrays.setAll(arcs, v -> line.nearestArc(head.mesh().vertex(v)));
    double whole = line.length();
    return (t, k) -> {
      double first = arcs[head.mesh().corner(t, 0)];
      double here = arcs[head.mesh().corner(t, k)];
      return here - first > whole / 2
          ? here - whole
          : first - here > whole / 2 ? here + whole : here;
    };
  }

  // ---- pivot

  private List<Course> turning(SectionShape.Pivot shape) {
    Vector3 point = pivotPoint(shape.point());
    Vector3 axis =
        shape.axis() == SectionShape.Axis.VERTICAL ? Vector3.UP : head.form().normal(point);
    Vector3 front = Vector3.FRONT.minus(axis.times(axis.y()));
    if (front.norm() < 0.2) {
      add(
          "pivot-singular",
          "The pivot's axis points to the face or the back, so that angle 0 has no direction.",
          "Move the pivot nearer the top, or use a vertical axis.",
          point);
      return List.of();
    }
    Vector3 zero = front.unit();
    Vector3 quarter = zero.cross(axis);
    double radius = mm(shape.radius());
    double first = shape.fromAngle().toRadians() + section.turned().toRadians();
    double span = shape.toAngle().minus(shape.fromAngle()).toRadians();
    Family.Turning family = new Family.Turning(region, point, zero, quarter, first, span, radius);
    Region sector = family.sector(region);
    Vector3 unit = axis;
    ScalarField fromAxis =
        ScalarField.compute(
            head.mesh(),
            p -> {
              Vector3 d = p.minus(point);
              return d.minus(unit.times(d.dot(unit))).norm();
            });
    if (sector.isEmpty() || sector.greatest(fromAxis) < radius) {
      add(
          "pivot-singular",
          String.format(
              Locale.ROOT,
              "The region of this pivot reaches %.0f mm from its axis, less than the radius of %.0f mm at "
                  + "which its slices are measured; they would all run into one point.",
              sector.isEmpty() ? 0 : sector.greatest(fromAxis),
              radius),
          "Use a smaller radius, a wider region, or another pivot point.",
          point);
      return List.of();
    }
    if (refusesWedge()) {
      return List.of();
    }
    return even(List.of(new Branch(sector, family, fromAxis, Double.NaN)));
  }

  private Vector3 pivotPoint(PivotPoint point) {
    return point.match(
        landmark -> head.landmark(landmark.landmark()),
        along -> {
          Vector3 on = alongCentreLine(head, mm(along.distance()), along.from());
          double aside = mm(along.aside());
          if (aside == 0) {
            return on;
          }
          Vector3 travel = along.side() == Side.LEFT ? Vector3.RIGHT.negated() : Vector3.RIGHT;
          Vector3 square = Vector3.RIGHT.cross(head.form().normal(on)).unit();
          Guide guide =
              Guide.trace(head, on, square, travel, on.dot(travel), Double.POSITIVE_INFINITY);
          return guide.at(Math.min(aside, guide.length()));
        });
  }

  /** The point of the centre line at a surface distance from one of its named points. */
  static Vector3 alongCentreLine(Head head, double distance, CentreStart from) {
    Polyline line = head.centreLine();
    return switch (from) {
      case FRONT_HAIRLINE -> line.at(distance);
      case NAPE_HAIRLINE -> line.at(line.length() - distance);
      case APEX -> line.at(line.nearestArc(head.landmark(Landmark.APEX)) + distance);
    };
  }

  // ---- the fall

  private List<Course> byFall(DirectionField direction, boolean across) {
    if (refusesWedge()) {
      return List.of();
    }
    List<Region> sheets = new ArrayList<>();
    if (head.partLine().isPresent()) {
      for (boolean right : new boolean[] {false, true}) {
        Region sheet =
            region.clip(
                head.besidePart(),
                right ? 0 : Double.NEGATIVE_INFINITY,
                right ? Double.POSITIVE_INFINITY : 0);
        if (!sheet.isEmpty()) {
          sheets.add(sheet);
        }
      }
    } else {
      sheets.add(region);
    }
    List<Course> courses = new ArrayList<>();
    for (Region sheet : sheets) {
      byFall(sheet, direction, across).ifPresent(courses::add);
    }
    return courses;
  }

  private Optional<Course> byFall(Region sheet, DirectionField direction, boolean across) {
    boolean[] taken = new boolean[head.mesh().triangleCount()];
    for (int f = 0; f < sheet.fragmentCount(); f++) {
      taken[sheet.triangle(f)] = true;
    }
    LinearValues scalar = PotentialFit.fit(direction, t -> taken[t]);
    int middle = fragmentNear(sheet, sheet.areaCentroid());
    Vector3 centre = sheet.fragments(f -> f == middle).areaCentroid();
    ViewFrame frame = frameAt(centre);
    int at = sheet.triangle(middle);
    Vector3 gradient = DirectionField.gradientIn(head.mesh(), scalar, at);
    Vector3 seen = gradient.minus(frame.view().times(gradient.dot(frame.view())));
    if (seen.norm() < 1e-6) {
      add(
          "fall-unclear",
          "In the middle of this section the hair falls no way in particular, so there is nothing to follow.",
          "Keep the section away from the very top, or use straight partings.",
          centre);
      return Optional.empty();
    }
    OptionalDouble sense = across ? withTheFall() : OptionalDouble.empty();
    if (sense.isEmpty()) {
      sense = sense(seen.unit(), centre, frame);
    }
    if (sense.isEmpty()) {
      return Optional.empty();
    }
    double up = sense.getAsDouble();
    LinearValues ascending = (t, k) -> up * scalar.at(t, k);
    Plane plane = Plane.through(centre, frame.view().cross(seen));
    List<Isolines.Valued> cuts =
        Isolines.withValues(sheet, ScalarField.distanceFrom(head.mesh(), plane), 0, ascending);
    Isolines.Valued chain =
        cuts.stream()
            .min(
                (a, b) ->
                    Double.compare(
                        nearestOn(a.line(), centre).distance(centre),
                        nearestOn(b.line(), centre).distance(centre)))
            .orElseThrow(() -> new IllegalStateException("a region's centre lies outside it"));
    return ascendingGuide(chain, centre)
        .map(
            guide -> {
              double[] values = guide.values().stream().mapToDouble(v -> v).toArray();
              Family family = new Family.Scalar(sheet, ascending, guide.line(), values);
              LinearValues along =
                  section.zigzagParting().isEmpty()
                      ? (t, k) -> 0
                      : ScalarField.compute(head.mesh(), p -> p.minus(centre).dot(plane.normal()));
              return new EvenCourse(List.of(new Branch(sheet, family, along, Double.NaN)));
            });
  }

  /**
   * Whether travel goes with the fall (1) or against it (-1), where the start is named by height.
   */
  private OptionalDouble withTheFall() {
    return switch (section.from()) {
      case START, TOP, CENTRE, PART -> OptionalDouble.of(1);
      case BOTTOM, NAPE, HAIRLINE, EAR -> OptionalDouble.of(-1);
      case FRONT, BACK, LEFT, RIGHT -> OptionalDouble.empty();
    };
  }

  /** The stretch of a guide about a point on which its values ascend. */
  private static Optional<Isolines.Valued> ascendingGuide(Isolines.Valued chain, Vector3 about) {
    List<Vector3> points = new ArrayList<>(chain.line().points());
    List<Double> values = new ArrayList<>(chain.values());
    if (values.get(0) > values.get(values.size() - 1)) {
      Collections.reverse(points);
      Collections.reverse(values);
    }
    Polyline line = Polyline.of(points);
    double arc = line.nearestArc(about);
    int at = 0;
    while (at + 2 < points.size() && line.arcAt(at + 1) < arc) {
      at++;
    }
    int low = at;
    while (low > 0 && values.get(low - 1) < values.get(low)) {
      low--;
    }
    int high = at;
    while (high + 1 < points.size() && values.get(high + 1) > values.get(high)) {
      high++;
    }
    return high - low < 1
        ? Optional.empty()
        : Optional.of(
            new Isolines.Valued(
                Polyline.of(points.subList(low, high + 1)),
                List.copyOf(values.subList(low, high + 1))));
  }

  private static int fragmentNear(Region sheet, Vector3 point) {
    int best = 0;
    for (int f = 1; f < sheet.fragmentCount(); f++) {
      if (sheet.vertex(f, 0).distance(point) < sheet.vertex(best, 0).distance(point)) {
        best = f;
      }
    }
    return best;
  }

  private boolean refusesWedge() {
    if (section.fill().background() instanceof Background.Wedge) {
      add(
          "wedge-needs-straight-partings",
          "A background that closes to a point needs straight partings; this section's are curved or turn.",
          "Use an even background here, or a horizontal, diagonal, vertical or V section.",
          region.nearest(region.areaCentroid()));
      return true;
    }
    return false;
  }

  // ---- even backgrounds

  /**
   * One arm to be spaced.
   *
   * @param along millimetres along the partings, for teeth
   * @param rising of straight partings, radians; NaN when they are not straight
   */
  private record Branch(Region region, Family family, LinearValues along, double rising) {}

  private List<Course> even(List<Branch> branches) {
    return List.of(new EvenCourse(branches));
  }

  private final class EvenCourse implements Course {
    private final List<Branch> branches;
    private final double start;
    private final double end;

    EvenCourse(List<Branch> branches) {
      this.branches = branches;
      start = branches.stream().mapToDouble(b -> b.family().start()).min().orElseThrow();
      end = branches.stream().mapToDouble(b -> b.family().end()).max().orElseThrow();
    }

    private Spacing spacing(Fill fill) {
      return Spacing.place(
          end - start,
          fill.slices(),
          mm(fill.offset()),
          widths(fill.slice()),
          fill.background()
              .match(e -> widths(e.width()), w -> widths(w.width()), n -> new Spacing.Widths(0, 0)),
          fill.remainder());
    }

    @Override
    public List<Strip.Arm> lay(Fill fill) {
      Spacing spacing = spacing(fill);
      return branches.stream().map(branch -> arm(branch, start, spacing)).toList();
    }

    @Override
    public List<Polyline> edge(Fill fill, int slice, boolean first) {
      Spacing spacing = spacing(fill);
      if (spacing.left() < 0 || spacing.slices().size() <= slice) {
        return List.of();
      }
      Spacing.Span span = spacing.slices().get(slice);
      Branch branch = branches.get(0);
      return branch
          .family()
          .lines(branch.region(), new double[] {start + (first ? span.from() : span.to())})
          .get(0);
    }
  }

  private Strip.Arm arm(Branch branch, double start, Spacing spacing) {
    Family family =
        section
            .zigzagParting()
            .<Family>map(
                teeth ->
                    new Family.Zigzag(
                        branch.family(),
                        branch.along(),
                        teeth.toothDepth().toMillimetres(),
                        teeth.toothWidth().toMillimetres()))
            .orElse(branch.family());
    List<Spacing.Span> spans = spacing.left() < 0 ? List.of() : spacing.slices();
    double[] edges = new double[2 * spans.size()];
    double[] middles = new double[spans.size()];
    for (int i = 0; i < spans.size(); i++) {
      edges[2 * i] = start + spans.get(i).from();
      edges[2 * i + 1] = start + spans.get(i).to();
      middles[i] = (edges[2 * i] + edges[2 * i + 1]) / 2;
    }
    List<Region> bands = family.bands(branch.region(), edges);
    List<List<Polyline>> lines = family.lines(branch.region(), edges);
    List<List<Polyline>> centres = family.middles(branch.region(), middles);
    List<Strip> strips = new ArrayList<>();
    List<Region> backgrounds = new ArrayList<>();
    OptionalDouble rising =
        Double.isNaN(branch.rising()) ? OptionalDouble.empty() : OptionalDouble.of(branch.rising());
    for (int i = 0; i < spans.size(); i++) {
      strips.add(
          new Strip(
              i,
              bands.get(2 * i + 1),
              lines.get(2 * i),
              centres.get(i),
              lines.get(2 * i + 1),
              edges[2 * i + 1] - edges[2 * i],
              gap(family, edges[2 * i], edges[2 * i + 1]),
              i == 0 ? p -> spans.get(0).from() : gap(family, edges[2 * i - 1], edges[2 * i]),
              rising,
              family.guidePoint(edges[2 * i]),
              family.guidePoint(edges[2 * i + 1])));
      if (i + 1 < spans.size()) {
        backgrounds.add(bands.get(2 * i + 2));
      }
    }
    Region untouched =
        Region.join(
            branch.region().mesh(),
            spans.isEmpty()
                ? List.of(bands.get(0))
                : List.of(bands.get(0), bands.get(bands.size() - 1)));
    return new Strip.Arm(strips, backgrounds, untouched, spacing.left(), spacing.most());
  }

  private ToDoubleFunction<Vector3> gap(Family family, double from, double to) {
    return p -> family.gapAt(head, p, from, to);
  }

  private void reportFit(List<Strip.Arm> arms) {
    int most = arms.stream().mapToInt(Strip.Arm::most).max().orElse(0);
    boolean short0 = arms.stream().allMatch(a -> a.leftMm() < 0);
    Vector3 middle = region.nearest(region.areaCentroid());
    if (most == 0) {
      problems.add(
          Problem.error(
                  "slice-thicker-than-section",
                  path + ".fill.slice",
                  "Not one slice of "
                      + Length.ofMillimetres(mm(section.fill().slice().first()))
                      + " fits into the section \""
                      + section.name()
                      + "\".",
                  "Use a thinner slice, a smaller offset, or a larger region.")
              .at(middle));
    } else if (short0 && section.fill().slices().isPresent()) {
      problems.add(
          Problem.error(
                  "count-does-not-fit",
                  path + ".fill.slices",
                  "The section \""
                      + section.name()
                      + "\" asks for "
                      + section.fill().slices().getAsInt()
                      + " slices; "
                      + most
                      + " fit.",
                  "Ask for "
                      + most
                      + ", or make slices or backgrounds thinner, or leave the number out to fill to the end.")
              .at(middle));
    }
  }

  private double mm(Extent extent) {
    return extent.resolve(dimensions).toMillimetres();
  }

  private Spacing.Widths widths(Run run) {
    return new Spacing.Widths(mm(run.first()), mm(run.last()));
  }

  private void add(String code, String message, String cure, Vector3 place) {
    problems.add(
        Problem.error(code, path, "Section \"" + section.name() + "\": " + message, cure)
            .at(place));
  }
}
