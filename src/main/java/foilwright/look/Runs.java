package foilwright.look;

import java.util.Arrays;

/**
 * Counts and measures what lies side by side in a view: ribbons of lightened hair in level lines,
 * or bands in upright ones.
 *
 * <p>How: lines lie 3 mm apart. For ribbons the lightened share is averaged over {@value #ALONG_MM}
 * mm along the hair, following its lean, since a ribbon runs with the hair; for bands over as much
 * across. What single hairs would do by chance if the lightened ones lay among the others at
 * random, the grain, is known from how broad each is seen. The lines are then averaged over the
 * least width that is nearly the clearest: at which the share varies more than {@value #CLEAR}
 * times as much as the grain (variances), and {@value #ENOUGH} as many times as at the best width.
 * If no width does, the light blends and there are no runs. A run is a place that stands out on
 * both sides (its topographic prominence) by more than {@value #STANDS_OUT} of the standard
 * deviation of all places and more than {@value #SURE} deviations of the grain; what lies beyond
 * the edge of the hair counts as the line's mean. Its width is that at half its prominence, square
 * to the hair.
 *
 * <p>Limits: stripes of 2 to 40 mm under leans of up to 40 degrees are counted to an eighth and
 * measured to 1.2 mm or a quarter, whichever is more, while they stand clear of the grain: with 13
 * hairs seen side by side in a millimetre, stripes of 3 mm need to be lighter than their gaps by
 * 0.6 of the hair, those of 10 mm by 0.3, those of 40 mm by 0.15. Others are told as blended, not
 * wrongly counted.
 *
 * @param perLine how many runs a line crosses, the mean over lines; 0 when the light blends
 * @param widthMm the median of their widths; 0 without runs
 * @param finestMm width over which lines were averaged; 0 without runs
 */
record Runs(double perLine, double widthMm, double finestMm) {
  private static final int LINE_STEP = 3;
  static final int ALONG_MM = 13;
  private static final int REACH = ALONG_MM / 2;
  private static final int[] WIDTHS = {1, 3, 5, 7, 9, 13, 17, 21, 27};
  static final int CLEAR = 2;
  static final double SURE = 3.6;
  static final double ENOUGH = 0.75;
  private static final double STANDS_OUT = 0.7;
  private static final int PIECE_CELLS = 4;
  private static final int LEAST_SEGMENT = 12;

  /** Steeper than 50 degrees from the line's square, hair runs along it and tells nothing. */
  private static final double MOST_LEAN = 1.2;

  /**
   * Variance that a share has by chance, when lightened hairs lie among others at random: each hair
   * counts with the square of the area it shows. As of a sample, so that what is there on purpose
   * does not count as chance.
   *
   * @param share lightened, of the area
   * @param area seen
   * @param squares sum over hairs of the squares of the area of each
   */
  static double chance(double share, double area, double squares) {
    double hairs = area * area / squares;
    return share * (1 - share) / Math.max(1, hairs - 1);
  }

  static final Runs NONE = new Runs(0, 0, 0);

  /**
   * @param part which cells count
   * @param across ribbons in level lines, or else bands in upright ones
   */
  static Runs of(FigureMap map, boolean[] part, boolean across) {
    Lines lines = new Lines(map, part, across);
    Spread[] spreads = new Spread[WIDTHS.length];
    double best = 0;
    for (int i = 0; i < WIDTHS.length; i++) {
      spreads[i] = lines.spread(WIDTHS[i]);
      best = Math.max(best, spreads[i].clarity());
    }
    for (int i = 0; i < WIDTHS.length && best >= CLEAR; i++) {
      if (spreads[i].clarity() >= Math.max(CLEAR, ENOUGH * best)) {
        return lines.count(WIDTHS[i], spreads[i]);
      }
    }
    return NONE;
  }

  /** How much places vary, and how much of that single hairs would by chance (variances). */
  private record Spread(double all, double grain) {
    double clarity() {
      return all > grain ? (all - grain) / Math.max(grain, 1e-9) : 0;
    }

    double leastProminence() {
      return Math.max(STANDS_OUT * Math.sqrt(all - grain), SURE * Math.sqrt(grain));
    }
  }

  /** The lines of a view, each cell averaged along the hair. */
  private static final class Lines {
    private final boolean across;
    private final int count;
    private final int length;
    private final double[][] seen;
    private final double[][] light;
    private final double[][] chance;
    private final double[][] square;

    Lines(FigureMap map, boolean[] part, boolean across) {
      this.across = across;
      int all = across ? map.height : map.width;
      length = across ? map.width : map.height;
      count = (all + LINE_STEP - 1) / LINE_STEP;
      seen = new double[count][length];
      light = new double[count][length];
      chance = new double[count][length];
      square = new double[count][length];
      Box cosine = Box.of(map.cosine, map.width, map.height);
      Box sine = Box.of(map.sine, map.width, map.height);
      for (int i = 0; i < count; i++) {
        for (int at = 0; at < length; at++) {
          int row = across ? i * LINE_STEP : at;
          int column = across ? at : i * LINE_STEP;
          if (part[row * map.width + column]) {
            if (across) {
              along(map, part, i, row, column, lean(cosine, sine, row, column));
            } else {
              beside(map, part, i, row, column);
            }
          }
        }
      }
    }

    private static double lean(Box cosine, Box sine, int row, int column) {
      return Math.tan(Math.atan2(sine.sum(row, column, 2), cosine.sum(row, column, 2)) / 2);
    }

    private void along(FigureMap map, boolean[] part, int i, int row, int column, double lean) {
      if (!(Math.abs(lean) <= MOST_LEAN)) {
        return;
      }
      int rows = 0;
      for (int k = -REACH; k <= REACH; k++) {
        double x = column + lean * k;
        int left = (int) Math.floor(x);
        int y = row + k;
        if (y < 0 || y >= map.height || left < 0 || left + 1 >= map.width) {
          continue;
        }
        int at = y * map.width + left;
        double share = x - left;
        if (part[share < 0.5 ? at : at + 1]) {
          rows++;
          seen[i][column] += (1 - share) * map.seen[at] + share * map.seen[at + 1];
          light[i][column] += (1 - share) * map.light[at] + share * map.light[at + 1];
          chance[i][column] += (1 - share) * map.grainMm(at) + share * map.grainMm(at + 1);
        }
      }
      double stretch = Math.sqrt(1 + lean * lean);
      chance[i][column] *= rows * FigureMap.CELL_MM * stretch * FigureMap.UNIT;
      square[i][column] = 1 / stretch;
    }

    private void beside(FigureMap map, boolean[] part, int i, int row, int column) {
      for (int x = Math.max(0, column - REACH); x <= Math.min(map.width - 1, column + REACH); x++) {
        int at = row * map.width + x;
        if (part[at]) {
          seen[i][row] += map.seen[at];
          light[i][row] += map.light[at];
          chance[i][row] += map.grainMm(at) * FigureMap.CELL_MM * FigureMap.UNIT;
        }
      }
      square[i][row] = 1;
    }

    /** Does something with each stretch of hair in the lines that is long enough. */
    private void segments(Segment work) {
      for (int i = 0; i < count; i++) {
        int from = -1;
        for (int at = 0; at <= length; at++) {
          boolean in = at < length && seen[i][at] > 0;
          if (in && from < 0) {
            from = at;
          } else if (!in && from >= 0) {
            if (at - from >= LEAST_SEGMENT) {
              work.on(i, from, at);
            }
            from = -1;
          }
        }
      }
    }

    private interface Segment {
      void on(int line, int from, int to);
    }

    private double mean(int i, int from, int to) {
      double all = 0;
      double bright = 0;
      for (int at = from; at < to; at++) {
        all += seen[i][at];
        bright += light[i][at];
      }
      return bright / all;
    }

    /** Sums over a width about each place: seen, light, chance. */
    private double[] sums(int i, int at, int from, int to, int width) {
      double[] sums = new double[3];
      for (int k = Math.max(from, at - width / 2); k <= Math.min(to - 1, at + width / 2); k++) {
        sums[0] += seen[i][k];
        sums[1] += light[i][k];
        sums[2] += chance[i][k];
      }
      // Down the fall the same hairs go on: over a width of several cells they count once. They
      // are told in pieces of a step, which stand where their middles are.
      sums[2] *= across ? 1 : Math.max(width, PIECE_CELLS);
      return sums;
    }

    Spread spread(int width) {
      double[] sums = new double[3];
      segments(
          (i, from, to) -> {
            double mean = mean(i, from, to);
            for (int at = from; at < to; at++) {
              double[] s = sums(i, at, from, to, width);
              double off = s[1] / s[0] - mean;
              sums[0] += off * off;
              sums[1] += chance(s[1] / s[0], s[0], s[2]);
              sums[2]++;
            }
          });
      return sums[2] > 0 ? new Spread(sums[0] / sums[2], sums[1] / sums[2]) : new Spread(0, 0);
    }

    Runs count(int width, Spread spread) {
      double least = spread.leastProminence();
      double[] widths = new double[count * length];
      int[] found = new int[1];
      boolean[] used = new boolean[count];
      segments(
          (i, from, to) -> {
            used[i] = true;
            double[] line = new double[to - from + 2];
            line[0] = mean(i, from, to);
            line[line.length - 1] = line[0];
            for (int at = from; at < to; at++) {
              double[] s = sums(i, at, from, to, width);
              line[at - from + 1] = s[1] / s[0];
            }
            for (int at = 1; at < line.length - 1; at++) {
              double run = runAt(line, at, least);
              if (run > 0) {
                widths[found[0]++] = run * square[i][from + at - 1] * FigureMap.CELL_MM;
              }
            }
          });
      int lines = 0;
      for (boolean u : used) {
        lines += u ? 1 : 0;
      }
      if (found[0] == 0 || found[0] < 0.2 * lines) {
        return NONE;
      }
      Arrays.sort(widths, 0, found[0]);
      return new Runs(found[0] / (double) lines, widths[found[0] / 2], width * FigureMap.CELL_MM);
    }

    /** Width of the run whose top is here, in cells; 0 when none is. */
    private static double runAt(double[] line, int top, double least) {
      double height = line[top];
      if (!(height > line[top - 1])) {
        return 0;
      }
      double leftBase = height;
      int left = top - 1;
      while (left >= 0 && line[left] < height) {
        leftBase = Math.min(leftBase, line[left--]);
      }
      double rightBase = height;
      int right = top + 1;
      while (right < line.length && line[right] <= height) {
        rightBase = Math.min(rightBase, line[right++]);
      }
      double prominence = height - Math.max(leftBase, rightBase);
      if (!(prominence >= least)) {
        return 0;
      }
      double half = height - prominence / 2;
      return crossing(line, top, 1, half) + crossing(line, top, -1, half);
    }

    private static double crossing(double[] line, int top, int step, double half) {
      int at = top;
      while (line[at + step] > half) {
        at += step;
        if (at == 0 || at == line.length - 1) {
          return Math.abs(at - top) - 0.5;
        }
      }
      double fall = line[at] - line[at + step];
      return Math.abs(at - top) + (fall > 0 ? (line[at] - half) / fall : 0);
    }
  }
}
