package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Curve;
import foilwright.drawing.Ink;
import foilwright.drawing.Layer;
import foilwright.drawing.LineWeight;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Pen;
import foilwright.drawing.Point;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** How a plain sheet is divided: a title, a body, and a foot with the scale box. */
final class PageLayout {
  private static final double MARGIN_MM = SheetLayout.MARGIN_MM;
  private static final double TITLE_MM = 10;
  private static final double FOOT_MM = 8;
  private static final double LEAST_SUBTITLE_MM = 20;
  private static final double SIGN_GAP_MM = 4;

  private final Paper paper;

  private PageLayout(Paper paper) {
    this.paper = paper;
  }

  static PageLayout upright(Paper paper) {
    return new PageLayout(paper.upright());
  }

  static PageLayout across(Paper paper) {
    return new PageLayout(paper.across());
  }

  Paper paper() {
    return paper;
  }

  /** Between title and foot. */
  Box body() {
    double top = MARGIN_MM + TITLE_MM;
    return new Box(
        MARGIN_MM,
        top,
        paper.widthMm() - 2 * MARGIN_MM,
        paper.heightMm() - MARGIN_MM - FOOT_MM - top);
  }

  /** The body in rows of equal height, from the top. */
  List<Box> rows(int count) {
    Box body = body();
    double height = body.height() / count;
    List<Box> rows = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      rows.add(new Box(body.x(), body.y() + i * height, body.width(), height));
    }
    return rows;
  }

  Scene scene(String id, String title, String description, List<Mark> marks) {
    return new Scene(id, title, description, paper.widthMm(), paper.heightMm(), marks);
  }

  /** Title, and beside or below it a line for whom. */
  List<Mark> titles(String title, String subtitle) {
    List<Mark> marks = new ArrayList<>();
    Typeface face = Typeface.shipped();
    double base = MARGIN_MM + face.capHeight(TextSize.TITLE);
    double width = paper.widthMm() - 2 * MARGIN_MM;
    String fitted = TextFlow.fitted(title, TextSize.TITLE, width);
    marks.add(
        Mark.plain(
            "title",
            Role.HEADING,
            Layer.NOTES,
            new Part.Lettering(fitted, new Point(MARGIN_MM, base), TextSize.TITLE, Ink.BLACK)));
    double x = MARGIN_MM + face.width(fitted, TextSize.TITLE) + 4;
    double free = paper.widthMm() - MARGIN_MM - x;
    if (!subtitle.isBlank() && free > LEAST_SUBTITLE_MM) {
      marks.add(
          Mark.plain(
              "subtitle",
              Role.NOTE,
              Layer.NOTES,
              new Part.Lettering(
                  TextFlow.fitted(subtitle, TextSize.SMALL, free),
                  new Point(x, base),
                  TextSize.SMALL,
                  SheetInk.QUIET)));
    }
    return marks;
  }

  /** A fine line across the body. */
  Mark rule(String id, double y) {
    return Mark.plain(
        id,
        Role.FRAME,
        Layer.NOTES,
        Part.Shape.drawn(
            Curve.line(new Point(MARGIN_MM, y), new Point(paper.widthMm() - MARGIN_MM, y)),
            Pen.of(SheetInk.QUIET, LineWeight.FINE)));
  }

  /** A box by which the size of a print is checked, at the left of the foot. */
  Mark scaleBox() {
    double bottom = paper.heightMm() - MARGIN_MM;
    Box box = new Box(MARGIN_MM, bottom - 3.4, 50, 3.4);
    return new Mark(
        "scale-box",
        Role.SCALE_BOX,
        Layer.NOTES,
        "A box 50 mm wide, to check the size of the print",
        Map.of("millimetres", "50"),
        List.of(
            Part.Shape.drawn(Curve.rectangle(box), Pen.of(Ink.BLACK, LineWeight.FINE)),
            Part.Lettering.centred(
                "50 mm at full size", box.centre(), TextSize.SMALL, SheetInk.QUIET)));
  }

  /** Signs and what they mean, at the right of the foot. */
  List<Mark> signs(List<SheetLayout.Sign> signs) {
    Typeface face = Typeface.shipped();
    double base = paper.heightMm() - MARGIN_MM - 0.4;
    double height = face.capHeight(TextSize.SMALL);
    double x = paper.widthMm() - MARGIN_MM;
    List<Mark> marks = new ArrayList<>();
    for (int i = signs.size() - 1; i >= 0; i--) {
      SheetLayout.Sign sign = signs.get(i);
      double start = x - face.width(sign.text(), TextSize.SMALL);
      Box box =
          new Box(
              start - 1.6 - TextFlow.SWATCH_MM,
              base - height - 0.2,
              TextFlow.SWATCH_MM,
              height + 0.4);
      List<Part> parts = new ArrayList<>(sign.sample().apply(box));
      parts.add(new Part.Lettering(sign.text(), new Point(start, base), TextSize.SMALL, Ink.BLACK));
      marks.add(
          Mark.plain("sign-" + (i + 1), Role.LEGEND, Layer.NOTES, parts.toArray(Part[]::new)));
      x = box.x() - SIGN_GAP_MM;
    }
    return marks;
  }
}
