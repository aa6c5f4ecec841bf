package foilwright.cli;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.List;

/** Rows of words set in columns: the first to the left, the others to the right. */
final class Columns {
  private static final String GAP = "   ";

  private final List<String[]> rows = new ArrayList<>();

  void add(String... cells) {
    rows.add(cells.clone());
  }

  void print(String indent, PrintStream out) {
    int[] widths = new int[rows.stream().mapToInt(row -> row.length).max().orElse(0)];
    for (String[] row : rows) {
      for (int c = 0; c < row.length; c++) {
        widths[c] = Math.max(widths[c], row[c].length());
      }
    }
    for (String[] row : rows) {
      StringBuilder line = new StringBuilder(indent);
      for (int c = 0; c < row.length; c++) {
        String padding = " ".repeat(widths[c] - row[c].length());
        line.append(c > 0 ? GAP : "").append(c == 0 ? row[c] + padding : padding + row[c]);
      }
      out.println(line.toString().stripTrailing());
    }
  }
}
