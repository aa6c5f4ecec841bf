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

  private static final double FACE_MM = 112;
  private static final double CHIN_MM = -112;
  private static final double FOREHEAD_MM = 95;

  private final Halves maps;
  private final Window window;
  private final int width;
  private final int height;
  private final boolean[] part;
  private final Half first;
  private final Half second;
  private final Box seen;
  private final Box light;

  /** One half of the hair: how much of it is seen about a place, and how much of that is light. */
  private final class Half {
    final FigureMap map;
    final Box seen;
    final Box light;

    Half(FigureMap map) {
      this.map = map;
      seen = of(map::seen);
      light = of(map::light);
    }

    private Box of(Box.Cell values) {
      return Box.of(cell -> part[cell] ? values.at(cell) : 0, width, height);
    }

    /** What the lightened share about a place differs by from that round about; NaN unseen. */
    double[] off() {
      double[] off = new double[width * height];
      for (int row = 0; row < height; row++) {
        for (int column = 0; column < width; column++) {
          int at = row * width + column;
          double area = part[at] ? seen.sum(row, column, EYE_CELLS) : 0;
          off[at] =
              area > 0
                  ? light.sum(row, column, EYE_CELLS) / area
                      - light.sum(row, column, ROUND_CELLS) / seen.sum(row, column, ROUND_CELLS)
                  : Double.NaN;
        }
      }
      return off;
    }
  }

  private Reading(Halves maps, boolean faceOnly) {
    this.maps = maps;
    window = maps.window();
    width = maps.width();
    height = maps.height();
    FigureMap one = maps.first();
    FigureMap other = maps.second();
    Box cover = Box.of(cell -> (double) one.seen(cell) + other.seen(cell), width, height);
    part = new boolean[width * height];
    double enough = ENOUGH * FigureMap.UNIT * (2 * COVER_CELLS + 1) * (2 * COVER_CELLS + 1);
    for (int row = 0; row < height; row++) {
      for (int column = 0; column < width; column++) {
        part[row * width + column] =
            cover.sum(row, column, COVER_CELLS) >= enough
                && (!faceOnly || isBesideFace(row, column));
      }
    }
    first = new Half(maps.first());
    second = new Half(maps.second());
    seen = first.seen.plus(second.seen);
    light = first.light.plus(second.light);
  }

  /** The figures of a whole view. */
  static SideFigures whole(Halves maps) {
    return new Reading(maps, false).figures();
  }

  /** The figures of the hair beside the face, of a view from the front. */
  static SideFigures besideFace(Halves maps) {
    return new Reading(maps, true).figures();
  }

  /** Square of the contrast of a whole view, which chance may take below 0. */
  static double contrastSquare(Halves maps) {
    return new Reading(maps, false).contrastSquare();
  }

  private double acrossMm(int column) {
    return window.leftMm() + (column + 0.5) * FigureMap.CELL_MM;
  }

  private boolean isBesideFace(int row, int column) {
    double z = window.topMm() - (row + 0.5) * FigureMap.CELL_MM;
    return Math.abs(acrossMm(column)) < FACE_MM && z > CHIN_MM && z < FOREHEAD_MM;
  }

  private SideFigures figures() {
    double all = seen.sum(0, height, 0, width);
    double bright = light.sum(0, height, 0, width);
    Share visible = LookFigures.share(bright, all);
    LookSide side = window.side();
    int middle =
        (int) Math.round(Math.max(0, Math.min(width, -window.leftMm() / FigureMap.CELL_MM)));
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
    Runs.Both runs =
        side == LookSide.TOP ? new Runs.Both(Runs.NONE, Runs.NONE) : Runs.of(maps, part);
    Runs ribbons = runs.ribbons();
    Runs bands = runs.bands();
    return new SideFigures(
        visible,
        ribbons.perLine(),
        Length.ofMillimetres(ribbons.widthMm()),
        bands.perLine(),
        Length.ofMillimetres(bands.widthMm()),
        side == LookSide.TOP ? 0 : spread(),
        Length.ofMillimetres(side == LookSide.TOP ? 0 : shelf(bright / all / 2)),
        Math.sqrt(Math.max(0, contrastSquare())),
        left,
        right);
  }

  private double spread() {
    double[] one = first.off();
    double[] two = second.off();
    double structure = 0;
    double chance = 0;
    int places = 0;
    for (int at = 0; at < one.length; at++) {
      double both = one[at] * two[at];
      if (!Double.isNaN(both)) {
        double apart = (one[at] - two[at]) / 2;
        structure += both;
        chance += apart * apart;
        places++;
      }
    }
    if (!(structure > chance)) {
      return 0;
    }
    structure /= places;
    return reach(one, two, true, structure) / reach(one, two, false, structure);
  }

  /** Cells over which places still agree half as well as each does with itself. */
  private double reach(double[] one, double[] two, boolean across, double structure) {
    int most = Math.min(MOST_LAG, (across ? width : height) / 2);
    double before = 1;
    for (int lag = 1; lag < most; lag++) {
      double now = covariance(one, two, lag, across) / structure;
      if (now < 0.5) {
        return lag - 1 + (before - 0.5) / (before - now);
      }
      before = now;
    }
    return most;
  }

  private double covariance(double[] one, double[] two, int lag, boolean across) {
    double sum = 0;
    long pairs = 0;
    int step = across ? lag : lag * width;
    int rows = across ? height : height - lag;
    int columns = across ? width - lag : width;
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        int at = row * width + column;
        double both = one[at] * two[at + step] + two[at] * one[at + step];
        if (!Double.isNaN(both)) {
          sum += both / 2;
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
   * The mean product of what the colours of both halves differ by from those round about. As a mean
   * of many draws it is that of what is there; of one draw it may be less than 0.
   */
  private double contrastSquare() {
    int across = (width + CONTRAST_STEP - 1) / CONTRAST_STEP;
    int down = (height + CONTRAST_STEP - 1) / CONTRAST_STEP;
    Colour.Lab[][] labs = {labs(first, across, down), labs(second, across, down)};
    Box[][] rounds = new Box[2][];
    for (int half = 0; half < 2; half++) {
      Colour.Lab[] own = labs[half];
      rounds[half] =
          new Box[] {
            Box.of(at -> own[at] == null ? 0 : own[at].l(), across, down),
            Box.of(at -> own[at] == null ? 0 : own[at].a(), across, down),
            Box.of(at -> own[at] == null ? 0 : own[at].b(), across, down),
            Box.of(at -> own[at] == null ? 0 : 1, across, down)
          };
    }
    double sum = 0;
    int places = 0;
    int reach = ROUND_CELLS / CONTRAST_STEP;
    for (int row = 0; row < down; row++) {
      for (int column = 0; column < across; column++) {
        Colour.Lab one = labs[0][row * across + column];
        Colour.Lab two = labs[1][row * across + column];
        if (one != null && two != null) {
          Colour.Lab by1 = mean(rounds[0], row, column, reach);
          Colour.Lab by2 = mean(rounds[1], row, column, reach);
          Colour.Lab between = one.towards(two, 0.5).towards(by1.towards(by2, 0.5), 0.5);
          sum += between.product(one.minus(by1), two.minus(by2));
          places++;
        }
      }
    }
    return places > 0 ? sum / places : 0;
  }

  /** Colours about every second place of every second row, as far as a half shows there. */
  private Colour.Lab[] labs(Half half, int across, int down) {
    Box red = half.of(half.map::red);
    Box green = half.of(half.map::green);
    Box blue = half.of(half.map::blue);
    Colour.Lab[] labs = new Colour.Lab[across * down];
    for (int row = 0; row < height; row += CONTRAST_STEP) {
      for (int column = 0; column < width; column += CONTRAST_STEP) {
        double area = half.seen.sum(row, column, EYE_CELLS);
        if (part[row * width + column] && area > 0) {
          labs[row / CONTRAST_STEP * across + column / CONTRAST_STEP] =
              new Colour(
                      red.sum(row, column, EYE_CELLS) / area,
                      green.sum(row, column, EYE_CELLS) / area,
                      blue.sum(row, column, EYE_CELLS) / area)
                  .toLab();
        }
      }
    }
    return labs;
  }

  private static Colour.Lab mean(Box[] sums, int row, int column, int reach) {
    double count = sums[3].sum(row, column, reach);
    return new Colour.Lab(
        sums[0].sum(row, column, reach) / count,
        sums[1].sum(row, column, reach) / count,
        sums[2].sum(row, column, reach) / count);
  }
}
