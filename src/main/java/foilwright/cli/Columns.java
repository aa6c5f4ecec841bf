package foilwright.cli;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** Rows of words set in columns: words to the left, a column of figures to the right. */
final class Columns {
  private static final String GAP = "   ";

  private final List<String[]> rows = new ArrayList<>();

  void add(String... cells) {
    rows.add(cells.clone());
  }

  void print(String indent, PrintStream out) {
    boolean[] figures = new boolean[rows.stream().mapToInt(row -> row.length).max().orElse(0)];
    int[] widths = new int[rows.stream().mapToInt(row -> row.length).max().orElse(0)];
    for (String[] row : rows) {
      for (int c = 0; c < row.length; c++) {
        widths[c] = Math.max(widths[c], row[c].length());
      }
    }
    for (int c = 0; c < figures.length; c++) {
      int column = c;
      figures[c] =
          c > 0
              && rows.stream()
                  .skip(1)
                  .filter(row -> row.length > column && !row[column].isEmpty())
                  .allMatch(row -> Character.isDigit(row[column].charAt(0)));
    }
    for (String[] row : rows) {
      StringBuilder line = new StringBuilder(indent);
      for (int c = 0; c < row.length; c++) {
        String padding = " ".repeat(widths[c] - row[c].length());
        line.append(c > 0 ? GAP : "").append(figures[c] ? padding + row[c] : row[c] + padding);
      }
      out.println(line.toString().stripTrailing());
    }
  }
}
