package foilwright.look;

import foilwright.units.Length;
import foilwright.units.Share;

/** Reads the figures of one view, or of its part beside the face. */
final class Reading {
  private static final double ENOUGH = 0.5;
  private static final int COVER_CELLS = 2;

  /** What an eye takes in at once at arm's length, and what it holds that against. */
  private static final int EYE_CELLS = 2;

  private static final int ROUND_CELLS = 20;
  private static final int STRIP_CELLS = 4;
  private static final int STRIP_STEP = 3;
  private static final int SHELF_CELLS = 6;
  private static final int MOST_LAG = 120;
  private static final int CONTRAST_STEP = 2;
  private static final int SHARES = 20;

  private static final double FACE_MM = 112;
  private static final double CHIN_MM = -112;
  private static final double FOREHEAD_MM = 95;

  private final FigureMap map;
  private final int width;
  private final int height;
  private final boolean[] part;
  private final Box seen;
  private final Box light;
  private final Box grain;

  private Reading(FigureMap map, boolean faceOnly) {
    this.map = map;
    width = map.width;
    height = map.height;
    Box cover = Box.of(map.seen, width, height);
    part = new boolean[width * height];
    double enough = ENOUGH * FigureMap.UNIT * (2 * COVER_CELLS + 1) * (2 * COVER_CELLS + 1);
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        part[row * width + column] =
            cover.sum(row, column, COVER_CELLS) >= enough
                && (!faceOnly || isBesideFace(row, column));
      }
    }
    seen = Box.of(cell -> part[cell] ? map.seen[cell] : 0, width, height);
    light = Box.of(cell -> part[cell] ? map.light[cell] : 0, width, height);
    grain = Box.of(cell -> part[cell] ? map.grainMm(cell) * FigureMap.UNIT : 0, width, height);
  }

  /** The figures of a whole view. */
  static SideFigures whole(FigureMap map) {
    return new Reading(map, false).figures();
  }

  /** The figures of the hair beside the face, of a view from the front. */
  static SideFigures besideFace(FigureMap map) {
    return new Reading(map, true).figures();
  }

  private double acrossMm(int column) {
    return map.window.leftMm() + (column + 0.5) * FigureMap.CELL_MM;
  }

  private boolean isBesideFace(int row, int column) {
    double z = map.window.topMm() - (row + 0.5) * FigureMap.CELL_MM;
    return Math.abs(acrossMm(column)) < FACE_MM && z > CHIN_MM && z < FOREHEAD_MM;
  }

  private SideFigures figures() {
    double all = seen.sum(0, height, 0, width);
    double bright = light.sum(0, height, 0, width);
    Share visible = LookFigures.share(bright, all);
    LookSide side = map.window.side();
    int middle =
        (int) Math.round(Math.max(0, Math.min(width, -map.window.leftMm() / FigureMap.CELL_MM)));
    Share before =
        LookFigures.share(light.sum(0, height, 0, middle), seen.sum(0, height, 0, middle));
    Share behind =
        LookFigures.share(light.sum(0, height, middle, width), seen.sum(0, height, middle, width));
    boolean whole = side == LookSide.LEFT || side == LookSide.RIGHT;
    Share left = whole ? visible : side == LookSide.FRONT ? behind : before;
    Share right = whole ? visible : side == LookSide.FRONT ? before : behind;
    if (bright == 0) {
      return SideFigures.NONE;
    }
    Runs ribbons = side == LookSide.TOP ? Runs.NONE : Runs.of(map, part, true);
    Runs bands = side == LookSide.TOP ? Runs.NONE : Runs.of(map, part, false);
    return new SideFigures(
        visible,
        ribbons.perLine(),
        Length.ofMillimetres(ribbons.widthMm()),
        bands.perLine(),
        Length.ofMillimetres(bands.widthMm()),
        side == LookSide.TOP ? 0 : spread(),
        Length.ofMillimetres(side == LookSide.TOP ? 0 : shelf(bright / all / 2)),
        contrast(),
        left,
        right);
  }

  private double over(Box sums, int row, int column, int reach) {
    return sums.sum(row, column, reach);
  }

  private double spread() {
    double[] off = new double[width * height];
    double square = 0;
    double byChance = 0;
    int cells = 0;
    double eyeMm = (2 * EYE_CELLS + 1) * FigureMap.CELL_MM;
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        int at = row * width + column;
        double area = over(seen, row, column, EYE_CELLS);
        if (part[at] && area > 0) {
          double round =
              over(light, row, column, ROUND_CELLS) / over(seen, row, column, ROUND_CELLS);
          double share = over(light, row, column, EYE_CELLS) / area;
          off[at] = share - round;
          square += off[at] * off[at];
          byChance += Runs.chance(share, area, over(grain, row, column, EYE_CELLS) * eyeMm);
          cells++;
        }
      }
    }
    double noise = cells > 0 ? byChance / cells : 0;
    double structure = cells > 0 ? square / cells - noise : 0;
    if (!(structure > noise)) {
      return 0;
    }
    return reach(off, true, structure, noise) / reach(off, false, structure, noise);
  }

  /**
   * Cells over which places still agree half as well as each does with itself, chance taken off:
   * across the fall single hairs end within the box of an eye, down it they go on.
   */
  private double reach(double[] off, boolean across, double structure, double noise) {
    int most = Math.min(MOST_LAG, (across ? width : height) / 2);
    double before = 1;
    for (int lag = 1; lag < most; lag++) {
      double kept = across ? Math.max(0, 1 - lag / (2.0 * EYE_CELLS + 1)) : 1;
      double now = (covariance(off, lag, across) - kept * noise) / structure;
      if (now < 0.5) {
        return lag - 1 + (before - 0.5) / (before - now);
      }
      before = now;
    }
    return most;
  }

  private double covariance(double[] off, int lag, boolean across) {
    double sum = 0;
    long pairs = 0;
    int step = across ? lag : lag * width;
    int rows = across ? height : height - lag;
    int columns = across ? width - lag : width;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int at = row * width + column;
        if (part[at] && part[at + step]) {
          sum += off[at] * off[at + step];
          pairs++;
        }
      }
    }
    return pairs > 0 ? sum / pairs : 0;
  }

  /**
   * Depth of darker hair, the mean over strips 9 mm wide: from where hair begins to the first place
   * from which 6 mm have enough light; strips that never have are left out.
   */
  private double shelf(double enough) {
    double cells = 0;
    int strips = 0;
    for (int column = STRIP_CELLS; column < width - STRIP_CELLS; column += STRIP_STEP) {
      int top = -1;
      for (int row = 0; row + SHELF_CELLS <= height; row++) {
        int from = column - STRIP_CELLS;
        int to = column + STRIP_CELLS + 1;
        double area = seen.sum(row, row + SHELF_CELLS, from, to);
        boolean hair = part[row * width + column];
        top = top < 0 && hair ? row : top;
        if (top >= 0 && area > 0 && light.sum(row, row + SHELF_CELLS, from, to) >= enough * area) {
          cells += row == top ? 0 : row - top + SHELF_CELLS / 2.0;
          strips++;
          break;
        }
      }
    }
    return strips > 0 ? cells / strips * FigureMap.CELL_MM : 0;
  }

  /**
   * How much places differ in colour from their surroundings, the root mean square, less what
   * single hairs do by chance.
   */
  private double contrast() {
    Box[] colours = {
      Box.of(cell -> part[cell] ? map.red[cell] : 0, width, height),
      Box.of(cell -> part[cell] ? map.green[cell] : 0, width, height),
      Box.of(cell -> part[cell] ? map.blue[cell] : 0, width, height)
    };
    Colour[] mixed = mixed();
    double eyeMm = (2 * EYE_CELLS + 1) * FigureMap.CELL_MM;
    double squares = 0;
    int cells = 0;
    for (int row = 0; row < height; row += CONTRAST_STEP) {
      for (int column = 0; column < width; column += CONTRAST_STEP) {
        double area = over(seen, row, column, EYE_CELLS);
        if (part[row * width + column] && area > 0) {
          Colour here = mean(colours, row, column, EYE_CELLS);
          Colour round = mean(colours, row, column, ROUND_CELLS);
          double d = here.toLab().difference(round.toLab());
          double share = over(light, row, column, EYE_CELLS) / area;
          double noise = Runs.chance(share, area, over(grain, row, column, EYE_CELLS) * eyeMm);
          double about =
              over(light, row, column, ROUND_CELLS) / over(seen, row, column, ROUND_CELLS);
          squares += d * d - byChance(mixed, about, Math.sqrt(noise));
          cells++;
        }
      }
    }
    return cells > 0 ? Math.sqrt(Math.max(0, squares / cells)) : 0;
  }

  /** Mean square of the colour difference of a share that is off by so much, either way. */
  private static double byChance(Colour[] mixed, double share, double off) {
    Colour.Lab middle = at(mixed, share).toLab();
    double more = middle.difference(at(mixed, share + off).toLab());
    double less = middle.difference(at(mixed, share - off).toLab());
    return (more * more + less * less) / 2;
  }

  private static Colour at(Colour[] mixed, double share) {
    double place = Math.min(1, Math.max(0, share)) * SHARES;
    int lower = Math.min((int) place, SHARES - 1);
    return mixed[lower].towards(mixed[lower + 1], place - lower);
  }

  /** The colour at lightened shares from 0 to 1, from all places by least squares. */
  private Colour[] mixed() {
    double[] dark = new double[4];
    double[] bright = new double[4];
    for (int cell = 0; cell < part.length; cell++) {
      if (part[cell] && map.seen[cell] > 0) {
        double share = map.light[cell] / (double) map.seen[cell];
        add(dark, cell, 1 - share);
        add(bright, cell, share);
      }
    }
    // By least squares: colour = dark + share x rise.
    double n = dark[3] + bright[3];
    double s1 = bright[3];
    double s2 = 0;
    for (int cell = 0; cell < part.length; cell++) {
      if (part[cell] && map.seen[cell] > 0) {
        double share = map.light[cell] / (double) map.seen[cell];
        s2 += share * share * map.seen[cell];
      }
    }
    double det = n * s2 - s1 * s1;
    Colour[] mixed = new Colour[SHARES + 1];
    for (int i = 0; i <= SHARES; i++) {
      double[] at = new double[3];
      for (int c = 0; c < 3; c++) {
        double sum = dark[c] + bright[c];
        double rise = det > 0 ? (n * bright[c] - s1 * sum) / det : 0;
        at[c] = Math.max(0, (sum - rise * s1) / n + rise * i / SHARES);
      }
      mixed[i] = new Colour(at[0], at[1], at[2]);
    }
    return mixed;
  }

  private void add(double[] sums, int cell, double share) {
    sums[0] += share * map.red[cell];
    sums[1] += share * map.green[cell];
    sums[2] += share * map.blue[cell];
    sums[3] += share * map.seen[cell];
  }

  private Colour mean(Box[] colours, int row, int column, int reach) {
    double area = Math.max(1, over(seen, row, column, reach));
    return new Colour(
        over(colours[0], row, column, reach) / area,
        over(colours[1], row, column, reach) / area,
        over(colours[2], row, column, reach) / area);
  }
}
