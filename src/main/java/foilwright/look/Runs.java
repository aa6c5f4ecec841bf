package foilwright.look;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/**
 * Counts and measures what lies side by side in a view: ribbons of lightened hair in level lines,
 * or bands in upright ones.
 *
 * <p>How: lines lie 3 mm apart. For ribbons the lightened share is averaged over {@value #ALONG_MM}
 * mm along the hair, following its lean, since a ribbon runs with the hair; for bands over as much
 * across. How much the share varies is taken from the product of what two independent halves of the
 * hair show; the rest, the grain, is what single hairs do by chance. The lines are then averaged
 * over the least width that is nearly the clearest: at which the share varies more than {@value
 * #CLEAR} times as much as the grain (variances), and {@value #ENOUGH} as many times as at the best
 * width. If no width does, the light blends and there are no runs. A run is a place that stands out
 * on both sides (its topographic prominence) by more than {@value #STANDS_OUT} of the standard
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
  private static final int LEAST_SEGMENT = 12;

  /** Steeper than 50 degrees from the line's square, hair runs along it and tells nothing. */
  private static final double MOST_LEAN = 1.2;

  static final Runs NONE = new Runs(0, 0, 0);

  /** What lies side by side both ways. */
  record Both(Runs ribbons, Runs bands) {}

  /**
   * Both ways in one view.
   *
   * @param part which cells count
   */
  static Both of(Halves maps, boolean[] part) {
    Lines level = new Lines(maps, part, true);
    // Of the narrowest lines there are most, so that their grain is best known: across the hair it
    // falls as the width grows, and down it the same hairs go on.
    double grainMm = level.spread(WIDTHS[0]).grain() * WIDTHS[0];
    return new Both(
        level.runs(width -> grainMm / width),
        new Lines(maps, part, false).runs(width -> grainMm / ALONG_MM));
  }

  /** How much places vary, and how much of that single hairs do by chance (variances). */
  private record Spread(double all, double grain) {
    double clarity() {
      return all > grain ? (all - grain) / Math.max(grain, 1e-9) : 0;
    }

    double leastProminence() {
      return Math.max(STANDS_OUT * Math.sqrt(all - grain), SURE * Math.sqrt(grain));
    }

    Spread withGrainOf(double least) {
      return new Spread(all, Math.max(grain, least));
    }
  }

  /** The lines of a view, each cell averaged along the hair; running sums, by half. */
  private static final class Lines {
    private final int count;
    private final int length;
    private final double[][][] seen;
    private final double[][][] light;
    private final double[][] square;

    Lines(Halves maps, boolean[] part, boolean across) {
      int all = across ? maps.height() : maps.width();
      length = across ? maps.width() : maps.height();
      count = (all + LINE_STEP - 1) / LINE_STEP;
      seen = new double[2][count][length + 1];
      light = new double[2][count][length + 1];
      square = new double[count][length];
      int width = maps.width();
      FigureMap one = maps.first();
      FigureMap other = maps.second();
      Box cosine = Box.of(at -> (double) one.cosine(at) + other.cosine(at), width, maps.height());
      Box sine = Box.of(at -> (double) one.sine(at) + other.sine(at), width, maps.height());
      for (int i = 0; i < count; i++) {
        for (int at = 0; at < length; at++) {
          int row = across ? i * LINE_STEP : at;
          int column = across ? at : i * LINE_STEP;
          boolean in = part[row * width + column];
          double lean = in && across ? lean(cosine, sine, row, column) : 0;
          square[i][at] = 1 / Math.sqrt(1 + lean * lean);
          for (int half = 0; half < 2; half++) {
            FigureMap map = half == 0 ? maps.first() : maps.second();
            seen[half][i][at + 1] = seen[half][i][at];
            light[half][i][at + 1] = light[half][i][at];
            if (in && across && Math.abs(lean) <= MOST_LEAN) {
              along(map, part, half, i, row, column, lean);
            } else if (in && !across) {
              beside(map, part, half, i, row, column);
            }
          }
        }
      }
    }

    private static double lean(Box cosine, Box sine, int row, int column) {
      return Math.tan(Math.atan2(sine.sum(row, column, 2), cosine.sum(row, column, 2)) / 2);
    }

    private void along(
        FigureMap map, boolean[] part, int half, int i, int row, int column, double lean) {
      for (int k = -REACH; k <= REACH; k++) {
        int x = (int) Math.round(column + lean * k);
        int y = row + k;
        if (y >= 0 && y < map.height && x >= 0 && x < map.width && part[y * map.width + x]) {
          int at = y * map.width + x;
          seen[half][i][column + 1] += map.seen(at);
          light[half][i][column + 1] += map.light(at);
        }
      }
    }

    private void beside(FigureMap map, boolean[] part, int half, int i, int row, int column) {
      for (int x = Math.max(0, column - REACH); x <= Math.min(map.width - 1, column + REACH); x++) {
        int at = row * map.width + x;
        if (part[at]) {
          seen[half][i][row + 1] += map.seen(at);
          light[half][i][row + 1] += map.light(at);
        }
      }
    }

    private boolean isSeen(int i, int at) {
      return seen[0][i][at + 1] > seen[0][i][at] || seen[1][i][at + 1] > seen[1][i][at];
    }

    /** Does something with each stretch of hair in the lines that is long enough. */
    private void segments(Segment work) {
      for (int i = 0; i < count; i++) {
        int from = -1;
        for (int at = 0; at <= length; at++) {
          boolean in = at < length && isSeen(i, at);
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

    private double seen(int half, int i, int from, int to) {
      return seen[half][i][to] - seen[half][i][from];
    }

    private double share(int half, int i, int from, int to) {
      return (light[half][i][to] - light[half][i][from]) / seen(half, i, from, to);
    }

    /** Of both halves together. */
    private double share(int i, int from, int to) {
      double bright = light[0][i][to] - light[0][i][from] + light[1][i][to] - light[1][i][from];
      return bright / (seen(0, i, from, to) + seen(1, i, from, to));
    }

    Spread spread(int width) {
      double[] sums = new double[3];
      int reach = width / 2;
      segments(
          (i, from, to) -> {
            double mean = share(i, from, to);
            double mean0 = share(0, i, from, to);
            double mean1 = share(1, i, from, to);
            for (int at = from; at < to; at++) {
              int left = Math.max(from, at - reach);
              int right = Math.min(to, at + reach + 1);
              if (seen(0, i, left, right) > 0 && seen(1, i, left, right) > 0) {
                double off = share(i, left, right) - mean;
                sums[0] += off * off;
                sums[1] += (share(0, i, left, right) - mean0) * (share(1, i, left, right) - mean1);
                sums[2]++;
              }
            }
          });
      return sums[2] > 0
          ? new Spread(sums[0] / sums[2], Math.max(0, (sums[0] - sums[1]) / sums[2]))
          : new Spread(0, 0);
    }

    /**
     * Runs over the least width that is nearly the clearest.
     *
     * @param leastGrain what the grain of a width is at least
     */
    Runs runs(IntToDoubleFunction leastGrain) {
      Spread[] spreads = new Spread[WIDTHS.length];
      double best = 0;
      for (int i = 0; i < WIDTHS.length; i++) {
        spreads[i] = spread(WIDTHS[i]).withGrainOf(leastGrain.applyAsDouble(WIDTHS[i]));
        best = Math.max(best, spreads[i].clarity());
      }
      for (int i = 0; i < WIDTHS.length && best >= CLEAR; i++) {
        if (spreads[i].clarity() >= Math.max(CLEAR, ENOUGH * best)) {
          return count(WIDTHS[i], spreads[i]);
        }
      }
      return NONE;
    }

    private Runs count(int width, Spread spread) {
      double least = spread.leastProminence();
      double[] widths = new double[count * length];
      int[] found = new int[1];
      boolean[] used = new boolean[count];
      segments(
          (i, from, to) -> {
            used[i] = true;
            double[] line = new double[to - from + 2];
            line[0] = share(i, from, to);
            line[line.length - 1] = line[0];
            for (int at = from; at < to; at++) {
              line[at - from + 1] =
                  share(i, Math.max(from, at - width / 2), Math.min(to, at + width / 2 + 1));
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
