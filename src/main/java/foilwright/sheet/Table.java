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
import foilwright.drawing.Polygon;
import foilwright.drawing.Role;
import foilwright.drawing.TextSize;
import foilwright.drawing.Typeface;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * A table of one-line rows: texts, samples of a section's style, and boxes to write in by hand.
 *
 * @param columns from left to right
 * @param x left edge
 * @param rowMm height of a row
 */
record Table(List<Column> columns, double x, double rowMm) {
  private static final Pen RULE = Pen.of(SheetInk.QUIET, LineWeight.FINE);
  private static final Pen BOX = Pen.of(Ink.BLACK, LineWeight.FINE);
  private static final double BETWEEN_MM = 1.6;
  private static final double BOX_MARGIN_MM = 0.4;
  private static final double SWATCH_MM = 5;

  /**
   * A column.
   *
   * @param head lines of its heading
   * @param toTheRight whether texts end at the right edge of the column, as figures do
   */
  record Column(List<String> head, double width, boolean toTheRight) {
    Column {
      head = List.copyOf(head);
    }

    static Column text(double width, String... head) {
      return new Column(List.of(head), width, false);
    }

    static Column figure(double width, String... head) {
      return new Column(List.of(head), width, true);
    }
  }

  /**
   * What stands in one column of a row.
   *
   * @param text empty for none
   * @param style shown before the text
   * @param box whether there is a box to write in
   */
  record Cell(String text, List<SectionStyle> style, boolean box) {
    static final Cell TO_FILL_IN = new Cell("", List.of(), true);
    static final Cell EMPTY = new Cell("", List.of(), false);

    static Cell of(String text) {
      return new Cell(text, List.of(), false);
    }

    static Cell of(SectionStyle style, String text) {
      return new Cell(text, List.of(style), false);
    }
  }

  /**
   * One row.
   *
   * @param title what a screen reader says
   * @param cells one for each column
   * @param ruled whether a fine line stands above it
   */
  record Row(String id, String title, Map<String, String> data, List<Cell> cells, boolean ruled) {}

  Table {
    columns = List.copyOf(columns);
  }

  double width() {
    return columns.stream().mapToDouble(Column::width).sum();
  }

  double right() {
    return x + width();
  }

  double headMm() {
    int lines = columns.stream().mapToInt(c -> c.head().size()).max().orElse(1);
    return lines * TextFlow.LINE_MM + 0.8;
  }

  /** The headings, on the rule above the rows. */
  Mark head(String id, double top) {
    List<Part> parts = new ArrayList<>();
    double bottom = top + headMm();
    double left = x;
    for (Column column : columns) {
      List<String> lines = column.head();
      for (int i = 0; i < lines.size(); i++) {
        double base = bottom - 1.8 - (lines.size() - 1 - i) * TextFlow.LINE_MM;
        if (!lines.get(i).isEmpty()) {
          parts.add(set(lines.get(i), column, left, 0, base, SheetInk.QUIET));
        }
      }
      left += column.width();
    }
    parts.add(rule(bottom));
    return Mark.plain(id, Role.HEADING, Layer.NOTES, parts.toArray(Part[]::new));
  }

  private Part rule(double y) {
    return Part.Shape.drawn(Curve.line(new Point(x, y), new Point(right(), y)), RULE);
  }

  private static Part set(
      String text, Column column, double left, double indent, double base, Ink ink) {
    double width = column.width() - BETWEEN_MM - indent;
    String fitted = TextFlow.fitted(text, TextSize.SMALL, width);
    return column.toTheRight()
        ? Part.Lettering.endingAt(
            fitted, new Point(left + column.width() - BETWEEN_MM, base), TextSize.SMALL, ink)
        : new Part.Lettering(fitted, new Point(left + indent, base), TextSize.SMALL, ink);
  }

  /** A row whose upper edge lies at {@code top}. */
  Mark row(Row row, double top) {
    List<Part> parts = new ArrayList<>();
    if (row.ruled()) {
      parts.add(rule(top));
    }
    double capitals = Typeface.shipped().capHeight(TextSize.SMALL);
    double base = top + (rowMm + capitals) / 2;
    double left = x;
    for (int i = 0; i < columns.size(); i++) {
      Column column = columns.get(i);
      Cell cell = row.cells().get(i);
      double indent = 0;
      for (SectionStyle style : cell.style()) {
        Box box = new Box(left, base - capitals - 0.2, SWATCH_MM, capitals + 0.4);
        parts.addAll(style.parts(Polygon.of(box)));
        indent = SWATCH_MM + 1.2;
      }
      if (!cell.text().isEmpty()) {
        parts.add(set(cell.text(), column, left, indent, base, Ink.BLACK));
      }
      if (cell.box()) {
        Box box =
            new Box(
                left, top + BOX_MARGIN_MM, column.width() - BETWEEN_MM, rowMm - 2 * BOX_MARGIN_MM);
        parts.add(Part.Shape.drawn(Curve.rectangle(box), BOX));
      }
      left += column.width();
    }
    return new Mark(row.id(), Role.NOTE, Layer.NOTES, row.title(), row.data(), parts);
  }
}
