package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.Layer;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.SurfaceLoops;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;

/**
 * A picture in its place on a sheet, with room for led labels at both sides and a line of words
 * below. May be shared between threads.
 */
final class Frame {
  /** Width of the strip at each side of the picture in which led labels lie. */
  static final double STRIP_MM = 6;

  /** Height of the line of words below. */
  static final double CAPTION_MM = 5.2;

  /** Begins the id of every mark; unique on its page. */
  private final String name;

  private final Picture picture;
  private final Box cell;
  private final double scale;

  /** Where the picture's origin lies on the sheet, millimetres. */
  private final Point origin;

  /** What is seen of parts of the scalp, each kept as long as the part. */
  private final Map<SurfaceLoops, Polygon> seen = Collections.synchronizedMap(new WeakHashMap<>());

  private Frame(String name, Picture picture, Box cell, double scale, Point origin) {
    this.name = name;
    this.picture = picture;
    this.cell = cell;
    this.scale = scale;
    this.origin = origin;
  }

  /** A picture in the middle of a cell. */
  static Frame centred(Picture picture, Box cell, double scale) {
    Box extent = picture.extent();
    Point centre = extent.centre();
    Point middle = new Point(cell.centre().x(), cell.y() + (cell.height() - CAPTION_MM) / 2);
    return new Frame(
        picture.id(), picture, cell, scale, middle.plus(-scale * centre.x(), -scale * centre.y()));
  }

  /**
   * A picture as large as a cell holds it beside strips for led labels, its words close below it.
   *
   * @param strip width kept free at each side, millimetres
   */
  static Frame fitted(Picture picture, Box cell, double strip) {
    Box extent = picture.extent();
    double across = (cell.width() - 2 * strip) / extent.width();
    double up = (cell.height() - CAPTION_MM) / extent.height();
    double scale = Math.min(across, up);
    double height = scale * extent.height() + CAPTION_MM;
    double y = cell.y() + (cell.height() - height) / 2;
    return centred(picture, new Box(cell.x(), y, cell.width(), height), scale);
  }

  /** The same frame, its marks told apart from those of other frames of the page. */
  Frame named(String prefix) {
    return new Frame(prefix + "-" + picture.id(), picture, cell, scale, origin);
  }

  /** What is drawn. */
  Picture picture() {
    return picture;
  }

  /** The place it has, millimetres of the sheet. */
  Box cell() {
    return cell;
  }

  /** Millimetres of the sheet for a millimetre of the head. */
  double scale() {
    return scale;
  }

  Point at(Point headPoint) {
    return origin.plus(scale * headPoint.x(), scale * headPoint.y());
  }

  Point at(SurfaceLoops.At point) {
    return at(picture.at(point));
  }

  /** What can be seen of a part of the scalp. */
  Polygon area(SurfaceLoops part) {
    Polygon known = seen.get(part);
    if (known == null) {
      known = visible(part);
      seen.put(part, known);
    }
    return known;
  }

  private Polygon visible(SurfaceLoops part) {
    return Polygon.of(
        picture.area(part).rings().stream()
            .map(ring -> ring.stream().map(this::at).toList())
            .toList());
  }

  /** What can be seen of a line, as straight pieces; empty when nothing can. */
  Curve line(List<SurfaceLoops.At> line) {
    Curve.Builder curve = Curve.builder();
    for (List<Point> chain : picture.chains(line)) {
      curve.strand(chain.stream().map(this::at).toList(), false);
    }
    return curve.build();
  }

  /** The box of the picture itself. */
  Box box() {
    Box extent = picture.extent();
    Point corner = at(new Point(extent.x(), extent.y()));
    return new Box(corner.x(), corner.y(), scale * extent.width(), scale * extent.height());
  }

  /** The strips for led labels, at the left and at the right. */
  List<Box> strips() {
    double height = cell.height() - CAPTION_MM;
    Box box = box();
    double left = Math.max(cell.x(), box.x() - STRIP_MM);
    double right = Math.min(cell.right(), box.right() + STRIP_MM);
    return List.of(
        new Box(left, cell.y(), Math.max(0, box.x() - left), height),
        new Box(box.right(), cell.y(), Math.max(0, right - box.right()), height));
  }

  String id(String rest) {
    return name + "-" + rest;
  }

  /** Face, ears, neck, scalp, hairline, zone borders and part line, and the words below. */
  List<Mark> ground(DrawnHead head) {
    List<Mark> marks = new ArrayList<>();
    figure(marks);
    Polygon scalp = area(head.scalp());
    if (!scalp.isEmpty()) {
      marks.add(
          Mark.plain(
              id("scalp"),
              Role.SCALP,
              Layer.SCALP,
              Part.Shape.filled(scalp.curve(), SheetInk.SCALP)));
    }
    addLines(marks, "zone-borders", Role.ZONE_BORDER, head.zoneBorders(), SheetInk.ZONE_BORDER);
    addLines(marks, "hairline", Role.HAIRLINE, List.of(head.hairline()), SheetInk.HAIRLINE);
    head.partLine()
        .ifPresent(
            line ->
                addLines(marks, "part-line", Role.PART_LINE, List.of(line), SheetInk.PART_LINE));
    words(marks);
    return marks;
  }

  private void figure(List<Mark> marks) {
    List<Part> outlines = new ArrayList<>();
    List<Part> features = new ArrayList<>();
    for (HeadFigure.Stroke stroke : picture.strokes()) {
      Curve curve = Curve.smooth(stroke.points().stream().map(this::at).toList(), stroke.closed());
      if (stroke.kind() == HeadFigure.Kind.FEATURE) {
        features.add(Part.Shape.drawn(curve, SheetInk.FEATURE));
      } else if (stroke.covers()) {
        outlines.add(Part.Shape.of(curve, Ink.PAPER, SheetInk.OUTLINE));
      } else {
        outlines.add(Part.Shape.drawn(curve, SheetInk.OUTLINE));
      }
    }
    if (!outlines.isEmpty()) {
      marks.add(
          Mark.plain(id("outline"), Role.OUTLINE, Layer.FIGURE, outlines.toArray(Part[]::new)));
    }
    if (!features.isEmpty()) {
      marks.add(
          Mark.plain(id("features"), Role.FEATURE, Layer.FIGURE, features.toArray(Part[]::new)));
    }
  }

  private void addLines(
      List<Mark> marks, String name, Role role, List<List<SurfaceLoops.At>> lines, Pen pen) {
    Curve.Builder all = Curve.builder();
    lines.forEach(line -> all.every(line(line)));
    Curve curve = all.build();
    if (!curve.isEmpty()) {
      Layer layer = role == Role.ZONE_BORDER ? Layer.BACKGROUND : Layer.LINES;
      marks.add(Mark.plain(id(name), role, layer, Part.Shape.drawn(curve, pen)));
    }
  }

  private void words(List<Mark> marks) {
    double base = cell.bottom() - 0.6;
    Box box = box();
    double centre = box.centre().x();
    Typeface face = Typeface.shipped();
    double width = face.width(picture.caption(), TextSize.SMALL);
    double half = Math.max(box.width() / 2, width / 2 + 10);
    List<Part> parts = new ArrayList<>();
    parts.add(
        new Part.Lettering(
            picture.caption(), new Point(centre - width / 2, base), TextSize.SMALL, Ink.BLACK));
    picture
        .sides()
        .ifPresent(
            sides -> {
              parts.add(
                  new Part.Lettering(
                      sides.left(),
                      new Point(centre - half, base),
                      TextSize.SMALL,
                      SheetInk.QUIET));
              parts.add(
                  Part.Lettering.endingAt(
                      sides.right(),
                      new Point(centre + half, base),
                      TextSize.SMALL,
                      SheetInk.QUIET));
            });
    marks.add(Mark.plain(id("caption"), Role.HEADING, Layer.NOTES, parts.toArray(Part[]::new)));
  }
}
