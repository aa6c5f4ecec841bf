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

  /** Area of hair that is seen; it may exceed the cell's where much hair is half hidden. */
  final int[] seen;

  /** The part of it that is lightened. */
  final int[] light;

  /** Area times linear red, green and blue. */
  final int[] red;

  final int[] green;
  final int[] blue;

  /** Area times the cosine and sine of twice the angle between hair and upright. */
  final int[] cosine;

  final int[] sine;

  FigureMap(Window window) {
    this.window = window;
    width = (int) Math.ceil(window.width() / window.pixelsPerMm() / CELL_MM) + 1;
    height = (int) Math.ceil(window.height() / window.pixelsPerMm() / CELL_MM) + 1;
    int cells = width * height;
    seen = new int[cells];
    light = new int[cells];
    red = new int[cells];
    green = new int[cells];
    blue = new int[cells];
    cosine = new int[cells];
    sine = new int[cells];
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
    int at = row * width + column;
    float square = dxMm * dxMm + dyMm * dyMm;
    float area = (float) Math.sqrt(square) * broadMm * (float) (UNIT / (CELL_MM * CELL_MM));
    seen[at] += (int) (area + 0.5f);
    light[at] += (int) (area * lightened + 0.5f);
    red[at] += (int) (area * r + 0.5f);
    green[at] += (int) (area * g + 0.5f);
    blue[at] += (int) (area * b + 0.5f);
    if (square > 0) {
      cosine[at] += Math.round(area * (dyMm * dyMm - dxMm * dxMm) / square);
      sine[at] += Math.round(area * 2 * dxMm * dyMm / square);
    }
  }
}
