package foilwright.look;

import java.util.Arrays;

/**
 * What hair shows where in one view, on cells of {@link Painting#FIGURE_CELL_MM} mm: how much hair
 * is seen, and how much of it has which colour. Whole numbers, so that no order of adding matters.
 */
final class FigureMap {
  private static final float UNIT = 4096;

  final Window window;
  final int width;
  final int height;

  /** Seen area of hair, in units of a cell over {@link #UNIT}. */
  final long[] seen;

  /** The same of each colour class. */
  final long[][] classes;

  private final float toCell = (float) (1 / Painting.FIGURE_CELL_MM);
  private final float perCell =
      (float) (UNIT / (Painting.FIGURE_CELL_MM * Painting.FIGURE_CELL_MM));

  FigureMap(Window window) {
    this.window = window;
    width = (int) Math.ceil(window.width() / window.pixelsPerMm() * toCell) + 1;
    height = (int) Math.ceil(window.height() / window.pixelsPerMm() * toCell) + 1;
    seen = new long[width * height];
    classes = new long[Dye.CLASSES][width * height];
  }

  void add(float xMm, float yMm, float areaMm2, int mix, float newShare, float oldShare) {
    int column = (int) (xMm * toCell);
    int row = (int) (yMm * toCell);
    if (xMm < 0 || yMm < 0 || column >= width || row >= height) {
      return;
    }
    int at = row * width + column;
    long area = (long) (areaMm2 * perCell + 0.5f);
    seen[at] += area;
    if (mix > 0) {
      classes[mix][at] += (long) (area * newShare + 0.5f);
    }
    if (oldShare > 0) {
      classes[Dye.OLD][at] += (long) (area * oldShare + 0.5f);
    }
  }

  void add(FigureMap other) {
    for (int i = 0; i < seen.length; i++) {
      seen[i] += other.seen[i];
    }
    for (int c = 0; c < classes.length; c++) {
      for (int i = 0; i < seen.length; i++) {
        classes[c][i] += other.classes[c][i];
      }
    }
  }

  /** How much of a cell hair covers, 0 to 1. */
  double cover(int cell) {
    return Math.min(1, seen[cell] / UNIT);
  }

  /** Share of the hair seen in each cell that the named classes have; cells without hair are 0. */
  double[] share(boolean[] counted) {
    double[] share = new double[seen.length];
    for (int i = 0; i < share.length; i++) {
      long sum = 0;
      for (int c = 1; c < classes.length; c++) {
        sum += counted[c] ? classes[c][i] : 0;
      }
      share[i] = seen[i] > 0 ? sum / (double) seen[i] : 0;
    }
    return share;
  }

  long total() {
    return Arrays.stream(seen).sum();
  }
}
