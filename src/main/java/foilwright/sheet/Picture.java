package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.SurfaceLoops;
import java.util.List;
import java.util.Optional;

/**
 * One picture of a head: a side from which it is seen, or the unrolled scalp. Millimetres of the
 * head, +x right and +y down, about an origin of the picture's own.
 */
interface Picture {
  /** Name in ids, such as {@code back}. */
  String id();

  /** What stands under the picture. */
  String caption();

  /** Which of the client's sides lies where; empty when one lies behind the other. */
  Optional<Sides> sides();

  /** The client's side that lies at the left and the one at the right of a picture. */
  record Sides(String left, String right) {}

  /** What can be seen of a part of the scalp. */
  Polygon area(SurfaceLoops part);

  /** What can be seen of a line on the scalp. */
  List<List<Point>> chains(List<SurfaceLoops.At> line);

  /** Where a point of the surface lies in the picture, whether it can be seen or not. */
  Point at(SurfaceLoops.At point);

  /** How squarely a point faces the viewer: 1 squarely, 0 at the contour, below it turned away. */
  double facing(SurfaceLoops.At point);

  /** Face, ears, neck and contour. */
  List<HeadFigure.Stroke> strokes();

  /** The least box that holds the whole picture. */
  Box extent();
}
