package foilwright.look;

/**
 * What hair shows where in one view, on cells of {@link #CELL_MM} mm: how much hair is seen, how
 * much of it is lightened, which colours it has without lamp and shade, and which way it runs.
 * Whole numbers, so that no order of adding matters.
 */
final class FigureMap {
  static final double CELL_MM = 1;

  /** Area of a cell, in the unit of all sums. */
  static final int UNIT = 4096;

  final Window window;
  final int width;
  final int height;

  /** The sums of a cell lie side by side: a piece of hair touches one place in memory. */
  private final int[] sums;

  private static final int SUMS = 8;
  private static final int LIGHT = 1;
  private static final int RED = 2;
  private static final int GREEN = 3;
  private static final int BLUE = 4;
  private static final int COSINE = 5;
  private static final int SINE = 6;

  FigureMap(Window window) {
    this.window = window;
    width = (int) Math.ceil(window.width() / window.pixelsPerMm() / CELL_MM) + 1;
    height = (int) Math.ceil(window.height() / window.pixelsPerMm() / CELL_MM) + 1;
    sums = new int[SUMS * width * height];
  }

  /**
   * Adds a piece of a hair.
   *
   * @param xMm middle of the piece, rightwards from the window's edge
   * @param yMm the same downwards
   * @param dxMm how far the piece goes rightwards
   * @param dyMm how far it goes down
   * @param broadMm how broad it is, less what is hidden
   * @param lightened share of it that is lightened, 0 to 1
   * @param r linear red of its colour
   */
  void add(
      float xMm,
      float yMm,
      float dxMm,
      float dyMm,
      float broadMm,
      float lightened,
      float r,
      float g,
      float b) {
    int column = (int) (xMm * (float) (1 / CELL_MM));
    int row = (int) (yMm * (float) (1 / CELL_MM));
    if (xMm < 0 || yMm < 0 || column >= width || row >= height) {
      return;
    }
    int at = SUMS * (row * width + column);
    float square = dxMm * dxMm + dyMm * dyMm;
    float length = (float) Math.sqrt(square);
    float area = length * broadMm * (float) (UNIT / (CELL_MM * CELL_MM));
    sums[at] += (int) (area + 0.5f);
    sums[at + LIGHT] += (int) (area * lightened + 0.5f);
    sums[at + RED] += (int) (area * r + 0.5f);
    sums[at + GREEN] += (int) (area * g + 0.5f);
    sums[at + BLUE] += (int) (area * b + 0.5f);
    float per = area / Math.max(square, 1e-12f);
    sums[at + COSINE] += rounded(per * (dyMm * dyMm - dxMm * dxMm));
    sums[at + SINE] += rounded(per * 2 * dxMm * dyMm);
  }

  /** To the nearest whole number, of either sign. */
  private static int rounded(double value) {
    return (int) (value + (1 << 24) + 0.5) - (1 << 24);
  }

  /** Area of hair that is seen; it may exceed the cell's where much hair is half hidden. */
  int seen(int cell) {
    return sums[SUMS * cell];
  }

  /** The part of it that is lightened. */
  int light(int cell) {
    return sums[SUMS * cell + LIGHT];
  }

  /** Area times linear red. */
  int red(int cell) {
    return sums[SUMS * cell + RED];
  }

  int green(int cell) {
    return sums[SUMS * cell + GREEN];
  }

  int blue(int cell) {
    return sums[SUMS * cell + BLUE];
  }

  /** Area times the cosine of twice the angle between hair and upright. */
  int cosine(int cell) {
    return sums[SUMS * cell + COSINE];
  }

  int sine(int cell) {
    return sums[SUMS * cell + SINE];
  }
}
