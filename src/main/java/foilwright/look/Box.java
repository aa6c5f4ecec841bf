package foilwright.look;

/** Sums over boxes of cells of a grid, in the same time whatever their size. */
final class Box {
  private final double[] sums;
  private final int width;
  private final int height;

  private Box(double[] sums, int width, int height) {
    this.sums = sums;
    this.width = width;
    this.height = height;
  }

  /** What a cell holds. */
  interface Cell {
    double at(int cell);
  }

  static Box of(Cell values, int width, int height) {
    int wide = width + 1;
    double[] sums = new double[wide * (height + 1)];
    for (int row = 0; row < height; row++) {
      double line = 0;
      for (int column = 0; column < width; column++) {
        line += values.at(row * width + column);
        int at = (row + 1) * wide + column + 1;
        sums[at] = sums[at - wide] + line;
      }
    }
    return new Box(sums, width, height);
  }

  /** Sums of both together, for grids of one size. */
  Box plus(Box other) {
    double[] both = sums.clone();
    for (int i = 0; i < both.length; i++) {
      both[i] += other.sums[i];
    }
    return new Box(both, width, height);
  }

  /** Over a square about a cell that reaches so many cells each way, less what is off the grid. */
  double sum(int row, int column, int reach) {
    return sum(row - reach, row + reach + 1, column - reach, column + reach + 1);
  }

  /** Over rows and columns, the last of each left out. */
  double sum(int fromRow, int toRow, int fromColumn, int toColumn) {
    int top = Math.max(0, fromRow) * (width + 1);
    int bottom = Math.min(height, toRow) * (width + 1);
    int left = Math.max(0, fromColumn);
    int right = Math.min(width, toColumn);
    return sums[bottom + right] - sums[top + right] - sums[bottom + left] + sums[top + left];
  }
}
