package foilwright.app;

import foilwright.anatomy.PartSide;
import foilwright.drawing.Point;
import foilwright.drawing.View;
import foilwright.geometry.Polyline;
import foilwright.geometry.Vector3;
import foilwright.geometry.surface.DirectionField;
import foilwright.geometry.surface.Isolines;
import foilwright.geometry.surface.LinearValues;
import foilwright.hair.HairOnHead;
import foilwright.head.Head;
import foilwright.head.PartSetting;
import foilwright.pattern.Background;
import foilwright.pattern.Extent;
import foilwright.pattern.Fill;
import foilwright.pattern.HeadDimensions;
import foilwright.pattern.KeptCover;
import foilwright.pattern.Pattern;
import foilwright.pattern.Remainder;
import foilwright.pattern.Run;
import foilwright.pattern.Section;
import foilwright.pattern.SectionShape;
import foilwright.placement.SectionTrial;
import foilwright.sheet.MapSheet;
import foilwright.units.Angle;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * The handles of a section and of the part line: where they lie on the drawings and how they move.
 *
 * <p>Nothing is guessed from slopes: for every few millimetres or degrees of a value the section is
 * laid on the head as it would be, and the handle goes where the parting goes. A way ends where the
 * value can no longer stand, where the parting jumps, or where the surface turns away from the
 * viewer. Between two stops of a way the parting itself lies within a millimetre of the straight
 * line. Where what is left over is shared between both ends a way ends where another number of
 * slices would fit, and a background has no handle, since its edge hardly follows the hand.
 */
public final class Handles {
  /** A value is tried this far on, mm; where that fails, in halves down to one. */
  private static final double STEP_MM = 6;

  /** The same for backgrounds that close, which take longer to draw. */
  private static final double WEDGE_STEP_MM = 12;

  private static final double STEP_DEG = 15;
  private static final double FARTHEST_MM = 300;
  private static final double LEAST_WIDTH_MM = 1;
  private static final double STEEPEST_DEG = 90;
  private static final double STEEPEST_V_DEG = 85;

  /** A parting that moves farther than this for a step has jumped. */
  private static final double MOST_PER_STEP = 2.5;

  /** Between two stops of a way the parting lies this close to the straight line, mm. */
  private static final double STRAIGHT_MM = 0.4;

  private static final double JUMP_MM = 4;
  private static final double TURNING_JUMP_MM = 40;

  /** The surface must face the viewer at least so much for a handle to be offered, and to go on. */
  private static final double LEAST_FACING = 0.35;

  private static final double LEAST_FACING_ON_THE_WAY = 0.15;

  /** A turning handle stands off the end of its parting, mm of the drawing. */
  private static final double BEYOND_END_MM = 5;

  /** How far behind the front hairline the part line is taken hold of, mm along the centre line. */
  private static final double BEHIND_HAIRLINE_MM = 15;

  private static final double PART_STEP_MM = 5;

  private static final double MIDDLE = 0.5;
  private static final double NEAR_ONE_END = 0.22;
  private static final double NEAR_OTHER_END = 0.78;

  private final PageDrawings drawings;
  private final Head head;
  private final Section section;
  private final HeadDimensions dimensions;
  private final SectionTrial trial;
  private final List<SectionTrial.Drawn> drawn;

  private Handles(FittedHeads heads, Plan plan, int index, PageDrawings drawings) {
    this.drawings = drawings;
    head = plan.head();
    section = plan.pattern().sections().get(index);
    dimensions = new HeadDimensions(head.frontToBack(), head.earToEar(), head.around());
    HairOnHead hair = heads.hair(head, plan.guest().hair());
    DirectionField fall = heads.fall(spokenOf(plan.pattern()), hair);
    trial = SectionTrial.of(plan.pattern(), hair, plan.house().placing(), fall, index);
    drawn = trial.draw(section);
  }

  private Pattern spokenOf(Pattern pattern) {
    return section.region().references().isEmpty()
        ? pattern.withSections(List.of(section))
        : pattern;
  }

  /**
   * The handles of a section that can be seen on some drawing.
   *
   * @param workspace in which the plan was made
   * @param index of the section in the pattern, from 0
   * @param drawings of the plan's head
   */
  public static List<Handle> of(Workspace workspace, Plan plan, int index, PageDrawings drawings) {
    return new Handles(workspace.heads(), plan, index, drawings).all();
  }

  /** The handle of the part line; empty when no part is worn. */
  public static Optional<Handle> ofPartLine(Head head, PageDrawings drawings) {
    PartSetting part = head.part();
    if (part.side() == PartSide.NONE) {
      return Optional.empty();
    }
    double aside =
        switch (part.side()) {
          case LEFT -> -part.fromCentre().toMillimetres();
          case RIGHT -> part.fromCentre().toMillimetres();
          default -> 0;
        };
    Vector3 foot = head.centreLine().at(BEHIND_HAIRLINE_MM);
    double most = PartSetting.MOST_FROM_CENTRE.toMillimetres();
    List<Place> places = new ArrayList<>();
    for (double mm = -most; mm <= most + 1e-9; mm += PART_STEP_MM) {
      Vector3 toward = mm < 0 ? Vector3.RIGHT.negated() : Vector3.RIGHT;
      places.add(new Place(mm, head.form().straightOn(foot, toward, Math.abs(mm))));
    }
    List<Handle.Track> tracks = new ArrayList<>();
    for (View view : View.values()) {
      track(drawings, view, places, aside).ifPresent(tracks::add);
    }
    return handle(HandleKind.PART_LINE, aside, tracks);
  }

  /** Where a handle is on the head at a value. */
  private record Place(double value, Vector3 at) {}

  private List<Handle> all() {
    List<Handle> handles = new ArrayList<>();
    Fill fill = section.fill();
    double offset = mm(fill.offset());
    double slice = mm(fill.slice().first());
    Remainder remainder = fill.remainder();
    boolean balanced = remainder == Remainder.BALANCE;
    parting(
            HandleKind.START,
            offset,
            0,
            v -> enough(1).withOffset(Extent.ofMillimetres(v)),
            0,
            true,
            MIDDLE)
        .ifPresent(handles::add);
    DoubleFunction<Fill> thicker = v -> enough(1).withSlice(first(fill.slice(), v));
    parting(
            HandleKind.SLICE,
            slice,
            LEAST_WIDTH_MM,
            thicker,
            0,
            balanced,
            widerEnd(slice, thicker, 0, balanced, NEAR_ONE_END))
        .ifPresent(handles::add);
    if (remainder == Remainder.LEAVE) {
      background().ifPresent(handles::add);
    }
    angle().ifPresent(handles::add);
    section
        .region()
        .insetFromHairline()
        .ifPresent(
            inset ->
                border(
                        HandleKind.INSET,
                        inset,
                        section.withRegion(section.region().withInsetFromHairline(Extent.zero())),
                        head.distanceFromHairline())
                    .ifPresent(handles::add));
    section
        .keptCover()
        .atHairline()
        .ifPresent(
            cover ->
                border(
                        HandleKind.COVER_AT_HAIRLINE,
                        cover,
                        section.withKeptCover(KeptCover.NONE),
                        head.distanceFromHairline())
                    .ifPresent(handles::add));
    LinearValues fromPart = head.distanceFromPart().orElse(head.distanceFromCentreLine());
    section
        .keptCover()
        .atPart()
        .ifPresent(
            cover ->
                border(
                        HandleKind.COVER_AT_PART,
                        cover,
                        section.withKeptCover(KeptCover.NONE),
                        (t, k) -> Math.abs(fromPart.at(t, k)))
                    .ifPresent(handles::add));
    return handles;
  }

  private double mm(Extent extent) {
    return extent.resolve(dimensions).toMillimetres();
  }

  private static Run first(Run run, double mm) {
    return run.isEven() ? Run.ofMillimetres(mm) : new Run(Extent.ofMillimetres(mm), run.last());
  }

  /** The fill as it moves what is taken hold of: whole where what is left over is shared. */
  private Fill enough(int slices) {
    return section.fill().remainder() == Remainder.BALANCE ? section.fill() : fewer(slices);
  }

  /**
   * As many slices as matter where the others follow from them and change nothing about them. How
   * what is left over is dealt with is left out: what it would move is no handle.
   */
  private Fill fewer(int enough) {
    Fill fill = section.fill().withRemainder(Remainder.LEAVE);
    int asked = fill.slices().orElse(Integer.MAX_VALUE);
    boolean follow = fill.slices().isEmpty() || fill.background() instanceof Background.Wedge;
    return follow && asked > enough ? fill.withSlices(enough) : fill;
  }

  private Optional<Handle> background() {
    Optional<Run> width = section.fill().background().findWidth();
    if (width.isEmpty() || section.fill().slices().orElse(2) < 2) {
      return Optional.empty();
    }
    DoubleFunction<Fill> set =
        v -> fewer(2).withBackground(section.fill().background().withWidth(first(width.get(), v)));
    double value = mm(width.get().first());
    return parting(
        HandleKind.BACKGROUND,
        value,
        LEAST_WIDTH_MM,
        set,
        1,
        true,
        widerEnd(value, set, 1, true, NEAR_OTHER_END));
  }

  /** Near that end of an edge at which it moves more as the value rises; one of them if alike. */
  private double widerEnd(
      double value, DoubleFunction<Fill> set, int slice, boolean first, double ifAlike) {
    Optional<Polyline> now = longest(drawn.get(0).edge(set.apply(value), slice, first));
    Optional<Polyline> then = longest(drawn.get(0).edge(set.apply(value + 3), slice, first));
    if (now.isEmpty() || then.isEmpty()) {
      return ifAlike;
    }
    double more =
        moved(now.get(), then.get(), NEAR_ONE_END) - moved(now.get(), then.get(), NEAR_OTHER_END);
    if (Math.abs(more) < 0.5) {
      return ifAlike;
    }
    return more > 0 ? NEAR_ONE_END : NEAR_OTHER_END;
  }

  private static double moved(Polyline now, Polyline then, double share) {
    Vector3 p = now.at(share * now.length());
    return then.at(then.nearestArc(p)).distance(p);
  }

  private static Optional<Polyline> longest(List<Polyline> lines) {
    return lines.stream().max(Comparator.comparingDouble(Polyline::length));
  }

  // ---- lines that move

  /**
   * A handle on an edge of a slice, at a share of the edge's length. It goes square to the edge.
   *
   * @param set the fill with a value
   * @param slice whose edge it is on
   * @param first whether it is on the edge where travel begins
   */
  private Optional<Handle> parting(
      HandleKind kind,
      double value,
      double least,
      DoubleFunction<Fill> set,
      int slice,
      boolean first,
      double share) {
    List<List<Place>> ways = new ArrayList<>();
    for (int half = 0; half < drawn.size(); half++) {
      SectionTrial.Drawn its = drawn.get(half);
      int count = slices(its, set.apply(value));
      DoubleFunction<List<Polyline>> lines =
          known(
              v -> {
                Fill fill = set.apply(v);
                return has(its, fill, count) ? its.edge(fill, slice, first) : List.of();
              });
      // The pair's lines run the other way round, so that its handle lies as in a mirror.
      double along = half == 0 ? share : 1 - share;
      longest(lines.apply(value))
          .map(line -> way(lines, line.at(along * line.length()), value, least))
          .ifPresent(ways::add);
    }
    List<Handle.Track> tracks = new ArrayList<>();
    for (View view : View.values()) {
      ways.stream()
          .flatMap(way -> track(drawings, view, way, value).stream())
          .findFirst()
          .ifPresent(tracks::add);
    }
    return handle(kind, value, tracks);
  }

  /** How many slices a fill makes where their number moves them; 0 where it does not. */
  private static int slices(SectionTrial.Drawn drawn, Fill fill) {
    int count = 0;
    if (fill.remainder() == Remainder.BALANCE && fill.slices().isEmpty()) {
      while (!drawn.edge(fill, count, true).isEmpty()) {
        count++;
      }
    }
    return count;
  }

  /** Whether a fill makes so many slices; with 0 any number will do. */
  private static boolean has(SectionTrial.Drawn drawn, Fill fill, int count) {
    return count == 0
        || (!drawn.edge(fill, count - 1, true).isEmpty()
            && drawn.edge(fill, count, true).isEmpty());
  }

  /** The same function, worked out once for each value. */
  private static DoubleFunction<List<Polyline>> known(DoubleFunction<List<Polyline>> lines) {
    Map<Double, List<Polyline>> known = new HashMap<>();
    return v -> known.computeIfAbsent(v, lines::apply);
  }

  /** A handle on the border that a distance from hairline or part draws through a region. */
  private Optional<Handle> border(
      HandleKind kind, Extent extent, Section without, LinearValues distance) {
    double value = mm(extent);
    List<SectionTrial.Drawn> laid = trial.draw(without);
    List<Handle.Track> tracks = new ArrayList<>();
    for (View view : View.values()) {
      laid.stream()
          .flatMap(
              half -> track(view, value, v -> Isolines.of(half.region(), distance, v)).stream())
          .findFirst()
          .ifPresent(tracks::add);
    }
    return handle(kind, value, tracks);
  }

  /** On the line's point that faces the viewer most squarely. */
  private Optional<Handle.Track> track(
      View view, double value, DoubleFunction<List<Polyline>> lines) {
    return lines.apply(value).stream()
        .flatMap(line -> line.points().stream())
        .max(Comparator.comparingDouble(p -> head.form().normal(p).dot(view.toViewer())))
        .flatMap(p -> track(drawings, view, way(lines, p, value, 0), value));
  }

  /**
   * Where a point of a line goes as a value changes: to where the line then crosses the plane that
   * stands square to it at the point.
   */
  private List<Place> way(
      DoubleFunction<List<Polyline>> lines, Vector3 start, double value, double least) {
    Vector3 along =
        lines.apply(value).stream()
            .min(Comparator.comparingDouble(l -> l.at(l.nearestArc(start)).distance(start)))
            .map(l -> l.tangentAt(l.nearestArc(start)))
            .orElseThrow();
    double step = section.fill().background() instanceof Background.Wedge ? WEDGE_STEP_MM : STEP_MM;
    List<Place> back = onward(lines, new Place(value, start), along, -step, least);
    List<Place> ahead = onward(lines, new Place(value, start), along, step, FARTHEST_MM);
    Collections.reverse(back);
    back.addAll(ahead.subList(1, ahead.size()));
    return back;
  }

  private static List<Place> onward(
      DoubleFunction<List<Polyline>> lines,
      Place from,
      Vector3 along,
      double wholeStep,
      double until) {
    List<Place> places = new ArrayList<>(List.of(from));
    double step = wholeStep;
    while (Math.abs(step) >= 1) {
      Place last = places.get(places.size() - 1);
      double value =
          step < 0 ? Math.max(until, last.value() + step) : Math.min(until, last.value() + step);
      if (value == last.value()) {
        break;
      }
      double reach = MOST_PER_STEP * Math.abs(value - last.value()) + JUMP_MM;
      Optional<Vector3> next =
          crossing(lines.apply(value), from.at(), along, last.at())
              .filter(p -> p.distance(last.at()) <= reach)
              .filter(p -> !turnsBack(places, p));
      if (next.isPresent()) {
        refine(lines, from.at(), along, last, new Place(value, next.get()), places);
        places.add(new Place(value, next.get()));
      } else {
        step /= 2;
      }
    }
    return places;
  }

  /** Adds places between two where the way or the pace along it is not straight. */
  private static void refine(
      DoubleFunction<List<Polyline>> lines,
      Vector3 start,
      Vector3 along,
      Place a,
      Place b,
      List<Place> places) {
    if (Math.abs(b.value() - a.value()) < 2) {
      return;
    }
    double value = (a.value() + b.value()) / 2;
    Vector3 straight = a.at().lerp(b.at(), 0.5);
    Optional<Vector3> middle = crossing(lines.apply(value), start, along, straight);
    if (middle.isPresent() && middle.get().distance(straight) > STRAIGHT_MM) {
      Place place = new Place(value, middle.get());
      refine(lines, start, along, a, place, places);
      places.add(place);
      refine(lines, start, along, place, b, places);
    }
  }

  private static boolean turnsBack(List<Place> places, Vector3 next) {
    int n = places.size();
    return n > 1
        && next.minus(places.get(n - 1).at())
                .dot(places.get(n - 1).at().minus(places.get(n - 2).at()))
            < 0;
  }

  private static Optional<Vector3> crossing(
      List<Polyline> lines, Vector3 on, Vector3 normal, Vector3 near) {
    Vector3 best = null;
    for (Polyline line : lines) {
      for (int i = 1; i < line.size(); i++) {
        Vector3 a = line.points().get(i - 1);
        Vector3 b = line.points().get(i);
        double before = a.minus(on).dot(normal);
        double after = b.minus(on).dot(normal);
        if (before <= 0 != after <= 0) {
          Vector3 p = a.lerp(b, before / (before - after));
          if (best == null || p.distance(near) < best.distance(near)) {
            best = p;
          }
        }
      }
    }
    return Optional.ofNullable(best);
  }

  private static Optional<Handle.Track> track(
      PageDrawings drawings, View view, List<Place> way, double value) {
    int now = 0;
    while (way.get(now).value() < value - 1e-9) {
      now++;
    }
    double facing = drawings.spot(view, way.get(now).at()).facing();
    if (facing < LEAST_FACING) {
      return Optional.empty();
    }
    List<Handle.Stop> stops = new ArrayList<>();
    for (int i = 0; i < way.size(); i++) {
      MapSheet.Spot spot = drawings.spot(view, way.get(i).at());
      if (spot.facing() >= LEAST_FACING_ON_THE_WAY) {
        stops.add(new Handle.Stop(way.get(i).value(), spot.at()));
      } else if (i < now) {
        stops.clear();
      } else {
        break;
      }
    }
    return stops.size() < 2 ? Optional.empty() : Optional.of(new Handle.Track(view, facing, stops));
  }

  // ---- partings that turn

  /** A parting at an angle: its middle and its direction. */
  private record Turned(double value, Vector3 middle, Vector3 along) {}

  private Optional<Handle> angle() {
    SectionShape shape = section.shape();
    Optional<Angle> angle = shape.findAngle();
    boolean upright =
        shape instanceof SectionShape.Horizontal || shape instanceof SectionShape.Vertical;
    if (angle.isEmpty() && !upright) {
      return Optional.empty();
    }
    HandleKind kind = upright ? HandleKind.TURNED : HandleKind.ANGLE;
    double least = upright ? -STEEPEST_DEG : 0;
    double most = shape instanceof SectionShape.V ? STEEPEST_V_DEG : STEEPEST_DEG;
    double value = angle.orElse(section.turned()).toDegrees();
    DoubleFunction<Section> set =
        v ->
            upright
                ? section.withTurned(Angle.ofDegrees(v))
                : section.withShape(shape.withAngle(Angle.ofDegrees(v)));
    Fill one = fewer(1);
    Map<Double, List<SectionTrial.Drawn>> forms = new HashMap<>();
    List<DoubleFunction<List<Polyline>>> halves = new ArrayList<>();
    for (int half = 0; half < drawn.size(); half++) {
      int h = half;
      halves.add(
          known(
              v ->
                  forms
                      .computeIfAbsent(v, x -> trial.draw(set.apply(x)))
                      .get(h)
                      .edge(one, 0, true)));
    }
    List<Handle.Track> tracks = new ArrayList<>();
    for (View view : View.values()) {
      halves.stream()
          .flatMap(lines -> turning(view, lines, value, least, most).stream())
          .findFirst()
          .ifPresent(tracks::add);
    }
    return handle(kind, value, tracks);
  }

  /**
   * The way of the end of a parting that is turned about its middle: in the direction that the
   * parting has in the drawing at each angle.
   */
  private Optional<Handle.Track> turning(
      View view, DoubleFunction<List<Polyline>> lines, double value, double least, double most) {
    Optional<Polyline> line = longest(lines.apply(value));
    if (line.isEmpty()) {
      return Optional.empty();
    }
    Vector3 first = line.get().first();
    Vector3 last = line.get().last();
    boolean towardLast =
        drawings.spot(view, last).facing() >= drawings.spot(view, first).facing() - 0.05;
    double half = line.get().length() / 2;
    Vector3 tangent = line.get().tangentAt(half);
    Turned now = new Turned(value, line.get().at(half), towardLast ? tangent : tangent.negated());
    MapSheet.Spot middle = drawings.spot(view, now.middle());
    Point end = drawings.spot(view, towardLast ? last : first).at();
    double radius =
        Math.hypot(end.x() - middle.at().x(), end.y() - middle.at().y()) + BEYOND_END_MM;
    if (middle.facing() < LEAST_FACING) {
      return Optional.empty();
    }
    List<Turned> back = turned(lines, now, -STEP_DEG, least);
    List<Turned> ahead = turned(lines, now, STEP_DEG, most);
    Collections.reverse(back);
    back.addAll(ahead.subList(1, ahead.size()));
    List<Handle.Stop> stops = new ArrayList<>();
    for (Turned turned : back) {
      double right = turned.along().dot(view.rightward());
      double up = turned.along().dot(view.up());
      double size = Math.hypot(right, up);
      if (size >= LEAST_FACING) {
        stops.add(
            new Handle.Stop(
                turned.value(), middle.at().plus(radius * right / size, -radius * up / size)));
      } else if (turned.value() <= value) {
        stops.clear();
      } else {
        break;
      }
    }
    return stops.size() < 2 || stops.get(0).value() > value
        ? Optional.empty()
        : Optional.of(new Handle.Track(view, middle.facing(), stops));
  }

  private static List<Turned> turned(
      DoubleFunction<List<Polyline>> lines, Turned from, double wholeStep, double until) {
    List<Turned> turned = new ArrayList<>(List.of(from));
    double step = wholeStep;
    while (Math.abs(step) >= 1) {
      Turned before = turned.get(turned.size() - 1);
      double value =
          step < 0
              ? Math.max(until, before.value() + step)
              : Math.min(until, before.value() + step);
      if (value == before.value()) {
        break;
      }
      Optional<Polyline> line =
          longest(lines.apply(value))
              .filter(l -> l.at(l.length() / 2).distance(before.middle()) <= TURNING_JUMP_MM);
      if (line.isPresent()) {
        double half = line.get().length() / 2;
        Vector3 along = line.get().tangentAt(half);
        turned.add(
            new Turned(
                value,
                line.get().at(half),
                along.dot(before.along()) < 0 ? along.negated() : along));
      } else {
        step /= 2;
      }
    }
    return turned;
  }

  private static Optional<Handle> handle(HandleKind kind, double value, List<Handle.Track> tracks) {
    if (tracks.isEmpty()) {
      return Optional.empty();
    }
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (Handle.Track track : tracks) {
      least = Math.min(least, track.stops().get(0).value());
      most = Math.max(most, track.stops().get(track.stops().size() - 1).value());
    }
    return Optional.of(new Handle(kind, value, least, most, tracks));
  }
}
