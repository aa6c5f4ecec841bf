package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Horizon;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.View;
import foilwright.geometry.Vector3;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** The head as seen from one side. */
final class SideView implements Picture {
  private final Horizon horizon;
  private final List<HeadFigure.Stroke> strokes;
  private final Vector3 nearest;
  private final Predicate<SideView.Held> holds;
  private final Box extent;

  /** A part of the scalp and a point of it that may belong to it. */
  record Held(SurfaceLoops part, Vector3 point) {}

  /**
   * @param nearest the surface point that faces the viewer squarely
   * @param holds tells whether a part of the scalp holds a point
   */
  SideView(
      Horizon horizon,
      List<HeadFigure.Stroke> strokes,
      Vector3 nearest,
      Predicate<SideView.Held> holds) {
    this.horizon = horizon;
    this.strokes = List.copyOf(strokes);
    this.nearest = nearest;
    this.holds = holds;
    this.extent =
        strokes.stream()
            .flatMap(s -> s.points().stream())
            .map(p -> new Box(p.x(), p.y(), 0, 0))
            .reduce(Box::union)
            .orElseThrow();
  }

  View view() {
    return horizon.view();
  }

  @Override
  public String id() {
    return view().words();
  }

  @Override
  public String caption() {
    return switch (view()) {
      case FRONT -> "Front";
      case BACK -> "Back";
      case LEFT -> "Left side: L near, R far";
      case RIGHT -> "Right side: R near, L far";
      case TOP -> "Top, face up";
    };
  }

  @Override
  public Optional<Sides> sides() {
    return switch (view()) {
      case FRONT -> Optional.of(new Sides("R", "L"));
      case BACK, TOP -> Optional.of(new Sides("L", "R"));
      case LEFT, RIGHT -> Optional.empty();
    };
  }

  @Override
  public Polygon area(SurfaceLoops part) {
    Polygon seen = horizon.visible(part, false);
    return seen.isEmpty() && holds.test(new Held(part, nearest))
        ? horizon.visible(part, true)
        : seen;
  }

  @Override
  public List<List<Point>> chains(List<SurfaceLoops.At> line) {
    return horizon.visible(line);
  }

  @Override
  public Point at(SurfaceLoops.At point) {
    return view().project(point.point());
  }

  @Override
  public double facing(SurfaceLoops.At point) {
    return horizon.facing(point.normal());
  }

  @Override
  public List<HeadFigure.Stroke> strokes() {
    return strokes;
  }

  @Override
  public Box extent() {
    return extent;
  }
}
