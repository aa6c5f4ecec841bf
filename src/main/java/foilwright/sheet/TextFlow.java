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
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Sets headings, figures, legend lines and paragraphs one below another in a column, and goes on in
 * the column of the next page when one is full.
 */
final class TextFlow {
  static final double LINE_MM = 4.2;
  private static final double HEADING_MM = 5.6;
  private static final double BEFORE_HEADING_MM = 2.3;
  private static final double AFTER_PARAGRAPH_MM = 0.5;
  static final double SWATCH_MM = 8.5;
  private static final double BLANK_MM = 7.5;

  /** Words set on a page. */
  record Placed(int page, Mark mark) {}

  private final String name;
  private final Box column;
  private final List<Placed> placed = new ArrayList<>();
  private int page;
  private double y;
  private int count;

  /**
   * @param column the same on every page
   */
  TextFlow(Box column) {
    this("note", column);
  }

  /**
   * The same with a name of its own, for several columns on one page.
   *
   * @param name begins the id of every mark
   */
  TextFlow(String name, Box column) {
    this.name = name;
    this.column = column;
    this.y = column.y();
  }

  List<Placed> placed() {
    return placed;
  }

  /** Number of pages used so far. */
  int pages() {
    return page + 1;
  }

  /** Goes on in the column of the next page. */
  void nextPage() {
    page++;
    y = column.y();
  }

  private double bottom() {
    return column.bottom();
  }

  private boolean atTop() {
    return y == column.y();
  }

  private void makeRoom(double height) {
    if (y + height > bottom() && !atTop()) {
      nextPage();
    }
  }

  private void add(Role role, String title, List<Part> parts) {
    count++;
    placed.add(
        new Placed(page, new Mark(name + "-" + count, role, Layer.NOTES, title, Map.of(), parts)));
  }

  void heading(String text) {
    makeRoom(BEFORE_HEADING_MM + HEADING_MM + 2 * LINE_MM);
    if (!atTop()) {
      y += BEFORE_HEADING_MM;
    }
    y += HEADING_MM;
    add(
        Role.HEADING,
        "",
        List.of(
            new Part.Lettering(text, new Point(column.x(), y - 1.5), TextSize.HEADING, Ink.BLACK)));
  }

  /** A label at the left and a value at the right, on two lines when they do not fit on one. */
  void figure(String label, String value) {
    Typeface face = Typeface.shipped();
    double free = column.width() - face.width(label, TextSize.SMALL) - 2;
    boolean oneLine = face.width(value, TextSize.SMALL) <= free;
    makeRoom(oneLine ? LINE_MM : 2 * LINE_MM);
    y += LINE_MM;
    List<Part> parts = new ArrayList<>();
    parts.add(new Part.Lettering(label, base(column.x()), TextSize.SMALL, SheetInk.QUIET));
    if (!oneLine) {
      y += LINE_MM;
    }
    parts.add(Part.Lettering.endingAt(value, base(column.right()), TextSize.SMALL, Ink.BLACK));
    add(Role.NOTE, "", parts);
  }

  /** A label at the left and, in the rest of the width, a text of as many lines as it takes. */
  void entry(String label, String text, double labelWidth) {
    List<String> lines = wrapped(text, column.width() - labelWidth);
    makeRoom(lines.size() * LINE_MM);
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      y += LINE_MM;
      if (i == 0 && !label.isBlank()) {
        parts.add(new Part.Lettering(label, base(column.x()), TextSize.SMALL, SheetInk.QUIET));
      }
      parts.add(
          new Part.Lettering(
              lines.get(i), base(column.x() + labelWidth), TextSize.SMALL, Ink.BLACK));
    }
    y += AFTER_PARAGRAPH_MM;
    add(Role.NOTE, "", parts);
  }

  /** A label with a line to write on beside it. */
  void blank(String label, double labelWidth) {
    makeRoom(BLANK_MM);
    y += BLANK_MM;
    List<Part> parts = new ArrayList<>();
    if (!label.isBlank()) {
      parts.add(new Part.Lettering(label, base(column.x()), TextSize.SMALL, SheetInk.QUIET));
    }
    parts.add(
        Part.Shape.drawn(
            Curve.line(base(column.x() + labelWidth), base(column.right())),
            Pen.of(SheetInk.QUIET, LineWeight.FINE)));
    add(Role.NOTE, "", parts);
  }

  /** Where the next line begins. */
  double y() {
    return y;
  }

  private Point base(double x) {
    return new Point(x, y - 1.1);
  }

  /** A paragraph, as wide as the column; it stays whole on one page where a column holds it. */
  void paragraph(String text) {
    List<String> lines = wrapped(text, column.width());
    if (lines.size() * LINE_MM <= column.height()) {
      makeRoom(lines.size() * LINE_MM);
    }
    lines(lines, column.x(), Role.NOTE);
    y += AFTER_PARAGRAPH_MM;
  }

  private void lines(List<String> lines, double x, Role role) {
    makeRoom(Math.min(3, lines.size()) * LINE_MM);
    List<Part> parts = new ArrayList<>();
    for (String line : lines) {
      if (y + LINE_MM > bottom() && !parts.isEmpty()) {
        add(role, "", parts);
        parts = new ArrayList<>();
        makeRoom(LINE_MM);
      }
      y += LINE_MM;
      parts.add(new Part.Lettering(line, base(x), TextSize.SMALL, Ink.BLACK));
    }
    add(role, "", parts);
  }

  /** A black heading over items in a strong frame: what must not be overlooked. */
  void warning(String heading, List<String> items) {
    double inset = 1.6;
    List<String> lines = new ArrayList<>();
    items.forEach(item -> lines.addAll(wrapped(item, column.width() - 2 * inset)));
    makeRoom(HEADING_MM + lines.size() * LINE_MM + 2);
    if (!atTop()) {
      y += BEFORE_HEADING_MM;
    }
    List<Part> parts = new ArrayList<>();
    double top = y;
    Box band = new Box(column.x(), top, column.width(), HEADING_MM);
    parts.add(Part.Shape.filled(Curve.rectangle(band), Ink.BLACK));
    parts.add(
        new Part.Lettering(
            heading,
            new Point(column.x() + inset, band.bottom() - 1.5),
            TextSize.HEADING,
            Ink.PAPER));
    y += HEADING_MM + 0.6;
    for (String line : lines) {
      y += LINE_MM;
      parts.add(new Part.Lettering(line, base(column.x() + inset), TextSize.SMALL, Ink.BLACK));
    }
    y += 1;
    parts.add(
        Part.Shape.drawn(
            Curve.rectangle(new Box(column.x(), top, column.width(), y - top)),
            Pen.of(Ink.BLACK, LineWeight.STRONG)));
    y += AFTER_PARAGRAPH_MM;
    add(Role.PROBLEM, heading + ": " + String.join("; ", items), parts);
  }

  /**
   * A sample and what it means.
   *
   * @param sample makes the sample in a box
   */
  void legend(Function<Box, List<Part>> sample, String text) {
    List<String> lines = wrapped(text, column.width() - SWATCH_MM - 1.8);
    makeRoom(lines.size() * LINE_MM);
    Box box = new Box(column.x(), y + 0.7, SWATCH_MM, LINE_MM - 1.2);
    List<Part> parts = new ArrayList<>(sample.apply(box));
    for (String line : lines) {
      y += LINE_MM;
      parts.add(
          new Part.Lettering(line, base(column.x() + SWATCH_MM + 1.8), TextSize.SMALL, Ink.BLACK));
    }
    add(Role.LEGEND, "", parts);
  }

  /** Lines of at most a width; a single word that is wider is cut. */
  static List<String> wrapped(String text, double width) {
    Typeface face = Typeface.shipped();
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.trim().split("\\s+", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (face.width(longer, TextSize.SMALL) <= width) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      line = word;
      while (face.width(line, TextSize.SMALL) > width) {
        int fits = line.length() - 1;
        while (fits > 1 && face.width(line.substring(0, fits), TextSize.SMALL) > width) {
          fits--;
        }
        lines.add(line.substring(0, fits));
        line = line.substring(fits);
      }
    }
    lines.add(line);
    return lines;
  }

  /** A text cut to a width, with an ellipsis where something is missing. */
  static String fitted(String text, TextSize size, double width) {
    Typeface face = Typeface.shipped();
    if (face.width(text, size) <= width) {
      return text;
    }
    int end = text.length();
    while (end > 0 && face.width(text.substring(0, end).trim() + "\u2026", size) > width) {
      end--;
    }
    return text.substring(0, end).trim() + "\u2026";
  }
}
