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

  private static void addRows(Box area, List<Row> rows, List<Mark> marks) {
    double[] heights = new double[rows.size()];
    double sum = 0;
    for (int r = 0; r < heights.length; r++) {
      heights[r] = scaleToWidth(rows.get(r), area) * tallest(rows.get(r));
      sum += heights[r];
    }
    double room = area.height() - rows.size() * (HEADING_MM + CAPTION_MM);
    double shrink = Math.min(1, room / sum);
    double y = area.y();
    for (int r = 0; r < heights.length; r++) {
      Row row = rows.get(r);
      double scale = scaleToWidth(row, area) * shrink;
      addRow(row, new Box(area.x(), y, area.width(), heights[r] * shrink), scale, marks);
      y += heights[r] * shrink + HEADING_MM + CAPTION_MM;
    }
  }

  /** Millimetres of the sheet for a pixel when a row is as wide as its place. */
  private static double scaleToWidth(Row row, Box area) {
    int width = row.pictures().stream().mapToInt(s -> s.picture().width()).sum();
    return (area.width() - (row.pictures().size() - 1) * GAP_MM) / width;
  }

  private static int tallest(Row row) {
    return row.pictures().stream().mapToInt(s -> s.picture().height()).max().orElseThrow();
  }

  private static void addRow(Row row, Box place, double scale, List<Mark> marks) {
    marks.add(
        Mark.plain(
            row.id() + "-heading",
            Role.HEADING,
            Layer.NOTES,
            new Part.Lettering(
                row.heading(),
                new Point(place.x(), place.y() + HEADING_MM - 2),
                TextSize.HEADING,
                Ink.BLACK)));
    double top = place.y() + HEADING_MM;
    double used = (row.pictures().size() - 1) * GAP_MM;
    for (Shown shown : row.pictures()) {
      used += scale * shown.picture().width();
    }
    double spare = (place.width() - used) / row.pictures().size();
    double x = place.x();
    int count = 0;
    for (Shown shown : row.pictures()) {
      count++;
      LookPicture picture = shown.picture();
      double width = scale * picture.width();
      double height = scale * picture.height();
      Box box = new Box(x + spare / 2, top + place.height() - height, width, height);
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
