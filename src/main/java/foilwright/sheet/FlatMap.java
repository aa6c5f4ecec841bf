package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.SurfaceLoops;
import foilwright.geometry.Vector3;
import foilwright.head.UnrolledScalp;
import java.util.List;
import java.util.Optional;

/** The unrolled scalp: all of it at once, equal in area, the face up. */
final class FlatMap implements Picture {
  private final UnrolledScalp scalp;
  private final Box extent;

  FlatMap(UnrolledScalp map, SurfaceLoops scalp) {
    this.scalp = map;
    this.extent =
        area(scalp).rings().stream()
            .flatMap(List::stream)
            .map(p -> new Box(p.x(), p.y(), 0, 0))
            .reduce(Box::union)
            .orElseThrow();
  }

  @Override
  public String id() {
    return "unrolled";
  }

  @Override
  public String caption() {
    return "Unrolled scalp, face up";
  }

  @Override
  public Optional<Sides> sides() {
    return Optional.of(new Sides("L", "R"));
  }

  @Override
  public Polygon area(SurfaceLoops part) {
    return Polygon.of(part.loops().stream().map(l -> l.stream().map(this::at).toList()).toList());
  }

  @Override
  public List<List<Point>> chains(List<SurfaceLoops.At> line) {
    return line.size() < 2 ? List.of() : List.of(line.stream().map(this::at).toList());
  }

  @Override
  public Point at(SurfaceLoops.At point) {
    return at(point.point());
  }

  Point at(Vector3 point) {
    UnrolledScalp.Place place = scalp.place(point);
    return new Point(place.xMm(), -place.yMm());
  }

  @Override
  public double facing(SurfaceLoops.At point) {
    return 1;
  }

  @Override
  public List<HeadFigure.Stroke> strokes() {
    return List.of();
  }

  @Override
  public Box extent() {
    return extent;
  }
}
