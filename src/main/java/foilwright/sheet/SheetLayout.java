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
import foilwright.drawing.View;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * How a sheet with a head on it is divided: paper across, a title, the pictures in two rows, and a
 * column of words at the right with the scale box at its foot.
 */
final class SheetLayout {
  static final double MARGIN_MM = 10;
  private static final double COLUMN_MM = 53;
  private static final double GUTTER_MM = 5;
  private static final double TITLE_MM = 10;
  private static final double SCALE_BOX_MM = 50;
  private static final double SCALE_BOX_HEIGHT_MM = 3;
  private static final double SCALE_ROOM_MM = 7.5;
  private static final double LEAST_SUBTITLE_MM = 20;
  private static final double SIGNS_MM = 10;
  private static final double SIGN_GAP_MM = 4;

  /** The unrolled scalp is wide; it is drawn at this share of the scale of the other pictures. */
  private static final double FLAT_SHARE = 0.88;

  private final Paper paper;

  SheetLayout(Paper paper) {
    this.paper = paper.across();
  }

  /** The paper as it lies. */
  Paper paper() {
    return paper;
  }

  /** A scene on this paper. */
  Scene scene(String id, String title, String description, List<Mark> marks) {
    return new Scene(id, title, description, paper.widthMm(), paper.heightMm(), marks);
  }

  /** Where the pictures are. */
  Box pictures() {
    Box whole = whole();
    return new Box(
        whole.x(), whole.y(), whole.width() - COLUMN_MM - GUTTER_MM, whole.height() - SIGNS_MM);
  }

  /** Everything below the title, on a page without a column of words. */
  Box whole() {
    double top = MARGIN_MM + TITLE_MM;
    return new Box(
        MARGIN_MM, top, paper.widthMm() - 2 * MARGIN_MM, paper.heightMm() - MARGIN_MM - top);
  }

  /**
   * A sign and what it means.
   *
   * @param sample makes the sign in a box
   */
  record Sign(Function<Box, List<Part>> sample, String text) {
    static Sign filled(Ink ink, String text) {
      return new Sign(box -> List.of(Part.Shape.filled(Curve.rectangle(box), ink)), text);
    }

    static Sign line(Pen pen, String text) {
      return new Sign(box -> List.of(Part.Shape.drawn(acrossOf(box), pen)), text);
    }

    static Curve acrossOf(Box box) {
      double y = box.centre().y();
      return Curve.line(new Point(box.x(), y), new Point(box.right(), y));
    }
  }

  /**
   * Signs below the pictures, and a note; what the first line cannot hold stands after the note.
   */
  List<Mark> signs(List<Sign> signs, String note) {
    List<Mark> marks = new ArrayList<>();
    Typeface face = Typeface.shipped();
    double x = MARGIN_MM;
    double base = paper.heightMm() - MARGIN_MM - TextFlow.LINE_MM - 0.4;
    double height = face.capHeight(TextSize.SMALL);
    for (int i = 0; i < signs.size(); i++) {
      Sign sign = signs.get(i);
      double end = x + TextFlow.SWATCH_MM + 1.6 + face.width(sign.text(), TextSize.SMALL);
      if (end > pictures().right() && base < paper.heightMm() - MARGIN_MM) {
        base = paper.heightMm() - MARGIN_MM;
        x = MARGIN_MM + face.width(note, TextSize.SMALL) + SIGN_GAP_MM;
      }
      Box box = new Box(x, base - height - 0.2, TextFlow.SWATCH_MM, height + 0.4);
      List<Part> parts = new ArrayList<>(sign.sample().apply(box));
      Point start = new Point(box.right() + 1.6, base);
      parts.add(new Part.Lettering(sign.text(), start, TextSize.SMALL, Ink.BLACK));
      marks.add(
          Mark.plain("sign-" + (i + 1), Role.LEGEND, Layer.NOTES, parts.toArray(Part[]::new)));
      x = start.x() + face.width(sign.text(), TextSize.SMALL) + SIGN_GAP_MM;
    }
    marks.add(
        Mark.plain(
            "unrolled-note",
            Role.NOTE,
            Layer.NOTES,
            new Part.Lettering(
                note,
                new Point(MARGIN_MM, paper.heightMm() - MARGIN_MM),
                TextSize.SMALL,
                SheetInk.QUIET)));
    return marks;
  }

  /** What must be known of the unrolled scalp. */
  static String unrolledNote(DrawnHead head) {
    long percent = Math.round((head.worstStretch() - 1) * 100);
    return "Unrolled scalp: areas are true, lengths are off by up to "
        + percent
        + " %. Measure nothing on it.";
  }

  /** The column of words above the scale box. */
  TextFlow words() {
    return new TextFlow(
        new Box(
            pictures().right() + GUTTER_MM,
            MARGIN_MM,
            COLUMN_MM,
            paper.heightMm() - 2 * MARGIN_MM - SCALE_ROOM_MM));
  }

  /** The six pictures: left side, back, right side; front, top, unrolled scalp. */
  List<Frame> frames(DrawnHead head) {
    List<List<Picture>> rows =
        List.of(
            List.of(head.view(View.LEFT), head.view(View.BACK), head.view(View.RIGHT)),
            List.of(head.view(View.FRONT), head.view(View.TOP), head.flat()));
    Box area = pictures();
    double height = 0;
    double scale = Double.POSITIVE_INFINITY;
    for (List<Picture> row : rows) {
      height += tallest(row);
      scale = Math.min(scale, (area.width() - row.size() * 2 * Frame.STRIP_MM) / width(row));
    }
    scale = Math.min(scale, (area.height() - rows.size() * Frame.CAPTION_MM) / height);
    double spare =
        (area.height() - rows.size() * Frame.CAPTION_MM - scale * height) / (rows.size() - 1);
    List<Frame> frames = new ArrayList<>();
    double y = area.y();
    for (List<Picture> row : rows) {
      double rowHeight = scale * tallest(row) + Frame.CAPTION_MM;
      double free = (area.width() - scale * width(row)) / row.size();
      double x = area.x();
      for (Picture picture : row) {
        double share = share(picture);
        double width = scale * share * picture.extent().width() + free;
        frames.add(Frame.centred(picture, new Box(x, y, width, rowHeight), scale * share));
        x += width;
      }
      y += rowHeight + spare;
    }
    return List.copyOf(frames);
  }

  private static double share(Picture picture) {
    return picture instanceof FlatMap ? FLAT_SHARE : 1;
  }

  private static double width(List<Picture> row) {
    return row.stream().mapToDouble(p -> share(p) * p.extent().width()).sum();
  }

  private static double tallest(List<Picture> row) {
    return row.stream().mapToDouble(p -> share(p) * p.extent().height()).max().orElseThrow();
  }

  /** One picture as large as the place for all of them. */
  Frame large(Picture picture) {
    Box cell = pictures();
    double scale =
        Math.min(
            (cell.width() - 2 * Frame.STRIP_MM) / picture.extent().width(),
            (cell.height() - Frame.CAPTION_MM) / picture.extent().height());
    return Frame.centred(picture, cell, scale);
  }

  /** Title, subtitle and the rule before the column of words. */
  List<Mark> titles(String title, String subtitle) {
    List<Mark> marks = new ArrayList<>(titles(title, subtitle, pictures()));
    double x = pictures().right() + GUTTER_MM / 2;
    marks.add(
        Mark.plain(
            "rule",
            Role.FRAME,
            Layer.NOTES,
            Part.Shape.drawn(
                Curve.line(new Point(x, MARGIN_MM), new Point(x, paper.heightMm() - MARGIN_MM)),
                Pen.of(SheetInk.QUIET, LineWeight.FINE))));
    return marks;
  }

  /** A subtitle with the page it stands on, where there are several. */
  static String subtitle(String words, int page, int of) {
    String pageWords = of > 1 ? "page " + (page + 1) + " of " + of : "";
    return words + (words.isBlank() || pageWords.isEmpty() ? "" : " \u2013 ") + pageWords;
  }

  /** Title and subtitle over an area. */
  List<Mark> titles(String title, String subtitle, Box area) {
    List<Mark> marks = new ArrayList<>();
    double base = MARGIN_MM + Typeface.shipped().capHeight(TextSize.TITLE);
    String fitted = TextFlow.fitted(title, TextSize.TITLE, area.width());
    marks.add(
        Mark.plain(
            "title",
            Role.HEADING,
            Layer.NOTES,
            new Part.Lettering(fitted, new Point(MARGIN_MM, base), TextSize.TITLE, Ink.BLACK)));
    double x = MARGIN_MM + Typeface.shipped().width(fitted, TextSize.TITLE) + 4;
    if (!subtitle.isBlank() && area.right() - x > LEAST_SUBTITLE_MM) {
      marks.add(
          Mark.plain(
              "subtitle",
              Role.NOTE,
              Layer.NOTES,
              new Part.Lettering(
                  TextFlow.fitted(subtitle, TextSize.SMALL, area.right() - x),
                  new Point(x, base),
                  TextSize.SMALL,
                  SheetInk.QUIET)));
    }
    return marks;
  }

  /** A box by which the size of a print is checked. */
  Mark scaleBox() {
    double x = pictures().right() + GUTTER_MM;
    double bottom = paper.heightMm() - MARGIN_MM;
    Box box = new Box(x, bottom - SCALE_BOX_HEIGHT_MM, SCALE_BOX_MM, SCALE_BOX_HEIGHT_MM);
    return new Mark(
        "scale-box",
        Role.SCALE_BOX,
        Layer.NOTES,
        "A box 50 mm wide, to check the size of the print",
        Map.of("millimetres", "50"),
        List.of(
            Part.Shape.drawn(Curve.rectangle(box), Pen.of(Ink.BLACK, LineWeight.FINE)),
            new Part.Lettering(
                "50 mm when printed full size",
                new Point(x, box.y() - 1.4),
                TextSize.SMALL,
                SheetInk.QUIET)));
  }
}
