package foilwright.sheet;

import foilwright.drawing.Box;
import foilwright.drawing.Ink;
import foilwright.drawing.Layer;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Point;
import foilwright.drawing.Raster;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import foilwright.look.LookPicture;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * How the hair will look: rows of pictures with captions, and a column of figures and advice. Paper
 * across. All pictures of a row have one scale.
 */
public final class LookSheet {
  private static final double CAPTION_MM = 5;
  private static final double HEADING_MM = 6;
  private static final double GAP_MM = 2;
  private static final String NOTE =
      "Computed from the cut, the part and the foils as planned; colours are on this screen or"
          + " paper only. No promise about a result.";

  /** One picture and what stands under it. */
  public record Shown(LookPicture picture, String caption) {}

  /**
   * Pictures side by side.
   *
   * @param id short and unlike the others', lower case letters, figures and hyphens
   * @param heading what they have in common
   */
  public record Row(String id, String heading, List<Shown> pictures) {
    public Row {
      pictures = List.copyOf(pictures);
      if (pictures.isEmpty()) {
        throw new IllegalArgumentException("a row needs a picture");
      }
    }
  }

  /**
   * Words in the column: figures first, each a label with its value, then sentences.
   *
   * @param figures label and value
   */
  public record Words(String heading, List<MapNotes.Total> figures, List<String> sentences) {
    public Words {
      figures = List.copyOf(figures);
      sentences = List.copyOf(sentences);
    }
  }

  private LookSheet() {}

  /** The pages of the sheet; the second and further ones hold words only. */
  public static List<Scene> pages(
      String title, String subtitle, List<Row> rows, List<Words> words, Paper paper) {
    SheetLayout layout = new SheetLayout(paper);
    TextFlow flow = layout.words();
    for (Words part : words) {
      flow.heading(part.heading());
      part.figures().forEach(f -> flow.figure(f.label(), f.value()));
      part.sentences().forEach(flow::paragraph);
    }
    List<Scene> pages = new ArrayList<>();
    for (int page = 0; page < flow.pages(); page++) {
      List<Mark> marks = new ArrayList<>(layout.titles(title, subtitle));
      if (page == 0) {
        addRows(layout.pictures(), rows, marks);
      }
      marks.add(note(layout));
      marks.add(layout.scaleBox());
      for (TextFlow.Placed placed : flow.placed()) {
        if (placed.page() == page) {
          marks.add(placed.mark());
        }
      }
      pages.add(
          layout.scene(
              page == 0 ? "look" : "look-" + (page + 1),
              "Look: " + title,
              "Pictures of the falling hair in "
                  + rows.size()
                  + " rows, and figures of what is seen of the lightened hair.",
              marks));
    }
    return pages;
  }

  private static Mark note(SheetLayout layout) {
    return Mark.plain(
        "look-note",
        Role.NOTE,
        Layer.NOTES,
        new Part.Lettering(
            NOTE,
            new Point(SheetLayout.MARGIN_MM, layout.paper().heightMm() - SheetLayout.MARGIN_MM),
            TextSize.SMALL,
            SheetInk.QUIET));
  }

  /** Pictures of a row that stand on one line. */
  private record Line(Row row, int from, int to) {
    List<Shown> pictures() {
      return row.pictures().subList(from, to);
    }

    double widthPx() {
      return pictures().stream().mapToInt(s -> s.picture().width()).sum();
    }

    double heightPx() {
      return pictures().stream().mapToInt(s -> s.picture().height()).max().orElseThrow();
    }

    boolean begins() {
      return from == 0;
    }
  }

  /** How large each row is drawn (millimetres for a pixel) and where its lines break. */
  private record Plan(List<Double> scales, List<Line> lines, double heightMm) {}

  /**
   * The first row as large as the place lets it be, the others at a share of its scale, whichever
   * shares and breaks make most of the page.
   */
  private static void addRows(Box area, List<Row> rows, List<Mark> marks) {
    Plan best = null;
    double most = 0;
    for (double share = 1; share > 0.34; share -= 0.05) {
      Plan plan = largest(area, rows, rows.size() > 1 && isOneKind(rows) ? 1 : share);
      double drawn = 0;
      for (Line line : plan.lines()) {
        double scale = plan.scales().get(rows.indexOf(line.row()));
        double weight = rows.indexOf(line.row()) == 0 ? 2 : 1;
        drawn += weight * scale * scale * line.widthPx() * line.heightPx();
      }
      if (drawn > most) {
        most = drawn;
        best = plan;
      }
    }
    double spare = (area.height() - best.heightMm()) / best.lines().size();
    double y = area.y();
    for (Line line : best.lines()) {
      double scale = best.scales().get(rows.indexOf(line.row()));
      double height = scale * line.heightPx();
      if (line.begins()) {
        marks.add(heading(line.row(), area.x(), y));
        y += HEADING_MM;
      }
      addLine(line, new Box(area.x(), y, area.width(), height), scale, marks);
      y += height + CAPTION_MM + spare;
    }
  }

  /** Whether the rows show the same sides, to be held against each other. */
  private static boolean isOneKind(List<Row> rows) {
    return rows.stream().mapToInt(r -> r.pictures().size()).distinct().count() == 1;
  }

  private static Plan largest(Box area, List<Row> rows, double share) {
    double scale = 1;
    while (true) {
      List<Double> scales = new ArrayList<>();
      List<Line> lines = new ArrayList<>();
      double height = 0;
      boolean fits = true;
      for (int r = 0; r < rows.size(); r++) {
        double own = r == 0 ? scale : scale * share;
        scales.add(own);
        height += HEADING_MM;
        int from = 0;
        while (from < rows.get(r).pictures().size()) {
          Line line = line(rows.get(r), from, area.width(), own);
          fits &= line.to() > from;
          if (!fits) {
            break;
          }
          lines.add(line);
          height += own * line.heightPx() + CAPTION_MM;
          from = line.to();
        }
      }
      if (fits && height <= area.height()) {
        return new Plan(scales, lines, height);
      }
      scale *= 0.985;
    }
  }

  private static Line line(Row row, int from, double width, double scale) {
    double used = -GAP_MM;
    int to = from;
    while (to < row.pictures().size()) {
      used += GAP_MM + scale * row.pictures().get(to).picture().width();
      if (used > width) {
        break;
      }
      to++;
    }
    return new Line(row, from, to);
  }

  private static Mark heading(Row row, double x, double y) {
    return Mark.plain(
        row.id() + "-heading",
        Role.HEADING,
        Layer.NOTES,
        new Part.Lettering(
            row.heading(), new Point(x, y + HEADING_MM - 2), TextSize.HEADING, Ink.BLACK));
  }

  private static void addLine(Line line, Box place, double scale, List<Mark> marks) {
    Row row = line.row();
    double used = scale * line.widthPx() + (line.pictures().size() - 1) * GAP_MM;
    double spare = (place.width() - used) / line.pictures().size();
    double x = place.x();
    int count = line.from();
    for (Shown shown : line.pictures()) {
      count++;
      LookPicture picture = shown.picture();
      double width = scale * picture.width();
      double height = scale * picture.height();
      Box box = new Box(x + spare / 2, place.bottom() - height, width, height);
      Raster raster = Raster.of(picture.width(), picture.height(), picture.toArray());
      String caption = TextFlow.fitted(shown.caption(), TextSize.SMALL, width + spare);
      double middle = box.centre().x() - Typeface.shipped().width(caption, TextSize.SMALL) / 2;
      marks.add(
          new Mark(
              row.id() + "-" + count,
              Role.PICTURE,
              Layer.FIGURE,
              row.heading() + ", " + shown.caption(),
              Map.of("side", picture.side().words()),
              List.of(
                  new Part.Photo(box, raster),
                  new Part.Lettering(
                      caption,
                      new Point(middle, box.bottom() + 3.6),
                      TextSize.SMALL,
                      SheetInk.QUIET))));
      x += width + spare + GAP_MM;
    }
  }
}
