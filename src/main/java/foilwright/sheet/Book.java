package foilwright.sheet;

import foilwright.drawing.Layer;
import foilwright.drawing.Mark;
import foilwright.drawing.Part;
import foilwright.drawing.Point;
import foilwright.drawing.Role;
import foilwright.drawing.Scene;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.List;

/** Sheets bound together: each page says which of how many it is. */
public final class Book {
  private static final double FOOT_MM = 5.2;

  private Book() {}

  /** The same pages with their numbers in the bottom margin. */
  public static List<Scene> numbered(List<Scene> pages) {
    List<Scene> numbered = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      Scene page = pages.get(i);
      String text = "Page " + (i + 1) + " of " + pages.size();
      double x = (page.widthMm() - Typeface.shipped().width(text, TextSize.SMALL)) / 2;
      Point start = new Point(x, page.heightMm() - FOOT_MM);
      List<Mark> marks = new ArrayList<>(page.marks());
      marks.add(
          Mark.plain(
              "page-number",
              Role.NOTE,
              Layer.NOTES,
              new Part.Lettering(text, start, TextSize.SMALL, SheetInk.QUIET)));
      numbered.add(page.withMarks(marks));
    }
    return List.copyOf(numbered);
  }
}
